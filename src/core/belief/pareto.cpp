#include "belief/pareto.hpp"

#include <algorithm>
#include <cmath>

#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// Log profile likelihood per value of the generalised Pareto distribution at theta = -shape / scale.
double shape_at(double theta, std::span<const double> x) {
  double sum = 0;
  for (const double v : x) sum += std::log1p(-theta * v);
  return sum / static_cast<double>(x.size());
}

double quantile(const ParetoTail& tail, double p) {
  if (std::abs(tail.shape) < 1e-9) return -tail.scale * std::log1p(-p);
  return tail.scale * std::expm1(-tail.shape * std::log1p(-p)) / tail.shape;
}

}  // namespace

ParetoTail fit_pareto(std::span<const double> x) {
  const std::size_t n = x.size();
  if (n < 5 || !(x.back() > 0)) return {};
  const double size = static_cast<double>(n);
  const int points = 30 + static_cast<int>(std::sqrt(size));
  const double quarter = std::max(x[static_cast<std::size_t>(std::floor(size / 4 + 0.5)) - 1], 1e-300);
  std::vector<double> theta(static_cast<std::size_t>(points));
  std::vector<double> log_likelihood(theta.size());
  for (int i = 0; i < points; ++i) {
    const auto at = static_cast<std::size_t>(i);
    theta[at] = 1 / x.back() + (1 - std::sqrt(points / (i + 0.5))) / (3 * quarter);
    const double k = shape_at(theta[at], x);
    log_likelihood[at] = size * (std::log(-theta[at] / k) - k - 1);
    if (!std::isfinite(log_likelihood[at])) log_likelihood[at] = -1e300;
  }
  const std::vector<double> weights = normalised(log_likelihood);
  double mean = 0;
  for (std::size_t i = 0; i < theta.size(); ++i) mean += weights[i] * theta[i];
  ParetoTail tail;
  const double k = shape_at(mean, x);
  tail.scale = std::max(-k / mean, 1e-300);
  // Weakly informative prior of the paper: ten values at shape one half.
  tail.shape = (k * size + 0.5 * 10) / (size + 10);
  if (!std::isfinite(tail.shape) || !std::isfinite(tail.scale)) return {};
  return tail;
}

SmoothedWeights pareto_smoothed(std::span<const double> log_ratios) {
  SmoothedWeights result;
  const std::size_t n = log_ratios.size();
  const auto tail_size = static_cast<std::size_t>(
      std::ceil(std::min(0.2 * static_cast<double>(n), 3 * std::sqrt(static_cast<double>(n)))));
  std::vector<double> logs(log_ratios.begin(), log_ratios.end());
  const double top = *std::max_element(logs.begin(), logs.end());
  if (!std::isfinite(top) || tail_size < 5) {
    result.weights = normalised(log_ratios);
    return result;
  }
  for (double& x : logs) x -= top;
  const std::vector<int> order = ascending_order(logs);
  const double cut = std::exp(logs[static_cast<std::size_t>(order[n - tail_size - 1])]);
  std::vector<double> above(tail_size);
  for (std::size_t i = 0; i < tail_size; ++i) {
    above[i] = std::exp(logs[static_cast<std::size_t>(order[n - tail_size + i])]) - cut;
  }
  if (above.back() > 1e-12) {
    const ParetoTail tail = fit_pareto(above);
    result.shape = tail.shape;
    for (std::size_t i = 0; i < tail_size; ++i) {
      const double p = (static_cast<double>(i) + 0.5) / static_cast<double>(tail_size);
      const double smoothed = std::log(cut + quantile(tail, p));
      logs[static_cast<std::size_t>(order[n - tail_size + i])] =
          std::min(0.0, smoothed);  // never above the largest raw
    }
  }
  result.weights = normalised(logs);
  return result;
}

}  // namespace beegarth::belief
