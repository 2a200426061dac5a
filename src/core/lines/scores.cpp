#include "lines/scores.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "lines/mixed_model.hpp"

namespace beegarth::lines {
namespace {

// Below this many differences a standard deviation is itself known to no better than about a quarter
// (1/sqrt(2 n)).
constexpr int few_differences = 8;
// Below this the estimate is less than half of what the data alone would say.
constexpr double low_reliability = 0.5;

struct Grouped {
  std::vector<Record> records;
  int groups = 0;
  int uncompared = 0;
};

Grouped grouped_by_site_and_year(const std::vector<const Score*>& scores) {
  std::map<std::pair<std::string, int>, std::size_t> groups;
  std::map<std::size_t, std::set<std::size_t>> queens_in;
  std::map<std::size_t, double> firsts;
  Grouped grouped;
  for (const Score* score : scores) {
    const std::size_t group =
        groups.emplace(std::pair(score->site, score->year), groups.size()).first->second;
    queens_in[group].insert(score->queen);
    // From the group's first score, so that large figures do not drown small differences and like scores
    // differ by exactly nothing. The group's mean takes it up.
    const double first = firsts.emplace(group, score->value).first->second;
    grouped.records.push_back({score->queen, group, score->value - first});
  }
  grouped.groups = static_cast<int>(groups.size());
  for (const Record& record : grouped.records)
    grouped.uncompared += queens_in[record.group].size() == 1 ? 1 : 0;
  return grouped;
}

std::string plain_words(const TraitEstimates& trait) {
  if (trait.uncompared == trait.scores)
    return "no site and year has scores of two queens, so nothing can be compared and every estimate is 0";
  double best = 0;
  for (const ScoreEstimate& queen : trait.queens) best = std::max(best, queen.reliability);
  std::string words;
  if (best < low_reliability)
    words =
        "few data: even the best known queen has a reliability below one half, so all estimates lie close to "
        "the mean "
        "and their order can change with every new score";
  else
    words =
        "the best known queen has a reliability of one half or more; queens with less lie closer to the mean";
  if (trait.differences < few_differences)
    words += "; the spread and so the standard errors rest on " + std::to_string(trait.differences) +
             (trait.differences == 1 ? " difference" : " differences") + " only";
  if (trait.uncompared > 0)
    words += "; " + std::to_string(trait.uncompared) +
             (trait.uncompared == 1 ? " score has" : " scores have") +
             " no score of another queen beside it at its site in its year and tells nothing";
  return words;
}

TraitEstimates estimate_one(const std::string& name, const std::vector<const Score*>& scores,
                            const Square& relationship, const FactRow& share) {
  const Grouped grouped = grouped_by_site_and_year(scores);
  const MixedModel middle = solve_mixed_model(relationship, grouped.records, share.value);
  const MixedModel low = solve_mixed_model(relationship, grouped.records, share.low.value_or(share.value));
  const MixedModel high = solve_mixed_model(relationship, grouped.records, share.high.value_or(share.value));
  TraitEstimates trait{name, static_cast<int>(scores.size()), grouped.groups, grouped.uncompared,
                       middle.differences};
  trait.queens_share = share.value;
  // Scores that all agree, or that nothing stands beside, leave no spread to judge errors by.
  const bool spread_known = grouped.uncompared < trait.scores && middle.residual_variance.value_or(0) > 0;
  if (spread_known) trait.spread = std::sqrt(*middle.residual_variance / (1 - share.value));
  for (std::size_t i = 0; i < relationship.size; ++i) {
    const Effect& effect = middle.individuals[i];
    ScoreEstimate queen{effect.estimate, std::nullopt, effect.reliability, low.individuals[i].estimate,
                        high.individuals[i].estimate};
    if (spread_known) queen.standard_error = std::sqrt(effect.error_part * *middle.residual_variance);
    trait.queens.push_back(queen);
  }
  for (const Score* score : scores) ++trait.queens[score->queen].scores;
  trait.plainly = plain_words(trait);
  return trait;
}

}  // namespace

Expected<std::vector<TraitEstimates>> estimate_scores(const Pedigree& pedigree,
                                                      const std::vector<Score>& scores,
                                                      const FactTable& table) {
  const auto known = table.value("score_share_of_queen");
  if (!known) return known.problem();
  const FactRow& share = *table.find("score_share_of_queen");
  for (const double value : {share.value, share.low.value_or(share.value), share.high.value_or(share.value)})
    if (!(value > 0 && value < 1))
      return bad_input("the share of the queen must lie between 0 and 1", "lines.score_share_of_queen",
                       "override it with a share such as 0.3");
  auto relationship = coancestry_table(pedigree);
  if (!relationship) return relationship.problem();
  for (double& cell : relationship->cells) cell *= 2;
  std::map<std::string, std::vector<const Score*>> by_trait;
  for (const Score& score : scores) by_trait[score.trait].push_back(&score);
  std::vector<TraitEstimates> traits;
  traits.reserve(by_trait.size());
  for (const auto& [name, of_trait] : by_trait)
    traits.push_back(estimate_one(name, of_trait, *relationship, share));
  return traits;
}

}  // namespace beegarth::lines
