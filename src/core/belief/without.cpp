#include "belief/without.hpp"

#include <algorithm>
#include <cmath>

#include "belief/entry_words.hpp"
#include "belief/kin.hpp"
#include "belief/pareto.hpp"

namespace beegarth::belief {
namespace {

double odds_of(std::span<const double> happened, std::span<const double> weights) {
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * happened[i];
  return std::min(1.0, sum);
}

}  // namespace

With with_all(Happened happened, const Fitted& fitted) {
  With with{std::move(happened), {}, {}, effective_families(fitted.weights, fitted.members.family)};
  for (const auto& what : with.happened) {
    with.odds.push_back(odds_of(what, fitted.weights));
    with.error.push_back(share_error(fitted.weights, what, fitted.members.family));
  }
  return with;
}

std::vector<Without> without_each(const Setting& setting, const Fitted& fitted, const With& with) {
  std::vector<Without> all;
  for (const Group& group : setting.groups) {
    for (std::size_t o = group.first; o < group.last; ++o) {
      std::vector<double> ratios(fitted.weights.size());
      for (std::size_t i = 0; i < ratios.size(); ++i) {
        ratios[i] = std::log(std::max(fitted.weights[i], 1e-300)) - fitted.members.log_seen[o][i];
      }
      const SmoothedWeights smoothed = pareto_smoothed(ratios);
      Without one{o, {}, {}, errors_beyond_chance(with.families), smoothed.shape};
      for (const auto& what : with.happened) {
        one.odds.push_back(odds_of(what, smoothed.weights));
        one.error.push_back(change_error(fitted.weights, smoothed.weights, what, fitted.members.family));
      }
      all.push_back(std::move(one));
    }
  }
  return all;
}

double moved(const Without& without, std::size_t what, double with) {
  const double change = std::abs(without.odds[what] - with);
  if (change < without.beyond_chance * without.error[what]) return 0;
  if (!without.refitted && without.shape > 1) return 0;
  return !without.refitted && without.shape > 0.7 ? 0.5 * change : change;
}

std::vector<facts::Reason> movers(const Setting& setting, const std::vector<Without>& all, const With& with,
                                  std::size_t what, const char* odds_of, std::size_t most,
                                  const FactTable& observation) {
  constexpr double worth_saying = 0.02;  // two percentage points
  std::vector<const Without*> order;
  order.reserve(all.size());
  for (const Without& one : all) order.push_back(&one);
  const double odds = with.odds[what];
  std::stable_sort(order.begin(), order.end(), [&](const Without* a, const Without* b) {
    return moved(*a, what, odds) > moved(*b, what, odds);
  });
  std::vector<facts::Reason> reasons;
  for (const Without* one : order) {
    if (reasons.size() == most || moved(*one, what, odds) < worth_saying) break;
    const Observation& seen = setting.timeline.observations[one->observation];
    const entries::Entry& entry = setting.timeline.entries[seen.entry];
    const bool rough = !one->refitted && one->shape > 0.7;  // k: Vehtari et al. 2024
    facts::Reason reason{describe(entry) + ": " + odds_of + " " + percent(odds) + " with it, " +
                             (rough ? "about " : "") + percent(one->odds[what]) + " without",
                         {entry.id},
                         {}};
    reason.moved = facts::Moved{spoken_kind(entry), entry.happened};
    cite(reason.sources, observation, rows_behind(seen.sight));
    reasons.push_back(std::move(reason));
  }
  return reasons;
}

}  // namespace beegarth::belief
