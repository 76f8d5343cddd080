#include "learn/plain_looks.hpp"

#include <algorithm>
#include <cmath>

namespace ferment {

PlainLooks::PlainLooks(const std::vector<Looks>& logs) {
  for (std::size_t log = 0; log < logs.size(); ++log) {
    const auto& dough = logs[log].plain();
    looks_of_.push_back(dough ? logs[log].size() : 0);
    if (!dough) continue;
    auto group = std::find_if(groups_.begin(), groups_.end(), [&](const Group& g) { return g.yeast == dough->yeast; });
    if (group == groups_.end()) group = groups_.insert(group, {.yeast = dough->yeast});
    for (std::size_t i = 0; i < logs[log].size(); ++i) {
      group->rise_percent.push_back(logs[log].rise_percent(i));
      group->dough_c.push_back(dough->dough_c);
      group->yeast_percent.push_back(dough->yeast_percent);
      group->salt.push_back(dough->salt_percent);
      group->water.push_back(dough->water_percent);
      group->sugar.push_back(dough->sugar_percent);
      group->gluten.push_back(dough->gluten_percent);
      group->altitude_m.push_back(dough->altitude_m);
      group->places.emplace_back(log, i);
    }
  }
}

void PlainLooks::expect(const Kitchen& kitchen, std::vector<Eigen::VectorXd>& of_log) const {
  for (std::size_t log = 0; log < looks_of_.size(); ++log) {
    if (looks_of_[log] > 0) of_log[log].resize(static_cast<Eigen::Index>(looks_of_[log]));
  }
  for (const Group& group : groups_) {
    std::vector<double> hours(group.places.size());
    const Doughs doughs{.dough_c = group.dough_c,
                        .yeast_percent = group.yeast_percent,
                        .yeast = group.yeast,
                        .salt_percent = group.salt,
                        .water_percent = group.water,
                        .sugar_percent = group.sugar,
                        .gluten_percent = group.gluten,
                        .altitude_m = group.altitude_m};
    hours_to_rise(group.rise_percent, doughs, hours, kitchen, Unreachable::infinity);
    for (std::size_t i = 0; i < hours.size(); ++i)
      of_log[group.places[i].first][static_cast<Eigen::Index>(group.places[i].second)] = std::log(hours[i]);
  }
}

}  // namespace ferment
