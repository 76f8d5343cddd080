// A Laplace approximation corrected by importance weights.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include <Eigen/Dense>

namespace ferment {

struct Corrected {
  Eigen::VectorXd mean;
  Eigen::MatrixXd covariance;
  double k_hat = 0;
};

/// Mean and covariance of a density by draws from a normal one near it, with smoothed weights. Directions that are
/// narrower than a standard normal, the prior, are drawn a fifth wider: a likelihood has longer tails than its
/// parabola.
/// @param normal  standard normal numbers, draws × dimensions, row by row
/// Source: Vehtari, Simpson, Gelman, Yao & Gabry 2024, JMLR 25:72.
Corrected importance_corrected(const Eigen::VectorXd& centre, const Eigen::MatrixXd& covariance,
                               const std::vector<double>& normal,
                               const std::function<double(const Eigen::VectorXd&)>& log_density);

/// Smooths the largest of some logarithms of weights, in place: they become quantiles of the generalized Pareto
/// distribution that fits them (Zhang & Stephens 2009, Technometrics 51:316), and their logarithms are at most 0 then.
/// @return its shape, pulled a little towards 0.5; −infinity if there are too few to fit
double smooth_tail(std::vector<double>& log_weights);

}  // namespace ferment
