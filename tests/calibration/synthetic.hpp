// Invented colonies whose truth is known: coordinates and luck drawn from the prior, and the entries that a
// keeper with eyes of their own would have written, drawn from the very model by which belief judges them.
#pragma once

#include <algorithm>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include "belief/belief.hpp"
#include "belief/events.hpp"
#include "belief/members.hpp"
#include "belief/writing.hpp"
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

// What is counted or weighed at a look, besides the combs. Everything is done on days of a look, because a
// count that was not taken would tell that the colony was dead.
struct Visit {
  Date date;
  bool board = false;   // that lay three days
  bool roll = false;    // 300 bees
  bool wash = false;    // 300 bees
  bool opened = false;  // 100 capped cells
  bool weighed = false;
};

struct Plan {
  Date began = day(2031, 3, 1);
  Date today = day(2031, 7, 10);
  Date horizon = day(2031, 8, 20);
  std::vector<Visit> visits;
  std::vector<entries::Entry> deeds;
};

// A look every two to three weeks, two boards, a roll, a wash, cells opened once, two weighings, supers on,
// one feed.
inline Plan usual_plan() {
  Plan plan;
  plan.visits = {{.date = day(2031, 3, 25), .weighed = true},
                 {.date = day(2031, 4, 15), .board = true},
                 {.date = day(2031, 4, 28)},
                 {.date = day(2031, 5, 12), .wash = true, .weighed = true},
                 {.date = day(2031, 5, 24)},
                 {.date = day(2031, 6, 10), .roll = true, .opened = true},
                 {.date = day(2031, 6, 28), .board = true}};
  plan.deeds = {entry_on(day(2031, 3, 10), 1, entries::Feed{.kg = 2, .form = entries::FeedForm::fondant}),
                entry_on(day(2031, 4, 28), 2, entries::Room{.super_combs = 10}),
                entry_on(day(2031, 5, 24), 3, entries::Room{.super_combs = 10})};
  return plan;
}

// The spring of it alone, with every way to count.
inline Plan spring_plan() {
  Plan plan;
  plan.today = day(2031, 6, 1);
  plan.horizon = day(2031, 7, 5);
  plan.visits = {{.date = day(2031, 3, 25), .wash = true, .weighed = true},
                 {.date = day(2031, 4, 15), .board = true, .roll = true},
                 {.date = day(2031, 5, 8), .opened = true, .weighed = true},
                 {.date = day(2031, 5, 22)}};
  plan.deeds = {entry_on(day(2031, 3, 10), 1, entries::Feed{.kg = 2, .form = entries::FeedForm::fondant}),
                entry_on(day(2031, 4, 28), 2, entries::Room{.super_combs = 10})};
  return plan;
}

inline const std::vector<colony::Quantity>& judged() {
  using Q = colony::Quantity;
  static const std::vector<Q> list{Q::bees,  Q::brood_cells,        Q::capped_cells,   Q::stores_kg,
                                   Q::mites, Q::mites_per_100_bees, Q::infested_share, Q::alive};
  return list;
}

struct Truth {
  std::map<int, std::vector<double>> on_day;         // [days since began][judged]
  std::vector<double> coordinates;                   // all that members have
  double log_likelihood = 0;                         // of everything written, by the filter's own reckoning
  std::array<int, belief::event_count> first_day{};  // of each event from the plan's today on
};

struct Colony {
  belief::History history;  // deeds and sights
  belief::Forcing forcing;  // the weather so far, and ways it may go on
  Truth truth;
};

