#include <doctest/doctest.h>

#include <array>
#include <set>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include <ferment/ferment.hpp>

#include "refusal.hpp"

using namespace ferment;

namespace {

/// Every value that has a form.
std::vector<const Form*> all_forms() {
  return {&form_of<Flour>(),        &form_of<Water>(),       &form_of<Preferment>(),
          &form_of<Formula>(),      &form_of<FlourShare>(),  &form_of<PercentFormula>(),
          &form_of<Percent>(),      &form_of<Amounts>(),     &form_of<Cohort>(),
          &form_of<Gas>(),          &form_of<Composition>(), &form_of<Bowl>(),
          &form_of<ByMethod>(),     &form_of<ByWork>(),      &form_of<ByNetGain>(),
          &form_of<DailySwing>(),   &form_of<Course>(),      &form_of<Place>(),
          &form_of<Surroundings>(), &form_of<Piece>(),       &form_of<Mix>(),
          &form_of<Stage>(),        &form_of<Process>(),     &form_of<StageProgress>(),
          &form_of<State>(),        &form_of<Dough>(),       &form_of<Kitchen>(),
          &form_of<Cardinal>(),     &form_of<SquareRoot>(),  &form_of<Arrhenius>(),
          &form_of<ConstantQ10>()};
}

Stage resting_in(Surroundings surroundings) {
  Stage stage;
  stage.surroundings = std::move(surroundings);
  stage.until_h = 2;
  return stage;
}

template <class Value>
concept MadeWithoutTemperature = requires {
  Value{.mass_g = 50};
};

}  // namespace

TEST_CASE("every form describes itself: names once, meanings, and a default where none must be given") {
  for (const Form* const form : all_forms()) {
    INFO(std::string(form->name));
    std::set<std::string_view> names;
    CHECK_FALSE(form->name.empty());
    CHECK_FALSE(form->meaning.empty());
    CHECK(form->blank);
    for (const Row& row : form->rows) {
      INFO(std::string(row.name));
      CHECK(names.insert(row.name).second);
      CHECK_FALSE(row.about().empty());
      CHECK(find_row(*form, row.name) == &row);
      CHECK((row.kind == Kind::name) == (row.names != nullptr));
      CHECK((row.kind == Kind::value) == !row.forms.empty());
      CHECK_FALSE((row.optional && row.many));
      const bool is_answer = form == &form_of<Percent>();
      if (row.kind == Kind::number && row.field != nullptr && !row.given && !row.optional && !row.many && !is_answer) {
        const double usual = *static_cast<const double*>(row.item(form->blank.get()));
        if (row.field->initial) CHECK(usual == *row.field->initial);
      }
    }
    CHECK(same(*form, form->blank.get(), form->blank.get()));
    for (const auto& group : form->one_of) {
      for (const std::string_view name : group) CHECK(find_row(*form, name)->optional);
    }
  }
}

TEST_CASE("what must be given is no default: a program that leaves it out does not compile") {
  CHECK_FALSE(std::is_default_constructible_v<Given>);
  CHECK_FALSE(std::is_default_constructible_v<Water>);
  CHECK_FALSE(std::is_default_constructible_v<Dough>);
  CHECK_FALSE(std::is_default_constructible_v<Drift>);
  CHECK(MadeWithoutTemperature<Flour>);
  CHECK_FALSE(MadeWithoutTemperature<Water>);
  const Water water{.mass_g = 50, .temperature_c = 20};
  CHECK(water.mass_g * 2 == 100);
}

TEST_CASE("a refused member is named with the way to it") {
  Mix mix{.formula = {.flour_g = 500,
                      .waters = {{.mass_g = 50, .temperature_c = 20}, {.mass_g = 50, .temperature_c = 78}}},
          .room_c = 20};
  const std::string words = refusal([&] { require(mix); }, "waters[1].temperature_c");
  CHECK(words ==
        "waters[1].temperature_c: temperature of a portion of water 78 °C is outside 0 to 60 °C; did you mean "
        "78 °F?; yeast dies at 60 °C; below 0 °C ask for ice");
  mix.formula.waters.clear();
  mix.mixing = ByMethod{.method = "by magic"};
  CHECK(says(refusal([&] { require(mix); }, "mixing.method"), "mixing method \"by magic\" is unknown; known: folds"));

  Stage stage = resting_in(Surroundings::room(20));
  stage.folds_h = {0.5, -1};
  CHECK(
      refusal([&] { require(stage); }, "folds_h[1]").starts_with("folds_h[1]: moment of a fold −1 h is outside 0 to"));
  stage.folds_h.clear();
  stage.handling = {Handling::fold, static_cast<Handling>(9)};
  CHECK(says(refusal([&] { require(stage); }, "handling[1]"), "handling 9 is unknown; known: 0 to 4"));
  stage.handling.clear();
  stage.acceptable_rise_percent = {90, 60};
  CHECK(says(refusal([&] { require(stage); }, "acceptable_rise_percent"), "the lowest, 90, is above the highest, 60"));
  stage.acceptable_rise_percent.reset();
  stage.surroundings.places[0].course = Course{{0, 1}, {20, 21}};
  CHECK(says(refusal([&] { require(stage); }, "surroundings.places[0].temperature_c"),
             "Place takes only one of temperature_c, swing and course"));
  stage.surroundings = Surroundings::room(20);
  stage.until_h.reset();
  CHECK(says(refusal([&] { require(stage); }, "until_h"), "Stage needs one of until_h, until_rise_percent and ends_h"));
}

