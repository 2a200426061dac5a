// Odds that were given, held against how often it then happened.
#pragma once

#include <array>
#include <string>
#include <vector>

namespace beegarth::garth {

struct OddsSaid {
  std::string colony;
  double odds = 0;
  bool happened = false;
};

// The cases whose odds lie in one bin: from <= odds < to, the last one with its end.
struct ReliabilityRow {
  double from = 0;
  double to = 1;
  int cases = 0;
  double mean_odds = 0;
  double happened = 0;  // share
};

// Brier score = reliability - resolution + uncertainty + within_bins. Murphy 1973, J. Appl. Meteorol.
// 12:595-600; the last part, none where all odds of a bin are equal: Stephenson, Coelho & Jolliffe 2008,
// Weather and Forecasting 23:752-757.
struct Reliability {
  int cases = 0;
  double brier = 0;
  double reliability = 0;  // how far the odds of a bin lie from what happened: 0 is best
  double resolution = 0;   // how far what happened differs between the bins: much is best
  double uncertainty = 0;  // of the event itself
  double within_bins = 0;
  std::vector<ReliabilityRow> rows;  // of bins that hold cases
};

// Narrow at the ends, where odds are acted on.
inline constexpr std::array<double, 8> reliability_edges{0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1};

Reliability reliability_of(const std::vector<OddsSaid>& said);

}  // namespace beegarth::garth
