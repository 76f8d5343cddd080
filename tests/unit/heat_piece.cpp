#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/heat/bowl.hpp>
#include <ferment/heat/piece.hpp>
#include <ferment/heat/surroundings.hpp>

#include "box.hpp"
#include "naive.hpp"
#include "refusal.hpp"

using namespace ferment;
using naive::Real;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double w_per_m_k = 0.40;
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

Piece piece_of(Shape shape) { return {.shape = shape}; }
Piece weighing(double mass_g, Piece piece) {
  piece.mass_g = mass_g;
  return piece;
}
Piece weighing(double mass_g, Shape shape) { return weighing(mass_g, piece_of(shape)); }
Piece open_piece(Shape shape) { return {.shape = shape, .cover = Cover::open}; }
Piece tub_of(std::optional<double> diameter_cm, std::optional<double> depth_cm, std::string material = "plastic") {
  return {.diameter_cm = diameter_cm, .depth_cm = depth_cm, .material = std::move(material)};
}
Piece ball_of(double diameter_cm) { return {.shape = Shape::ball, .diameter_cm = diameter_cm}; }
Piece oblong_of(std::optional<double> length_cm, std::optional<double> diameter_cm) {
  return {.shape = Shape::oblong, .diameter_cm = diameter_cm, .length_cm = length_cm};
}

Piece flat_of(std::optional<double> diameter_cm, std::optional<double> depth_cm) {
  return {.shape = Shape::flat, .diameter_cm = diameter_cm, .depth_cm = depth_cm};
}
Piece tin_of(std::optional<double> length_cm, std::optional<double> width_cm, std::optional<double> depth_cm) {
  return {.shape = Shape::tin, .diameter_cm = width_cm, .length_cm = length_cm, .depth_cm = depth_cm};
}

DoughBody dough_of(double mass_g, double density_g_per_ml = 1.1) {
  DoughBody dough;
  dough.mass_g = mass_g;
  dough.density_g_per_ml = density_g_per_ml;
  return dough;
}

Place air_at(double air_c, Air air = Air::room) {
  Place place;
  place.temperature_c = air_c;
  place.air = air;
  return place;
}
Place damp_air(double air_c, double humidity_percent, Air air = Air::room) {
  Place place = air_at(air_c, air);
  place.humidity_percent = humidity_percent;
  return place;
}

/// First root of 1 − z·cot z = Bi. Incropera, ch. 5 (from memory).
double sphere_root(double biot) {
  double low = 1e-6, high = pi;
  while (high - low > 1e-14) {
    const double middle = (low + high) / 2;
    (1 - middle / std::tan(middle) < biot ? low : high) = middle;
  }
  return low;
}

void check_same(const Node& a, const Node& b) {
  for (double Node::*number :
       {&Node::mass_g, &Node::volume_ml, &Node::area_cm2, &Node::capacity_j_k, &Node::heat_loss_w_per_k,
        &Node::time_constant_h, &Node::inside_k_per_w, &Node::core_over_mean}) {
    CHECK(a.*number == doctest::Approx(b.*number).epsilon(1e-13));
  }
}

}  // namespace

