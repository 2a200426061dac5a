// Stores running short.
#include <algorithm>
#include <cmath>
#include <optional>

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

// The warmest of the days to come, as forecast and generated.
std::optional<double> warmest_day_C(const Asking& asking) {
  const auto& days = asking.site.day_max_C;
  if (days.empty()) return std::nullopt;
  return *std::max_element(days.begin(), days.end());
}

// By the month, or because no day to come is warm enough for syrup.
bool fondant_time(const Asking& asking) {
  const int month = asking.month(asking.input.today);
  const auto warmest = warmest_day_C(asking);
  if (warmest && *warmest < asking.fact("syrup_temperature_min_C")) return true;
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

void their_own_honey(facts::Need& need, bool gives_sugar) {
  need.what =
      std::string("leave them their own honey: take no comb off, give capped combs back beside the nest") +
      (gives_sugar ? "; no syrup while supers for people are on" : "");
  need.clock = facts::Clock::opening;
  need.take = {"smoker and fuel", "hive tool", "capped combs taken off this colony, if any"};
  if (gives_sugar)
    need.cautions.push_back(
        "If the supers are as good as empty: supers off first, then syrup; comb on during feeding is never "
        "for people.");
}

// What is left to a keeper who gives no sugar.
void combs_of_honey(facts::Need& need, const Asking& asking, double short_kg, bool cold) {
  need.what =
      "give capped combs of your own honey beside the nest: about " + number_text(short_kg, 1) + " kg";
  if (asking.will(facts::Deed::uniting)) need.what += "; where there are none, unite it in time";
  need.clock = cold ? facts::Clock::daylight : facts::Clock::dusk;
  need.take = {"capped combs of honey from a healthy stock of your own", "box with a lid for the combs"};
  need.cautions.push_back("Combs go only from stocks that you have looked through and found healthy.");
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

// What is believed to be in the combs, what will be, and what was seen there lately.
struct Larder {
  std::optional<double> now;
  std::optional<Sighting> seen;  // less than wanted, and far less than is believed
  double least = 0;              // of all these
  double wanted = 0;
  const char* row = nullptr;
};

Larder larder_of(const Asking& asking) {
  Larder larder;
  larder.wanted = wanted_kg(asking, &larder.row);
  larder.now = asking.median_of("stores_kg", asking.input.today);
  const auto later = asking.median_of("stores_kg", asking.last_day());
  larder.least = std::min(larder.now.value_or(0), later.value_or(larder.now.value_or(0)));
  const auto& seen = asking.colony->last_stores;
  const bool lately =
      seen && asking.input.today - seen->date <= static_cast<int>(asking.fact("stores_fresh_days"));
  const bool fed_since = asking.colony->last_feed && seen && asking.colony->last_feed->date >= seen->date;
  const bool unbelieved = !larder.now || (seen && seen->value < 0.5 * *larder.now);
  if (lately && !fed_since && unbelieved &&
      seen->value < std::min(larder.wanted, asking.fact("stores_seen_short_kg"))) {
    larder.seen = seen;
    larder.least = larder.now ? std::min(larder.least, seen->value) : seen->value;
  }
  return larder;
}

void tell_larder(facts::Need& need, const Asking& asking, const Larder& larder) {
  constexpr double worth_telling_kg = 0.25;
  const std::string wanted = number_text(larder.wanted, 1) + " kg wanted";
  std::vector<std::string> sources{asking.source(larder.row)};
  if (asking.will(facts::Deed::feeding_of_sugar))
    sources.emplace_back("trade: a shortfall of S kg takes about S kg of dry sugar, losses included");
  if (larder.seen)
    need.why.push_back(because(number_text(larder.seen->value, 1) + " kg of stores were seen on " +
                                   day_text(larder.seen->date) + "; " + wanted +
                                   "; what was seen counts, whatever is believed",
                               {larder.seen->entry}, sources));
  else if (larder.now)
    need.why.push_back(because("about " + number_text(*larder.now, 1) + " kg of stores" +
                                   (larder.least < *larder.now - worth_telling_kg
                                        ? ", " + number_text(larder.least, 1) + " kg by " +
                                              day_text(asking.last_day()) + " if left alone"
                                        : "") +
                                   "; " + wanted,
                               {}, sources));
  if (asking.colony->last_feed)
    need.why.push_back(because("last fed on " + day_text(asking.colony->last_feed->date),
                               {asking.colony->last_feed->entry}, {}));
}

facts::LossCurve loss_of_hunger(const Asking& asking, const Larder& larder, bool light_for_winter) {
  const double colony = asking.fact("colony_lost_kg");
  facts::LossCurve loss =
      loss_from_odds(asking, facts::EventKind::stores_short, colony, asking.fact("feed_saved"));
  const auto add = [&](const facts::LossCurve& more) {
    for (std::size_t day = 0; day < loss.by_day.size(); ++day) loss.by_day[day] += more.by_day[day];
    loss.never += more.never;
  };
  if (light_for_winter) add(loss_when_late(asking, asking.input.today + 7, 42, 0.2 * colony));
  // Seen empty: half a colony at stake within the fortnight in which it can starve (own reckoning).
  if (larder.seen) add(loss_when_late(asking, asking.input.today - 1, 14, 0.5 * colony));
  return loss;
}

}  // namespace

Needs feed(const Asking& asking) {
  if (queen_missed(asking)) return {};  // food does not mend a colony without a queen
  const Date today = asking.input.today;
  const int month = asking.month(today);
  const Larder larder = larder_of(asking);
  const bool light_for_winter = larder.now && month >= 8 && month <= 9 && *larder.now < larder.wanted;
  if (!larder.seen && !light_for_winter) {
    if (!likely_short(asking)) return {};
    // The odds of hunger are reckoned for a full stock; a nucleus lives on less.
    if (larder.wanted < asking.fact("summer_reserve_kg") && larder.least >= larder.wanted) return {};
  }
  const double short_kg = std::max(1.0, larder.wanted - larder.least);
  const double sugar_kg =
      std::min(std::ceil(2 * short_kg) / 2, larder.wanted);  // a shortfall of S kg takes about S kg of sugar
  const bool cold = fondant_time(asking);
  const bool supers = !cold && asking.colony->supers_on && asking.colony->supers_on->value > 0;
  const bool supers_come_off = supers && !treat(asking).empty();
  const bool dearth = asking.dearth(today) || month == 8 || month == 9;
  facts::Need need = asking.need("feed", "");
  need.minutes = asking.minutes("feed_minutes");
  need.clock = cold ? facts::Clock::daylight : dearth ? facts::Clock::dusk : facts::Clock::any;
  need.temperature_min_C = cold ? -5 : asking.fact("syrup_temperature_min_C");
  const bool gives_sugar = asking.will(facts::Deed::feeding_of_sugar);
  need.cautions.push_back(gives_sugar ? "White sugar only, never honey of unknown origin."
                                      : "Never honey of unknown origin.");
  if (supers && !supers_come_off)
    their_own_honey(need, gives_sugar);
  else if (gives_sugar)
    syrup_or_fondant(need, asking, sugar_kg, cold);
  else
    combs_of_honey(need, asking, short_kg, cold);
  if (supers_come_off) {
    need.after.push_back("treat/" + asking.colony->colony.text());
    need.cautions.push_back("Only when the supers are off: comb on during feeding is never for people.");
  }
  if (dearth && !cold && (!supers || supers_come_off))
    need.cautions.push_back(
        "Robbing: feed at dusk, spill nothing, narrow the entrance first; never leave the hive open.");
  need.loss = loss_of_hunger(asking, larder, light_for_winter);
  if (!(supers && !supers_come_off))
    need.asks.push_back({facts::Deed::feeding_of_sugar, false,
                         std::max(0.0, need.loss.never - need.loss.by_day.front()),
                         "at most, where there is no comb of honey to give; " + Asking::row("feed_saved")});
  tell_larder(need, asking, larder);
  if (const auto warmest = warmest_day_C(asking); warmest && cold)
    need.why.push_back(
        because("the days to come reach " + number_text(*warmest, 0) +
                    " C at most by forecast and season; syrup is taken from about " +
                    number_text(asking.fact("syrup_temperature_min_C"), 0) +
                    " C on, and not ripened after the end of September",
                {}, {asking.source("syrup_temperature_min_C"), asking.source("fondant_first_month")}));
  asking.tell_odds(need, facts::EventKind::stores_short, "stores short", today + 7, asking.last_day());
  return {need};
}

}  // namespace beegarth::work
