#include "belief/densities.hpp"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <limits>
#include <numbers>

namespace beegarth::belief {
namespace {

// std::lgamma writes to a global, so threads would race on it.
double log_gamma(double x) {
  using namespace boost::math::policies;
  return boost::math::lgamma(x, policy<promote_double<false>>());
}

double log_beta(double a, double b) {
  return log_gamma(a) + log_gamma(b) - log_gamma(a + b);
}

}  // namespace

double log_normal_density(double x, double mean, double sd) {
  const double z = (x - mean) / sd;
  return -0.5 * z * z - std::log(sd) - 0.5 * std::log(2 * std::numbers::pi);
}

double normal_cdf(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double log_grained_lognormal(double seen, double expected, double sd, double offset, double half_grain) {
  const double centre = std::log(std::max(0.0, expected) + offset);
  const double top = (std::log(std::max(0.0, seen) + half_grain + offset) - centre) / sd;
  const double bottom_value = seen - half_grain;
  // Below the least thing that can be said the interval is open.
  const double bottom = bottom_value <= 0 ? minus_infinity : (std::log(bottom_value + offset) - centre) / sd;
  // Take the difference in the tail in which it does not cancel.
  const double mass =
      bottom > 0 ? normal_cdf(-bottom) - normal_cdf(-top) : normal_cdf(top) - normal_cdf(bottom);
  return mass > 0 ? std::log(mass) : minus_infinity;
}

double log_offset_lognormal(double seen, double expected, double sd, double offset, double most) {
  const double centre = std::log(std::max(0.0, expected) + offset);
  const double said = std::log(std::clamp(seen, 0.0, most) + offset);
  const double z = (said - centre) / sd;
  const bool at_an_end = seen <= 0 || seen >= most;
  if (!at_an_end) return log_normal_density(said, centre, sd);
  const double mass = normal_cdf(seen <= 0 ? z : -z);
  return mass > 0 ? std::log(mass) : minus_infinity;
}

double log_negative_binomial(int count, double mean, double k) {
  if (count < 0) return minus_infinity;
  if (mean <= 0) return count == 0 ? 0.0 : minus_infinity;
  const double n = count;
  return log_gamma(n + k) - log_gamma(k) - log_gamma(n + 1) + k * std::log(k / (k + mean)) +
         n * std::log(mean / (k + mean));
}

double log_beta_binomial(int hits, int n, double p, double rho) {
  if (hits < 0 || hits > n) return minus_infinity;
  if (p <= 0) return hits == 0 ? 0.0 : minus_infinity;
  if (p >= 1) return hits == n ? 0.0 : minus_infinity;
  const double strength = 1.0 / rho - 1.0;
  const double a = p * strength;
  const double b = (1.0 - p) * strength;
  const double choose = log_gamma(n + 1.0) - log_gamma(hits + 1.0) - log_gamma(n - hits + 1.0);
  return choose + log_beta(hits + a, n - hits + b) - log_beta(a, b);
}

double log_mix(double a, double b, double share) {
  const double x = a + std::log1p(-share);
  const double y = b + std::log(share);
  const double top = std::max(x, y);
  if (std::isinf(top)) return minus_infinity;
  return top + std::log(std::exp(x - top) + std::exp(y - top));
}

}  // namespace beegarth::belief
