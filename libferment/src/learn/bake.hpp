// A bake's own effect on its yeast, integrated out of the likelihood of its looks.
#pragma once

#include <Eigen/Dense>

#include "forecast/sighting.hpp"

namespace ferment {

/// ln of the likelihood of a bake's looks, its slope by each look's expectation, and two curvatures.
struct Integrated {
  double log_likelihood = 0;
  Eigen::VectorXd slope;
  Eigen::MatrixXd observed;  ///< minus the second derivative (Louis 1982, JRSS B 44:226)
  Eigen::MatrixXd expected;  ///< of the information that exact looks carry in the mean: never negative
};

/// ∫ φ(x)·Π Lᵢ(expectedᵢ + by_bakeᵢ·bake_sd·x) dx by adaptive Gauss–Hermite quadrature of seven nodes (Liu & Pierce
/// 1994, Biometrika 81:624).
Integrated without_bake(const Looks& looks, const Eigen::VectorXd& expected, const Eigen::VectorXd& by_bake,
                        double bake_sd, const Noise& noise);

}  // namespace ferment
