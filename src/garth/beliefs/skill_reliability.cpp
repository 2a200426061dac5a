#include "garth/beliefs/skill_reliability.hpp"

#include <algorithm>

#include "garth/beliefs/skill_scores.hpp"

namespace beegarth::garth {
namespace {

std::size_t bin_of(double odds) {
  const auto inner = std::upper_bound(reliability_edges.begin() + 1, reliability_edges.end() - 1, odds);
  return static_cast<std::size_t>(inner - reliability_edges.begin()) - 1;
}

std::vector<ReliabilityRow> rows_of(const std::vector<OddsSaid>& said) {
  std::vector<ReliabilityRow> rows;
  for (std::size_t b = 0; b + 1 < reliability_edges.size(); ++b)
    rows.push_back({.from = reliability_edges.at(b), .to = reliability_edges.at(b + 1)});
  for (const OddsSaid& one : said) {
    ReliabilityRow& row = rows[bin_of(one.odds)];
    ++row.cases;
    row.mean_odds += one.odds;
    row.happened += one.happened ? 1 : 0;
  }
  for (ReliabilityRow& row : rows) {
    if (row.cases == 0) continue;
    row.mean_odds /= row.cases;
    row.happened /= row.cases;
  }
  return rows;
}

}  // namespace

Reliability reliability_of(const std::vector<OddsSaid>& said) {
  Reliability result;
  if (said.empty()) return result;
  result.cases = static_cast<int>(said.size());
  const double share = 1.0 / result.cases;  // of one case
  const std::vector<ReliabilityRow> rows = rows_of(said);
  double happened = 0;
  for (const OddsSaid& one : said) {
    const ReliabilityRow& row = rows[bin_of(one.odds)];
    const double off = one.odds - row.mean_odds;
    const double seen = one.happened ? 1 : 0;
    result.brier += share * brier(one.odds, one.happened);
    result.within_bins += share * (off * off - 2 * off * (seen - row.happened));
    happened += share * seen;
  }
  for (const ReliabilityRow& row : rows) {
    const double part = row.cases * share;
    result.reliability += part * (row.mean_odds - row.happened) * (row.mean_odds - row.happened);
    result.resolution += part * (row.happened - happened) * (row.happened - happened);
    if (row.cases > 0) result.rows.push_back(row);
  }
  result.uncertainty = std::max(0.0, happened * (1 - happened));
  return result;
}

}  // namespace beegarth::garth