TEST_CASE("time constants of spheres: the corrected lumped formula, and the exact first eigenvalue") {
  struct Row {
    double kg, corrected_h;
    std::optional<double> exact_h;
  };
  const std::array rows{Row{0.25, 1.55, 1.57}, Row{0.3, 1.66, {}},   Row{0.5, 2.02, 2.05},
                        Row{0.9, 2.55, 2.59},  Row{1.0, 2.66, 2.71}, Row{1.5, 3.13, {}},
                        Row{1.7, 3.29, 3.37},  Row{2.0, 3.52, {}},   Row{5.0, 5.17, 5.39}};
  double worst = 0, worst_exact = 0;
  for (const Row& row : rows) {
    const Node node = node_of(piece_of(Shape::ball), dough_of(1000 * row.kg), air_at(22));
    worst = std::max(worst, std::abs(node.time_constant_h - row.corrected_h));
    CHECK(node.time_constant_h == doctest::Approx(row.corrected_h).scale(0).epsilon(0.006 / row.corrected_h));
    CHECK(node.capacity_j_k == doctest::Approx(2800 * row.kg).epsilon(1e-14));

    const double radius = std::cbrt(3 * row.kg / 1100 / (4 * pi));
    const double root = sphere_root(8 * radius / w_per_m_k);
    const double exact = radius * radius * 1100 * 2800 / (w_per_m_k * root * root) / 3600;
    if (row.exact_h) CHECK(std::abs(exact - *row.exact_h) <= 0.006);
    CHECK(node.time_constant_h < exact);
    worst_exact = std::max(worst_exact, 1 - node.time_constant_h / exact);
    // Named by the place instead of the table, the same.
    Place named = air_at(22, Air::fan_refrigerator);
    named.heat_transfer_w_per_m2_k = 8;
    CHECK(node_of(piece_of(Shape::ball), dough_of(1000 * row.kg), named).time_constant_h == node.time_constant_h);
  }
  MESSAGE("spheres: worst difference ", worst, " h from the table, shorter than exact by up to ", 100 * worst_exact,
          " %");
  CHECK(worst_exact <= 0.05);
}

TEST_CASE("a bowl of dough: UA by hand, and shiny steel insulates") {
  const DoughBody dough = dough_of(1670, 1.107);
  const auto node = [&](const char* material) { return node_of(tub_of(20, {}, material), dough, air_at(22)); };
  // The faces one by one: lid with its gap of air, wall, base on wood, each with the dough's own resistance or without.
  const auto by_hand = [](double wall_w_per_m2_k, double wall_m2_k_per_w, double inside) {
    const double flat = pi * 0.1 * 0.1, depth = 1.67 / 1107 / flat, wall = pi * 0.2 * depth;
    const double across = inside * depth / 2 / (3 * w_per_m_k), round = inside * 0.1 / (4 * w_per_m_k);
    return flat / (1.0 / 8 + 1.0 / 7 + across) + wall / (1 / wall_w_per_m2_k + wall_m2_k_per_w + round) +
           flat / (1 / 5.2 + wall_m2_k_per_w + across);
  };
  const double plastic = node("plastic").heat_loss_w_per_k, glass = node("glass").heat_loss_w_per_k,
               steel = node("steel").heat_loss_w_per_k;
  MESSAGE("bowl of 1.67 kg: ", plastic, " W/K in plastic, ", glass, " in glass, ", steel,
          " in steel; without the dough's own resistance ", by_hand(8, 0.010, 0), ", ", by_hand(8, 0.0035, 0), ", ",
          by_hand(4.5, 0, 0));
  CHECK(plastic == doctest::Approx(by_hand(8, 0.010, 1)).epsilon(1e-12));
  CHECK(glass == doctest::Approx(by_hand(8, 0.0035, 1)).epsilon(1e-12));
  CHECK(steel == doctest::Approx(by_hand(4.5, 0, 1)).epsilon(1e-12));
  // Computed by hand from rounded values: 0.50 W/K and 0.40 in steel outside the dough; with 5.33 kJ/K of dough and
  // bowl 3.27 h and 4.0 h through the dough as well.
  CHECK(by_hand(8, 0.010, 0) == doctest::Approx(0.50).scale(0).epsilon(0.05));
  CHECK(by_hand(4.5, 0, 0) == doctest::Approx(0.40).scale(0).epsilon(0.05));
  CHECK(plastic == doctest::Approx(5330 / (3.27 * 3600)).scale(0).epsilon(0.15));
  CHECK(steel == doctest::Approx(5330 / (4.0 * 3600)).scale(0).epsilon(0.15));
  CHECK(steel < plastic);
  CHECK(plastic < glass);
  CHECK(node("wood").heat_loss_w_per_k < plastic);
}

