#include "garth/beliefs/skill_scores.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/random.hpp"

namespace beegarth::garth {
namespace {

constexpr int resamples = 2000;
constexpr std::size_t fewest_colonies = 5;
constexpr double no_difference = 5e-5;  // less than is printed of the smallest scores

struct ColonySum {
  double value = 0;
  int cases = 0;
};

std::vector<double> resampled_means(const std::vector<ColonySum>& colonies, std::string_view name,
                                    std::uint64_t seed) {
  std::vector<double> means;
  means.reserve(resamples);
  for (std::uint32_t r = 0; r < resamples; ++r) {
    Stream stream({.seed = seed, .colony = stable_hash(name), .member = r, .purpose = Purpose::scoring});
    ColonySum sum;
    for (std::size_t i = 0; i < colonies.size(); ++i) {
      const auto at = static_cast<std::size_t>(stream.uniform() * static_cast<double>(colonies.size()));
      const ColonySum& drawn = colonies[std::min(at, colonies.size() - 1)];
      sum.value += drawn.value;
      sum.cases += drawn.cases;
    }
    means.push_back(sum.value / sum.cases);
  }
  std::sort(means.begin(), means.end());
  return means;
}

}  // namespace

double crps(const std::vector<double>& values, const std::vector<double>& weights, double seen) {
  if (values.empty()) return 0;
  // The distribution function is flat between neighbouring values; outside them it is 0 or 1.
  double score = std::max(0.0, values.front() - seen) + std::max(0.0, seen - values.back());
  double below = 0;
  for (std::size_t i = 0; i + 1 < values.size(); ++i) {
    below += weights[i];
    const double middle = std::clamp(seen, values[i], values[i + 1]);
    score += below * below * (middle - values[i]) + (1 - below) * (1 - below) * (values[i + 1] - middle);
  }
  return score;
}

double crps(std::vector<double> values, double seen) {
  std::sort(values.begin(), values.end());
  return crps(values, std::vector<double>(values.size(), 1.0 / static_cast<double>(values.size())), seen);
}

double brier(double p, bool happened) {
  return (p - (happened ? 1 : 0)) * (p - (happened ? 1 : 0));
}

MeanOfCases mean_over_colonies(const std::vector<CaseValue>& values, std::string_view name,
                               std::uint64_t seed) {
  MeanOfCases result;
  std::map<std::string, ColonySum> by_colony;
  for (const CaseValue& one : values) {
    result.mean += one.value;
    ColonySum& sum = by_colony[one.colony];
    sum.value += one.value;
    ++sum.cases;
  }
  result.cases = static_cast<int>(values.size());
  result.colonies = static_cast<int>(by_colony.size());
  if (values.empty()) return result;
  result.mean /= result.cases;
  std::vector<ColonySum> colonies;
  colonies.reserve(by_colony.size());
  for (const auto& [colony, sum] : by_colony) colonies.push_back(sum);
  const auto means = resampled_means(colonies, name, seed);
  result.low = means[means.size() / 10];
  result.high = means[means.size() * 9 / 10];
  return result;
}

Comparison compare(const std::vector<ScorePair>& pairs, std::string_view name, std::uint64_t seed) {
  Comparison result;
  std::vector<CaseValue> gains;
  gains.reserve(pairs.size());
  for (const ScorePair& pair : pairs) {
    result.ours += pair.ours;
    result.other += pair.other;
    gains.push_back({pair.colony, pair.other - pair.ours});
  }
  const MeanOfCases gain = mean_over_colonies(gains, name, seed);
  result.cases = gain.cases;
  result.colonies = gain.colonies;
  result.low = gain.low;
  result.high = gain.high;
  result.verdict = "too few colonies";
  if (pairs.empty()) return result;
  result.ours /= result.cases;
  result.other /= result.cases;
  if (static_cast<std::size_t>(gain.colonies) < fewest_colonies) return result;
  const bool alike = std::max(std::abs(result.low), std::abs(result.high)) < no_difference;
  if (alike) {
    result.verdict = "the same";
    return result;
  }
  result.verdict = result.low > 0 ? "better" : (result.high < 0 ? "worse" : "not told apart");
  return result;
}

}  // namespace beegarth::garth
