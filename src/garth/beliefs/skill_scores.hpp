// Scores of forecasts against what was then seen. Lower is better for each of them.
// Gneiting & Raftery 2007, Strictly proper scoring rules, prediction, and estimation, JASA 102:359-378.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beegarth::garth {

// Continuous ranked probability score of a weighted sample: the integral over x of (F(x) - [x >= seen])^2, in
// the unit of what was seen. Of a single point it is the absolute error. `values` ascend; weights sum to one.
double crps(const std::vector<double>& values, const std::vector<double>& weights, double seen);
double crps(std::vector<double> values, double seen);  // all weigh the same, in any order

// (p - [it happened])^2: the same as the CRPS of p at 1 and 1 - p at 0.
double brier(double p, bool happened);

// A mean over cases with its 80 % interval over colonies: they are drawn with replacement, all cases of a
// colony together, because cases of one colony are not independent.
struct MeanOfCases {
  int cases = 0;
  int colonies = 0;
  double mean = 0;
  double low = 0;
  double high = 0;
};
struct CaseValue {
  std::string colony;
  double value = 0;
};
// `name` tells the streams of different means apart.
MeanOfCases mean_over_colonies(const std::vector<CaseValue>& values, std::string_view name,
                               std::uint64_t seed);

// One score of the forecast and of what it is held against, of one colony.
struct ScorePair {
  std::string colony;
  double ours = 0;
  double other = 0;
};

struct Comparison {
  int cases = 0;
  int colonies = 0;
  double ours = 0;  // mean scores over the same cases
  double other = 0;
  double low = 0;  // 80 % interval of the mean of (other - ours): above 0 the forecast is better
  double high = 0;
  std::string verdict;  // "better", "worse", "not told apart", "the same", "too few colonies"
};

Comparison compare(const std::vector<ScorePair>& pairs, std::string_view name, std::uint64_t seed);

}  // namespace beegarth::garth