TEST_CASE("values are the same if every member is, down to the last digit and the last item") {
  const Stage stage = resting_in(Surroundings::measured({0, 1, 2}, {20, 21, 22}));
  const Form& form = form_of<Stage>();
  const auto is_same = [&](const auto& change) {
    Stage other = stage;
    change(other);
    return same(form, &stage, &other);
  };
  CHECK(is_same([](Stage&) {}));
  CHECK_FALSE(is_same([](Stage& s) { s.name = "proof"; }));
  CHECK_FALSE(is_same([](Stage& s) { s.until_h = 2 + 1e-15; }));
  CHECK_FALSE(is_same([](Stage& s) { s.until_h.reset(); }));
  CHECK_FALSE(is_same([](Stage& s) { s.final_proof = true; }));
  CHECK_FALSE(is_same([](Stage& s) { s.standing = Standing::free; }));
  CHECK_FALSE(is_same([](Stage& s) { s.handling = {Handling::round}; }));
  CHECK_FALSE(is_same([](Stage& s) { s.surroundings.places[0].course->temperature_c[2] = 23; }));
  CHECK_FALSE(is_same([](Stage& s) { s.surroundings.places[0].course->time_h.push_back(3); }));
  CHECK_FALSE(is_same([](Stage& s) { s.acceptable_rise_percent = {60, 90}; }));

  const Mix by_hand{.room_c = 20, .mixing = ByMethod{"hand"}};
  Mix by_work = by_hand;
  by_work.mixing = ByWork{3};
  CHECK_FALSE(same(form_of<Mix>(), &by_hand, &by_work));
}

TEST_CASE("an unknown name is told the near one") {
  const auto told = [](const Form& form, std::string_view name) { return said([&] { refuse_member(form, name); }); };
  CHECK(told(form_of<Mix>(), "flour") == "flour: Mix has no \"flour\"; did you mean flour_g?");
  CHECK(
      told(form_of<Water>(), "cup_hours") ==
      "cup_hours: Water has no \"cup_hours\"; did you mean cup_h? known: mass_g, temperature_c, wets_yeast, stands_h, "
      "cup_h");
  CHECK(told(form_of<Bowl>(), "xyz") == "xyz: Bowl has no \"xyz\"; known: material, mass_g, temperature_c, contact");
  CHECK(said([] { named<Yeast>("instnt"); }) ==
        "yeast: yeast kind \"instnt\" is unknown; did you mean instant? known: instant, active_dry, "
        "active_dry_unwetted, compressed");
}

TEST_CASE("every enumeration has a name for each value, and back") {
  const auto all = []<class E>(E, int count) {
    for (int i = 0; i < count; ++i) CHECK(named<E>(name_of(static_cast<E>(i))) == static_cast<E>(i));
    CHECK(says(said([&] { name_of(static_cast<E>(count)); }), " is unknown; known: 0 to "));
    CHECK(says(said([] { name_of(static_cast<E>(-1)); }), " is unknown; known: 0 to "));
    CHECK(names_of<E>().names.size() == static_cast<std::size_t>(count));
  };
  all(Law{}, 4);
  all(Yeast{}, 4);
  all(Air{}, 5);
  all(Cover{}, 4);
  all(Worktop{}, 3);
  all(Shape{}, 5);
  all(Handling{}, 5);
  all(Standing{}, 2);
  all(Unreachable{}, 2);
  all(Severity{}, 3);
  all(Quantity{}, 7);
  all(Scale{}, 4);
}

TEST_CASE("a changed parameter set does not carry the frozen name") {
  CHECK(name_of(Kitchen{}) == "2026-2");
  CHECK(name_of(kitchen_named("2026-1")) == "2026-1");
  CHECK(name_of(Kitchen{.gassing_rate = 12}).empty());
  CHECK(name_of(Kitchen{.law = Law::arrhenius}).empty());
  Kitchen learned;
  learned.covariance = covariance_of(Kitchen{});
  CHECK(name_of(learned).empty());
  CHECK(name_of(Kitchen{.name = "ours", .gassing_rate = 12}) == "ours");
}
