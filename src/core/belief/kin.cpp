#include "belief/kin.hpp"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <vector>

#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

double share_of(std::span<const double> weights, std::span<const double> happened) {
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * happened[i];
  return sum;
}

// Root of the sum of the squares of the families' sums.
double by_family(std::span<const double> parts, std::span<const int> family) {
  std::vector<double> sums(parts.size(), 0.0);
  for (std::size_t i = 0; i < parts.size(); ++i) sums[static_cast<std::size_t>(family[i])] += parts[i];
  double squares = 0;
  for (const double sum : sums) squares += sum * sum;
  return std::sqrt(squares);
}

// A family of all members would sum to nothing: never less than each member for itself.
double by_family_or_member(std::span<const double> parts, std::span<const int> family) {
  double squares = 0;
  for (const double part : parts) squares += part * part;
  return std::max(by_family(parts, family), std::sqrt(squares));
}

}  // namespace

double share_error(std::span<const double> weights, std::span<const double> happened,
                   std::span<const int> family) {
  const double share = share_of(weights, happened);
  std::vector<double> parts(weights.size());
  for (std::size_t i = 0; i < parts.size(); ++i) parts[i] = weights[i] * (happened[i] - share);
  return by_family_or_member(parts, family);
}

double change_error(std::span<const double> from, std::span<const double> to,
                    std::span<const double> happened, std::span<const int> family) {
  const double before = share_of(from, happened);
  const double after = share_of(to, happened);
  std::vector<double> parts(from.size());
  for (std::size_t i = 0; i < parts.size(); ++i)
    parts[i] = to[i] * (happened[i] - after) - from[i] * (happened[i] - before);
  return by_family_or_member(parts, family);
}

// The weighted variance of copies is too small by the variance of their mean, as that of n draws is by 1 / n.
// How far chance moves it is told as for so many independent draws of a normal as would know the mean as
// well: their variance is chi-squared (any statistics textbook). Kin that have moved apart count for more
// than copies.
Spread spread_of(std::span<const double> weights, std::span<const double> values, std::span<const int> family,
                 double beyond) {
  const double mean = share_of(weights, values);
  std::vector<double> parts(weights.size());
  double variance = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    parts[i] = weights[i] * (values[i] - mean);
    variance += parts[i] * (values[i] - mean);
  }
  const double of_mean = by_family_or_member(parts, family);
  const double whole = variance + of_mean * of_mean;
  const double freedom = of_mean > 0 ? std::max(1.0, variance / (of_mean * of_mean) - 1) : 1;
  const boost::math::chi_squared draws(freedom);
  return {whole, whole * freedom / boost::math::quantile(draws, 1 - beyond),
          whole * freedom / boost::math::quantile(draws, beyond)};
}

double effective_families(std::span<const double> weights, std::span<const int> family) {
  const double root = by_family(weights, family);
  return root > 0 ? 1 / (root * root) : 0;
}

double errors_beyond_chance(double families) {
  constexpr double three_sigma = 0.99865;  // one side of three standard errors of a normal
  return boost::math::quantile(boost::math::students_t(std::max(1.0, families - 1)), three_sigma);
}

}  // namespace beegarth::belief
