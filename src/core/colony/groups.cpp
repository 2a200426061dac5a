#include "colony/groups.hpp"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace beegarth::colony {

Expected<TwoShares> compare_shares(Counted bad, Counted good) {
  const double a = bad.dead, b = bad.alive, c = good.dead, d = good.alive;
  if (a <= 0 || b <= 0 || c <= 0 || d <= 0)
    return bad_input("in one of the groups all or none died: odds cannot be compared", {},
                     "count more colonies");
  constexpr double z95 = 1.959963984540054;
  const double n = a + b + c + d;
  TwoShares two;
  two.odds_ratio = a * d / (b * c);
  const double error =
      std::sqrt(1 / a + 1 / b + 1 / c + 1 / d);  // of its logarithm (Woolf 1955, from memory)
  two.low95 = two.odds_ratio * std::exp(-z95 * error);
  two.high95 = two.odds_ratio * std::exp(z95 * error);
  two.chi_squared = n * std::pow(a * d - b * c, 2) / ((a + b) * (c + d) * (a + c) * (b + d));
  two.p = boost::math::cdf(boost::math::complement(boost::math::chi_squared(1), two.chi_squared));
  two.share_bad = a / (a + b);
  two.share_good = c / (c + d);
  two.share_all = (a + c) / n;
  return two;
}

Expected<TwoMeans> compare_means(Group first, Group second) {
  if (first.n < 2 || second.n < 2)
    return bad_input("a group has fewer than two colonies", {}, "compare groups of two and more");
  const double one = first.sd * first.sd / first.n, other = second.sd * second.sd / second.n;
  const double variance = one + other;
  if (!(variance > 0)) return bad_input("neither group varies", {}, "give the standard deviations");
  TwoMeans two;
  two.difference = second.mean - first.mean;
  two.t = two.difference / std::sqrt(variance);
  // Welch 1947, Biometrika 34:28; Satterthwaite 1946; from memory.
  two.df = variance * variance / (one * one / (first.n - 1) + other * other / (second.n - 1));
  const boost::math::students_t t(two.df);
  two.p = 2 * boost::math::cdf(boost::math::complement(t, std::abs(two.t)));
  const double half = boost::math::quantile(t, 0.975) * std::sqrt(variance);
  two.low95 = two.difference - half;
  two.high95 = two.difference + half;
  return two;
}

}  // namespace beegarth::colony
