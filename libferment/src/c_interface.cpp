#include <ferment/ferment.h>

#include <algorithm>
#include <exception>
#include <new>
#include <string>

#include <ferment/version.h>
#include <ferment/base/error.hpp>
#include <ferment/day/ask.hpp>
#include <ferment/mix/factor_rule.hpp>
#include <ferment/rise/rise.hpp>

#include "base/text.hpp"

static_assert(FERMENT_OK == static_cast<int>(ferment::Status::ok));
static_assert(FERMENT_INVALID_INPUT == static_cast<int>(ferment::Status::invalid_input));
static_assert(FERMENT_OUTSIDE_MODEL == static_cast<int>(ferment::Status::outside_model));
static_assert(FERMENT_NO_SOLUTION == static_cast<int>(ferment::Status::no_solution));
static_assert(FERMENT_NOT_CONVERGED == static_cast<int>(ferment::Status::not_converged));
static_assert(FERMENT_INTERNAL == static_cast<int>(ferment::Status::internal));
static_assert(FERMENT_YEAST_INSTANT == static_cast<int>(ferment::Yeast::instant));
static_assert(FERMENT_YEAST_ACTIVE_DRY == static_cast<int>(ferment::Yeast::active_dry));
static_assert(FERMENT_YEAST_ACTIVE_DRY_UNWETTED == static_cast<int>(ferment::Yeast::active_dry_unwetted));
static_assert(FERMENT_YEAST_COMPRESSED == static_cast<int>(ferment::Yeast::compressed));

namespace {

thread_local std::string last_error;

ferment_status fail(ferment::Status status, const char* text) noexcept {
  try {
    last_error = text;
  } catch (...) {
    last_error.clear();  // no memory for the text: the status still tells
  }
  return static_cast<ferment_status>(status);
}

/// Runs work and turns whatever it throws into a status and a text.
template <class Work>
ferment_status guarded(Work work) noexcept {
  try {
    last_error.clear();
    work();
    return FERMENT_OK;
  } catch (const ferment::Error& error) {
    return fail(error.status(), error.what());
  } catch (const std::exception& error) {
    return fail(ferment::Status::internal, error.what());
  } catch (...) {
    return fail(ferment::Status::internal, "unknown failure");
  }
}

/// Refuses null pointers and structs smaller than the first version of the interface had.
/// A member added later is read only if the caller's size covers it.
template <std::uint32_t first_size, class Struct>
void require_struct(const Struct* inputs, const char* name, const void* out) {
  static_assert(sizeof(Struct) >= first_size);
  if (inputs == nullptr)
    throw ferment::InvalidInput(std::string(name) + " is a null pointer",
                                {.advice = "pass the address of a filled struct"});
  if (out == nullptr)
    throw ferment::InvalidInput("the out-pointer is null", {.advice = "pass the address of a double"});
  if (inputs->size < first_size) {
    throw ferment::InvalidInput(std::string(name) + ".size is " + std::to_string(inputs->size) +
                                    " bytes, but must be at least " + std::to_string(first_size),
                                {.advice = "fill the struct with its INIT macro"});
  }
  // A newer program may have members that this library does not know; those it leaves at 0 it does not use.
  constexpr std::uint32_t most_size = 4096;
  const auto* const bytes = reinterpret_cast<const unsigned char*>(inputs);
  const bool uses_more =
      inputs->size <= most_size &&
      std::any_of(bytes + sizeof(Struct), bytes + std::max<std::size_t>(inputs->size, sizeof(Struct)),
                  [](unsigned char byte) { return byte != 0; });
  if (inputs->size > most_size || uses_more) {
    throw ferment::InvalidInput(std::string(name) + ".size is " + std::to_string(inputs->size) +
                                    " bytes, and this libferment " FERMENT_VERSION " knows " +
                                    std::to_string(sizeof(Struct)),
                                {.advice = "fill the struct with its INIT macro, or leave newer members 0"});
  }
}

}  // namespace

const char* ferment_version(void) { return FERMENT_VERSION; }

const char* ferment_last_error(void) { return last_error.c_str(); }

ferment_status ferment_water_by_factor_rule(const ferment_factor_rule* inputs, double* water_c) {
  return guarded([&] {
    require_struct<48>(inputs, "ferment_factor_rule", water_c);
    const std::optional<double> preferment =
        inputs->has_preferment != 0 ? std::optional(inputs->preferment_c) : std::nullopt;
    *water_c = ferment::water_by_factor_rule(inputs->desired_c, inputs->flour_c, inputs->room_c, inputs->friction_k,
                                             preferment);
  });
}

ferment_status ferment_hours_to_rise(double rise_percent, const ferment_dough* dough, double* hours) {
  return guarded([&] {
    require_struct<56>(dough, "ferment_dough", hours);
    *hours = ferment::hours_to_rise(rise_percent, {.dough_c = dough->dough_c,
                                                   .yeast_percent = dough->yeast_percent,
                                                   .yeast = static_cast<ferment::Yeast>(dough->yeast),
                                                   .salt_percent = dough->salt_percent,
                                                   .water_percent = dough->water_percent,
                                                   .sugar_percent = dough->sugar_percent,
                                                   .altitude_m = dough->altitude_m});
  });
}

ferment_status ferment_ask(const char* question, char** answer) {
  return guarded([&] {
    if (question == nullptr || answer == nullptr)
      throw ferment::InvalidInput("a pointer is null", {.advice = "pass a text and the address of a char*"});
    const std::string text = ferment::ask(question);
    auto* const memory = static_cast<char*>(::operator new(text.size() + 1));
    std::copy_n(text.c_str(), text.size() + 1, memory);
    *answer = memory;
  });
}

void ferment_free(void* memory) { ::operator delete(memory); }
