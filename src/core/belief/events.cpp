#include "belief/events.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace beegarth::belief {
namespace {

using colony::Quantity;

std::string short_number(double x) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), std::abs(x) < 1000 ? "%.3g" : "%.0f", x);
  return text.data();
}

}  // namespace

bool winter_brood_day(Date date, double latitude_deg) {
  const int day = northern_day_of_year(date, latitude_deg);
  return day >= 227 && day <= 288;
}

Date end_of_winter_brood(Date date, double latitude_deg) {
  const bool south = latitude_deg < 0;
  const auto in_year = [&](int year) { return *Date::from_ymd(year, south ? 5 : 10, south ? 1 : 31); };
  const Date this_year = in_year(date.year());
  return date <= this_year ? this_year : in_year(date.year() + 1);
}

int autumn_day(const Setting& setting, int last) {
  const Date today = setting.timeline.began + setting.today;
  return std::min(last, end_of_winter_brood(today, setting.latitude_deg) - setting.timeline.began);
}

std::string definition_of(facts::EventKind kind, const Setting& setting, Date last_in_autumn) {
  const ObservationErrors& e = setting.errors;
  switch (kind) {
    case facts::EventKind::out_of_room:
      return "on some morning from today to the day, fewer than " + short_number(100 * e.room_short_share) +
             " % of the worker cells of the brood space are drawn, empty and free for a laying queen";
    case facts::EventKind::swarm_preparation:
      return "on some morning from today to the day, a full look would find a charged or sealed queen cell, "
             "and the laying queen is still there or has left with a swarm";
    case facts::EventKind::stores_short:
      return "on some morning from today to the day, a living colony has less than " +
             short_number(e.stores_short_kg) + " kg of honey and nectar in all combs";
    case facts::EventKind::queen_trouble:
      return "on some morning from today to the day, a living colony has had no laying queen for " +
             short_number(e.queenless_days) + " days or more, or its queen lays drones only";
    case facts::EventKind::supers_full:
      return "on some morning from today to the day, a living colony with supers (or combs beyond its nest) "
             "could "
             "put less than " +
             short_number(e.supers_full_free_kg) + " kg more honey into them";
    case facts::EventKind::surplus:
      return "on some morning from today to the day, a living colony has " + short_number(e.surplus_kg) +
             " kg of honey or more above its nest or beyond it, besides what it keeps by the brood";
    case facts::EventKind::death:
      return "on some morning from today to the day, fewer than " +
             short_number(static_cast<double>(setting.model.rates.too_few_bees)) +
             " living bees are left in the hive; it may be so already today";
    case facts::EventKind::small_for_winter:
      return "on " + last_in_autumn.iso() + " a living colony has fewer than " +
             short_number(e.winter_bees_least) + " bees";
    case facts::EventKind::winter_mites:
      return "on some morning from today to the day, more than " +
             short_number(100 * e.winter_brood_infested) +
             " % of the capped worker cells (300 or more) that become winter bees hold a mite; followed to " +
             last_in_autumn.iso() + ", the course's last day";
  }
  return {};
}

namespace {

// Notes the day for the members in which it happens for the first time. happens(k): in the ensemble's member
// k.
template <class Happens>
void note(std::size_t event, int day, std::span<const std::uint32_t> which, Trace& trace,
          const Happens& happens) {
  auto& first = trace.first_day[event];
  const std::size_t members = which.empty() ? first.size() : which.size();
  for (std::size_t k = 0; k < members; ++k) {
    const std::size_t i = which.empty() ? k : which[k];
    if (first[i] == never_happens && happens(k)) first[i] = day;
  }
}

}  // namespace

EventWatch::EventWatch(const Setting& setting, int members)
    : setting_(setting), days_without_queen_(static_cast<std::size_t>(members), 0) {}

void EventWatch::morning(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which,
                         Trace& trace) {
  const ObservationErrors& e = setting_.errors;
  if (day < setting_.today - e.queenless_days) return;  // nothing from so long ago is asked for
  const auto alive = ensemble.read(Quantity::alive);
  const auto room = ensemble.read(Quantity::laying_room_cells);
  const auto charged = ensemble.read(Quantity::charged_cells);
  const auto sealed = ensemble.read(Quantity::sealed_cells);
  const auto to_swarm = ensemble.read(Quantity::swarm_cells);
  const auto laying = ensemble.read(Quantity::queen_laying);
  const auto drone_laying = ensemble.read(Quantity::drone_laying);
  const auto stores = ensemble.read(Quantity::stores_kg);
  const bool has_supers = ensemble.dwelling().super_combs > 0;
  const auto free_above =
      has_supers ? ensemble.read(Quantity::super_room_kg) : std::vector<float>(alive.size());
  const auto above = has_supers ? ensemble.read(Quantity::super_kg) : free_above;
  const double cells = ensemble.dwelling().brood_combs * ensemble.dwelling().worker_cells_per_comb;
  for (std::size_t k = 0; k < alive.size(); ++k) {
    const std::size_t i = which.empty() ? k : which[k];
    if (alive[k] < 0.5F) {
      auto& died = trace.first_day[death_index][i];
      if (day >= setting_.today) died = std::min(died, day);
      continue;
    }
    const bool queen = laying[k] > 0.5F;
    days_without_queen_[i] = queen ? 0 : days_without_queen_[i] + 1;
    if (day < setting_.today) continue;
    const std::array<bool, death_index> now{
        // in the order of event_kinds
        queen && room[k] < e.room_short_share * cells,
        to_swarm[k] >= 0.5F || (queen && charged[k] + sealed[k] >= 0.5F),
        stores[k] < e.stores_short_kg,
        days_without_queen_[i] >= e.queenless_days || drone_laying[k] > 0.5F,
        has_supers && free_above[k] < e.supers_full_free_kg,
        above[k] >= e.surplus_kg,
    };
    for (std::size_t event = 0; event < now.size(); ++event) {
      if (now[event] && trace.first_day[event][i] == never_happens) trace.first_day[event][i] = day;
    }
  }
}

void EventWatch::autumn(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which,
                        Trace& trace) const {
  const Date date = trace.began + day;
  if (day > autumn_day(setting_, day)) return;  // another year's
  if (date == end_of_winter_brood(date, setting_.latitude_deg)) {
    const auto alive = ensemble.read(Quantity::alive);
    const auto bees = ensemble.read(Quantity::bees);
    note(small_for_winter_index, day, which, trace, [&](std::size_t k) {
      return alive[k] > 0.5F && static_cast<double>(bees[k]) < setting_.errors.winter_bees_least;
    });
  }
  if (!winter_brood_day(date, setting_.latitude_deg)) return;
  constexpr float few_capped_cells = 300;  // fewer are too few to judge
  const auto capped = ensemble.read(Quantity::capped_cells);
  const auto infested = ensemble.read(Quantity::infested_share);
  note(winter_mites_index, day, which, trace, [&](std::size_t k) {
    return capped[k] >= few_capped_cells &&
           static_cast<double>(infested[k]) > setting_.errors.winter_brood_infested;
  });
}

}  // namespace beegarth::belief
