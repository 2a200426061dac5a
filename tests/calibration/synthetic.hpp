// Invented colonies whose truth is known, and the entries that a keeper with eyes of their own would have
// written.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include "belief/belief.hpp"
#include "belief/members.hpp"
#include "calibration/season.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::synthetic {

inline belief::Tables tables() {
  auto all = garth::Tables::built_in();
  if (!all) throw std::runtime_error(one_line(all.problem()));
  return {(*all)["colony"], (*all)["observation"]};
}

inline Date day(int year, int month, int day_of_month) {
  return *Date::from_ymd(year, month, day_of_month);
}

inline entries::Entry entry_on(Date date, int number, entries::Payload payload) {
  entries::Entry entry;
  entry.id = EntryId("entry-" + std::to_string(number));
  entry.happened = date;
  entry.written = {static_cast<std::int64_t>(date.day_number()) * 86'400'000 + number, 0};
  entry.payload = std::move(payload);
  return entry;
}

struct Plan {
  Date began = day(2031, 3, 1);
  Date today = day(2031, 7, 10);
  Date horizon = day(2031, 8, 20);
  std::vector<Date> looks;   // full inspections
  std::vector<Date> boards;  // three days each
  std::vector<Date> rolls;   // 300 bees
  std::vector<entries::Entry> deeds;
};

inline const std::vector<colony::Quantity>& judged() {
  using Q = colony::Quantity;
  static const std::vector<Q> list{Q::bees,  Q::brood_cells,  Q::stores_kg,
                                   Q::mites, Q::capped_cells, Q::alive};
  return list;
}

struct Truth {
  std::map<int, std::vector<double>> on_day;  // [days since began][judged]
  std::vector<float> traits;                  // standard scores
};

struct Colony {
  belief::History history;  // deeds and sights
  Truth truth;
};

// What a keeper writes of a true state, drawn from the observation model with the errors of the table.
class Keeper {
 public:
  Keeper(std::uint64_t seed, int member, const belief::ObserverTraits& ways,
         const belief::ObservationErrors& errors)
      : stream_({.seed = seed,
                 .member = static_cast<std::uint32_t>(member),
                 .purpose = Purpose::synthetic_truth}),
        ways_(ways),
        errors_(errors) {}

  entries::Inspection look(const belief::Visible& there) {
    const auto& e = errors_;
    entries::Inspection seen;
    seen.seams =
        std::round(amount(belief::expected_seams(there, ways_.bees_factor), e.seams_error, e.floor_seams));
    seen.brood_combs =
        std::round(amount(belief::expected_brood_combs(there, ways_.brood_factor), e.brood_combs_error, 0.3));
    seen.capped_cells = amount(there.capped_cells * ways_.brood_factor, e.capped_cells_error, e.floor_cells);
    seen.stores_kg = amount(there.stores_kg * ways_.stores_factor, e.stores_error, e.floor_stores);
    seen.eggs = flag(there.eggs / (there.eggs + e.eggs_half) * e.eggs_seen);
    seen.queen = flag(there.laying_queen ? e.queen_seen : there.virgin_queen ? e.virgin_seen : 0.0);
    const double cells = there.charged_cells < 0.5 ? 0.0 : 1 - std::pow(1 - e.cell_seen, there.charged_cells);
    seen.charged_cells =
        flag(cells) ? std::max(1, static_cast<int>(std::lround(there.charged_cells * 0.8))) : 0;
    return seen;
  }

  entries::MiteCount board(double fallen) {
    entries::MiteCount count;
    count.days = 3;
    count.mites = negative_binomial(fallen * ways_.board_factor, errors_.board_size);
    return count;
  }

  entries::MiteCount roll(const belief::Visible& there) {
    entries::MiteCount count;
    count.method = entries::MiteMethod::sugar_roll;
    count.bees = 300;
    count.mites = negative_binomial(
        300 * there.mites_on_adults / std::max(1.0, there.bees) * ways_.recovery_roll, errors_.sample_size);
    return count;
  }

 private:
  double amount(double expected, double sd, double floor) {
    return std::max(0.0, (expected + floor) * std::exp(sd * stream_.normal()) - floor);
  }
  bool flag(double odds) {
    return stream_.uniform() < errors_.false_sight + (1 - 2 * errors_.false_sight) * odds;
  }
  int negative_binomial(double mean, double size) {
    return stream_.poisson(mean * stream_.gamma(size) / size);
  }

  Stream stream_;
  belief::ObserverTraits ways_;
  const belief::ObservationErrors& errors_;
};

