#include "almanac/degree_days.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace beegarth::almanac {
namespace {

struct Day {
  double min_C, max_C;
  double mean_C() const { return (min_C + max_C) / 2; }
};

// Heat above one threshold, and the share of the day spent above it.
struct Above {
  double degree_days;
  double share;
};

// Baskerville & Emin 1969, Ecology 50:514: one sine wave a day.
Above above_sine(const Day& day, double threshold_C) {
  const double half_range = (day.max_C - day.min_C) / 2;
  const double angle = std::asin(std::clamp((threshold_C - day.mean_C()) / half_range, -1.0, 1.0));
  const double rest = std::numbers::pi / 2 - angle;
  return {((day.mean_C() - threshold_C) * rest + half_range * std::cos(angle)) / std::numbers::pi,
          rest / std::numbers::pi};
}

Above above_triangle(const Day& day, double threshold_C) {
  const double top = day.max_C - threshold_C;
  const double range = day.max_C - day.min_C;
  return {top * top / (2 * range), top / range};
}

Above above(const Day& day, double threshold_C, DegreeDayMethod method) {
  const double over = day.mean_C() - threshold_C;
  if (method == DegreeDayMethod::mean) return over > 0 ? Above{over, 1} : Above{0, 0};
  if (day.max_C <= threshold_C) return {0, 0};
  if (day.min_C >= threshold_C) return {over, 1};
  return method == DegreeDayMethod::sine ? above_sine(day, threshold_C) : above_triangle(day, threshold_C);
}

}  // namespace

double degree_days(double min_C, double max_C, const DegreeDayRule& rule) {
  assert(min_C <= max_C);
  const Day day{min_C, max_C};
  const Above base = above(day, rule.base_C, rule.method);
  if (!rule.upper_C) return base.degree_days;
  assert(*rule.upper_C > rule.base_C);
  const Above upper = above(day, *rule.upper_C, rule.method);
  const double held = base.degree_days - upper.degree_days;
  if (rule.cutoff == UpperCutoff::horizontal) return std::max(0.0, held);
  // Vertical: the time above the upper base counts nothing instead of being held at it.
  return std::max(0.0, held - (*rule.upper_C - rule.base_C) * upper.share);
}

}  // namespace beegarth::almanac
