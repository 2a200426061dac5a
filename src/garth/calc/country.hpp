// The country whose law is asked about, as the duty calculations read it.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {

inline constexpr std::array<std::string_view, 4> countries{"england", "wales", "scotland", "elsewhere"};

inline Json country_schema() {
  return choice_schema("whose law; elsewhere: the careful side, and ask your authority", countries);
}

inline const FactTable& duty_table(const Tables& tables, const std::string& country) {
  return tables[country == "elsewhere" ? "duty_general" : "duty_" + country];
}

// A problem of a field of the input, named by its JSON path; one of a table row keeps its own place.
inline Problem at_field(Problem problem) {
  const bool is_row = problem.where.find(".toml") != std::string::npos;
  if (!is_row) problem.where = "$." + problem.where;
  return problem;
}

inline constexpr std::array<std::string_view, 3> asked_words{"no", "advised", "required"};

}  // namespace beegarth::garth