inline belief::Visible visible(const colony::Ensemble& e, std::size_t i) {
  using Q = colony::Quantity;
  const auto get = [&](Q q) { return static_cast<double>(e.read(q)[i]); };
  belief::Visible v;
  v.alive = get(Q::alive) > 0.5;
  v.bees = get(Q::bees);
  v.drones = get(Q::drones);
  v.eggs = get(Q::eggs);
  v.larvae = get(Q::open_brood);
  v.capped_cells = get(Q::capped_cells);
  v.brood_cells = get(Q::brood_cells) + get(Q::drone_brood);
  v.stores_kg = get(Q::stores_kg);
  v.laying_queen = get(Q::queen_laying) > 0.5;
  v.virgin_queen = !v.laying_queen && get(Q::queen_present) > 0.5;
  v.charged_cells = get(Q::charged_cells);
  v.sealed_cells = get(Q::sealed_cells);
  v.mites_on_adults = get(Q::mites_on_bees);
  v.infested_share = get(Q::infested_share);
  v.dwelling = e.dwelling();
  return v;
}

// `count` colonies drawn from the prior, living through `weather` (which reaches the horizon).
inline std::vector<Colony> draw_colonies(const Plan& plan, std::uint64_t seed, int count,
                                         const belief::Tables& tables, const facts::ForcingPath& weather) {
  belief::History history;
  history.colony = ColonyId("truth-" + std::to_string(seed));
  history.began = plan.began;
  history.entries = plan.deeds;
  const belief::Options options{
      .members = count, .seed = seed, .today = plan.horizon, .horizon = plan.horizon};
  const belief::Timeline timeline = belief::lay_out(history, plan.horizon);
  const belief::Forcing forcing{weather, {}};
  auto setting = belief::make_setting(history, forcing, timeline, tables, options);
  if (!setting) throw std::runtime_error(one_line(setting.problem()));
  belief::Members members = belief::before_seeing(*setting);
  const auto n = static_cast<std::size_t>(count);
  std::vector<Colony> colonies(n);
  std::vector<Keeper> keepers;
  for (std::size_t i = 0; i < n; ++i) {
    colonies[i].history = history;
    colonies[i].history.colony = ColonyId("colony-" + std::to_string(seed) + "-" + std::to_string(i));
    keepers.emplace_back(seed, static_cast<int>(i),
                         belief::observer_of(members, *setting, static_cast<int>(i)), setting->errors);
    for (std::size_t t = 0; t < colony::trait_count; ++t) {
      colonies[i].truth.traits.push_back(static_cast<float>(members.at(static_cast<int>(i))[t]));
    }
  }
  std::vector<std::vector<double>> fallen(plan.boards.size(), std::vector<double>(n, 0.0));
  int number = 1000;
  const auto morning = [&](int day_number, const colony::Ensemble& ensemble) {
    const Date date = plan.began + day_number;
    const auto is_in = [&](const std::vector<Date>& dates) {
      return std::find(dates.begin(), dates.end(), date) != dates.end();
    };
    std::vector<std::vector<float>> values;
    for (const auto q : judged()) values.push_back(ensemble.read(q));
    const auto fall = ensemble.read(colony::Quantity::mite_fall_per_day);
    for (std::size_t b = 0; b < plan.boards.size(); ++b) {
      // The fall of the evening before belongs to the day before.
      const int before = plan.boards[b] - date;
      if (before >= 0 && before < 3) {
        for (std::size_t i = 0; i < n; ++i) fallen[b][i] += fall[i];
      }
    }
    for (std::size_t i = 0; i < n; ++i) {
      for (const auto& column : values) colonies[i].truth.on_day[day_number].push_back(column[i]);
      if (date > plan.today) continue;
      const belief::Visible there = visible(ensemble, i);
      if (!there.alive) continue;
      auto& entries = colonies[i].history.entries;
      if (is_in(plan.looks)) entries.push_back(entry_on(date, ++number, keepers[i].look(there)));
      for (std::size_t b = 0; b < plan.boards.size(); ++b) {
        if (plan.boards[b] == date)
          entries.push_back(entry_on(date, ++number, keepers[i].board(fallen[b][i])));
      }
      if (is_in(plan.rolls)) entries.push_back(entry_on(date, ++number, keepers[i].roll(there)));
    }
  };
  belief::live_to(members, *setting, setting->today, morning);
  morning(setting->today, members.ensemble);
  return colonies;
}

// The usual plan: a look every two to three weeks, two boards, two rolls, supers on, one feed.
inline Plan usual_plan() {
  Plan plan;
  plan.looks = {day(2031, 3, 25), day(2031, 4, 12), day(2031, 4, 28), day(2031, 5, 12),
                day(2031, 5, 24), day(2031, 6, 10), day(2031, 6, 28)};
  plan.boards = {day(2031, 4, 15), day(2031, 7, 5)};
  plan.rolls = {day(2031, 6, 10)};
  plan.deeds = {entry_on(day(2031, 3, 10), 1, entries::Feed{.kg = 2, .form = entries::FeedForm::fondant}),
                entry_on(day(2031, 4, 28), 2, entries::Room{.super_combs = 10}),
                entry_on(day(2031, 5, 24), 3, entries::Room{.super_combs = 10})};
  return plan;
}

}  // namespace beegarth::synthetic
