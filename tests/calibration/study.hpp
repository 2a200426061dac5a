// Invented colonies, fitted: where the truth lies among the members.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string>
#include <vector>

#include "belief/filter.hpp"
#include "belief/project.hpp"
#include "belief/smc.hpp"
#include "calibration/synthetic.hpp"

namespace beegarth::calibration {

struct Size {
  int colonies = 0;
  int members = 0;
  int sweeps = 0;
  int futures = 0;
};

inline constexpr int draws = 31;  // nearly independent ones, out of the members of one fit
inline constexpr std::array<int, 3> days_ahead{0, 14, 28};

inline constexpr std::size_t events_judged = belief::death_index + 1;  // not those decided in autumn
inline constexpr std::array<int, 2> event_days_ahead{14, 28};
struct EventTold {
  double odds = 0;
  bool happened = false;
};

struct Fitted {
  std::array<std::array<EventTold, event_days_ahead.size()>, events_judged> events;
  std::vector<int> ranks;  // of the truth among the draws, by quantity of rank_names()
  // Place of the truth in the crowd, 0..1: [quantity of judged()][days_ahead].
  std::vector<std::array<double, days_ahead.size()>> places;
  double ess = 0;
  double accepted = 0;
  double sweeps = 0;
  int families = 0;
};

inline std::vector<std::string> state_names() {
  std::vector<std::string> names;
  for (const auto quantity : synthetic::judged()) names.emplace_back(colony::name_of(quantity));
  names.pop_back();  // alive: nearly all are
  return names;
}

inline std::vector<std::string> rank_names() {
  std::vector<std::string> names = state_names();
  names.emplace_back("log likelihood");
  for (const auto& trait : colony::all_traits()) names.emplace_back(trait.key);
  for (const char* name : belief::start_names) names.emplace_back(name);
  for (const auto& row : belief::observer_rows()) names.emplace_back(row.key);
  return names;
}

// Members drawn without regard to their order, each once as long as none has more weight than a draw:
// neighbours are kin.
inline std::vector<std::size_t> drawn_members(const std::vector<double>& weights, Stream& luck) {
  std::vector<std::size_t> order(weights.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  for (std::size_t i = order.size(); i > 1; --i) {
    const auto with = static_cast<std::size_t>(luck.uniform() * static_cast<double>(i));
    std::swap(order[i - 1], order[std::min(with, i - 1)]);
  }
  std::vector<double> shuffled;
  shuffled.reserve(order.size());
  for (const std::size_t i : order) shuffled.push_back(weights[i]);
  std::vector<std::size_t> drawn;
  for (const int at : belief::systematic_ancestors(shuffled, luck.uniform(), draws))
    drawn.push_back(order[static_cast<std::size_t>(at)]);
  return drawn;
}

// Among equals the truth takes a place by chance, so that what is often none has uniform ranks too.
template <class Values>
int rank_of(double truth, const Values& values, const std::vector<std::size_t>& drawn, Stream& luck) {
  int below = 0;
  int equal = 0;
  for (const std::size_t i : drawn) {
    below += values[i] < truth ? 1 : 0;
    equal += values[i] == truth ? 1 : 0;
  }
  return below + std::min(equal, static_cast<int>(luck.uniform() * (equal + 1)));
}

inline double place_of(double truth, std::span<const float> values, const std::vector<double>& weights,
                       Stream& luck) {
  double below = 0;
  double equal = 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    (values[i] < truth ? below : equal) += values[i] <= truth ? weights[i] : 0.0;
  }
  return below + luck.uniform() * equal;
}

inline Fitted fit(const synthetic::Plan& plan, const Size& size, std::uint64_t study, int number,
                  const belief::Tables& tables) {
  const synthetic::Colony one = synthetic::draw_colony(plan, study, number, size.futures, tables);
  const belief::Options options{.members = size.members,
                                .sweeps = size.sweeps,
                                .seed = 77 + study,
                                .today = plan.today,
                                .horizon = plan.horizon,
                                .explain = false};
  const belief::Timeline timeline = belief::lay_out(one.history, plan.today);
  const belief::Setting setting =
      synthetic::detail::setting_of(one.history, one.forcing, timeline, tables, options);
  const belief::Fitted fitted = belief::fit_to_entries(setting);

  Fitted result;
  result.ess = belief::effective_sample_size(fitted.weights);
  result.accepted = fitted.accepted;
  result.sweeps = fitted.sweeps;
  std::vector<int> families = fitted.members.family;
  std::sort(families.begin(), families.end());
  result.families = static_cast<int>(std::unique(families.begin(), families.end()) - families.begin());

  Stream luck({.seed = study, .member = static_cast<std::uint32_t>(number), .purpose = Purpose::scoring});
  const std::vector<std::size_t> drawn = drawn_members(fitted.weights, luck);
  const std::vector<double>& today = one.truth.on_day.at(setting.today);
  for (std::size_t q = 0; q < state_names().size(); ++q) {
    result.ranks.push_back(
        rank_of(today[q], fitted.members.ensemble.read(synthetic::judged()[q]), drawn, luck));
  }
  std::vector<double> log_likelihoods(static_cast<std::size_t>(size.members));
  for (const auto& group : setting.groups) {
    const auto logs = belief::log_group(fitted.members, setting, group);
    for (std::size_t i = 0; i < logs.size(); ++i) log_likelihoods[i] += logs[i];
  }
  result.ranks.push_back(rank_of(one.truth.log_likelihood, log_likelihoods, drawn, luck));
  for (std::size_t d = 0; d < belief::dims; ++d) {
    std::vector<double> coordinate;
    coordinate.reserve(static_cast<std::size_t>(size.members));
    for (int i = 0; i < size.members; ++i) coordinate.push_back(fitted.members.at(i)[d]);
    result.ranks.push_back(rank_of(one.truth.coordinates[d], coordinate, drawn, luck));
  }
  if (size.futures == 0) return result;

  const belief::Projected projected =
      belief::project(setting, fitted, one.forcing, plan.today + days_ahead.back());
  static constexpr std::array<belief::Traced, 7> traced{
      belief::Traced::bees,          belief::Traced::brood_cells, belief::Traced::capped_cells,
      belief::Traced::stores_kg,     belief::Traced::mites,       belief::Traced::mites_per_100_bees,
      belief::Traced::infested_share};  // as judged()
  for (std::size_t q = 0; q < traced.size(); ++q) {
    result.places.emplace_back();
    for (std::size_t a = 0; a < days_ahead.size(); ++a) {
      const int on = setting.today + days_ahead[a];
      result.places[q][a] =
          place_of(one.truth.on_day.at(on)[q], projected.trace.row(traced[q], on), fitted.weights, luck);
    }
  }
  for (std::size_t event = 0; event < events_judged; ++event) {
    const std::vector<int>& first_day = projected.trace.first_day[event];
    for (std::size_t a = 0; a < event_days_ahead.size(); ++a) {
      const int by = setting.today + event_days_ahead[a];
      EventTold& told = result.events[event][a];
      for (std::size_t i = 0; i < first_day.size(); ++i)
        told.odds += first_day[i] <= by ? fitted.weights[i] : 0;
      told.happened = one.truth.first_day[event] <= by;
    }
  }
  return result;
}

}  // namespace beegarth::calibration