TEST_CASE("weight and dimensions give the same piece") {
  box::Numbers n(811);
  for (int i = 0; i < 200; ++i) {
    const double grams = n.magnitude(100, 5000), density = n.between(0.3, 1.3);
    const DoughBody dough = dough_of(2 * grams, density);
    const double volume_ml = grams / density;
    const Place place = air_at(22);
    const Node ball = node_of(weighing(grams, Shape::ball), dough, place);
    CHECK(ball.mass_g == doctest::Approx(grams).epsilon(1e-14));
    CHECK(ball.volume_ml == doctest::Approx(volume_ml).epsilon(1e-13));
    const double width = 2 * std::cbrt(3 * volume_ml / (4 * pi));
    CHECK(ball.area_cm2 == doctest::Approx(pi * width * width).epsilon(1e-13));
    CHECK(ball.core_over_mean == 2.5);
    check_same(node_of(ball_of(width), dough, place), ball);

    // Four times as long as thick: V = πd³.
    const Node oblong = node_of(weighing(grams, Shape::oblong), dough, place);
    const double thick = std::cbrt(volume_ml / pi);
    CHECK(oblong.area_cm2 == doctest::Approx(pi * thick * 4 * thick + pi * thick * thick / 2).epsilon(1e-13));
    CHECK(oblong.core_over_mean == 2);
    check_same(node_of(oblong_of(4 * thick, thick), dough, place), oblong);
    check_same(node_of(weighing(grams, oblong_of(4 * thick, {})), dough, place), oblong);
    check_same(node_of(weighing(grams, oblong_of({}, thick)), dough, place), oblong);

    // Half as deep as wide: V = πd³/8.
    const Node tub = node_of(weighing(grams, Shape::tub), dough, place);
    const double across = 2 * std::cbrt(volume_ml / pi);
    CHECK(tub.area_cm2 == doctest::Approx(pi * across * across).epsilon(1e-13));  // two flats and πd·d/2
    CHECK(tub.core_over_mean == 1.5);
    check_same(node_of(tub_of(across, across / 2), dough, place), tub);
    check_same(node_of(weighing(grams, tub_of(across, {})), dough, place), tub);
    check_same(node_of(weighing(grams, tub_of({}, across / 2)), dough, place), tub);
  }
}

TEST_CASE("a flat disc and a tin by weight and by dimensions") {
  box::Numbers n(812);
  for (int i = 0; i < 200; ++i) {
    const double grams = n.magnitude(100, 5000), density = n.between(0.3, 1.3);
    const DoughBody dough = dough_of(2 * grams, density);
    const double volume_ml = grams / density;
    const Place place = air_at(22);
    // Ten times as wide as thick: V = πd³/40.
    const Node flat = node_of(weighing(grams, Shape::flat), dough, place);
    const double wide = std::cbrt(40 * volume_ml / pi);
    CHECK(flat.area_cm2 == doctest::Approx(pi * wide * wide / 2 + pi * wide * wide / 10).epsilon(1e-13));
    CHECK(flat.core_over_mean == 1.5);
    check_same(node_of(flat_of(wide, wide / 10), dough, place), flat);
    check_same(node_of(weighing(grams, flat_of(wide, {})), dough, place), flat);
    check_same(node_of(weighing(grams, flat_of({}, wide / 10)), dough, place), flat);

    // Twice as long as wide, a quarter as deep: V = w³/2, and 2·2w² + 2·w²/2 + 2·w²/4 of surface.
    const Node tin = node_of(weighing(grams, Shape::tin), dough, place);
    const double width = std::cbrt(2 * volume_ml);
    CHECK(tin.area_cm2 == doctest::Approx(5.5 * width * width).epsilon(1e-13));
    CHECK(tin.core_over_mean == 1.5);
    check_same(node_of(tin_of(2 * width, width, width / 4), dough, place), tin);
    for (const Piece& part :
         {tin_of(2 * width, {}, {}), tin_of({}, width, {}), tin_of({}, {}, width / 4), tin_of(2 * width, width, {}),
          tin_of(2 * width, {}, width / 4), tin_of({}, width, width / 4)}) {
      check_same(node_of(weighing(grams, part), dough, place), tin);
    }
  }
}

