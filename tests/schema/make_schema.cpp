// Writes the JSON Schema of a day to a file, or checks that it is there as the forms have it.
//   make_schema FILE | make_schema --check FILE
#include <cstdio>
#include <fstream>
#include <iterator>
#include <string>

#include <ferment/day/day.hpp>
#include <ferment/day/document.hpp>

int main(int count, char** arguments) {
  const std::string schema = ferment::schema_of(ferment::form_of<ferment::Day>());
  const bool checks = count == 3 && std::string(arguments[1]) == "--check";
  if (count != 2 && !checks) return 2;
  const std::string path = arguments[count - 1];
  if (!checks) return std::ofstream(path, std::ios::binary) << schema ? 0 : 1;
  std::ifstream file(path, std::ios::binary);
  const std::string written{std::istreambuf_iterator<char>(file), {}};
  if (written == schema) return 0;
  std::fprintf(stderr, "%s is not current: cmake --build --preset release -t schema\n", path.c_str());
  return 1;
}
