#include "forecast/coordinates.hpp"

#include <algorithm>

namespace ferment {

Eigen::MatrixXd root_of(const Kitchen& kitchen) {
  const std::vector<double> covariance = covariance_of(kitchen);
  const auto size = static_cast<Eigen::Index>(learnable().size());
  const Eigen::Map<const Eigen::MatrixXd> matrix(covariance.data(), size, size);
  if (matrix.isDiagonal()) return matrix.diagonal().cwiseMax(0).cwiseSqrt().asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(matrix);
  return solver.eigenvectors() * solver.eigenvalues().cwiseMax(0).cwiseSqrt().asDiagonal();
}

Kitchen moved_by(const Kitchen& kitchen, const std::vector<Parameter>& rows, const Eigen::VectorXd& by, double bake) {
  Kitchen there = kitchen;
  there.covariance.clear();
  there.history.clear();
  there.mixing.clear();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    double& value = there.*rows[i].value;
    const bool is_rate = rows[i].value == &Kitchen::gassing_rate;
    value = moved(rows[i], value, by[static_cast<Eigen::Index>(i)] + (is_rate ? bake : 0));
  }
  there.t_max_above_opt_k = std::min(there.t_max_above_opt_k, 0.99 * (there.t_opt_c - there.t_min_c));
  there.retention_limit = std::max(there.retention_limit, there.retention_onset + 0.1);
  return there;
}

}  // namespace ferment
