#include <doctest/doctest.h>

#include <string>

#include <ferment/base/error.hpp>

using namespace ferment;

TEST_CASE("a text is composed of the facts that are known") {
  CHECK(std::string(InvalidInput("no such dough").what()) == "no such dough");
  CHECK(std::string(InvalidInput("no such dough", {.path = "doughs[1]"}).what()) == "doughs[1]: no such dough");
  CHECK(std::string(NoSolution("too late", {.path = "ready_h", .value = 3.0, .advice = "start earlier"}).what()) ==
        "ready_h: too late; start earlier");
  CHECK(
      std::string(InvalidInput("dough temperature 78 °C is outside −2 to 45 °C", {.path = "dough_c",
                                                                                  .value = 78.0,
                                                                                  .index = 4,
                                                                                  .count = 2,
                                                                                  .size = 9,
                                                                                  .advice = "use a probe",
                                                                                  .meant = Meant::fahrenheit})
                      .what()) ==
      "dough_c: dough temperature 78 °C is outside −2 to 45 °C; did you mean 78 °F?; use a probe (first at index 4, 2 "
      "of 9)");
  CHECK(std::string(InvalidInput("too much", {.value = 36.0, .meant = Meant::fahrenheit_difference}).what()) ==
        "too much; did you mean a difference of 36 °F?");
}

TEST_CASE("an error of a part names the way to it, and keeps its kind and its facts") {
  const auto told = [](const std::string& part, const auto& error) -> std::string {
    try {
      throw_within(part, error);
    } catch (const std::decay_t<decltype(error)>& again) {
      CHECK(again.problem() == "wrong");
      CHECK(again.status() == error.status());
      CHECK(again.detail().low == 1.0);
      return again.detail().path;
    }
  };
  CHECK(told("waters[1]", InvalidInput("wrong", {.path = "cup_h", .low = 1.0})) == "waters[1].cup_h");
  CHECK(told("steps[0]", OutsideModel("wrong", {.low = 1.0})) == "steps[0]");
  CHECK(told("a", NoSolution("wrong", {.path = "b.c", .low = 1.0})) == "a.b.c");
  CHECK(told("a", NotConverged("wrong", {.path = "b", .low = 1.0})) == "a.b");
}
