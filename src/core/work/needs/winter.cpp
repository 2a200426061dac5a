// Winter: weight, mice, and the weeks without brood.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

std::string of_season(const Asking& asking) {
  const Date today = asking.input.today;
  return std::to_string(asking.month(today) >= 7 ? today.year() : today.year() - 1);
}

Needs heft(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  const bool by_hand = colony.dwelling.can_heft;
  facts::Need need = asking.need(
      "heft", by_hand ? "heft both sides, clear the entrance of dead bees, look at roof and straps"
                      : "look under the cover at bees and stores without lifting a comb (this hive cannot "
                        "be hefted); clear the entrance");
  const Date due = colony.last_any_look
                       ? colony.last_any_look->date + static_cast<int>(asking.fact("heft_interval_days"))
                       : today;
  if (due > asking.last_day()) return {};
  need.best = std::max(today, due);
  need.earliest = std::max(today, due - 4);
  need.minutes = asking.minutes("heft_minutes");
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = by_hand ? -5 : 5;
  need.loss = loss_when_late(asking, due, 42, asking.fact("heft_saved_kg"));
  const auto odds = asking.odds_by(facts::EventKind::stores_short, asking.last_day());
  if (odds) {
    const auto hunger =
        loss_from_odds(asking, facts::EventKind::stores_short, 0.3 * asking.fact("colony_lost_kg"), 0.9);
    for (std::size_t day = 0; day < need.loss.by_day.size(); ++day)
      need.loss.by_day[day] += hunger.by_day[day];
    need.loss.never += hunger.never;
  }
  need.why.push_back(because(
      "in winter weight is all there is to go by, every two weeks or so",
      colony.last_any_look ? std::vector<EntryId>{colony.last_any_look->entry} : std::vector<EntryId>{},
      {asking.source("heft_interval_days")}));
  asking.tell_odds(need, facts::EventKind::stores_short, "stores short", today + 7, asking.last_day());
  need.take = {
      asking.will(facts::Deed::feeding_of_sugar) ? "fondant in case" : "a capped comb of honey in case",
      "stick to clear entrances"};
  need.cautions.push_back("No opening in the cold. Lift one side a hand's width only, knees bent.");
  return {need};
}

Needs mouse_guard(const Asking& asking) {
  facts::Need need = asking.need("mouse-guard", "mouse guard on, entrance narrow");
  need.key += "/" + of_season(asking);
  need.minutes = asking.minutes("guard_minutes");
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = 2;
  need.loss = loss_when_late(asking, asking.input.today, 60,
                             asking.fact("mouse_loss_odds") * asking.fact("colony_lost_kg"));
  need.why.push_back(because("nights turn cold and mice look for a dry place", {},
                             {asking.source("mouse_loss_odds"), "trade calendar: October, first frosts"}));
  need.take = {"mouse guard and pins"};
  return {need};
}

Needs broodless_window(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  if (colony.last_treatment && today - colony.last_treatment->date < 45) return {};
  facts::Need need = asking.need(
      "winter-treatment", "if it is without brood: treat with an authorised oxalic kind, label read first");
  need.key += "/" + of_season(asking);
  need.minutes = asking.minutes("treat_minutes");
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = asking.fact("oxalic_temperature_min_C");
  need.best = std::min(asking.last_day(), today + 7);
  const auto odds = asking.odds_by(facts::EventKind::winter_mites, today + 400);
  // Mites that survive the winter are next year's: a tenth of a colony where nothing is worked out (own
  // reckoning).
  const double stake = asking.fact("colony_lost_kg") * (odds ? std::max(0.05, 0.25 * odds->value) : 0.1);
  need.loss = loss_when_late(asking, today + 7, 35, asking.fact("treat_saved") * stake);
  need.why.push_back(
      because("most stocks have no brood about three weeks after the first hard cold, and every mite is then "
              "on a bee: "
              "above 90 % are reached without brood, about 60 % with it",
              {},
              {"Apidologie 2015, 10.1007/s13592-015-0405-7, introduction",
               asking.source("oxalic_temperature_min_C")}));
  need.take = {"treatment, with its label", "goggles and acid gloves", "mask the label asks for"};
  need.cautions.push_back(
      "Only a kind authorised in your country; read the label first. No dose is worked out here.");
  need.cautions.push_back(
      "Oxalic acid burns eyes and lungs: stay upwind; vapour asks for a mask made for it, and for a second "
      "person near.");
  need.asks = {{facts::Deed::organic_acids, true}};
  return {need};
}

}  // namespace

Needs winter_work(const Asking& asking) {
  const int month = asking.month(asking.input.today);
  Needs needs;
  const auto add = [&](Needs more) { needs.insert(needs.end(), more.begin(), more.end()); };
  if (month >= 11 || month <= 2) add(heft(asking));
  if (month == 10 || month == 11) add(mouse_guard(asking));
  if (month == 12 || month == 1) add(broodless_window(asking));
  return needs;
}

}  // namespace beegarth::work
