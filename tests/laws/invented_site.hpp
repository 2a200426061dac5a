// Colonies of one invented site, whose truth is known: one weather, and coordinates of which a part is
// common, as belief/shared.hpp takes it. What is written of them is drawn as in calibration/synthetic.hpp.
#pragma once

#include <cmath>
#include <utility>
#include <vector>

#include "belief/colony_fit.hpp"
#include "calibration/synthetic.hpp"

namespace beegarth::synthetic {

struct Common {
  std::array<double, belief::site_shared> site{};
  std::array<double, belief::keeper_shared> keeper{};
};

inline Common draw_common(std::uint64_t study) {
  Stream luck({.seed = study ^ 0x636f6d6d6f6e0000ULL, .purpose = Purpose::synthetic_truth});
  Common common;
  for (double& u : common.site) u = luck.normal();
  for (double& u : common.keeper) u = luck.normal();
  return common;
}

// Coordinates of a colony of which a part is common.
inline std::vector<double> with_common(const belief::SharedPrior& prior, const Common& common, Stream& luck) {
  std::vector<double> own;
  own.reserve(belief::dims);
  for (int d = 0; d < belief::dims; ++d) own.push_back(luck.normal());
  const auto mix = [&](std::size_t d, double share, double u) {
    own[d] = std::sqrt(1 - share) * own[d] + std::sqrt(share) * u;
  };
  mix(static_cast<std::size_t>(colony::Trait::collecting), prior.site[0], common.site[0]);
  mix(static_cast<std::size_t>(colony::Trait::mite_immigration), prior.site[1], common.site[1]);
  for (std::size_t d = 0; d < belief::keeper_shared; ++d)
    mix(colony::trait_count + belief::start_dims + d, prior.keeper[d], common.keeper[d]);
  return own;
}

// One true course to the horizon; `see` is called on every morning with what would show itself.
using OnTrueMorning =
    std::function<void(int day, const belief::Visible& there, double fall, const belief::ObserverTraits& ways,
                       const belief::ObservationErrors&)>;
inline void live_truly(Colony& colony, const Plan& plan, const facts::ForcingPath& weather,
                       std::uint64_t seed, const belief::Tables& tables, const OnTrueMorning& see) {
  const belief::Options lone{.members = 1, .seed = seed, .today = plan.horizon, .horizon = plan.horizon};
  const belief::Forcing whole{weather, {}};
  const belief::Timeline timeline = belief::lay_out(colony.history, plan.horizon);
  const belief::Setting setting = detail::setting_of(colony.history, whole, timeline, tables, lone);
  belief::Members truth = detail::true_course(setting, colony.truth.coordinates);
  const belief::ObserverTraits ways = belief::observer_of(truth, setting, 0);
  const auto morning = [&](int day, const colony::Ensemble& ensemble) {
    for (const auto quantity : judged()) colony.truth.on_day[day].push_back(ensemble.read(quantity)[0]);
    see(day, belief::all_visible(ensemble)[0], ensemble.read(colony::Quantity::mite_fall_per_day)[0], ways,
        setting.errors);
  };
  belief::live_to(truth, setting, setting.today, morning);
  morning(setting.today, truth.ensemble);
}

// Colony `number` of the site of that study, looked at as `plan` says, in the weather that all of the site
// have.
inline Colony colony_of_site(const Plan& plan, std::uint64_t study, int number, const Common& common,
                             int futures, const belief::Tables& tables) {
  const auto prior = belief::shared_prior(tables.observation);
  if (!prior) throw std::runtime_error(one_line(prior.problem()));
  const std::uint64_t weather = study * 1'000'000 + 999'999;
  const facts::ForcingPath whole = season(weather, plan.began, plan.horizon);
  Colony colony;
  colony.history.colony = ColonyId("site-" + std::to_string(study) + "-" + std::to_string(number));
  colony.history.began = plan.began;
  colony.history.entries = plan.deeds;
  for (const auto& one : whole) {
    if (one.date < plan.today) colony.forcing.past.push_back(one);
  }
  for (int f = 0; f < futures; ++f) {
    auto path = forked_season(weather, plan.began, plan.horizon, plan.today,
                              (weather << 12U) + static_cast<std::uint64_t>(f) + (1ULL << 60U));
    path.erase(path.begin(), path.begin() + (plan.today - plan.began));
    colony.forcing.futures.push_back(std::move(path));
  }
  const std::uint64_t seed = study ^ 0x7369746500000000ULL;
  Stream luck({.seed = seed,
               .colony = stable_hash(colony.history.colony.text()),
               .purpose = Purpose::synthetic_truth});
  colony.truth.coordinates = with_common(*prior, common, luck);
  int written = 1000;
  std::vector<entries::Entry> seen;
  std::map<int, double> falls;
  live_truly(colony, plan, whole, seed, tables,
             [&](int day, const belief::Visible& there, double fall, const belief::ObserverTraits& ways,
                 const belief::ObservationErrors& errors) {
               falls[day] = fall;
               for (const Visit& visit : plan.visits) {
                 if (visit.date - plan.began != day) continue;
                 const double fallen = falls[day] + falls[day - 1] + falls[day - 2];
                 Stream eyes({.seed = seed,
                              .colony = stable_hash(colony.history.colony.text()),
                              .day = day + 1,
                              .purpose = Purpose::synthetic_truth});
                 for (auto& payload : detail::written_at(visit, there, fallen, ways, errors, eyes))
                   seen.push_back(entry_on(visit.date, ++written, std::move(payload)));
               }
             });
  colony.history.entries.insert(colony.history.entries.end(), seen.begin(), seen.end());
  return colony;
}

}  // namespace beegarth::synthetic
