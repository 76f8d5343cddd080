// The tables of outside values: comma-separated, quoted where a cell holds a comma, first line the column names.
#pragma once

#include <cctype>
#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace csv {

using Row = std::map<std::string, std::string>;

inline std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> out(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      out.emplace_back();
    else if (c != '\r')
      out.back() += c;
  }
  return out;
}

inline std::vector<Row> read(const std::string& name) {
  std::ifstream file(std::string(FERMENT_TEST_DATA) + "/" + name);
  if (!file) throw std::runtime_error("no table " + name);
  std::string line;
  std::getline(file, line);
  const std::vector<std::string> names = cells(line);
  std::vector<Row> rows;
  while (std::getline(file, line)) {
    if (line.empty()) continue;
    const std::vector<std::string> values = cells(line);
    if (values.size() != names.size()) throw std::runtime_error(name + ": wrong number of cells: " + line);
    Row& row = rows.emplace_back();
    for (std::size_t i = 0; i < names.size(); ++i) row[names[i]] = values[i];
  }
  return rows;
}

/// Every number of a text in its order, as 12, -3, 0.5 and .5; "." and "-" alone are none.
inline std::vector<double> numbers(const std::string& text) {
  const auto digit = [&](std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; };
  const auto number = [&](std::size_t at) {
    return digit(at) || (at < text.size() && text[at] == '.' && digit(at + 1));
  };
  std::vector<double> out;
  for (std::size_t at = 0; at < text.size();) {
    const bool part_of_word = at > 0 && std::isalpha(static_cast<unsigned char>(text[at - 1]));
    const bool negative = text[at] == '-' && number(at + 1) && (at == 0 || text[at - 1] == ' ');
    if ((number(at) && !part_of_word) || negative) {
      std::size_t length = 0;
      out.push_back(std::stod(text.substr(at), &length));
      at += length;
    } else {
      ++at;
    }
  }
  return out;
}

/// The number that stands directly before `unit`, as 0.2 in "0.2 % instant".
inline double before(const std::string& text, const std::string& unit) {
  const std::size_t end = text.find(unit);
  if (end == std::string::npos) throw std::runtime_error("no \"" + unit + "\" in: " + text);
  const std::vector<double> found = numbers(text.substr(0, end));
  if (found.empty()) throw std::runtime_error("no number before \"" + unit + "\" in: " + text);
  return found.back();
}

/// The number that stands directly after `label`, as 68 in "flour 68 F".
inline double after(const std::string& text, const std::string& label) {
  const std::size_t begin = text.find(label);
  if (begin == std::string::npos) throw std::runtime_error("no \"" + label + "\" in: " + text);
  return numbers(text.substr(begin + label.size())).at(0);
}

}  // namespace csv
