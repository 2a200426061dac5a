// Runs one computation as `beegarth calc` does and hands back its answer; a problem fails the test.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::testing {

inline const garth::Tables& shipped_tables() {
  static const garth::Tables tables = *garth::Tables::built_in();
  return tables;
}

inline garth::Json answer(std::string_view name, const garth::Json& input) {
  const auto out = garth::run_calc(name, input.dump(), shipped_tables());
  if (!out) {
    ADD_FAILURE() << name << ": " << one_line(out.problem());
    return garth::Json::object();
  }
  return *out;
}

// True where the input is refused as bad input.
inline bool refuses(std::string_view name, const garth::Json& input) {
  const auto out = garth::run_calc(name, input.dump(), shipped_tables());
  return !out && out.problem().kind == ProblemKind::bad_input;
}

}  // namespace beegarth::testing
