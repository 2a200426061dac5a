#include "belief/smc.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "belief/densities.hpp"

namespace beegarth::belief {
namespace {

std::vector<double> with_share(std::span<const double> log_weights, std::span<const double> log_likelihoods,
                               double share) {
  std::vector<double> sum(log_weights.size());
  for (std::size_t i = 0; i < sum.size(); ++i) {
    // An impossible observation stays impossible at any share.
    sum[i] = std::isinf(log_likelihoods[i]) ? minus_infinity : log_weights[i] + share * log_likelihoods[i];
  }
  return sum;
}

void reorder(std::vector<double>& values, std::span<const int> ancestors) {
  std::vector<double> chosen(values.size());
  for (std::size_t i = 0; i < chosen.size(); ++i) chosen[i] = values[static_cast<std::size_t>(ancestors[i])];
  values = std::move(chosen);
}

}  // namespace

double log_sum_exp(std::span<const double> logs) {
  double top = minus_infinity;
  for (const double x : logs) top = std::max(top, x);
  if (std::isinf(top)) return minus_infinity;
  double sum = 0;
  for (const double x : logs) sum += std::exp(x - top);
  return top + std::log(sum);
}

bool all_impossible(std::span<const double> logs) {
  return std::all_of(logs.begin(), logs.end(), [](double x) { return x == minus_infinity; });
}

std::vector<double> normalised(std::span<const double> log_weights) {
  const double total = log_sum_exp(log_weights);
  std::vector<double> weights(log_weights.size(),
                              1.0 / static_cast<double>(std::max<std::size_t>(1, log_weights.size())));
  if (std::isinf(total)) return weights;
  for (std::size_t i = 0; i < weights.size(); ++i) weights[i] = std::exp(log_weights[i] - total);
  return weights;
}

double effective_sample_size(std::span<const double> weights) {
  double squares = 0;
  for (const double w : weights) squares += w * w;
  return squares > 0 ? 1.0 / squares : 0.0;
}

std::vector<int> systematic_ancestors(std::span<const double> weights, double u, int count) {
  std::vector<int> ancestors(static_cast<std::size_t>(count));
  double reached = weights.empty() ? 0.0 : weights[0];
  std::size_t member = 0;
  for (int i = 0; i < count; ++i) {
    const double position = (i + u) / count;
    while (position > reached && member + 1 < weights.size()) reached += weights[++member];
    ancestors[static_cast<std::size_t>(i)] = static_cast<int>(member);
  }
  return ancestors;
}

double tempered_share(std::span<const double> log_weights, std::span<const double> log_likelihoods,
                      double wanted) {
  const auto ess_at = [&](double share) {
    return effective_sample_size(normalised(with_share(log_weights, log_likelihoods, share)));
  };
  if (ess_at(1.0) >= wanted) return 1.0;
  double low = 0;
  double high = 1;
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (low + high);
    (ess_at(middle) >= wanted ? low : high) = middle;
  }
  return std::max(low, 1e-6);  // already too few: take a tiny step, so that the work ends
}

Assimilated assimilate(std::vector<double>& log_weights, std::vector<double>& log_likelihoods,
                       const Crowd& crowd, const TemperingLimits& limits) {
  const double members = static_cast<double>(log_weights.size());
  Assimilated result;
  result.lowest_ess = effective_sample_size(normalised(log_weights));
  if (all_impossible(with_share(log_weights, log_likelihoods, 1.0))) {
    result.reconciled = false;
    return result;
  }
  double let_in = 0;
  for (int stage = 1;; ++stage) {
    result.stages = stage;
    const double left = 1.0 - let_in;
    std::vector<double> rest(log_likelihoods.size());
    for (std::size_t i = 0; i < rest.size(); ++i) rest[i] = left * log_likelihoods[i];
    const double wanted = limits.resample_below * members;
    const double share = stage >= limits.stages_max ? 1.0 : tempered_share(log_weights, rest, wanted);
    const double before = log_sum_exp(log_weights);
    log_weights = with_share(log_weights, rest, share);
    result.log_evidence += log_sum_exp(log_weights) - before;
    let_in = share >= 1.0 ? 1.0 : let_in + share * left;
    const std::vector<double> weights = normalised(log_weights);
    result.lowest_ess = std::min(result.lowest_ess, effective_sample_size(weights));
    if (let_in >= 1.0 && effective_sample_size(weights) >= wanted) break;
    const std::vector<int> ancestors =
        systematic_ancestors(weights, crowd.uniform(), static_cast<int>(log_weights.size()));
    crowd.resample(ancestors);
    reorder(log_likelihoods, ancestors);
    std::fill(log_weights.begin(), log_weights.end(), -std::log(members));
    log_likelihoods = crowd.move(let_in);
    if (let_in >= 1.0) break;
  }
  return result;
}

std::vector<int> ascending_order(std::span<const double> values) {
  std::vector<int> order(values.size());
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(), [&](int a, int b) {
    const double x = values[static_cast<std::size_t>(a)];
    const double y = values[static_cast<std::size_t>(b)];
    return x != y ? x < y : a < b;
  });
  return order;
}

double weighted_quantile(std::span<const double> values, std::span<const double> weights,
                         std::span<const int> order, double level) {
  if (values.empty()) return 0;
  double reached = 0;  // weight of all values before this one
  double last_middle = 0;
  double last_value = values[static_cast<std::size_t>(order[0])];
  for (const int at : order) {
    const auto i = static_cast<std::size_t>(at);
    if (weights[i] <= 0) continue;
    const double middle = reached + 0.5 * weights[i];
    if (middle >= level) {
      if (last_middle <= 0 || middle <= last_middle) return values[i];
      const double part = (level - last_middle) / (middle - last_middle);
      return last_value + part * (values[i] - last_value);
    }
    reached += weights[i];
    last_middle = middle;
    last_value = values[i];
  }
  return last_value;
}

}  // namespace beegarth::belief