TEST_CASE("what a flat disc and a tin lose, by the resistances written out") {
  // U = 1/(1/h + d/(6k)) through each pair of faces, D/(8k) through an edge; h of still air 8 W/(m²·K).
  const double h = 8, k = w_per_m_k;
  const double disc = pi * 0.3 * 0.3 / 4, edge = pi * 0.3 * 0.02;
  const double of_flat = 2 * disc / (1 / h + 0.02 / (6 * k)) + edge / (1 / h + 0.3 / (8 * k));
  const DoughBody enough = dough_of(1e4, 1.0);
  CHECK(node_of(flat_of(30, 2), enough, air_at(20)).heat_loss_w_per_k == doctest::Approx(of_flat).epsilon(1e-13));

  // Bright steel hardly radiates: 4.5 of the 8 W/(m²·K). The dough's top is as in any air.
  const double l = 0.24, w = 0.1, d = 0.05, bright = 4.5;
  const double of_tin = l * w / (1 / h + d / (6 * k)) + l * w / (1 / bright + d / (6 * k)) +
                        2 * l * d / (1 / bright + w / (6 * k)) + 2 * w * d / (1 / bright + l / (6 * k));
  Piece tin = tin_of(24, 10, 5);
  const Node bare = node_of(tin, enough, air_at(20));
  CHECK(bare.heat_loss_w_per_k == doctest::Approx(of_tin).epsilon(1e-13));
  CHECK(bare.mass_g == doctest::Approx(1200).epsilon(1e-13));
  // The tin itself warms with the dough, by the specific heat of steel; a cloth covers its top alone.
  tin.vessel_g = 500;
  CHECK(node_of(tin, enough, air_at(20)).capacity_j_k - bare.capacity_j_k ==
        doctest::Approx(500 * bowl_material_named("steel").specific_heat_kj).epsilon(1e-12));
  tin.cover = Cover::cloth;
  const double top = l * w * (1 / (1 / h + d / (6 * k)) - 1 / (1 / h + 0.02 + d / (6 * k)));
  CHECK(bare.heat_loss_w_per_k - node_of(tin, enough, air_at(20)).heat_loss_w_per_k ==
        doctest::Approx(top).epsilon(1e-12));
}

