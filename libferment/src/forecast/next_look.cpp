#include <ferment/forecast/next_look.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>

#include "forecast/draws.hpp"
#include "forecast/sighting.hpp"
#include "forecast/weights.hpp"
#include "process/run.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

const Stage* stage_at(const Process& process, std::size_t step) { return std::get_if<Stage>(&process.steps[step]); }

/// The first stage that ends by a rise: it is under way, or comes first.
std::size_t under_way(const Process& process) {
  for (std::size_t step = 0; step < process.steps.size(); ++step) {
    const Stage* const stage = stage_at(process, step);
    if (stage != nullptr && stage->until_rise_percent) return step;
  }
  throw InvalidInput("no stage ends by a rise: there is nothing to look for",
                     {.path = "steps", .advice = "let a stage end by until_rise_percent"});
}

std::size_t step_of(const Process& process, const std::string& name) {
  std::string known;
  std::optional<std::size_t> last;
  for (std::size_t step = 0; step < process.steps.size(); ++step) {
    const Stage* const stage = stage_at(process, step);
    if (stage == nullptr) continue;
    if (stage->name == name) return step;
    last = step;
    known.append(known.empty() ? "" : ", ").append(stage->name);
  }
  if (name.empty() && last) return *last;
  throw InvalidInput("no stage is named \"" + name + "\"", {.path = "stage", .advice = "known: " + known});
}

/// Where the usual dough is along a stage.
struct Usual {
  double begin_h = 0;
  std::vector<Sighting> looks = {};  ///< at tenths of the stage, the last one at its end
};

Usual usual(const Process& process, std::size_t step, const Kitchen& kitchen, bool heat_of_fermentation) {
  Process until = process;
  until.steps.resize(step + 1);
  const Timeline told =
      simulate(until, kitchen, std::nullopt, {.heat_of_fermentation = heat_of_fermentation, .every_min = 2});
  const StageResult& stage = told.stages.back();
  Usual its{.begin_h = stage.start_h};
  constexpr int parts = 10;
  for (int part = 1; part <= parts; ++part) {
    const double hour = stage.start_h + part * (stage.end_h - stage.start_h) / parts;
    const auto after = std::lower_bound(told.time_h.begin(), told.time_h.end(), hour - 1e-9);
    const auto row = static_cast<std::size_t>(std::min(after, told.time_h.end() - 1) - told.time_h.begin());
    if (!(told.rise_percent[row] > 0)) continue;
    its.looks.push_back({.stage = stage.name, .time_h = told.time_h[row], .rise_percent = told.rise_percent[row]});
  }
  return its;
}

/// Share of the variance of one that the other tells with such a noise; draws in which one of them never comes are
/// left out.
double told(const std::vector<double>& psi, const std::vector<double>& eta, const std::vector<double>& weights,
            double noise_variance) {
  double n = 0, p = 0, e = 0, pp = 0, ee = 0, pe = 0;
  for (std::size_t i = 0; i < psi.size(); ++i) {
    if (!(psi[i] < never && eta[i] < never)) continue;
    const double w = weights.empty() ? 1 : weights[i];
    n += w;
    p += w * psi[i], e += w * eta[i];
    pp += w * psi[i] * psi[i], ee += w * eta[i] * eta[i], pe += w * psi[i] * eta[i];
  }
  if (!(n > 0)) return 0;
  const double var_psi = pp / n - p / n * (p / n), var_eta = ee / n - e / n * (e / n), cov = pe / n - p / n * (e / n);
  return var_psi > 0 ? cov * cov / ((var_eta + noise_variance) * var_psi) : 0;
}

}  // namespace

NextLook next_look(const Process& process, const std::string& stage, const Kitchen& kitchen,
                   const ForecastOptions& options) {
  const std::size_t step = under_way(process), target = std::max(step_of(process, stage), step);
  const Process followed = condensed(process, 0, options.tolerance);
  const Usual its = usual(followed, step, kitchen, options.heat_of_fermentation);
  const WeightedDraws weighted = weighted_draws(followed, kitchen, std::nullopt, options);
  const Looks looks(followed, its.looks);
  const State start = beginning(followed, std::nullopt);
  const SimulateOptions simulation{.heat_of_fermentation = options.heat_of_fermentation,
                                   .every_min = 0,
                                   .be_back_by = false,
                                   .tolerance = options.tolerance,
                                   .interrupt = options.interrupt};
  const std::size_t count = weighted.draws.size();
  std::vector<double> psi(count);
  std::vector<std::vector<double>> eta(looks.size(), std::vector<double>(count));
  for_each_draw(options.for_each, count, [&](std::size_t i) {
    const Kitchen& its_kitchen = weighted.draws[i].kitchen;
    psi[i] = std::log(run_draw(followed, start, its_kitchen, simulation, false, target).back().ready_h - its.begin_h);
    const std::vector<double> expected = looks.expected(its_kitchen, simulation);
    for (std::size_t look = 0; look < expected.size(); ++look) eta[look][i] = expected[look];
  });
  const double noise_variance = 2 * kitchen.log_time_scale * kitchen.log_time_scale;
  double seen_h = -never;
  for (const Sighting& seen : options.seen) seen_h = std::max<double>(seen_h, seen.time_h);
  NextLook best{.stage = its.looks.back().stage,
                .told_at_end = told(psi, eta.back(), weighted.weights, noise_variance)};
  constexpr double worth = 0.8;
  for (std::size_t look = 0; look < looks.size(); ++look) {
    if (its.looks[look].time_h <= seen_h && look + 1 < looks.size()) continue;
    best.time_h = its.looks[look].time_h;
    best.rise_percent = *its.looks[look].rise_percent;
    best.told = told(psi, eta[look], weighted.weights, noise_variance);
    if (best.told >= worth * best.told_at_end) break;
  }
  return best;
}

template <>
const Form& form_of<NextLook>() {
  using N = NextLook;
  static const Form form =
      made_form<N>("NextLook", "A look that is worth its while.", {},
                   {row<&N::stage>("stage", "to look at"), row<&N::time_h>("time_h", "h of the process"),
                    row<&N::rise_percent>("rise_percent", "%, what the usual dough has by then"),
                    row<&N::told>("told", "share of the variance of ln time to the stage asked about that it takes"),
                    row<&N::told_at_end>("told_at_end", "the same by seeing when its stage is ready")});
  return form;
}

}  // namespace ferment
