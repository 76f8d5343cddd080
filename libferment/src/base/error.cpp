#include <ferment/base/error.hpp>

#include <utility>

namespace ferment {

Error::Error(Status status, const std::string& message, ErrorDetail detail)
    : std::runtime_error(message), status_(status), detail_(std::move(detail)) {}
InvalidInput::InvalidInput(const std::string& message, ErrorDetail detail)
    : Error(Status::invalid_input, message, std::move(detail)) {}
OutsideModel::OutsideModel(const std::string& message, ErrorDetail detail)
    : Error(Status::outside_model, message, std::move(detail)) {}
NoSolution::NoSolution(const std::string& message, ErrorDetail detail)
    : Error(Status::no_solution, message, std::move(detail)) {}
NotConverged::NotConverged(const std::string& message, ErrorDetail detail)
    : Error(Status::not_converged, message, std::move(detail)) {}

// Out of line, so that each class has one type information for catch across a shared library's edge.
Error::~Error() = default;
InvalidInput::~InvalidInput() = default;
OutsideModel::~OutsideModel() = default;
NoSolution::~NoSolution() = default;
NotConverged::~NotConverged() = default;

}  // namespace ferment
