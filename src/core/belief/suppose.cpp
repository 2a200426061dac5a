#include "belief/suppose.hpp"

#include <algorithm>

#include "belief/colony_fit.hpp"
#include "belief/entry_words.hpp"
#include "belief/smc.hpp"
#include "belief/trace.hpp"
#include "belief/weather_ahead.hpp"
#include "belief/without.hpp"

namespace beegarth::belief {
namespace {

using colony::Quantity;

constexpr std::array<Quantity, fan_count> shown{Quantity::bees, Quantity::brood_cells, Quantity::stores_kg,
                                                Quantity::mites, Quantity::mites_per_100_bees};

// United away: the colony is no more, and did not die of itself.
bool ends_it(const Intended& deed, const ColonyId& colony) {
  const auto* unite = std::get_if<entries::Unite>(&deed.payload);
  return unite != nullptr && unite->from == colony;
}

class Follower {
 public:
  Follower(const Setting& setting, const ColonyId& colony, const Way& way, int last)
      : setting_(setting),
        colony_(colony),
        way_(way),
        last_(last),
        trace_(setting.timeline.began + setting.today, last - setting.today, setting.members),
        came_(static_cast<std::size_t>(setting.members)),
        taken_kg_(came_.size(), 0.0F),
        less_there_(came_.size(), 0.0) {
    for (Came& one : came_) one.least_stores_kg = 1e6F;
  }

  void follow(const Members& members, const facts::ForcingPath& future,
              const std::vector<std::uint32_t>& which) {
    colony::Ensemble ensemble = members.ensemble.take(which);
    ensemble.forget_events();
    const WeatherAhead weather(setting_.past, future);
    const colony::NoiseKey noise{luck_to_come(setting_.seed), setting_.colony, which};
    for (int day = setting_.today;; ++day) {
      morning(day, ensemble, which);
      if (day == last_) break;
      const auto deeds = actions(day, ensemble.dwelling());
      take_crop(deeds, ensemble, which, day);
      colony::advance_day(ensemble, setting_.model, weather.on(setting_.timeline.began + day), deeds, noise);
    }
    note_swarms(ensemble, which);
  }

  WayFollowed told(std::span<const double> weights) && {
    WayFollowed followed{way_.name, std::move(came_), fans_of(trace_, weights, last_ - setting_.today)};
    for (std::size_t i = 0; i < weights.size(); ++i)
      if (!followed.came[i].died && !followed.came[i].ended) followed.alive += weights[i];
    followed.alive = std::clamp(followed.alive, 0.0, 1.0);
    for (std::size_t i = 0; i < weights.size(); ++i) followed.less_honey_there += weights[i] * less_there_[i];
    return followed;
  }

 private:
  std::vector<colony::Action> actions(int day, const facts::Dwelling& dwelling) const {
    std::vector<colony::Action> list;
    if (day == setting_.today) list = actions_on(setting_, day, dwelling);
    for (const Intended& deed : way_.deeds) {
      if (deed.date - setting_.timeline.began != day) continue;
      if (ends_it(deed, colony_)) {
        list.emplace_back(colony::Kill{});
        continue;
      }
      const auto more = actions_of(deed.payload, setting_.figures, setting_.model, dwelling);
      list.insert(list.end(), more.begin(), more.end());
    }
    return list;
  }
  // Of the honey taken on a day; what is not for people is no surplus.
  float share_for_people(int day) const {
    double all = 0, for_people = 0;
    for (const Intended& deed : way_.deeds) {
      const auto* crop = std::get_if<entries::Harvest>(&deed.payload);
      if (crop == nullptr || deed.date - setting_.timeline.began != day) continue;
      all += crop->kg;
      for_people += crop->for_people.value_or(true) ? crop->kg : 0;
    }
    return all > 0 ? static_cast<float>(for_people / all) : 1.0F;
  }
  // What is there is taken, and no more.
  void take_crop(const std::vector<colony::Action>& deeds, const colony::Ensemble& ensemble,
                 const std::vector<std::uint32_t>& which, int day) {
    float wanted = 0;
    for (const colony::Action& deed : deeds)
      if (const auto* crop = std::get_if<colony::Harvest>(&deed))
        wanted += static_cast<float>(crop->honey_kg);
    if (wanted <= 0) return;
    const float counts = share_for_people(day);
    // As colony::Harvest takes it: with boxes on what is above the nest.
    const bool boxes = ensemble.dwelling().super_combs > 0;
    const auto there = ensemble.read(boxes ? Quantity::super_kg : Quantity::stores_kg);
    for (std::size_t k = 0; k < which.size(); ++k) {
      taken_kg_[which[k]] += counts * std::min(wanted, there[k]);
      if (wanted > there[k]) less_there_[which[k]] = 1;
    }
  }
  bool ended_by(int day) const {
    return std::any_of(way_.deeds.begin(), way_.deeds.end(), [&](const Intended& deed) {
      return ends_it(deed, colony_) && deed.date - setting_.timeline.began < day;
    });
  }

