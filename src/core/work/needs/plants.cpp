// What was planted is seen to for three years: water in a dry spell, guards, weeds in spring, gaps in winter.
// Where a nest was found nobody digs.
#include <algorithm>
#include <functional>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

using Plantings = std::vector<const Planting*>;

std::string named(const Planting& planting) {
  const std::string what = std::to_string(planting.count) + " " + planting.plant;
  return planting.where.empty() ? what : what + " (" + planting.where + ")";
}

std::string all_named(const Plantings& plantings) {
  std::string all;
  for (const Planting* planting : plantings) all += (all.empty() ? "" : ", ") + named(*planting);
  return all;
}

int plants_in(const Plantings& plantings) {
  int count = 0;
  for (const Planting* planting : plantings) count += planting->count;
  return count;
}

bool before(const std::optional<Date>& done, Date day) {
  return !done || *done < day;
}

// The first of a month, this year or, in the first months of a winter that began last year, of last year.
Date begin_of_season(Date today, int first_month) {
  const int year = today.month() < first_month ? today.year() - 1 : today.year();
  return *Date::from_ymd(year, first_month, 1);
}

struct Care {
  const char* kind;
  const char* what;  // "water"
  const char* price;
  const char* source;
  std::vector<std::string> take;
  bool digs = false;
};

Needs care_for(const Asking& asking, const Care& care, const std::function<bool(const Planting&)>& wants_it) {
  Plantings all, free;
  const Planting* nesting = nullptr;
  for (const Planting& planting : asking.site.plantings) {
    const double years = (asking.input.today - planting.planted) / 365.25;
    if (planting.planted > asking.input.today || years > asking.fact("plants_followed_years") ||
        !wants_it(planting))
      continue;
    all.push_back(&planting);
    if (care.digs && planting.nest)
      nesting = &planting;
    else
      free.push_back(&planting);
  }
  if (all.empty()) return {};
  const Plantings& meant = free.empty() ? all : free;
  facts::Need need = asking.need(care.kind, care.what + std::string(": ") + all_named(meant));
  const int whole = asking.minutes("plants_visit_minutes") +
                    static_cast<int>(asking.fact("plants_each_minutes") * plants_in(meant));
  need.minutes = std::min(whole, asking.minutes("plants_most_minutes"));
  if (whole > need.minutes) need.what += "; as many as " + std::to_string(need.minutes) + " minutes allow";
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = 2;  // never into frozen ground
  need.loss = loss_when_late(asking, asking.input.today, 28,
                             asking.fact("plant_lost_kg") * asking.fact(care.price) * plants_in(all));
  std::vector<EntryId> entries;
  for (const Planting* planting : all) entries.push_back(planting->entry);
  need.why.push_back(because(
      "what was planted is seen to for three years", entries,
      {asking.source("plants_followed_years"), asking.source(care.source), asking.source("plant_lost_kg")}));
  if (nesting != nullptr) {
    const std::string left = "a nest (" + nesting->nest_of + ") was found at " +
                             (nesting->nest_at.empty() ? asking.site.name : nesting->nest_at) + " on " +
                             day_text(nesting->nest->date) + ": nobody digs or cuts there until it is gone";
    need.why.push_back(because(left, {nesting->nest->entry}, {"house rule on nests"}));
    if (free.empty()) need.held = left;
  }
  need.take = care.take;
  return {need};
}

}  // namespace

Needs after_planting(const Asking& asking) {
  const Date today = asking.input.today;
  const int month = asking.month(today);
  const bool south = asking.month(today) != today.month();
  const auto season = [&](int northern_first) {
    return begin_of_season(today, south ? (northern_first + 5) % 12 + 1 : northern_first);
  };
  Needs needs;
  const auto add = [&](Needs more) {
    for (facts::Need& need : more) needs.push_back(std::move(need));
  };
  const double rain_of_two_weeks = asking.site.rain_next_days_mm * 14 / std::max(1, asking.input.days);
  if (month >= 4 && month <= 9 && rain_of_two_weeks < asking.fact("plants_dry_mm")) {
    const int every = asking.minutes("plants_water_every_days");
    add(care_for(asking,
                 {"water-plants", "water", "plants_dry_share", "plants_dry_mm", {"water, and a can or hose"}},
                 [&](const Planting& planting) {
                   return today - planting.planted < 2 * 365 && before(planting.watered, today - every) &&
                          today - planting.planted >= every;
                 }));
  }
  if (month >= 4 && month <= 6)
    add(care_for(
        asking,
        {"weed-plants", "weed round and mulch", "plants_weeds_share", "plants_weeds_share", {"mulch"}, true},
        [&](const Planting& planting) {
          return before(planting.weeded, season(3)) && planting.planted < season(3);
        }));
  if (month >= 11 || month <= 2)
    add(care_for(asking,
                 {"fill-gaps",
                  "look over for gaps and fill them",
                  "plants_gaps_share",
                  "plants_gaps_share",
                  {"spade, bare-root plants of the same kind"},
                  true},
                 [&](const Planting& planting) {
                   return before(planting.gaps_filled, season(11)) && planting.planted < season(11);
                 }));
  add(care_for(
      asking,
      {"guard-plants",
       "put guards on where hare, rabbit, deer or stock come",
       "plants_browsed_share",
       "plants_browsed_share",
       {"guards and canes"}},
      [&](const Planting& planting) { return !planting.guarded && today - planting.planted <= 60; }));
  return needs;
}

}  // namespace beegarth::work
