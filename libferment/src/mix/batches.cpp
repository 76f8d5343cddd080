#include <ferment/mix/batches.hpp>

#include <cmath>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>

#include "base/finite.hpp"

namespace ferment {

BatchMean mean_of_batches(std::size_t count, const std::function<double(std::size_t)>& number_of) {
  std::vector<double> each;
  for (std::size_t i = 0; i < count; ++i) {
    try {
      each.push_back(number_of(i));
    } catch (const InvalidInput& problem) {
      if (count == 1) throw;
      ErrorDetail detail = problem.detail();
      detail.index = i;
      detail.count = count;
      throw InvalidInput("batch " + std::to_string(i + 1) + " of " + std::to_string(count) + ": " + problem.problem(),
                         detail);
    }
  }
  return mean_of_batches(std::move(each));
}

BatchMean mean_of_batches(std::vector<double> each) {
  if (each.empty()) throw InvalidInput("no batch given", {.path = "batches", .advice = "one is enough"});
  const auto n = static_cast<double>(each.size());
  BatchMean result;
  for (const double value : each) {
    require_at_least(-1e300, value, "each");
    result.mean += value / n;
  }
  if (each.size() > 1) {
    double squares = 0;
    for (const double value : each) squares += (value - result.mean) * (value - result.mean);
    result.sd = std::sqrt(squares / (n - 1));
  }
  result.each = std::move(each);
  return result;
}

template <>
const Form& form_of<BatchMean>() {
  using B = BatchMean;
  static const Form form =
      made_form<B>("BatchMean", "Mean of a number found from several batches, and its spread.", {},
                   {row<&B::mean>("mean", "of all"), row<&B::sd>("sd", "from batch to batch; none from one batch"),
                    row<&B::each>("each", "of every batch")});
  return form;
}

}  // namespace ferment
