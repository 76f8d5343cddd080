// A caution or a limit of validity that comes with a result. Data, never a print.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace ferment {

enum class Severity { info, caution, warning };

struct Notice {
  std::string code;  ///< stable, so that an app can word it in its own language
  Severity severity = Severity::info;
  std::vector<std::pair<std::string, double>> values;  ///< the numbers in the text, by field name
  std::string text;                                    ///< English, complete with units
};

}  // namespace ferment