TEST_CASE("pieces, vessels, worktops, covers and a measured loss") {
  const DoughBody dough = dough_of(1200, 1.18);
  const Place room = air_at(22);
  for (const Shape shape : {Shape::tub, Shape::ball, Shape::oblong, Shape::flat, Shape::tin}) {
    Piece shared = piece_of(shape);
    shared.pieces = 4;
    check_same(node_of(shared, dough, room), node_of(weighing(300, shape), dough, room));
    const Node whole = node_of(piece_of(shape), dough, room);
    CHECK(whole.mass_g == 1200);
    CHECK(whole.capacity_j_k == doctest::Approx(1200 * 2.8).epsilon(1e-14));
    CHECK(whole.time_constant_h == doctest::Approx(whole.capacity_j_k / whole.heat_loss_w_per_k / 3600).epsilon(1e-15));

    const auto loss = [&](Cover cover, Worktop worktop) {
      Piece piece = piece_of(shape);
      piece.cover = cover;
      piece.worktop = worktop;
      return node_of(piece, dough, room).heat_loss_w_per_k;
    };
    CHECK(loss(Cover::cloth, Worktop::air) < loss(Cover::film, Worktop::air));
    // On wood most things lose less than in the air; bright steel gives off even less to that.
    CHECK((loss(Cover::film, Worktop::wood) < loss(Cover::film, Worktop::air)) == (shape != Shape::tin));
    CHECK(loss(Cover::film, Worktop::stone) > loss(Cover::film, Worktop::air));

    Piece measured = piece_of(shape);
    measured.heat_loss_w_per_k = 0.321;
    const Node by_hand = node_of(measured, dough, room);
    CHECK(by_hand.heat_loss_w_per_k == 0.321);
    CHECK(by_hand.time_constant_h == doctest::Approx(1200 * 2.8 / 0.321 / 3600).epsilon(1e-14));
    CHECK(heat_loss_w(by_hand, 27, 22) == doctest::Approx(5 * 0.321).epsilon(1e-14));
    measured.cover = Cover::open;  // whatever leaves is in it: no humidity needed
    CHECK(heat_loss_w(node_of(measured, dough, room), 27, 22) == doctest::Approx(5 * 0.321).epsilon(1e-14));
  }
  // What a piece has if nothing is said: a tub a lid and wood, a ball film and air.
  Piece said = piece_of(Shape::tub);
  said.cover = Cover::lid;
  said.worktop = Worktop::wood;
  check_same(node_of(said, dough, room), node_of(Piece{}, dough, room));
  said = piece_of(Shape::ball);
  said.cover = Cover::film;
  said.worktop = Worktop::air;
  check_same(node_of(said, dough, room), node_of(piece_of(Shape::ball), dough, room));

  Piece heavy = tub_of(20, {}, "ceramic");
  const Node light = node_of(heavy, dough, room);
  heavy.vessel_g = 1500;
  const Node with = node_of(heavy, dough, room);
  CHECK(with.capacity_j_k - light.capacity_j_k ==
        doctest::Approx(1500 * bowl_material_named("ceramic").specific_heat_kj).epsilon(1e-12));
  CHECK(with.heat_loss_w_per_k == light.heat_loss_w_per_k);
  CHECK(with.time_constant_h > light.time_constant_h);
  CHECK(with.mass_g == light.mass_g);

  // Moving air takes more heat than still air.
  const auto in_air = [&](Air air) { return node_of(piece_of(Shape::ball), dough, air_at(4, air)).heat_loss_w_per_k; };
  CHECK(in_air(Air::refrigerator) < in_air(Air::room));
  CHECK(in_air(Air::room) < in_air(Air::fan_refrigerator));
  CHECK(in_air(Air::proof_box) == in_air(Air::fan_refrigerator));
}

TEST_CASE("an open piece against the balance of its face, solved by bisection") {
  box::Numbers n(812);
  double worst = 0;
  for (int i = 0; i < 300; ++i) {
    const bool is_ball = i % 2 == 0;
    const double grams = n.magnitude(50, 8000), mean = box::edgy(n, -2, 45), air_c = box::edgy(n, -30, 60),
                 humidity = box::edgy(n, 0, 100), pressure = n.between(50000, 105000);
    const Air air = static_cast<Air>(n.index(4));
    Place place = damp_air(air_c, humidity, air);
    if (i % 3 == 0) place.heat_transfer_w_per_m2_k = n.magnitude(0.5, 200);
    DoughBody dough = dough_of(grams, n.between(0.3, 1.3));
    dough.water_activity = n.between(0.9, 1);
    const Node node = node_of(open_piece(is_ball ? Shape::ball : Shape::tub), dough, place, pressure);

    const Real h = place.heat_transfer_w_per_m2_k.value_or(row_of(air).heat_transfer_w_per_m2_k);
    const Real vapour = row_of(air).by_convection_w_per_m2_k / (Real("66.9") * pressure / 101325);
    const Real volume = Real(grams) / 1000 / (1000 * Real(dough.density_g_per_ml));
    const Real k("0.4"), circle = boost::multiprecision::acos(Real(-1));
    Real area, inside, others = 0;
    if (is_ball) {
      const Real radius = pow(3 * volume / (4 * circle), Real(1) / 3);
      area = 4 * circle * radius * radius;
      inside = radius / (5 * k);
    } else {
      const Real diameter = pow(8 * volume / circle, Real(1) / 3), depth = diameter / 2;
      area = circle * diameter * diameter / 4;
      inside = depth / 2 / (3 * k);
      others = circle * diameter * depth / (1 / h + Real("0.010") + diameter / 2 / (4 * k)) +
               area / (1 / Real("5.2") + Real("0.010") + inside);
    }
    const Real air_pa = Real(humidity) / 100 * naive::saturation_pressure(air_c);
    const auto surplus = [&](const Real& face) {
      return Real(h * (face - air_c) + vapour * (dough.water_activity * naive::saturation_pressure(face) - air_pa) -
                  (mean - face) / inside);
    };
    Real low = -60, high = 100;
    for (int step = 0; step < 120; ++step) {
      const Real middle = (low + high) / 2;
      (surplus(middle) < 0 ? low : high) = middle;
    }
    const Real wanted = area * (mean - low) / inside + others * (mean - air_c);
    // A loss is a difference of temperatures: measured against what 1 K drives.
    worst = std::max(worst,
                     static_cast<double>(abs(Real(heat_loss_w(node, mean, air_c)) - wanted)) / node.heat_loss_w_per_k);
    CHECK(node.open_m2 == doctest::Approx(static_cast<double>(area)).epsilon(1e-13));
  }
  MESSAGE("open pieces: worst difference of the loss ", worst, " K worth");
  CHECK(worst <= 1e-10);
}

