#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/heat/bowl.hpp>
#include <ferment/heat/piece.hpp>
#include <ferment/heat/surroundings.hpp>

#include "box.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {

constexpr double pi = std::numbers::pi;
constexpr double conductivity = 0.40;  // W/(m·K), dough just mixed
constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

// ---- what the tests reckon on their own ------------------------------------------------------------------------
constexpr double c_j = 2800;   // J/(kg·K)
constexpr double rho = 1100;   // kg/m³
constexpr double all_g = 1e6;  // more dough than any piece here
constexpr double diffusivity = conductivity / (rho * c_j);

/// m²·K/W on both sides of a part of the surface.
struct Face {
  double area_m2, outside, inside;
};

double loss_of(const std::vector<Face>& faces) {
  double sum = 0;
  for (const Face& face : faces) sum += face.area_m2 / (face.outside + face.inside);
  return sum;
}

/// Root of a function that is positive at `low` and negative at `high`.
double root(const std::function<double(double)>& falling, double low, double high) {
  for (int i = 0; i < 200; ++i) {
    const double middle = (low + high) / 2;
    (falling(middle) > 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

// First eigenvalues of a body that was all at one temperature, with a constant heat transfer outside (Incropera, ch. 5,
// from memory; sphere also Recktenwald 2006). Multiplied out so that no pole is left.
double wall_eigenvalue(double biot) {
  return root([biot](double z) { return biot * std::cos(z) - z * std::sin(z); }, 0, pi / 2);
}
double cylinder_eigenvalue(double biot) {
  constexpr double zero_of_j0 = 2.404825557695773;  // Abramowitz & Stegun, table 9.5
  return root([biot](double z) { return biot * std::cyl_bessel_j(0, z) - z * std::cyl_bessel_j(1, z); }, 0, zero_of_j0);
}
double sphere_eigenvalue(double biot) {
  return root([biot](double z) { return (biot - 1) * std::sin(z) + z * std::cos(z); }, 1e-9, pi);
}

/// Buck 1996, over water, Pa.
double saturation_pa(double t) { return 611.21 * std::exp((18.678 - t / 234.5) * t / (257.14 + t)); }

// ---- the library's answers -------------------------------------------------------------------------------------
Place air_of(double heat_transfer) { return {.temperature_c = 20.0, .heat_transfer_w_per_m2_k = heat_transfer}; }

Node node(const Piece& piece, const Place& place, double dough_g = all_g) {
  return node_of(piece, {.mass_g = dough_g, .specific_heat_kj = c_j / 1000, .density_g_per_ml = rho / 1000}, place);
}
Node node(const Piece& piece, double heat_transfer = 8, double dough_g = all_g) {
  return node(piece, air_of(heat_transfer), dough_g);
}

}  // namespace

// ---- time constants --------------------------------------------------------------------------------------------

TEST_CASE("the tests' eigenvalues are the textbook's") {
  // Incropera, table 5.1 (from memory); a sphere of Biot number 1 has π/2.
  CHECK(wall_eigenvalue(0.5) == doctest::Approx(0.6533).epsilon(1e-4));
  CHECK(wall_eigenvalue(1) == doctest::Approx(0.8603).epsilon(1e-4));
  CHECK(wall_eigenvalue(2) == doctest::Approx(1.0769).epsilon(1e-4));
  CHECK(cylinder_eigenvalue(0.5) == doctest::Approx(0.9408).epsilon(1e-4));
  CHECK(cylinder_eigenvalue(1) == doctest::Approx(1.2558).epsilon(1e-4));
  CHECK(cylinder_eigenvalue(2) == doctest::Approx(1.5994).epsilon(1e-4));
  CHECK(sphere_eigenvalue(0.5) == doctest::Approx(1.1656).epsilon(1e-4));
  CHECK(sphere_eigenvalue(1) == doctest::Approx(pi / 2).epsilon(1e-14));
  CHECK(sphere_eigenvalue(2) == doctest::Approx(2.0288).epsilon(1e-4));
}

TEST_CASE("time constants of dough balls of every size, and how much too short they are") {
  // Computed from 1/U = 1/h + R/(5k) for h 8, k 0.40, ρ 1100, c 2.8, to two decimals; the exact first time constant is
  // R²/(α·ζ²) (Incropera, ch. 5, from memory).
  struct Row {
    double mass_kg, lumped_h;
    std::optional<double> exact_h;
  };
  const std::array rows{Row{0.25, 1.55, 1.57}, Row{0.5, 2.02, 2.05}, Row{0.9, 2.55, 2.59}, Row{1.0, 2.66, 2.71},
                        Row{1.5, 3.13, {}},    Row{1.7, 3.29, 3.37}, Row{2.0, 3.52, {}},   Row{5.0, 5.17, 5.39}};
  for (const Row& row : rows) {
    const Node ball = node({.shape = Shape::ball, .mass_g = 1000 * row.mass_kg});
    INFO(row.mass_kg, " kg: ", ball.time_constant_h, " h");
    CHECK(std::abs(ball.time_constant_h - row.lumped_h) <= 0.006);
    const double radius = std::cbrt(3 * row.mass_kg / rho / (4 * pi)),
                 zeta = sphere_eigenvalue(8 * radius / conductivity);
    const double exact_h = radius * radius / (diffusivity * zeta * zeta) / 3600;
    if (row.exact_h) CHECK(std::abs(exact_h - *row.exact_h) <= 0.006);
    // The mean of a dough with the heat inside left out relaxes 14 to 32 % too fast; the corrected one at most 4.5 %.
    CHECK(exact_h > ball.time_constant_h);
    CHECK(exact_h < 1.045 * ball.time_constant_h);
    const double without_inside_h = rho * c_j * radius / 3 / 8 / 3600;
    CHECK(1 - without_inside_h / exact_h > 0.135);
    CHECK(1 - without_inside_h / exact_h < 0.325);
  }
}

namespace {

/// By how much the first eigenvalue that a time constant stands for is too high, percent.
double excess_percent(double time_constant_h, double length_m, double exact) {
  const double zeta = length_m / std::sqrt(diffusivity * 3600 * time_constant_h);
  return 100 * (zeta / exact - 1);
}

/// Stated of the corrected lumped model: 0.2 % at Biot 0.5, 0.7 % at 1, 1.7 to 2.1 % at 2, all rounded to 0.1 %; the
/// time constant is too short by twice that.
void check_excess(double biot, double percent) {
  INFO("Biot ", biot, ": the eigenvalue is too high by ", percent, " %");
  const double low = biot == 0.5 ? 0.15 : biot == 2 ? 1.65 : 0.65;
  const double high = biot == 0.5 ? 0.25 : biot == 1 ? 0.75 : 2.15;
  CHECK(percent > low);
  CHECK(percent < high);
}
constexpr std::array biots{0.5, 1.0, 1.5, 2.0};

}  // namespace

TEST_CASE("a ball against the exact series, Biot 0.5 to 2") {
  for (const double biot : biots) {
    for (const double diameter_cm : {2.0, 12.0, 30.0}) {
      const double radius = diameter_cm / 200;
      const Node ball = node({.shape = Shape::ball, .diameter_cm = diameter_cm}, biot * conductivity / radius);
      check_excess(biot, excess_percent(ball.time_constant_h, radius, sphere_eigenvalue(biot)));
    }
  }
}

TEST_CASE("a very long oblong against the exact series of an infinite cylinder, Biot 0.5 to 2") {
  for (const double biot : biots) {
    const double radius = 0.025, heat_transfer = biot * conductivity / radius;
    const auto per_h = [&](double length_cm) {
      return 1 / node({.shape = Shape::oblong, .diameter_cm = 200 * radius, .length_cm = length_cm}, heat_transfer)
                     .time_constant_h;
    };
    // The ends' share of the surface is D/(2·length): to first order, and that exactly, gone in the limit.
    const double limit_h = 1 / (2 * per_h(200) - per_h(100));
    CHECK(per_h(50) == doctest::Approx(1 / limit_h + 4 * (per_h(200) - 1 / limit_h)).epsilon(1e-12));
    check_excess(biot, excess_percent(limit_h, radius, cylinder_eigenvalue(biot)));
    // And a thin one, without a limit: its ends are 1/800 of the surface, which is 0.06 % of the eigenvalue.
    const double thin = 0.0025, thin_transfer = std::min(200.0, biot * conductivity / thin);
    const Node oblong = node({.shape = Shape::oblong, .diameter_cm = 0.5, .length_cm = 200}, thin_transfer);
    const double lumped = 2 * thin_transfer * thin / conductivity / (1 + thin_transfer * thin / conductivity / 4);
    CHECK(excess_percent(oblong.time_constant_h, thin, std::sqrt(lumped)) == doctest::Approx(0.0625).epsilon(1e-3));
  }
}

TEST_CASE("a very flat wide tub against the exact series of a wall, Biot 0.5 to 2") {
  // Glass on stone below and film in air above are alike if the air's resistance is the stone's and the glass's.
  const double outside = 1 / worktops()[static_cast<std::size_t>(Worktop::stone)].heat_transfer_w_per_m2_k +
                         bowl_material_named("glass").wall_m2_k_per_w;
  for (const double biot : biots) {
    const double half = biot * conductivity * outside;
    const auto per_h = [&](double diameter_cm) {
      return 1 / node({.diameter_cm = diameter_cm,
                       .depth_cm = 200 * half,
                       .material = "glass",
                       .cover = Cover::film,
                       .worktop = Worktop::stone},
                      1 / outside)
                     .time_constant_h;
    };
    // The side's share falls with the square of the width, as its area over the top's and its way through the dough do:
    // between 1 and 2 m it falls to 27 %, and what this leaves of it is below 0.06 % of the time constant.
    const double limit_h = 3 / (4 * per_h(200) - per_h(100));
    CHECK(per_h(200) * limit_h < 1.007);
    check_excess(biot, excess_percent(limit_h, half, wall_eigenvalue(biot)));
  }
}

TEST_CASE("a bowl of 1.67 kg against the exact series of a finite cylinder and the worked example") {
  // Worked example: D 20 cm, H 4.8 cm, plastic or glass, lid, on wood: 0.50 W/K, time constant 2.95 h, and 3.27 h with
  // conduction in the dough, so 0.451 W/K; shiny steel 3.7 and 4.0 h, 0.37 W/K (computed with Incropera's correlations,
  // from memory).
  const double radius = 0.10, depth = 1.67 / rho / (pi * radius * radius);
  CHECK(depth == doctest::Approx(0.0483).epsilon(1e-3));
  const auto bowl = [](const char* material) { return Piece{.mass_g = 1670, .diameter_cm = 20, .material = material}; };
  const double flat = pi * radius * radius, side = 2 * pi * radius * depth, air = 1 / 8.0;
  for (const auto& [material, wall, matt] :
       {std::tuple{"plastic", 0.010, true}, std::tuple{"glass", 0.0035, true}, std::tuple{"steel", 0.0, false}}) {
    const double above = air + 1 / 7.0, beside = (matt ? air : 1 / 4.5) + wall, below = 1 / 5.2 + wall;
    const Node got = node(bowl(material));
    // Each mode of a cylinder is a wall's times a long cylinder's; the wall has two different sides.
    const double top = 1 / (conductivity * above), base = 1 / (conductivity * below);
    const double along = root(
        [&](double l) { return l * (top + base) * std::cos(l * depth) - (l * l - top * base) * std::sin(l * depth); },
        0, pi / depth);
    const double across = cylinder_eigenvalue(radius / (conductivity * beside)) / radius;
    const double exact_h = 1 / (diffusivity * (along * along + across * across)) / 3600;
    const double outside_alone = loss_of({{flat, above, 0}, {side, beside, 0}, {flat, below, 0}});
    MESSAGE(std::string(material), " bowl: ", got.heat_loss_w_per_k, " W/K, without conduction in the dough ",
            outside_alone, ", exact ", got.capacity_j_k / exact_h / 3600);
    // The faces' Biot numbers are 0.2 to 1.9, so the corrected lumped model is at most 4.2 % too fast, as above.
    CHECK(exact_h > got.time_constant_h);
    CHECK(exact_h < 1.042 * got.time_constant_h);
    // The example's 0.50 leaves the dough's inside out, and so does this; both are rounded.
    if (material == std::string("plastic")) CHECK(std::abs(outside_alone - 0.50) <= 0.006);
    // With the inside: the example takes the way up and down, H/6, to the side too; that makes 0.046 W/K of difference.
    const double example = matt ? 0.50 * 2.95 / 3.27 : 0.40 * 3.7 / 4.0;
    CHECK(std::abs(got.heat_loss_w_per_k / example - 1) <= 0.15);
  }
  const double matt = node(bowl("plastic")).heat_loss_w_per_k, shiny = node(bowl("steel")).heat_loss_w_per_k;
  CHECK(shiny < 0.95 * matt);
  CHECK(node(bowl("aluminium")).heat_loss_w_per_k == shiny);
  // Every wall between makes it less, among the matt ones.
  CHECK(node(bowl("wood")).heat_loss_w_per_k < matt);
  CHECK(node(bowl("glass")).heat_loss_w_per_k > matt);
}

// ---- the sum over the faces ------------------------------------------------------------------------------------

TEST_CASE("heat loss is the sum over the faces, whatever shape, cover, worktop and air") {
  box::Numbers n(801);
  double worst = 0;
  for (int i = 0; i < 4000; ++i) {
    const Air air = static_cast<Air>(n.index(4));
    Place place{.temperature_c = 20.0, .air = air, .humidity_percent = 60};
    const std::array by_air{8.0, 7.0, 12.0, 12.0};  // W/(m²·K), computed
    double h = by_air[static_cast<std::size_t>(air)];
    if (i % 3 == 0) place.heat_transfer_w_per_m2_k = h = n.magnitude(0.5, 200);
    Piece piece{.mass_g = n.magnitude(20, 20000)};
    const double volume = *piece.mass_g / 1000 / rho;
    const std::array<std::optional<Cover>, 5> covers{std::nullopt, Cover::film, Cover::cloth, Cover::open, Cover::lid};
    const std::array<std::optional<Worktop>, 4> tops{std::nullopt, Worktop::air, Worktop::wood, Worktop::stone};
    const std::array top_h{0.0, 5.2, 27.0};  // W/(m²·K), thick wood and granite over three hours, computed
    piece.worktop = tops[n.index(4)];
    std::vector<Face> faces;
    if (i % 3 == 2) {
      piece.cover = covers[n.index(5)];
      const BowlMaterial& material = bowl_materials()[n.index(bowl_materials().size())];
      const double diameter = n.magnitude(0.05, 0.6), depth = volume / (pi * diameter * diameter / 4);
      if (depth < 0.005 || depth > 2) continue;
      piece.diameter_cm = 100 * diameter;
      piece.material = std::string(material.name);
      const Cover cover = piece.cover.value_or(Cover::lid);
      const double cloth = cover == Cover::cloth ? 0.02 : 0,
                   gap = cover == Cover::cloth || cover == Cover::lid ? 1 / 7.0 : 0;
      const double beside = 1 / (material.shiny ? h * 4.5 / 8 : h) + material.wall_m2_k_per_w;
      const Worktop on = piece.worktop.value_or(Worktop::wood);
      const double below =
          on == Worktop::air ? beside : 1 / top_h[static_cast<std::size_t>(on)] + material.wall_m2_k_per_w;
      const double flat = pi * diameter * diameter / 4, up = depth / 2 / (3 * conductivity),
                   out = diameter / 2 / (4 * conductivity);
      faces = {{flat, 1 / h + cloth + gap, up}, {pi * diameter * depth, beside, out}, {flat, below, up}};
    } else {
      piece.cover = covers[n.index(4)];
      const double above = 1 / h + (piece.cover == Cover::cloth ? 0.02 : 0);
      const Worktop on = piece.worktop.value_or(Worktop::air);
      const double below = on == Worktop::air ? above : 1 / top_h[static_cast<std::size_t>(on)];
      if (i % 3 ==
          0) {  // 15 % of a ball and 25 % of an oblong's round surface lie on the worktop: estimates of this library
        piece.shape = Shape::ball;
        const double radius = std::cbrt(3 * volume / (4 * pi)), area = 4 * pi * radius * radius,
                     inside = radius / (5 * conductivity);
        faces = {{0.85 * area, above, inside}, {0.15 * area, below, inside}};
      } else {
        piece.shape = Shape::oblong;
        const double diameter = std::cbrt(volume / pi), round = 4 * pi * diameter * diameter,
                     inside = diameter / 2 / (4 * conductivity);
        faces = {{0.75 * round + pi * diameter * diameter / 2, above, inside}, {0.25 * round, below, inside}};
      }
    }
    const Node got = node(piece, place);
    double area = 0, dropped = 0;
    for (const Face& face : faces) {
      area += face.area_m2;
      dropped += face.area_m2 / (face.outside + face.inside) * face.inside;
    }
    const double loss = loss_of(faces);
    worst = std::max({worst, std::abs(got.heat_loss_w_per_k / loss - 1), std::abs(got.area_cm2 / (1e4 * area) - 1),
                      std::abs(got.inside_k_per_w / (dropped / area / loss) - 1),
                      std::abs(got.mass_g / *piece.mass_g - 1), std::abs(got.volume_ml / (1e6 * volume) - 1),
                      std::abs(got.capacity_j_k / (*piece.mass_g / 1000 * c_j) - 1)});
    CHECK(got.time_constant_h == got.capacity_j_k / got.heat_loss_w_per_k / 3600);
    CHECK((got.open_m2 > 0) == (piece.cover == Cover::open));
  }
  MESSAGE("pieces: worst relative error of their faces' sums ", worst);
  CHECK(worst < 1e-14);
}

// ---- weight and dimensions -------------------------------------------------------------------------------------

TEST_CASE("scaling laws: heat loss and time constant grow with the weight") {
  for (const Piece& piece : {Piece{.shape = Shape::ball}, Piece{.shape = Shape::oblong}, Piece{.shape = Shape::tub}}) {
    Piece sized = piece;
    double loss = 0, hours = 0;
    for (double mass_g = 20; mass_g < 50000; mass_g *= 1.7) {
      sized.mass_g = mass_g;
      const Node small = node(sized);
      CHECK(small.heat_loss_w_per_k > loss);
      CHECK(small.time_constant_h > hours);
      loss = small.heat_loss_w_per_k;
      hours = small.time_constant_h;
      // Between the surface's law and that of a dough whose inside alone resists.
      sized.mass_g = 8 * mass_g;
      const Node large = node(sized);
      CHECK(large.area_cm2 == doctest::Approx(4 * small.area_cm2).epsilon(1e-13));
      CHECK(large.heat_loss_w_per_k < 4 * small.heat_loss_w_per_k);
      CHECK(large.heat_loss_w_per_k > 2 * small.heat_loss_w_per_k);
    }
  }
  for (const Piece& piece : {Piece{.shape = Shape::ball}, Piece{.shape = Shape::oblong}}) {
    // At one Biot number bodies of one shape are alike: loss goes with the length, time with its square.
    Piece small = piece, large = piece;
    small.mass_g = 100;
    large.mass_g = 800;
    CHECK(node(large, 6).heat_loss_w_per_k == doctest::Approx(2 * node(small, 12).heat_loss_w_per_k).epsilon(1e-13));
    CHECK(node(large, 6).time_constant_h == doctest::Approx(4 * node(small, 12).time_constant_h).epsilon(1e-13));
  }
}

// ---- a dough that is not covered -------------------------------------------------------------------------------

namespace {

/// The place of an open dough.
Place open_air(Air air, double humidity_percent) {
  return {.temperature_c = 20.0, .air = air, .humidity_percent = humidity_percent};
}

}  // namespace

TEST_CASE("an open wet dough settles below the room; covered it settles at the room") {
  // Computed with 3 to 4 W/(m²·K) by convection: in air of 22 °C and 50 % a wet surface drifts to about 18 °C, 4 K
  // below.
  const Place room = open_air(Air::room, 50);
  const auto settled_c = [](const Node& node, double air_c) {
    return root([&](double t) { return -heat_loss_w(node, t, air_c); }, -20, 60);
  };
  const Node ball = node({.shape = Shape::ball, .mass_g = 900, .cover = Cover::open}, room);
  MESSAGE("an open ball in air of 22 °C and 50 % settles at ", settled_c(ball, 22), " °C");
  CHECK(std::abs(22 - settled_c(ball, 22) - 4) <= 0.5);
  CHECK(heat_loss_w(ball, 22, 22) > 0);
  // A dough of another weight and shape, open all around, settles at the same temperature: nothing flows inside.
  CHECK(settled_c(node({.shape = Shape::ball, .mass_g = 60, .cover = Cover::open}, room), 22) ==
        doctest::Approx(settled_c(ball, 22)).epsilon(1e-12));
  CHECK(settled_c(node({.shape = Shape::oblong, .mass_g = 900, .cover = Cover::open}, room), 22) ==
        doctest::Approx(settled_c(ball, 22)).epsilon(1e-12));
  // A tub is open above alone, and warmed from beside and below.
  const double in_tub = settled_c(node({.shape = Shape::tub, .mass_g = 1670, .cover = Cover::open}, room), 22);
  CHECK(in_tub < 21.5);
  CHECK(in_tub > settled_c(ball, 22));
  CHECK(settled_c(node({.shape = Shape::ball, .mass_g = 900}, room), 22) == doctest::Approx(22).epsilon(1e-13));
  // Dry air cools more, moist air less; thin air carries more vapour per pascal.
  const auto ball_at = [&](double humidity_percent) {
    return settled_c(node({.shape = Shape::ball, .mass_g = 900, .cover = Cover::open},
                          open_air(Air::room, humidity_percent)),
                     22);
  };
  CHECK(ball_at(20) < ball_at(50));
  CHECK(ball_at(80) > ball_at(50));
  CHECK(ball_at(98) == doctest::Approx(22).epsilon(1e-9));  // water activity 0.98: the air takes nothing
  CHECK(ball_at(100) > 22);
  const DoughBody body{.mass_g = 900};
  const Piece open{.shape = Shape::ball, .cover = Cover::open};
  CHECK(settled_c(node_of(open, body, room, 70000), 22) < settled_c(node_of(open, body, room), 22));
  // 25 °C dough of water activity 0.97 in that room, at first: 79 to 105 W/m² by vapour, computed for 3 to 4 W/(m²·K).
  const double by_vapour = ball.vapour_w_per_m2_pa * (0.97 * saturation_pa(25) - 0.5 * saturation_pa(22));
  CHECK(by_vapour > 79);
  CHECK(by_vapour < 105);
}

TEST_CASE("in warm moist air a cold dough gains more heat open than covered; in dry air a warm one loses more") {
  const Place box = open_air(Air::proof_box, 100);
  for (const Piece& piece : {Piece{.shape = Shape::ball, .mass_g = 900}, Piece{.shape = Shape::oblong, .mass_g = 900},
                             Piece{.shape = Shape::tub, .mass_g = 900}}) {
    Piece open = piece, film = piece;
    open.cover = Cover::open;
    film.cover = Cover::film;
    const double gained = -heat_loss_w(node(open, box), 5, 30), covered = -heat_loss_w(node(film, box), 5, 30);
    CHECK(covered > 0);
    CHECK(gained > covered);
    const Place room = open_air(Air::room, 40);
    CHECK(heat_loss_w(node(open, room), 26, 22) > heat_loss_w(node(film, room), 26, 22));
  }
  // Computed for 3.5 to 4 W/(m²·K) by convection, 30 °C and 80 %: condensation on water of 5 °C adds 132 to 151 W/m².
  const Node open = node({.shape = Shape::ball, .mass_g = 900, .cover = Cover::open}, open_air(Air::room, 80));
  const double per_convection = open.vapour_w_per_m2_pa / 3.2 * (0.8 * saturation_pa(30) - saturation_pa(5));
  CHECK(3.5 * per_convection == doctest::Approx(132).epsilon(0.005));
  CHECK(4 * per_convection == doctest::Approx(151).epsilon(0.005));
}

// ---- inside the dough ------------------------------------------------------------------------------------------

TEST_CASE("surface, mean and core of a settled profile with an even source") {
  // Sphere R 6.01 cm, 880 W/m³, h 8, k 0.40: surface q·R/(3h) = 2.204 K and core q·R²/(6k) more, 3.528 K, above the air
  // (Incropera, ch. 3, from memory; computed).
  const double q = 880, radius = 0.0601;
  const Node ball = node({.shape = Shape::ball, .diameter_cm = 200 * radius});
  const auto profile = [](const Node& node, double watts) {
    const double mean = watts / node.heat_loss_w_per_k, dropped = node.inside_k_per_w * watts;
    return std::array{mean - dropped, mean, mean - dropped + node.core_over_mean * dropped};
  };
  const auto [surface, mean, core] = profile(ball, q * ball.volume_ml * 1e-6);
  CHECK(std::abs(surface - 2.204) <= 0.0005);
  CHECK(std::abs(core - 3.528) <= 0.0005);
  CHECK(surface == doctest::Approx(q * radius / 24).epsilon(1e-13));
  CHECK(mean == doctest::Approx(q * radius / 24 + q * radius * radius / (15 * conductivity)).epsilon(1e-13));
  CHECK(core == doctest::Approx(q * radius / 24 + q * radius * radius / (6 * conductivity)).epsilon(1e-13));

  // An oblong's ends cool as its round does: its surface is at watts/(h·area), and its profile the cylinder's,
  // q·D²/(16k)·(1/2, 1).
  const Node oblong = node({.shape = Shape::oblong, .diameter_cm = 7, .length_cm = 30});
  const double watts = 0.5, even = watts / (8 * oblong.area_cm2 * 1e-4);
  const auto [oblong_surface, oblong_mean, oblong_core] = profile(oblong, watts);
  CHECK(oblong_surface == doctest::Approx(even).epsilon(1e-13));
  CHECK((oblong_mean - oblong_surface) / even == doctest::Approx(8 * 0.035 / (4 * conductivity)).epsilon(1e-12));
  CHECK((oblong_core - oblong_surface) / even == doctest::Approx(8 * 0.035 / (2 * conductivity)).epsilon(1e-12));

  // A wide tub between two like sides: surface q·L/h, mean q·L²/(3k) and core q·L²/(2k) more; what its side loses is 1
  // %.
  const double outside = 1 / 27.0 + 0.0035, half = 0.02;
  const Node tub = node({.diameter_cm = 200,
                         .depth_cm = 200 * half,
                         .material = "glass",
                         .cover = Cover::film,
                         .worktop = Worktop::stone},
                        1 / outside);
  const auto [flat_surface, flat_mean, flat_core] = profile(tub, q * tub.volume_ml * 1e-6);
  CHECK(flat_mean == doctest::Approx(q * half * outside + q * half * half / (3 * conductivity)).epsilon(0.01));
  CHECK((flat_core - flat_surface) / (flat_mean - flat_surface) == doctest::Approx(1.5).epsilon(1e-12));
  CHECK(ball.core_over_mean == 2.5);
  CHECK(oblong.core_over_mean == 2);
  CHECK(tub.core_over_mean == 1.5);
}

// ---- refusals --------------------------------------------------------------------------------------------------

TEST_CASE("a node in air outside the field table is refused") {
  const auto with = [](std::optional<double> heat_transfer, std::optional<double> humidity_percent) {
    return said([&] {
      node({.shape = Shape::ball, .mass_g = 900, .cover = Cover::open},
           {.temperature_c = 20.0, .humidity_percent = humidity_percent, .heat_transfer_w_per_m2_k = heat_transfer});
    });
  };
  CHECK(with(8, 50) == "accepted");
  CHECK(says(with(0, 50), "heat transfer coefficient 0 W/(m²·K) is outside 0.5 to 200 W/(m²·K)"));
  CHECK(says(with(-1, 50), "heat transfer coefficient −1 W/(m²·K)"));
  CHECK(says(with(no_number, 50), "heat transfer coefficient not a number (NaN)"));
  CHECK(says(with(8, -1), "relative humidity −1 % is outside 0 to 100 %"));
  CHECK(says(with(8, 101), "relative humidity 101 % is outside 0 to 100 %"));
}
