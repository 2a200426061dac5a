// Stores running short.
#include <algorithm>
#include <cmath>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

// What the colony should hold now: a reserve in the season, winter stores from August on.
double wanted_kg(const Asking& asking, const char** row) {
  const bool nucleus = asking.colony->dwelling.brood_combs <= static_cast<int>(asking.fact("nucleus_combs"));
  const int month = asking.month(asking.input.today);
  const bool for_winter = month >= 8 && month <= 10;
  *row = !for_winter ? "summer_reserve_kg" : nucleus ? "winter_stores_nucleus_kg" : "winter_stores_kg";
  const double share = !for_winter && nucleus ? 0.5 : 1;  // a nucleus holds half the reserve
  return share * asking.fact(*row);
}

bool fondant_time(const Asking& asking) {
  const int month = asking.month(asking.input.today);
  return month >= asking.fact("fondant_first_month") || month <= asking.fact("fondant_last_month");
}

// From April to July the next look is a week away; at other times food must last.
bool likely_short(const Asking& asking) {
  const Date today = asking.input.today;
  const int month = asking.month(today);
  const bool season = month >= 4 && month <= 7;
  const auto odds = asking.odds_by(facts::EventKind::stores_short, today + (season ? 7 : 14));
  return odds && odds->value >= asking.fact(season ? "stores_odds_to_act_in_season" : "stores_odds_to_act");
}

void their_own_honey(facts::Need& need) {
  need.what =
      "leave them their own honey: take no comb off, give capped combs back beside the nest; no syrup "
      "while supers for people are on";
  need.clock = facts::Clock::opening;
  need.take = {"smoker and fuel", "hive tool", "capped combs taken off this colony, if any"};
  need.cautions.push_back(
      "If the supers are as good as empty: supers off first, then syrup; comb on during feeding is never for "
      "people.");
}

void syrup_or_fondant(facts::Need& need, const Asking& asking, double sugar_kg, bool cold) {
  const std::string kg = number_text(sugar_kg, 1) + " kg";
  const bool strong = asking.month(asking.input.today) >= 8;
  need.what = cold ? "feed fondant over the cluster: about " + kg + " of sugar, a piece at a time"
                   : "feed syrup: about " + kg + " of white sugar" + (strong ? ", made strong" : "");
  need.write_down = cold ? "fed " + kg + " fondant" : "fed " + number_text(2 * sugar_kg, 1) + " kg syrup 50%";
  need.take = cold ? std::vector<std::string>{"fondant, " + kg}
                   : std::vector<std::string>{"syrup for " + kg + " of sugar", "1 feeder"};
  if (cold) need.cautions.push_back("No syrup in the cold: bees cannot take or ripen it.");
}

}  // namespace

Needs feed(const Asking& asking) {
  if (queen_missed(asking)) return {};  // food does not mend a colony without a queen
  const Date today = asking.input.today;
  const auto stores = asking.median_of("stores_kg", today);
  const char* row = nullptr;
  const double wanted = wanted_kg(asking, &row);
  const int month = asking.month(today);
  const bool light_for_winter = stores && month >= 8 && month <= 9 && *stores < wanted;
  if (!likely_short(asking) && !light_for_winter) return {};

  const auto later = asking.median_of("stores_kg", asking.last_day());
  const double least = std::min(stores.value_or(0), later.value_or(stores.value_or(0)));
  const double short_kg = std::max(1.0, wanted - least);
  const double sugar_kg =
      std::min(std::ceil(2 * short_kg) / 2, wanted);  // a shortfall of S kg takes about S kg of sugar
  const bool cold = fondant_time(asking);
  const bool supers = !cold && asking.colony->supers_on && asking.colony->supers_on->value > 0;
  const bool dearth = asking.dearth(today) || month == 8 || month == 9;
  facts::Need need = asking.need("feed", "");
  need.minutes = asking.minutes("feed_minutes");
  need.clock = cold ? facts::Clock::daylight : dearth ? facts::Clock::dusk : facts::Clock::any;
  need.temperature_min_C = cold ? -5 : asking.fact("syrup_temperature_min_C");
  need.cautions.push_back("White sugar only, never honey of unknown origin.");
  if (supers)
    their_own_honey(need);
  else
    syrup_or_fondant(need, asking, sugar_kg, cold);
  if (dearth && !cold && !supers)
    need.cautions.push_back(
        "Robbing: feed at dusk, spill nothing, narrow the entrance first; never leave the hive open.");
  need.loss = loss_from_odds(asking, facts::EventKind::stores_short, asking.fact("colony_lost_kg"),
                             asking.fact("feed_saved"));
  if (light_for_winter) {
    const auto late = loss_when_late(asking, today + 7, 42, 0.2 * asking.fact("colony_lost_kg"));
    for (std::size_t day = 0; day < need.loss.by_day.size(); ++day) need.loss.by_day[day] += late.by_day[day];
    need.loss.never += late.never;
  }
  constexpr double worth_telling_kg = 0.25;
  if (stores)
    need.why.push_back(because(
        "about " + number_text(*stores, 1) + " kg of stores" +
            (least < *stores - worth_telling_kg
                 ? ", " + number_text(least, 1) + " kg by " + day_text(asking.last_day()) + " if left alone"
                 : "") +
            "; " + number_text(wanted, 1) + " kg wanted",
        {},
        {asking.source(row), "trade: a shortfall of S kg takes about S kg of dry sugar, losses included"}));
  if (asking.colony->last_feed)
    need.why.push_back(because("last fed on " + day_text(asking.colony->last_feed->date),
                               {asking.colony->last_feed->entry}, {}));
  asking.tell_odds(need, facts::EventKind::stores_short, "stores short", today + 7, asking.last_day());
  return {need};
}

}  // namespace beegarth::work
