// Nonlinear regressions with certified results: NIST Statistical Reference Datasets (StRD), in the public domain.
#pragma once

#include <array>
#include <cmath>
#include <complex>
#include <functional>
#include <map>
#include <numbers>
#include <string>
#include <vector>

#include "../reference/csv.hpp"

namespace strd {

using Complex = std::complex<double>;
using Parameters = std::vector<Complex>;
/// y by the parameters, x and x2: in complex numbers, which give its derivatives to the last digit.
using Model = std::function<Complex(const Parameters& b, double x, double x2)>;

struct Problem {
  std::string name, difficulty;
  std::array<std::vector<double>, 2> starts;
  std::vector<double> certified, sd;
  double rss = 0;  ///< certified: residual sum of squares
  std::vector<double> y, x, x2;
  Model model;
};

/// A problem's model, as its page states it; Nelson's y is a logarithm.
inline Model model(const std::string& of) {
  static constexpr auto squared = [](Complex z) { return z * z; };
  static constexpr auto saturation = [](const Parameters& b, double x, double) {
    return b[0] * (1.0 - exp(-b[1] * x));
  };
  static constexpr auto chwirut = [](const Parameters& b, double x, double) {
    return exp(-b[0] * x) / (b[1] + b[2] * x);
  };
  static constexpr auto lanczos = [](const Parameters& b, double x, double) {
    return b[0] * exp(-b[1] * x) + b[2] * exp(-b[3] * x) + b[4] * exp(-b[5] * x);
  };
  static constexpr auto gauss = [](const Parameters& b, double x, double) {
    return b[0] * exp(-b[1] * x) + b[2] * exp(-squared((x - b[3]) / b[4])) + b[5] * exp(-squared((x - b[6]) / b[7]));
  };
  static constexpr auto cubics = [](const Parameters& b, double x, double) {
    return (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1.0 + x * (b[4] + x * (b[5] + x * b[6])));
  };
  static const std::map<std::string, Model> models{
      {"Misra1a", saturation},
      {"BoxBOD", saturation},
      {"Chwirut1", chwirut},
      {"Chwirut2", chwirut},
      {"Lanczos2", lanczos},
      {"Lanczos3", lanczos},
      {"Gauss1", gauss},
      {"Gauss2", gauss},
      {"Gauss3", gauss},
      {"Hahn1", cubics},
      {"Thurber", cubics},
      {"DanWood", [](const Parameters& b, double x, double) { return b[0] * pow(Complex(x), b[1]); }},
      {"Misra1b",
       [](const Parameters& b, double x, double) { return b[0] * (1.0 - 1.0 / squared(1.0 + b[1] * x / 2.0)); }},
      {"Misra1c",
       [](const Parameters& b, double x, double) { return b[0] * (1.0 - 1.0 / sqrt(1.0 + 2.0 * b[1] * x)); }},
      {"Misra1d", [](const Parameters& b, double x, double) { return b[0] * b[1] * x / (1.0 + b[1] * x); }},
      {"Kirby2", [](const Parameters& b, double x,
                    double) { return (b[0] + x * (b[1] + x * b[2])) / (1.0 + x * (b[3] + x * b[4])); }},
      {"Nelson", [](const Parameters& b, double x, double x2) { return b[0] - b[1] * x * exp(-b[2] * x2); }},
      {"MGH17",
       [](const Parameters& b, double x, double) { return b[0] + b[1] * exp(-x * b[3]) + b[2] * exp(-x * b[4]); }},
      {"Roszman1", [](const Parameters& b, double x,
                      double) { return b[0] - b[1] * x - atan(b[2] / (x - b[3])) / std::numbers::pi; }},
      {"ENSO",
       [](const Parameters& b, double x, double) {
         const Complex turn = 2 * std::numbers::pi * x;
         return b[0] + b[1] * cos(turn / 12.0) + b[2] * sin(turn / 12.0) + b[4] * cos(turn / b[3]) +
                b[5] * sin(turn / b[3]) + b[7] * cos(turn / b[6]) + b[8] * sin(turn / b[6]);
       }},
      {"MGH09",
       [](const Parameters& b, double x, double) { return b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]); }},
      {"Rat42", [](const Parameters& b, double x, double) { return b[0] / (1.0 + exp(b[1] - b[2] * x)); }},
      {"Rat43",
       [](const Parameters& b, double x, double) { return b[0] / pow(1.0 + exp(b[1] - b[2] * x), 1.0 / b[3]); }},
      {"MGH10", [](const Parameters& b, double x, double) { return b[0] * exp(b[1] / (x + b[2])); }},
      {"Eckerle4",
       [](const Parameters& b, double x, double) { return b[0] / b[1] * exp(-0.5 * squared((x - b[2]) / b[1])); }},
      {"Bennett5", [](const Parameters& b, double x, double) { return b[0] * pow(b[1] + x, -1.0 / b[2]); }},
  };
  return models.at(of);
}

/// Every problem of the tables. Of the 27 that are published in one file each, Lanczos1 is left out: what its residuals
/// are (1e-13 of y) has no six digits in doubles.
inline std::vector<Problem> problems() {
  std::vector<Problem> all;
  std::map<std::string, std::size_t> index;
  for (csv::Row& row : csv::read("strd_certified.csv")) {
    const std::string& name = row["problem"];
    if (index.try_emplace(name, all.size()).second) {
      all.push_back({.name = name,
                     .difficulty = row["difficulty"],
                     .starts = {},
                     .certified = {},
                     .sd = {},
                     .rss = std::stod(row["rss"]),
                     .y = {},
                     .x = {},
                     .x2 = {},
                     .model = model(name)});
    }
    Problem& its = all.back();
    its.starts[0].push_back(std::stod(row["start_1"]));
    its.starts[1].push_back(std::stod(row["start_2"]));
    its.certified.push_back(std::stod(row["certified"]));
    its.sd.push_back(std::stod(row["sd"]));
  }
  for (csv::Row& row : csv::read("strd_data.csv")) {
    Problem& its = all.at(index.at(row["problem"]));
    const double y = std::stod(row["y"]);
    its.y.push_back(its.name == "Nelson" ? std::log(y) : y);
    its.x.push_back(std::stod(row["x"]));
    its.x2.push_back(row["x2"].empty() ? 0 : std::stod(row["x2"]));
  }
  return all;
}

}  // namespace strd
