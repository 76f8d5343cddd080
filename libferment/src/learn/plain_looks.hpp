// The plain logs among many: what a kitchen makes of all of them, by the closed form and at once.
#pragma once

#include <cstddef>
#include <vector>

#include <Eigen/Dense>

#include <ferment/base/parameters.hpp>
#include <ferment/rise/rise.hpp>

#include "forecast/sighting.hpp"

namespace ferment {

class PlainLooks {
 public:
  explicit PlainLooks(const std::vector<Looks>& logs);
  /// Puts what a kitchen makes of the plain logs in their places.
  void expect(const Kitchen& kitchen, std::vector<Eigen::VectorXd>& of_log) const;

 private:
  /// Looks at doughs with one kind of yeast.
  struct Group {
    Yeast yeast;
    std::vector<double> rise_percent = {}, dough_c = {}, yeast_percent = {}, salt = {}, water = {}, sugar = {},
                        gluten = {}, altitude_m = {};
    std::vector<std::pair<std::size_t, std::size_t>> places = {};  ///< log and look
  };
  std::vector<Group> groups_ = {};
  std::vector<std::size_t> looks_of_ = {};  ///< of each log: how many, 0 of one that is not plain
};

}  // namespace ferment