  // Sugar that lies above the nest is no crop.
  float fed_before(int day, const facts::Dwelling& dwelling) const {
    double fed = 0;
    for (const Intended& deed : way_.deeds) {
      if (deed.date - setting_.timeline.began >= day) continue;
      for (const colony::Action& action :
           actions_of(deed.payload, setting_.figures, setting_.model, dwelling))
        if (const auto* feed = std::get_if<colony::Feed>(&action)) fed += feed->stores_kg;
    }
    return static_cast<float>(fed);
  }

  void morning(int day, const colony::Ensemble& ensemble, const std::vector<std::uint32_t>& which) {
    const std::size_t row = trace_.at(day - setting_.today, 0);
    row_.resize(which.size());
    for (std::size_t q = 0; q < shown.size(); ++q) {
      ensemble.read(shown[q], row_);
      for (std::size_t k = 0; k < which.size(); ++k) trace_.values[q][row + which[k]] = row_[k];
    }
    const auto above = ensemble.read(Quantity::super_kg);
    const auto alive = ensemble.read(Quantity::alive);
    const bool ended = ended_by(day);
    const float fed_kg = fed_before(day, ensemble.dwelling());
    for (std::size_t k = 0; k < which.size(); ++k) {
      Came& one = came_[which[k]];
      const auto at = [&](std::size_t q) { return trace_.values[q][row + which[k]]; };
      one.bees = at(0);
      one.mites = at(3);
      if (alive[k] < 0.5F) {
        one.ended = one.ended || (ended && !one.died);
        one.died = one.died || !one.ended;
        continue;
      }
      one.surplus_kg = std::max(one.surplus_kg, taken_kg_[which[k]] + std::max(above[k] - fed_kg, 0.0F));
      one.least_stores_kg = std::min(one.least_stores_kg, at(2));
    }
  }
  void note_swarms(const colony::Ensemble& ensemble, const std::vector<std::uint32_t>& which) {
    for (std::size_t k = 0; k < which.size(); ++k)
      came_[which[k]].swarmed = ensemble.first_day(colony::Event::swarm, static_cast<int>(k)).has_value();
  }

