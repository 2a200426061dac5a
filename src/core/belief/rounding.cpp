#include "belief/rounding.hpp"

#include <algorithm>
#include <array>
#include <boost/math/special_functions/beta.hpp>
#include <cmath>

#include "belief/densities.hpp"

namespace beegarth::belief {
namespace {

// The greatest power of ten that is not above an amount; no lower than the finest grain.
double decade_of(double amount, double fine) {
  double decade = 1;
  while (decade * 10 <= amount) decade *= 10;
  while (decade > amount && decade > fine) decade /= 10;
  return decade;
}

struct Grain {
  double share;
  double size;
};
std::array<Grain, 3> grains_of(double decade, double fine, const Rounding& rounding) {
  return {{{rounding.two_figures, std::max(fine, decade / 10)},
           {rounding.half, std::max(fine, decade / 2)},
           {rounding.one_figure, std::max(fine, decade)}}};
}
double as_it_is(const Rounding& rounding) {
  return 1 - rounding.two_figures - rounding.half - rounding.one_figure;
}

bool is_multiple(double x, double grain) {
  const double times = x / grain;
  return std::abs(times - std::round(times)) < 1e-6;
}

// What is written as `seen` with some share of the odds: amounts from `low` to below `high`.
struct Interval {
  double share, low, high;
};
// At most one for the finest grain and three for each of two decades: 100 may be 96 to the nearest five.
struct Intervals {
  std::array<Interval, 7> list;
  std::size_t count = 0;
};
Intervals intervals_of(double seen, double fine, const Rounding& rounding) {
  Intervals found;
  found.list[found.count++] = {as_it_is(rounding), seen - fine / 2, seen + fine / 2};
  const double decade = decade_of(seen, fine);
  for (const double at : {decade, decade / 10}) {
    if (at < decade && (seen > decade * (1 + 1e-9) || at < fine)) break;
    for (const Grain& grain : grains_of(at, fine, rounding)) {
      if (grain.share <= 0 || !is_multiple(seen, grain.size)) continue;
      // What is smaller than one decade is as fine as can be, and belongs to no grain of it.
      const double from = at > fine ? std::max(seen - grain.size / 2, at) : seen - grain.size / 2;
      const double to = std::min(seen + grain.size / 2, at * 10);
      if (to > from) found.list[found.count++] = {grain.share, from, to};
    }
  }
  return found;
}

}  // namespace

double rounded(double amount, double fine, const Rounding& rounding, double u) {
  if (amount <= 0) return 0;
  double grain = fine;
  for (const Grain& one : grains_of(decade_of(amount, fine), fine, rounding)) {
    u -= one.share;
    if (u < 0) {
      grain = one.size;
      break;
    }
  }
  return std::round(amount / grain) * grain;
}

double log_rounded_lognormal(double seen, double expected, double sd, double offset, double fine,
                             const Rounding& rounding) {
  const double centre = std::log(std::max(0.0, expected) + offset);
  const auto score = [&](double x) { return (std::log(std::max(0.0, x) + offset) - centre) / sd; };
  if (seen < fine / 2) {
    const double mass = normal_cdf(score(fine / 2));
    return mass > 0 ? std::log(mass) : minus_infinity;
  }
  const Intervals intervals = intervals_of(seen, fine, rounding);
  double odds = 0;
  for (std::size_t i = 0; i < intervals.count; ++i) {
    const Interval& one = intervals.list[i];
    const double low = score(one.low);
    const double high = score(one.high);
    // In the tail in which the difference does not cancel.
    const double mass = low > 0 ? normal_cdf(-low) - normal_cdf(-high) : normal_cdf(high) - normal_cdf(low);
    odds += one.share * mass;
  }
  if (!(odds > 0)) return minus_infinity;
  const double width = sd * (score(seen + fine / 2) - score(seen - fine / 2));
  return std::log(odds) - std::log(width);
}

double log_rounded_count(int seen, double mean, double size, const Rounding& rounding) {
  const double exact = log_negative_binomial(seen, mean, size);
  if (seen < 10 || mean <= 0) return exact;  // few are written as they are
  const Intervals intervals = intervals_of(seen, 1, rounding);
  int first = seen;
  int last = seen;
  for (std::size_t i = 0; i < intervals.count; ++i) {
    first = std::min(first, static_cast<int>(std::ceil(intervals.list[i].low)));
    last = std::max(last, static_cast<int>(std::ceil(intervals.list[i].high)) - 1);
  }
  // Relative to the odds of the figure itself, so that nothing is lost where all are small.
  const auto share_of = [&](int n) {
    double share = 0;
    for (std::size_t i = 0; i < intervals.count; ++i)
      share += n >= intervals.list[i].low && n < intervals.list[i].high ? intervals.list[i].share : 0.0;
    return share;
  };
  const double ratio = mean / (size + mean);
  double sum = share_of(seen);
  double odds = 1;
  for (int n = seen; n < last; ++n) {
    odds *= (n + size) / (n + 1) * ratio;
    sum += odds * share_of(n + 1);
  }
  odds = 1;
  for (int n = seen; n > first; --n) {
    odds *= n / ((n - 1 + size) * ratio);
    sum += odds * share_of(n - 1);
  }
  return exact + std::log(sum);
}

double log_count_at_least(int seen, double mean, double size) {
  if (seen <= 0) return 0;
  if (mean <= 0) return minus_infinity;
  using namespace boost::math::policies;
  const double odds = boost::math::ibeta(static_cast<double>(seen), size, mean / (size + mean),
                                         policy<promote_double<false>>());
  return odds > 0 ? std::log(odds) : minus_infinity;
}

}  // namespace beegarth::belief
