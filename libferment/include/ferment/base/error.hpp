// What can go wrong, as a small tree. Every message says what, which value, which unit, which range
// and what to do. C turns these into a status and a text, Python into exceptions of the same names.
#pragma once

#include <cstddef>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <ferment/base/export.hpp>

namespace ferment {

/// The numbers are those of the C interface and are only ever added to.
enum class Status : int {
  ok = 0,
  invalid_input = 1,  ///< a value that no dough can have, or of a wrong form
  outside_model = 2,  ///< a possible dough, but outside what the model describes
  no_solution = 3,    ///< a question without an answer; the message says what is reachable
  not_converged = 4,  ///< an iteration failed; a defect of the library, please report it
  internal = 99       ///< anything else, such as no memory
};

/// A unit in which the value would be allowed, so that a message can ask whether it was meant.
enum class Meant { as_given, fahrenheit, fahrenheit_difference };

/// The facts of an error, from which its text is composed and a program words its own. Absent members do not apply.
struct ErrorDetail {
  std::string path = {};                               ///< where: "dough_c", "waters[1].temperature_c"; or empty
  std::optional<double> value = {};                    ///< the offending value
  std::optional<double> low = {};                      ///< lowest allowed or reachable value
  std::optional<double> high = {};                     ///< highest allowed or reachable value
  std::optional<std::size_t> index = {};               ///< first offending value of an array
  std::optional<std::size_t> count = {};               ///< how many values of the array offend
  std::optional<std::size_t> size = {};                ///< of how many
  std::vector<std::pair<double, double>> ranges = {};  ///< reachable values, where they have holes between low and high
  std::string advice = {};                             ///< what to do, in words of any language
  Meant meant = Meant::as_given;
};

/// what(): "path: problem; did you mean 78 °F?; advice (first at index 1, 2 of 3)", without what is not known.
class FERMENT_API Error : public std::runtime_error {
 public:
  Error(Status status, const std::string& problem, ErrorDetail detail = {});
  ~Error() override;
  Status status() const noexcept { return status_; }
  /// What is wrong: which value, which unit, which range.
  const std::string& problem() const noexcept { return problem_; }
  const ErrorDetail& detail() const noexcept { return detail_; }

 private:
  Status status_;
  std::string problem_;
  ErrorDetail detail_;
};

class FERMENT_API InvalidInput : public Error {
 public:
  explicit InvalidInput(const std::string& problem, ErrorDetail detail = {});
  ~InvalidInput() override;
};

class FERMENT_API OutsideModel : public Error {
 public:
  explicit OutsideModel(const std::string& problem, ErrorDetail detail = {});
  ~OutsideModel() override;
};

class FERMENT_API NoSolution : public Error {
 public:
  explicit NoSolution(const std::string& problem, ErrorDetail detail = {});
  ~NoSolution() override;
};

class FERMENT_API NotConverged : public Error {
 public:
  explicit NotConverged(const std::string& problem, ErrorDetail detail = {});
  ~NotConverged() override;
};

/// Throws the error of that status: how an error is told again with more facts.
[[noreturn]] FERMENT_API void throw_error(Status status, const std::string& problem, ErrorDetail detail);

/// Throws the error again as one of a part: "waters[1]" before its path.
[[noreturn]] FERMENT_API void throw_within(const std::string& part, const Error& error);

}  // namespace ferment
