#include <ferment/base/error.hpp>

#include <utility>

#include "base/text.hpp"

namespace ferment {
namespace {

std::string question(const ErrorDetail& detail) {
  if (!detail.value) return {};
  switch (detail.meant) {
    case Meant::fahrenheit: return "did you mean " + number(*detail.value) + " °F?";
    case Meant::fahrenheit_difference: return "did you mean a difference of " + number(*detail.value) + " °F?";
    case Meant::as_given: break;
  }
  return {};
}

std::string composed(const std::string& problem, const ErrorDetail& detail) {
  std::string text = detail.path.empty() ? problem : detail.path + ": " + problem;
  for (const std::string& part : {question(detail), detail.advice}) {
    if (!part.empty()) text.append("; ").append(part);
  }
  if (detail.index && detail.count && detail.size) {
    text.append(" (first at index ").append(std::to_string(*detail.index));
    text.append(", ").append(std::to_string(*detail.count)).append(" of ").append(std::to_string(*detail.size));
    text.append(")");
  }
  return text;
}

}  // namespace

Error::Error(Status status, const std::string& problem, ErrorDetail detail)
    : std::runtime_error(composed(problem, detail)), status_(status), problem_(problem), detail_(std::move(detail)) {}
InvalidInput::InvalidInput(const std::string& problem, ErrorDetail detail)
    : Error(Status::invalid_input, problem, std::move(detail)) {}
OutsideModel::OutsideModel(const std::string& problem, ErrorDetail detail)
    : Error(Status::outside_model, problem, std::move(detail)) {}
NoSolution::NoSolution(const std::string& problem, ErrorDetail detail)
    : Error(Status::no_solution, problem, std::move(detail)) {}
NotConverged::NotConverged(const std::string& problem, ErrorDetail detail)
    : Error(Status::not_converged, problem, std::move(detail)) {}

// Out of line, so that each class has one type information for catch across a shared library's edge.
Error::~Error() = default;
InvalidInput::~InvalidInput() = default;
OutsideModel::~OutsideModel() = default;
NoSolution::~NoSolution() = default;
NotConverged::~NotConverged() = default;

void throw_error(Status status, const std::string& problem, ErrorDetail detail) {
  switch (status) {
    case Status::invalid_input: throw InvalidInput(problem, std::move(detail));
    case Status::outside_model: throw OutsideModel(problem, std::move(detail));
    case Status::no_solution: throw NoSolution(problem, std::move(detail));
    case Status::not_converged: throw NotConverged(problem, std::move(detail));
    default: throw Error(status, problem, std::move(detail));
  }
}

void throw_within(const std::string& part, const Error& error) {
  ErrorDetail detail = error.detail();
  const bool joins = detail.path.empty() || detail.path.front() == '[';  // "folds_h" and "[1]"
  detail.path = part + (joins ? "" : ".") + detail.path;
  throw_error(error.status(), error.problem(), std::move(detail));
}

}  // namespace ferment
