// A kitchen's parameters in the coordinates in which they are learned.
#pragma once

#include <vector>

#include <Eigen/Dense>

#include <ferment/base/parameters.hpp>

namespace ferment {

/// L with L·Lᵀ the kitchen's covariance, also if that is only semi-definite.
Eigen::MatrixXd root_of(const Kitchen& kitchen);

/// The kitchen with every row's parameter moved by so much in its coordinate, the gassing rate by the bake besides.
/// What joins two parameters is kept possible; what was learned of uncertainty and bakes is not carried along.
Kitchen moved_by(const Kitchen& kitchen, const std::vector<Parameter>& rows, const Eigen::VectorXd& by, double bake);

}  // namespace ferment