namespace detail {

inline std::vector<entries::Payload> written_at(const Visit& visit, const belief::Visible& there,
                                                double fallen, const belief::ObserverTraits& ways,
                                                const belief::ObservationErrors& errors, Stream& luck) {
  entries::Inspection look;
  if (!there.alive) {  // what a dead colony shows, for certain
    look.seams = 0;
    look.brood_combs = 0;
    return {look};
  }
  belief::Writer writer(there, ways, errors, luck);
  look.seams = writer.seams(1);
  look.brood_combs = writer.brood_combs(1);
  look.capped_cells = writer.capped_cells();
  look.stores_kg = writer.stores_kg();
  if (there.dwelling.super_combs > 0) look.super_share = writer.super_share();
  look.eggs = writer.says(&belief::SightOdds::eggs);
  look.queen = writer.says(&belief::SightOdds::queen);
  look.charged_cells = writer.says(&belief::SightOdds::charged_cells) ? 1 : 0;
  std::vector<entries::Payload> all{look};
  const auto count = [&](entries::MiteCount asked) {
    asked.mites = writer.mites(asked, fallen);
    all.emplace_back(asked);
  };
  if (visit.board) count({.method = entries::MiteMethod::board, .days = 3});
  if (visit.roll) count({.method = entries::MiteMethod::sugar_roll, .bees = 300});
  if (visit.wash) count({.method = entries::MiteMethod::wash, .bees = 300});
  if (visit.opened) count({.method = entries::MiteMethod::brood, .cells = 100});
  if (visit.weighed)
    all.emplace_back(
        entries::Weight{.kg = writer.weighed(belief::whole_hive_kg(there, ways.tare_kg, errors))});
  return all;
}

// One true course of a colony; the luck of every day is that of the id 0, however the days are cut into
// pieces.
inline belief::Members true_course(const belief::Setting& setting, const std::vector<double>& coordinates) {
  return belief::set_back(
      setting, coordinates,
      std::vector<std::vector<std::uint32_t>>(setting.piece_starts.size(), std::vector<std::uint32_t>(1, 0)));
}

inline belief::Setting setting_of(const belief::History& history, const belief::Forcing& forcing,
                                  const belief::Timeline& timeline, const belief::Tables& tables,
                                  const belief::Options& options) {
  auto setting = belief::make_setting(history, forcing, timeline, tables, options);
  if (!setting) throw std::runtime_error(one_line(setting.problem()));
  return *std::move(setting);
}

// What was written, judged by the filter as it judges a member, with the truth as the only member.
inline double log_likelihood_of(const Colony& colony, const Plan& plan, const belief::Tables& tables,
                                const belief::Options& lone) {
  belief::Options today = lone;
  today.today = plan.today;
  const belief::Timeline timeline = belief::lay_out(colony.history, plan.today);
  const belief::Setting setting = setting_of(colony.history, colony.forcing, timeline, tables, today);
  belief::Members again = true_course(setting, colony.truth.coordinates);
  belief::live_to(again, setting, setting.today);
  const double bees = again.ensemble.read(colony::Quantity::bees)[0];
  if (bees != colony.truth.on_day.at(setting.today)[0])
    throw std::logic_error("another course than the true one");
  double sum = 0;
  for (const auto& group : setting.groups) sum += belief::log_group(again, setting, group)[0];
  return sum;
}

}  // namespace detail

// Colony number `number` of a study, in a season of its own.
inline Colony draw_colony(const Plan& plan, std::uint64_t study, int number, int futures,
                          const belief::Tables& tables) {
  const auto own = static_cast<std::uint64_t>(number);
  const std::uint64_t weather = study * 1'000'000 + own;
  Colony colony;
  colony.history.colony = ColonyId("colony-" + std::to_string(study) + "-" + std::to_string(number));
  colony.history.began = plan.began;
  colony.history.entries = plan.deeds;
  const belief::Forcing whole{season(weather, plan.began, plan.horizon), {}};
  for (const auto& one : whole.past) {
    if (one.date < plan.today) colony.forcing.past.push_back(one);
  }
  for (int f = 0; f < futures; ++f) {
    auto path = forked_season(weather, plan.began, plan.horizon, plan.today,
                              (weather << 12U) + static_cast<std::uint64_t>(f) + (1ULL << 60U));
    path.erase(path.begin(), path.begin() + (plan.today - plan.began));
    colony.forcing.futures.push_back(std::move(path));
  }

  const belief::Options lone{
      .members = 1, .seed = study ^ 0x7275746800000000ULL, .today = plan.horizon, .horizon = plan.horizon};
  const belief::Timeline timeline = belief::lay_out(colony.history, plan.horizon);
  const belief::Setting setting = detail::setting_of(colony.history, whole, timeline, tables, lone);
  Stream prior({.seed = lone.seed, .colony = setting.colony, .purpose = Purpose::synthetic_truth});
  for (int d = 0; d < belief::dims; ++d) colony.truth.coordinates.push_back(prior.normal());
  belief::Members truth = detail::true_course(setting, colony.truth.coordinates);
  const belief::ObserverTraits ways = belief::observer_of(truth, setting, 0);

  belief::Setting asked = setting;
  asked.today = plan.today - plan.began;
  belief::Trace happened(plan.began, setting.today, 1);
  belief::EventWatch watch(asked, 1);
  std::map<int, double> fall;  // on the day before
  int entries_written = 1000;
  const auto morning = [&](int number_of_day, const colony::Ensemble& ensemble) {
    watch.morning(number_of_day, ensemble, {}, happened);
    for (const auto quantity : judged())
      colony.truth.on_day[number_of_day].push_back(ensemble.read(quantity)[0]);
    fall[number_of_day] = ensemble.read(colony::Quantity::mite_fall_per_day)[0];
    for (const Visit& visit : plan.visits) {
      if (visit.date - plan.began != number_of_day) continue;
      const double fallen = fall[number_of_day] + fall[number_of_day - 1] + fall[number_of_day - 2];
      Stream luck({.seed = lone.seed,
                   .colony = setting.colony,
                   .day = number_of_day,
                   .purpose = Purpose::synthetic_truth});
      for (auto& payload :
           detail::written_at(visit, belief::all_visible(ensemble)[0], fallen, ways, setting.errors, luck)) {
        colony.history.entries.push_back(entry_on(visit.date, ++entries_written, std::move(payload)));
      }
    }
  };
  belief::live_to(truth, setting, setting.today, morning);
  morning(setting.today, truth.ensemble);
  for (std::size_t event = 0; event < belief::event_count; ++event)
    colony.truth.first_day[event] = happened.first_day[event].front();
  colony.truth.log_likelihood = detail::log_likelihood_of(colony, plan, tables, lone);
  return colony;
}

}  // namespace beegarth::synthetic