  const Setting& setting_;
  const ColonyId& colony_;
  const Way& way_;
  int last_;
  Trace trace_;
  std::vector<Came> came_;
  std::vector<float> taken_kg_;     // by harvests of the way
  std::vector<double> less_there_;  // 1 where a harvest found less than it was to take
  std::vector<float> row_;
};

std::vector<facts::Reason> why_of_way(const ColonyFit& fit, const WayFollowed& way, const Tables& tables) {
  constexpr std::size_t most_of_each = 2;
  constexpr double worth_saying = 0.05;
  Happened happened(2);
  for (const Came& one : way.came) {
    happened[0].push_back(one.died ? 1.0 : 0.0);
    happened[1].push_back(one.swarmed ? 1.0 : 0.0);
  }
  const With with = with_all(std::move(happened), fit.fitted);
  const std::vector<Without> all = without_each(*fit.setting, fit.fitted, with);
  auto why = movers(*fit.setting, all, with, 0, "dies", most_of_each, tables.observation);
  if (way.less_honey_there >= worth_saying)
    why.insert(why.begin(),
               {"in " + percent(way.less_honey_there) +
                    " of the courses there is less honey than is to be taken: all of it was taken there",
                {},
                {}});
  for (auto& reason : movers(*fit.setting, all, with, 1, "swarms", most_of_each, tables.observation))
    why.push_back(std::move(reason));
  facts::Reason assumed{
      "taken from tables, not from entries: what weakens a colony and what makes it swarm", {}, {}};
  assumed.assumed = true;
  constexpr std::array<const char*, 5> rows{"winter_loss", "mite_burden_loss_per_day", "mite_reproduction",
                                            "swarming", "swarm_rate_per_day"};
  cite(assumed.sources, tables.colony, rows);
  why.push_back(std::move(assumed));
  return why;
}

Outcome can_be_followed(const Way& way, const Setting& setting, const ColonyId& colony,
                        const Options& options) {
  for (const Intended& deed : way.deeds) {
    // What is done on the last day has no morning after it to be seen on.
    if (deed.date < options.today || deed.date >= options.horizon)
      return bad_input("the deed of " + deed.date.iso() + " is not from " + options.today.iso() +
                           " on and before " + options.horizon.iso(),
                       way.name, "give a day within, or a later last day");
    if (std::holds_alternative<entries::Swarmed>(deed.payload))
      return bad_input("a swarm is not something that a keeper does", way.name, "suppose a split instead");
    const bool acts = ends_it(deed, colony) ||
                      !actions_of(deed.payload, setting.figures, setting.model, setting.dwelling).empty();
    if (!acts)
      return bad_input("'" + std::string(entries::kind_name(deed.payload)) + "' changes nothing in a colony",
                       way.name,
                       "suppose a feeding, a treatment, room, a split, a union, queens, or a harvest");
  }
  return Done{};
}

}  // namespace

Expected<Supposed> supposed_of(const ColonyFit& fit, const Forcing& forcing, const Tables& tables,
                               const Options& options, std::span<const Way> ways) {
  const Setting& setting = *fit.setting;
  for (const Way& way : ways)
    if (const auto sound = can_be_followed(way, setting, fit.colony, options); !sound) return sound.problem();

  const Fitted& fitted = fit.fitted;
  Supposed supposed{.today = options.today,
                    .last = options.horizon,
                    .weights = fitted.weights,
                    .family = fitted.members.family,
                    .effective_sample_size = effective_sample_size(fitted.weights)};
  const int last = options.horizon - fit.timeline.began;
  const auto members = static_cast<std::uint32_t>(setting.members);
  const auto futures = static_cast<std::uint32_t>(std::min<std::size_t>(forcing.futures.size(), members));
  for (std::uint32_t i = 0; i < members; ++i) supposed.future.push_back(static_cast<int>(i % futures));
  for (const Way& way : ways) {
    Follower follower(setting, fit.colony, way, last);
    for (std::uint32_t f = 0; f < futures; ++f) {
      std::vector<std::uint32_t> which;
      for (std::uint32_t i = f; i < members; i += futures) which.push_back(i);
      follower.follow(fitted.members, forcing.futures[f], which);
    }
    supposed.ways.push_back(std::move(follower).told(fitted.weights));
    supposed.ways.back().why = why_of_way(fit, supposed.ways.back(), tables);
  }
  return supposed;
}

Expected<Supposed> suppose(const History& history, const Forcing& forcing, const Tables& tables,
                           const Options& options, std::span<const Way> ways) {
  const auto fit = fit_colony(history, forcing, tables, options);
  if (!fit) return fit.problem();
  return supposed_of(**fit, forcing, tables, options, ways);
}

}  // namespace beegarth::belief
