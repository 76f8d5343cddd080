// The model in 100-digit arithmetic, in the plainest form of its equations and without a line of the library's
// formulas: inverses by bisection on the forward equations. At 100 digits cancellation does not matter.
#pragma once

#include <array>
#include <cmath>
#include <functional>
#include <limits>

#include <boost/multiprecision/cpp_bin_float.hpp>

#include <ferment/base/parameters.hpp>
#include <ferment/rise/rise.hpp>

namespace naive {

using Real = boost::multiprecision::cpp_bin_float_100;

inline double relative_error(double got, const Real& wanted) {
  if (wanted == 0) return got == 0 ? 0 : std::numeric_limits<double>::infinity();
  if (!std::isfinite(got)) return std::numeric_limits<double>::infinity();
  return static_cast<double>(abs((Real(got) - wanted) / wanted));
}

/// Error in units of the last place of the wanted value.
inline double ulps(double got, const Real& wanted) {
  const double nearest = std::abs(static_cast<double>(wanted));
  const int exponent = std::max(std::ilogb(nearest), -1022);
  return static_cast<double>(abs(Real(got) - wanted) / ldexp(Real(1), exponent - 52));
}

/// Root of a rising function. `digits` decimal digits relative to the answer.
inline Real bisect(const std::function<Real(const Real&)>& rising, Real low, Real high, int digits = 22) {
  const Real share = pow(Real(10), -digits);
  while (high - low > share * high) {
    const Real middle = (low + high) / 2;
    (rising(middle) < 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

inline const Real gas_constant{"8.314462618"};  // J/(mol·K), CODATA 2018
inline const Real zero_celsius{"273.15"};
inline const Real atmosphere{101325};

// ---- temperature ----------------------------------------------------------------------------------------------
inline Real constant_q10(const Real& t, const Real& q10) { return pow(q10, (t - 25) / 10); }
inline Real arrhenius(const Real& t, const Real& kj) {
  return exp(-(kj * 1000 / gas_constant) * (1 / (t + zero_celsius) - 1 / Real("298.15")));
}
inline Real square_root(const Real& t, const Real& t_min, const Real& t_max, const Real& c) {
  const auto rate = [&](const Real& at) -> Real {
    if (at <= t_min || at >= t_max) return 0;
    const Real root = (at - t_min) * (1 - exp(c * (at - t_max)));
    return root * root;
  };
  return rate(t) / rate(25);
}
/// Rosso et al. 1993.
inline Real cardinal(const Real& t, const Real& t_min, const Real& t_opt, const Real& t_max) {
  const auto gamma = [&](const Real& at) -> Real {
    if (at <= t_min || at >= t_max) return 0;
    return (at - t_max) * (at - t_min) * (at - t_min) /
           ((t_opt - t_min) * ((t_opt - t_min) * (at - t_opt) - (t_opt - t_max) * (t_opt + t_min - 2 * at)));
  };
  return gamma(t) / gamma(25);
}

// ---- solutes --------------------------------------------------------------------------------------------------
inline Real osmolality(const Real& salt, const Real& water, const Real& sugar) {
  const Real pressing = sugar > 4 ? Real(sugar - 4) : Real(0);
  return (2 * Real("0.92") * salt / Real("58.443") + 2 * pressing / Real("342.3")) / (water / 1000);
}
inline Real water_activity(const Real& salt, const Real& water, const Real& sugar) {
  return exp(-Real("0.0180153") * osmolality(salt, water, sugar));
}
inline Real solute_factor(const Real& salt, const Real& water, const Real& sugar, const Real& aw_min,
                          const Real& exponent, const Real& high_sugar) {
  const auto share = [&](const Real& aw) -> Real { return aw > aw_min ? Real((aw - aw_min) / (1 - aw_min)) : Real(0); };
  const Real sweet = sugar < 10 ? Real(0) : sugar > 20 ? Real(1) : Real((sugar - 10) / 10);
  return share(water_activity(salt, water, sugar)) / share(water_activity(2, 65, 0)) * pow(water / 65, exponent) *
         pow(high_sugar, sweet);
}

// ---- gas ------------------------------------------------------------------------------------------------------
struct Curve {
  Real x0, q, tau, mu, lag, increment, capacity;
};
inline Real dry_matter(const Real& percent, ferment::Yeast yeast) {
  switch (yeast) {
    case ferment::Yeast::instant: return Real("0.30") / Real("0.33") * percent;
    case ferment::Yeast::active_dry:
    case ferment::Yeast::active_dry_unwetted: return Real("0.30") / Real("0.40") * percent;
    case ferment::Yeast::compressed: break;
  }
  return Real("0.30") * percent;
}
inline Real start_up(ferment::Yeast yeast, const ferment::Kitchen& k) {
  switch (yeast) {
    case ferment::Yeast::instant: return k.start_up_instant_h;
    case ferment::Yeast::active_dry: return k.start_up_active_dry_h;
    case ferment::Yeast::active_dry_unwetted: return k.start_up_active_dry_unwetted_h;
    case ferment::Yeast::compressed: break;
  }
  return k.start_up_compressed_h;
}
inline Real work(const Real& theta, const Curve& c) {
  const Real deficit = c.x0 * c.tau * (1 - exp(-theta / c.tau));
  if (theta <= c.lag) return c.x0 * theta - deficit;
  const Real k = c.x0 + c.increment;
  const Real f = c.x0 / k;
  const Real rs = c.mu * k / c.increment * (theta - c.lag);
  return c.x0 * c.lag + c.increment / c.mu * log(1 + f * (exp(rs) - 1)) - deficit;
}
/// dJ/dθ: the yeast at work.
inline Real yeast_at_work(const Real& theta, const Curve& c) {
  Real x = c.x0;
  if (theta > c.lag) {
    const Real k = c.x0 + c.increment;
    x = k / (1 + (k / c.x0 - 1) * exp(-c.mu * k / c.increment * (theta - c.lag)));
  }
  return x - c.x0 * exp(-theta / c.tau);
}
inline Real gas(const Real& theta, const Curve& c) {
  return c.capacity * (1 - exp(-c.q * work(theta, c) / c.capacity));
}
inline Real work_of_gas(const Real& gas, const Real& capacity, const Real& q) {
  return -(capacity / q) * log(1 - gas / capacity);
}
inline Real hours_of_work(const Real& wanted, const Curve& c) {
  Real high = 1;
  while (work(high, c) < wanted) high *= 2;
  return bisect([&](const Real& theta) { return Real(work(theta, c) - wanted); }, 0, high);
}
inline Curve curve_of(const ferment::Kitchen& k, double percent, ferment::Yeast yeast, double sugar) {
  return {dry_matter(percent, yeast),
          k.gassing_rate,
          start_up(yeast, k),
          k.growth_rate,
          k.growth_lag_h,
          k.growth_increment,
          k.gas_capacity + Real("11.10") * sugar};
}

// ---- volume ---------------------------------------------------------------------------------------------------
inline Real air_pressure(const Real& altitude) {
  return atmosphere * pow(1 - Real("0.0065") * altitude / Real("288.15"), Real("5.255876"));  // ISO 2533
}
inline Real saturation_pressure(const Real& t) {  // Buck 1996
  return Real("611.21") * exp((Real("18.678") - t / Real("234.5")) * (t / (Real("257.14") + t)));
}
inline Real co2_solubility(const Real& t) {  // Weiss 1974
  const Real h = (t + zero_celsius) / 100;
  return exp(Real("-60.2409") + Real("93.4517") / h + Real("23.3585") * log(h));
}
/// The larger root of n_g² + b·n_g − n·n_air = 0, b = n_air + a − n, by the schoolbook formula.
inline Real in_cells(const Real& held, const Real& air, const Real& capacity) {
  const Real b = air + capacity - held;
  return (sqrt(b * b + 4 * held * air) - b) / 2;
}
inline Real held_ratio(const Real& free, const Real& onset, const Real& limit, const Real& anchor) {
  const Real u = anchor < onset ? onset : anchor;
  if (free <= u) return free;
  return limit - (limit - u) * exp(-(free - u) / (limit - onset));
}

// ---- the whole chain, with every number that goes into it as one vector -----------------------------------------
enum In {
  rise,
  temperature,
  yeast,
  salt,
  water,
  sugar,
  gluten,
  altitude,
  t_min,
  t_opt,
  t_above,
  q10,
  energy,
  root_min,
  root_max,
  decline,
  aw_min,
  rate,
  tau,
  growth,
  lag,
  increment,
  capacity,
  onset,
  limit,
  void_share,
  density,
  exponent,
  high_sugar,
  count
};

struct Chain {
  std::array<Real, count> in;
  ferment::Law law;
  ferment::Yeast kind;

  Chain(double rise_percent, const ferment::Dough& d, const ferment::Kitchen& k)
      : in{rise_percent,
           d.dough_c.value,
           d.yeast_percent.value,
           d.salt_percent,
           d.water_percent,
           d.sugar_percent,
           d.gluten_percent,
           d.altitude_m,
           k.t_min_c,
           k.t_opt_c,
           k.t_max_above_opt_k,
           k.q10,
           k.activation_energy_kj,
           k.root_t_min_c,
           k.root_t_max_c,
           k.root_decline_per_k,
           k.aw_min,
           k.gassing_rate,
           start_up(d.yeast, k),
           k.growth_rate,
           k.growth_lag_h,
           k.growth_increment,
           k.gas_capacity,
           k.retention_onset,
           k.retention_limit,
           k.void_fraction,
           k.gas_free_density,
           k.water_exponent,
           k.high_sugar_factor},
        law(k.law), kind(d.yeast) {}

  Real temperature_factor() const {
    switch (law) {
      case ferment::Law::cardinal: return cardinal(in[temperature], in[t_min], in[t_opt], in[t_opt] + in[t_above]);
      case ferment::Law::square_root: return square_root(in[temperature], in[root_min], in[root_max], in[decline]);
      case ferment::Law::arrhenius: return arrhenius(in[temperature], in[energy]);
      case ferment::Law::constant_q10: break;
    }
    return constant_q10(in[temperature], in[q10]);
  }
  Real speed() const {
    return temperature_factor() *
           solute_factor(in[salt], in[water], in[sugar], in[aw_min], in[exponent], in[high_sugar]);
  }
  Curve curve() const {
    return {dry_matter(in[yeast], kind),
            in[rate],
            in[tau],
            in[growth],
            in[lag],
            in[increment],
            in[capacity] + Real("11.10") * in[sugar]};
  }
  Real stronger() const { return 1 + Real("0.05") * in[gluten]; }

  struct Cells {
    Real molar_volume, capacity, mixed_ml, air;
  };
  Cells cells() const {
    const Real kelvin = in[temperature] + zero_celsius;
    const Real dry = air_pressure(in[altitude]) -
                     water_activity(in[salt], in[water], in[sugar]) * saturation_pressure(in[temperature]);
    const Real gas_free_ml = (100 + in[water] + in[salt] + in[sugar] + in[yeast]) / in[density];
    const Real void_ml = gas_free_ml * in[void_share] / (1 - in[void_share]);
    return {1000 * gas_constant * kelvin / dry, co2_solubility(in[temperature]) * (dry / atmosphere) * in[water],
            gas_free_ml + void_ml, Real("1e-3") * dry * void_ml / (gas_constant * kelvin)};
  }

  bool holds() const { return 1 + in[rise] / 100 < in[limit] * stronger(); }
  /// CO2 that this rise takes, held in cells and water.
  Real gas_of_rise() const {
    const Real ratio = 1 + in[rise] / 100;
    const Real from = in[onset] * stronger();
    const Real most = in[limit] * stronger();
    const Real free = ratio <= from ? ratio : Real(from - (most - from) * log((most - ratio) / (most - from)));
    const Cells c = cells();
    const Real in_gas = (free - 1) * c.mixed_ml / c.molar_volume;
    return in_gas + c.capacity * in_gas / (c.air + in_gas);
  }
  bool makes() const { return gas_of_rise() < curve().capacity; }
  Real hours() const {
    const Curve c = curve();
    return hours_of_work(work_of_gas(gas_of_rise(), c.capacity, c.q), c) / speed();
  }
  Real rise_after(const Real& time) const {
    const Cells c = cells();
    const Real made = gas(speed() * time, curve());
    const Real free = 1 + in_cells(made, c.air, c.capacity) * c.molar_volume / c.mixed_ml;
    return 100 * (held_ratio(free, in[onset] * stronger(), in[limit] * stronger(), 1) - 1);
  }

  /// Condition number of the hours: how many times larger than a relative error in every input at once the error of the
  /// answer must be expected to be, Σ|x·∂h/∂x|/h. By implicit differentiation of J(speed·h) = J of the rise.
  double condition(const Real& hours) const {
    const auto residual = [](const Chain& chain, const Real& at) {
      const Curve c = chain.curve();
      return Real(work_of_gas(chain.gas_of_rise(), c.capacity, c.q) - work(chain.speed() * at, c));
    };
    const Real step("1e-40");
    const Real here = residual(*this, hours);
    const Real slope = yeast_at_work(speed() * hours, curve()) * speed();
    Real sum = 0;
    for (std::size_t i = 0; i < count; ++i) {
      if (in[i] == 0) continue;
      Chain moved = *this;
      moved.in[i] *= 1 + step;
      sum += abs((residual(moved, hours) - here) / step);
    }
    return static_cast<double>(sum / (slope * hours));
  }
  /// The same of the rise after a time.
  double rise_condition(const Real& time) const {
    const Real step("1e-40");
    const Real here = rise_after(time);
    Real sum = abs(rise_after(time * (1 + step)) - here) / step;
    for (std::size_t i = temperature; i < count; ++i) {
      if (in[i] == 0) continue;
      Chain moved = *this;
      moved.in[i] *= 1 + step;
      sum += abs((moved.rise_after(time) - here) / step);
    }
    return static_cast<double>(sum / here);
  }
};

}  // namespace naive
