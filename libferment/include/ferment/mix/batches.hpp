// A number found from several batches.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>

namespace ferment {

/// Mean of a number found from several batches, and its spread.
struct BatchMean {
  double mean = 0;
  std::optional<double> sd = {};  ///< from batch to batch; nothing from one batch
  std::vector<double> each = {};
};

/// Mean and sample standard deviation. @throws InvalidInput without a batch, or for a number that is not finite
FERMENT_API BatchMean mean_of_batches(std::vector<double> each);

/// The same of what number_of(0), … makes of each batch. @throws InvalidInput as number_of does, naming the batch
FERMENT_API BatchMean mean_of_batches(std::size_t count, const std::function<double(std::size_t)>& number_of);

template <>
FERMENT_API const Form& form_of<BatchMean>();

}  // namespace ferment
