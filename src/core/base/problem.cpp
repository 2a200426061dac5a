#include "base/problem.hpp"

#include <utility>

namespace beegarth {

std::string one_line(const Problem& problem) {
  std::string line;
  if (!problem.where.empty()) line += problem.where + ": ";
  line += problem.what;
  if (!problem.remedy.empty()) line += "; " + problem.remedy;
  for (char& c : line) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7f) c = ' ';
  }
  return line;
}

Problem bad_input(std::string what, std::string where, std::string remedy) {
  return {ProblemKind::bad_input, std::move(what), std::move(where), std::move(remedy)};
}

}  // namespace beegarth