TEST_CASE("an uncovered wet surface settles below the room") {
  const Node node = node_of(open_piece(Shape::ball), dough_of(1000), damp_air(22, 50));
  double low = 0, high = 22;
  while (high - low > 1e-10) {
    const double middle = (low + high) / 2;
    (heat_loss_w(node, middle, 22) < 0 ? low : high) = middle;
  }
  MESSAGE("open ball in 22 °C and 50 %: settles ", 22 - low, " K below the room");
  CHECK(22 - low >= 2);
  CHECK(22 - low <= 6);
  CHECK(heat_loss_w(node, 25, 22) > heat_loss_w(node_of(piece_of(Shape::ball), dough_of(1000), air_at(22)), 25, 22));
  // Thinner air carries more vapour away; cold dough in damp warmth gains heat by condensation.
  CHECK(heat_loss_w(node_of(open_piece(Shape::ball), dough_of(1000), damp_air(22, 50), 80000), 25, 22) >
        heat_loss_w(node, 25, 22));
  const Place warm = damp_air(30, 80, Air::proof_box);
  CHECK(heat_loss_w(node_of(open_piece(Shape::ball), dough_of(1000), warm), 5, 30) <
        heat_loss_w(node_of(piece_of(Shape::ball), dough_of(1000), warm), 5, 30));
  // Under film nothing evaporates, whatever the humidity.
  CHECK(heat_loss_w(node_of(piece_of(Shape::ball), dough_of(1000), damp_air(22, 5)), 22, 22) == 0);
}

TEST_CASE("a ball that heats itself: surface and centre") {
  // Uniform source: surface q·R/(3h) above the air, centre q·R²/(6k) above the surface. Incropera, ch. 3 (from memory).
  const double radius = 0.0601, source = 880;
  const Node node = node_of(ball_of(200 * radius), dough_of(2000), air_at(22));
  const double watts = source * node.volume_ml / 1e6;
  const double mean = watts / node.heat_loss_w_per_k;
  const double surface = mean - node.inside_k_per_w * watts;
  const double centre = surface + node.core_over_mean * (mean - surface);
  MESSAGE("self-heating ball: surface ", surface, " K, centre ", centre, " K above the air");
  CHECK(std::abs(surface - 2.204) <= 0.002);
  CHECK(std::abs(centre - 3.528) <= 0.002);
  CHECK(surface == doctest::Approx(source * radius / (3 * 8)).epsilon(1e-12));
  CHECK(centre - surface == doctest::Approx(source * radius * radius / (6 * w_per_m_k)).epsilon(1e-12));
}

