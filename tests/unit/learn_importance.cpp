#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "learn/importance.hpp"

using namespace ferment;

TEST_CASE("the tail of weights: the shape of a generalized Pareto distribution is found") {
  std::mt19937 random(20271);
  std::uniform_real_distribution<double> uniform;
  for (const double shape : {0.2, 0.5, 1.0}) {
    double sum = 0;
    constexpr int times = 40;
    for (int time = 0; time < times; ++time) {
      std::vector<double> log_weights;
      for (int i = 0; i < 4000; ++i) log_weights.push_back(-shape * std::log(uniform(random)));  // w = u^−k
      sum += smooth_tail(log_weights);
    }
    CHECK(sum / times == doctest::Approx(shape).epsilon(0.12));
  }
}

TEST_CASE("smoothing keeps the order of the weights and cuts none above the largest") {
  std::mt19937 random(20272);
  std::normal_distribution<double> normal;
  std::vector<double> log_weights;
  for (int i = 0; i < 1000; ++i) log_weights.push_back(2 * normal(random));
  const std::vector<double> raw = log_weights;
  const double shape = smooth_tail(log_weights);
  CHECK(std::isfinite(shape));
  CHECK(*std::max_element(log_weights.begin(), log_weights.end()) <= 0);
  const double most = *std::max_element(raw.begin(), raw.end());
  for (std::size_t i = 0; i < raw.size(); ++i) {
    for (std::size_t j = 0; j < raw.size(); j += 97)
      CHECK((raw[i] <= raw[j]) == (log_weights[i] <= log_weights[j] + 1e-12));
    if (raw[i] - most < -4) CHECK(log_weights[i] == doctest::Approx(raw[i] - most));
  }
  std::vector<double> few{0, -1, -2};
  CHECK(std::isinf(smooth_tail(few)));
  std::vector<double> alike(500, -3.0);
  CHECK(std::isinf(smooth_tail(alike)));
}

TEST_CASE("a density that is skew gets its own mean and covariance") {
  // x: ln of a gamma density of shape 9 (mean ψ(9), variance ψ'(9)); y: standard normal, given x moved by x/2.
  constexpr double digamma_9 = 2.1406414779556098, trigamma_9 = 0.11751201;
  const auto log_density = [](const Eigen::VectorXd& at) {
    const double y = at[1] - 0.5 * at[0];
    return 9 * at[0] - std::exp(at[0]) - 0.5 * y * y;
  };
  std::mt19937 random(20273);
  std::normal_distribution<double> normal;
  std::vector<double> numbers;
  for (int i = 0; i < 2 * 20000; ++i) numbers.push_back(normal(random));
  Eigen::Vector2d mode(std::log(9.0), 0.5 * std::log(9.0));
  Eigen::Matrix2d information;
  information << 9 + 0.25, -0.5, -0.5, 1;
  const Corrected told = importance_corrected(mode, information.inverse(), numbers, log_density);
  CHECK(told.mean[0] == doctest::Approx(digamma_9).epsilon(2e-3));
  CHECK(told.mean[1] == doctest::Approx(digamma_9 / 2).epsilon(2e-2));
  CHECK(told.covariance(0, 0) == doctest::Approx(trigamma_9).epsilon(0.03));
  CHECK(told.covariance(1, 1) == doctest::Approx(1 + trigamma_9 / 4).epsilon(0.03));
  CHECK(told.k_hat > 0.7);  // its lower tail is exponential: longer than any normal one's
  const auto nearly_normal = [](const Eigen::VectorXd& at) { return -0.55 * at.squaredNorm() + 0.1 * at[0]; };
  CHECK(importance_corrected(Eigen::Vector2d::Zero(), Eigen::Matrix2d::Identity(), numbers, nearly_normal).k_hat < 0.7);
}
