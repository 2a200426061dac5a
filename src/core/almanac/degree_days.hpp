// Heat above a base, day by day, from the day's minimum and maximum.
#pragma once

#include <optional>

namespace beegarth::almanac {

enum class DegreeDayMethod {
  sine,
  triangle,
  mean
};                                                // Baskerville & Emin 1969; single triangle; simple average
enum class UpperCutoff { horizontal, vertical };  // held at the upper base; or nothing counted above it

struct DegreeDayRule {
  double base_C = 5;
  std::optional<double> upper_C;
  DegreeDayMethod method = DegreeDayMethod::sine;
  UpperCutoff cutoff = UpperCutoff::horizontal;
};

// Degree days (C) of one day; min_C <= max_C.
double degree_days(double min_C, double max_C, const DegreeDayRule& rule);

}  // namespace beegarth::almanac