TEST_CASE("pieces that cannot be are refused") {
  for (const Shape shape : {Shape::ball, Shape::oblong, Shape::flat, Shape::tin}) {
    Piece piece = piece_of(shape);
    piece.cover = Cover::lid;
    CHECK(says(refusal([&] { require(piece); }, "cover"), "only a tub has a lid; cover it with film or cloth"));
  }
  for (Piece piece : {ball_of(12), oblong_of(30, 8), tub_of(20, 8), flat_of(30, 1), tin_of(24, 10, 5)}) {
    CHECK_NOTHROW(require(piece));
    piece.mass_g = 500;
    CHECK(says(refusal([&] { require(piece); }, "mass_g"),
               "its weight twice: by its dimensions and by mass_g; leave one out"));
    piece.mass_g.reset();
    piece.pieces = 3;
    CHECK(says(refusal([&] { require(piece); }, "mass_g"),
               "its weight twice: by its dimensions and by pieces; leave one out"));
  }
  Piece twice = weighing(500, Shape::tub);
  twice.pieces = 2;
  CHECK(says(refusal([&] { require(twice); }, "mass_g"), "its weight twice: mass_g and pieces; leave one out"));

  CHECK(says(refusal([] { require(tub_of(20, {}, "lead")); }, "material"),
             "bowl material \"lead\" is unknown; known: steel, "));
  for (const double bad : {-1.0, 0.0, 1e6, not_a_number, infinity}) {
    refusal([&] { require(ball_of(bad)); }, "diameter_cm");
    refusal([&] { require(oblong_of({}, bad)); }, "diameter_cm");
    refusal([&] { require(oblong_of(bad, {})); }, "length_cm");
    refusal([&] { require(tub_of(bad, {})); }, "diameter_cm");
    refusal([&] { require(tub_of({}, bad)); }, "depth_cm");
    Piece loss;
    loss.heat_loss_w_per_k = bad;
    refusal([&] { require(loss); }, "heat_loss_w_per_k");
  }
  for (const double bad : {-1.0, 0.0, 1e9, not_a_number, infinity}) {
    refusal([&] { require(weighing(bad, Shape::ball)); }, "mass_g");
    refusal([&] { node_of(Piece{}, dough_of(bad), air_at(22)); }, "dough_g");
    Piece many;
    many.pieces = bad;
    refusal([&] { require(many); }, "pieces");
  }
  for (const double bad : {-1.0, 1e9, not_a_number, infinity}) {
    refusal([&] { require(Piece{.vessel_g = bad}); }, "vessel_g");
  }
  Piece unknown;
  unknown.cover = static_cast<Cover>(7);
  CHECK(says(refusal([&] { require(unknown); }, "cover"), "cover 7 is unknown; known: 0 to 3"));
  unknown.cover.reset();
  unknown.worktop = static_cast<Worktop>(3);
  CHECK(says(refusal([&] { require(unknown); }, "worktop"), "worktop 3 is unknown; known: 0 to 2"));
  CHECK_THROWS_AS(node_of(unknown, dough_of(500), air_at(22)), InvalidInput);

  CHECK(says(refusal([] { node_of(weighing(600, Shape::ball), dough_of(500), air_at(22)); }, "mass_g"),
             "a piece of 600 g is more than all of the dough, 500 g; give a smaller one"));
  CHECK(says(refusal([] { node_of(ball_of(30), dough_of(500), air_at(22)); }, "mass_g"),
             "is more than all of the dough"));
  CHECK_NOTHROW(node_of(weighing(500, Shape::ball), dough_of(500), air_at(22)));
  CHECK(says(refusal([] { node_of(open_piece(Shape::ball), dough_of(500), air_at(22)); }, "humidity_percent"),
             "not covered needs the humidity of its air; give humidity_percent, or cover it"));
}

