// Looking for queen cells, and the first look of the year.
#include <algorithm>

#include "work/look_interval.hpp"
#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

facts::LossCurve loss_of_swarming(const Asking& asking, Date due) {
  double price = asking.fact("prime_swarm_kg");
  if (asking.site.neighbours) price += asking.fact("swarm_at_neighbours_kg");
  if (asking.event(facts::EventKind::swarm_preparation) != nullptr)
    return loss_from_odds(asking, facts::EventKind::swarm_preparation, price,
                          asking.fact("swarm_saved_by_look"));
  // Nothing worked out for this colony: the usual odds of a week, from the day on which the look is due.
  return loss_when_late(asking, due, 28, 4 * asking.fact("swarm_unknown_per_week") * price);
}

void take_and_care(facts::Need& need, const Asking& asking) {
  need.write_down = "full look, ";
  need.take = {"smoker and fuel", "hive tool", "water"};
  if (asking.kit("nucleus") > 0 && asking.will(facts::Deed::artificial_swarms) &&
      asking.will(facts::Deed::holding_of_swarms))
    need.take.push_back("nucleus box, in case of cells");
  need.cautions.push_back(
      "Smoke out and lid off before the smoker travels; it can set fire to a car or dry grass.");
  if (asking.colony->dwelling.form == facts::HiveForm::horizontal)
    need.cautions.push_back(
        "Comb that leaves its bar is put right while it is new and soft; lift comb upright, cool and "
        "slowly.");
  if (asking.site.neighbours)
    need.cautions.push_back("People live close by: look when few are about, and stop if the bees follow.");
}

// With a clipped queen the looks lie further apart: what those saved would cost in time and disturbance.
facts::AskedDeed worth_of_clipping(const Asking& asking) {
  const double looks_saved = asking.input.days * (1 / asking.fact("interval_unclipped_days") -
                                                  1 / asking.fact("interval_clipped_days"));
  const double look =
      asking.fact("opening_kg") + asking.fact("look_minutes") / 60 * asking.input.price_per_hour;
  return {facts::Deed::clipping, false, looks_saved * look,
          Asking::row("interval_clipped_days") + " and opening_kg"};
}

}  // namespace

Needs look_for_cells(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  if (!asking.site.swarm_season || !asking.opening_season(today) || cells_stand(asking) ||
      queen_awaited(asking) || queen_missed(asking))
    return {};
  LookFound found{.queen_clipped = colony.queen_clipped, .main_flow_over = asking.main_flow_over(today)};
  const char* rule = found.main_flow_over  ? "interval_after_flow_days"
                     : found.queen_clipped ? "interval_clipped_days"
                                           : "interval_unclipped_days";
  if (colony.last_cups_with_egg && colony.last_full_look &&
      colony.last_cups_with_egg->date >= colony.last_full_look->date)
    found.oldest_larva_days = 0;
  const int interval = static_cast<int>(days_to_next_look(found, *look_rule(asking.table)));
  const Date due = colony.last_full_look ? colony.last_full_look->date + interval : today;
  if (due > asking.last_day()) return {};

  facts::Need need = asking.need("look-cells", "look for queen cells, every comb");
  need.best = std::max(today, due);
  need.earliest = std::max(today, due - 2);
  need.minutes = asking.minutes("look_minutes");
  need.loss = loss_of_swarming(asking, due);
  if (colony.last_full_look) {
    need.why.push_back(because("last looked through on " + day_text(colony.last_full_look->date) + ", " +
                                   days_text(today - colony.last_full_look->date) +
                                   " ago; the next look is due after " + days_text(interval),
                               {colony.last_full_look->entry}, {asking.source(rule)}));
  } else {
    need.why.push_back(
        because("never looked through in this book, and it is the swarm season", {}, {asking.source(rule)}));
  }
  if (found.oldest_larva_days)
    need.why.push_back(because("cups with eggs on " + day_text(colony.last_cups_with_egg->date) +
                                   ": the first could be sealed five days later",
                               {colony.last_cups_with_egg->entry}, {asking.source("cell_sealed_days")}));
  asking.tell_odds(need, facts::EventKind::swarm_preparation, "charged or sealed queen cells", need.best,
                   need.best + 7);
  take_and_care(need, asking);
  need.asks = {{facts::Deed::holding_of_swarms, true}};
  if (!found.main_flow_over && !found.queen_clipped) need.asks.push_back(worth_of_clipping(asking));
  return {need};
}

Needs first_look(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  const int month = asking.month(today);
  if (asking.site.swarm_season || month < 3 || month > 4) return {};
  if (colony.last_full_look && today - colony.last_full_look->date < 90) return {};
  facts::Need need =
      asking.need("first-look", "first look of the year: eggs, stores, disease; a minute a comb, no more");
  need.minutes = asking.minutes("check_minutes");
  need.best = std::min(asking.last_day(), today + 5);
  need.loss = loss_when_late(asking, today, 42, 0.1 * asking.fact("colony_lost_kg"));
  need.why.push_back(because(
      "no full look since the winter; the first comes on a still, dry day of 13 C or more, bees "
      "flying with pollen",
      colony.last_full_look ? std::vector<EntryId>{colony.last_full_look->entry} : std::vector<EntryId>{},
      {"trade calendar: first full inspection late March to mid April, 12-13 C at least"}));
  take_and_care(need, asking);
  return {need};
}

}  // namespace beegarth::work
