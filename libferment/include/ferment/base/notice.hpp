// A caution or a limit of validity that comes with a result. Data, never a print.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/names.hpp>

namespace ferment {

enum class Severity { info, caution, warning };

struct Notice {
  std::string code;  ///< stable, so that an app can word it in its own language
  Severity severity = Severity::info;
  std::vector<std::pair<std::string, double>> values;  ///< the numbers in the text, by field name
  std::string text;                                    ///< English, complete with units
};

template <>
FERMENT_API const Names& names_of<Severity>();

template <>
FERMENT_API const Form& form_of<Notice>();

}  // namespace ferment