TEST_CASE("names of covers, worktops and airs") {
  for (const Cover cover : {Cover::film, Cover::cloth, Cover::lid, Cover::open})
    CHECK(named<Cover>(name_of(cover)) == cover);
  for (const Worktop worktop : {Worktop::air, Worktop::wood, Worktop::stone}) {
    CHECK(named<Worktop>(name_of(worktop)) == worktop);
    CHECK(worktops()[static_cast<std::size_t>(worktop)].name == name_of(worktop));
  }
  for (const Air air : {Air::room, Air::refrigerator, Air::fan_refrigerator, Air::proof_box}) {
    CHECK(named<Air>(name_of(air)) == air);
    CHECK(airs()[static_cast<std::size_t>(air)].name == name_of(air));
    CHECK(row_of(air).by_convection_w_per_m2_k < row_of(air).heat_transfer_w_per_m2_k);
  }
  CHECK(name_of(Cover::open) == "open");
  CHECK(name_of(Worktop::stone) == "stone");
  CHECK(name_of(Air::fan_refrigerator) == "fan_refrigerator");
  CHECK(says(refusal([] { named<Cover>("foil"); }, "cover"),
             "cover \"foil\" is unknown; did you mean film? known: film, cloth, lid, open"));
  CHECK(says(refusal([] { named<Worktop>("ice"); }, "worktop"), "worktop \"ice\" is unknown; known: air, wood, stone"));
  CHECK(says(refusal([] { named<Air>("oven"); }, "air"),
             "air \"oven\" is unknown; known: room, refrigerator, fan_refrigerator, proof_box, humid_proof_box"));
  CHECK(says(refusal([] { name_of(static_cast<Cover>(4)); }, "cover"), "cover 4 is unknown; known: 0 to 3"));
  CHECK(says(refusal([] { name_of(static_cast<Worktop>(3)); }, "worktop"), "worktop 3 is unknown; known: 0 to 2"));
  CHECK(says(refusal([] { name_of(static_cast<Air>(5)); }, "air"), "air 5 is unknown; known: 0 to 4"));
}

TEST_CASE("water condenses on dough that is colder than humid air: more heat, phased in over 10 K") {
  const DoughBody dough = dough_of(1200, 1.18);
  Place dry = air_at(30), humid = dry;
  dry.air = Air::proof_box;
  humid.air = Air::humid_proof_box;
  for (const Shape shape : {Shape::tub, Shape::ball, Shape::oblong, Shape::flat, Shape::tin}) {
    const Piece piece = piece_of(shape);
    const Node in_dry = node_of(piece, dough, dry), in_humid = node_of(piece, dough, humid);
    CHECK(in_humid.heat_loss_w_per_k == in_dry.heat_loss_w_per_k);
    Place wet = dry;
    wet.heat_transfer_w_per_m2_k = 18;
    const double all = node_of(piece, dough, wet).heat_loss_w_per_k;
    CHECK(in_humid.condensing_w_per_k == doctest::Approx(all - in_dry.heat_loss_w_per_k).epsilon(1e-13));
    // 10 K and more below the air all of it counts; at the air's temperature and above nothing of it; half of it at 5
    // K.
    CHECK(heat_loss_w(in_humid, 20, 30) == doctest::Approx(-10 * all).epsilon(1e-13));
    CHECK(heat_loss_w(in_humid, 5, 30) == doctest::Approx(-25 * all).epsilon(1e-13));
    CHECK(heat_loss_w(in_humid, 33, 30) == heat_loss_w(in_dry, 33, 30));
    CHECK(heat_loss_w(in_humid, 25, 30) == doctest::Approx(-5 * (all + in_dry.heat_loss_w_per_k) / 2).epsilon(1e-13));
    Piece measured = piece;
    measured.heat_loss_w_per_k = 0.4;
    CHECK(node_of(measured, dough, humid).condensing_w_per_k == 0);
  }
}
