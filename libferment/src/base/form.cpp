#include <ferment/base/form.hpp>

#include <algorithm>
#include <cmath>

#include <ferment/base/error.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

std::string place_in(const Row& row, std::size_t i) {
  std::string path(row.name);
  return row.many ? path + "[" + std::to_string(i) + "]" : path;
}

void require_number(const Row& row, std::size_t i, double value) {
  if (row.field == nullptr || std::isinf(row.field->low)) return;  // the value's own contradictions know its bounds
  if (value >= row.field->low && value <= row.field->high) return;
  Field named = *row.field;
  const std::string path = place_in(row, i);
  named.name = path;
  require(named, value);
}

void require_range(const Row& row, const std::pair<double, double>& range) {
  require_number(row, 0, range.first);
  require_number(row, 0, range.second);
  if (range.first <= range.second) return;
  throw InvalidInput("the lowest, " + number(range.first) + ", is above the highest, " + number(range.second),
                     {.path = std::string(row.name),
                      .value = range.first,
                      .high = range.second,
                      .advice = "give the lowest first, then the highest"});
}

/// A name is refused under the member's name, whatever its table is called.
template <class Look>
void require_name(const Row& row, std::size_t i, Look look) {
  try {
    look();
  } catch (const Error& error) {
    ErrorDetail detail = error.detail();
    detail.path = place_in(row, i);
    throw_error(error.status(), error.problem(), std::move(detail));
  }
}

void require_part(const Row& row, const void* object, std::size_t i) {
  const Form& form = row.forms[static_cast<std::size_t>(row.choice(object, i))]();
  try {
    require(form, row.item(object, i));
  } catch (const Error& error) {
    throw_within(place_in(row, i), error);
  }
}

void require_item(const Row& row, const void* object, std::size_t i) {
  const void* const item = row.item(object, i);
  switch (row.kind) {
    case Kind::number: return require_number(row, i, *static_cast<const double*>(item));
    case Kind::range: return require_range(row, *static_cast<const std::pair<double, double>*>(item));
    case Kind::name: return require_name(row, i, [&] { name_in(*row.names, row.choice(object, i)); });
    case Kind::text:
      if (row.known != nullptr) require_name(row, i, [&] { row.known(*static_cast<const std::string*>(item)); });
      return;
    case Kind::value: return require_part(row, object, i);
    case Kind::count: return require_number(row, i, static_cast<double>(*static_cast<const std::size_t*>(item)));
    case Kind::entry:
    case Kind::flag: return;
  }
}

bool same_item(const Row& row, const void* a, const void* b, std::size_t i) {
  const void *const x = row.item(a, i), *const y = row.item(b, i);
  const auto equal = [&]<class T>(const T*) { return *static_cast<const T*>(x) == *static_cast<const T*>(y); };
  switch (row.kind) {
    case Kind::number: return equal(static_cast<const double*>(nullptr));
    case Kind::count: return equal(static_cast<const std::size_t*>(nullptr));
    case Kind::flag: return equal(static_cast<const bool*>(nullptr));
    case Kind::text: return equal(static_cast<const std::string*>(nullptr));
    case Kind::range: return equal(static_cast<const std::pair<double, double>*>(nullptr));
    case Kind::entry: return equal(static_cast<const std::pair<std::string, double>*>(nullptr));
    case Kind::name: return row.choice(a, i) == row.choice(b, i);
    case Kind::value: break;
  }
  const int form = row.choice(a, i);
  return form == row.choice(b, i) && same(row.forms[static_cast<std::size_t>(form)](), x, y);
}

void require_one_of(const Form& form, const std::vector<std::string_view>& group, const void* object) {
  std::string names;
  std::size_t given = 0;
  for (const std::string_view name : group) {
    given += find_row(form, name)->size(object);
    names.append(names.empty() ? "" : name == group.back() ? " and " : ", ").append(name);
  }
  if (given == 1) return;
  throw InvalidInput(std::string(form.name) + (given == 0 ? " needs one of " : " takes only one of ") + names,
                     {.path = std::string(group.front())});
}

}  // namespace

const Row* find_row(const Form& form, std::string_view name) {
  const auto found = std::find_if(form.rows.begin(), form.rows.end(), [&](const Row& row) { return row.name == name; });
  return found == form.rows.end() ? nullptr : &*found;
}

void refuse_member(const Form& form, std::string_view name) {
  std::vector<std::string_view> known;
  for (const Row& row : form.rows) known.push_back(row.name);
  throw InvalidInput(std::string(form.name) + " has no \"" + std::string(name) + "\"",
                     {.path = std::string(name), .advice = advice_for(name, known)});
}

void require(const Form& form, const void* object) {
  for (const Row& row : form.rows) {
    const std::size_t size = row.size(object);
    for (std::size_t i = 0; i < size; ++i) require_item(row, object, i);
  }
  for (const auto& group : form.one_of) require_one_of(form, group, object);
  if (form.contradictions) form.contradictions(object);
}

bool same_member(const Row& row, const void* a, const void* b) {
  const std::size_t size = row.size(a);
  if (size != row.size(b)) return false;
  for (std::size_t i = 0; i < size; ++i) {
    if (!same_item(row, a, b, i)) return false;
  }
  return true;
}

bool same(const Form& form, const void* a, const void* b) {
  return std::all_of(form.rows.begin(), form.rows.end(), [&](const Row& row) { return same_member(row, a, b); });
}

}  // namespace ferment
