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

}  // namespace

Needs feed(const Asking& asking) {
  const Date today = asking.input.today;
  const auto odds = asking.odds_by(facts::EventKind::stores_short, today + 14);
  const auto stores = asking.median_of("stores_kg", today);
  const char* row = nullptr;
  const double wanted = wanted_kg(asking, &row);
  const int month = asking.month(today);
  const bool light_for_winter = stores && month >= 8 && month <= 9 && *stores < wanted;
  if ((!odds || odds->value < asking.fact("stores_odds_to_act")) && !light_for_winter) return {};

  const double short_kg = std::max(1.0, wanted - stores.value_or(0));
  const double sugar_kg =
      std::min(std::ceil(2 * short_kg) / 2, wanted);  // a shortfall of S kg takes about S kg of sugar
  const bool cold = fondant_time(asking);
  facts::Need need =
      asking.need("feed", cold ? "feed fondant over the cluster: about " + number_text(sugar_kg, 1) +
                                     " kg of sugar in all, a piece at a time"
                               : "feed syrup: about " + number_text(sugar_kg, 1) +
                                     " kg of white sugar in all" + (month >= 8 ? ", made strong" : ""));
  need.minutes = asking.minutes("feed_minutes");
  const bool dearth = asking.dearth(today) || month == 8 || month == 9;
  need.clock = cold ? facts::Clock::daylight : dearth ? facts::Clock::dusk : facts::Clock::any;
  need.temperature_min_C = cold ? -5 : asking.fact("syrup_temperature_min_C");
  need.loss = loss_from_odds(asking, facts::EventKind::stores_short, asking.fact("colony_lost_kg"),
                             asking.fact("feed_saved"));
  if (light_for_winter) {
    const auto late = loss_when_late(asking, today + 7, 42, 0.2 * asking.fact("colony_lost_kg"));
    for (std::size_t day = 0; day < need.loss.by_day.size(); ++day) need.loss.by_day[day] += late.by_day[day];
    need.loss.never += late.never;
  }
  if (stores)
    need.why.push_back(because(
        "about " + number_text(*stores, 1) + " kg of stores; " + number_text(wanted, 1) + " kg wanted", {},
        {asking.source(row), "trade: a shortfall of S kg takes about S kg of dry sugar, losses included"}));
  if (asking.colony->last_feed)
    need.why.push_back(because("last fed on " + day_text(asking.colony->last_feed->date),
                               {asking.colony->last_feed->entry}, {}));
  asking.tell_odds(need, facts::EventKind::stores_short, "stores short", today + 7, asking.last_day());
  need.take = {cold ? "fondant, " + number_text(sugar_kg, 1) + " kg"
                    : "syrup for " + number_text(sugar_kg, 1) + " kg of sugar, feeder"};
  need.cautions.push_back("White sugar only, never honey of unknown origin.");
  if (cold)
    need.cautions.push_back("No syrup in the cold: bees cannot take or ripen it.");
  else if (dearth)
    need.cautions.push_back(
        "Robbing: feed at dusk, spill nothing, narrow the entrance first; never leave the hive open.");
  if (asking.colony->supers_on && asking.colony->supers_on->value > 0)
    need.cautions.push_back("Supers off first: comb on the hive during feeding is never for people.");
  return {need};
}

}  // namespace beegarth::work
