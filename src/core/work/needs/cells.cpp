// Queen cells were found and stand: part the colony before they are sealed.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

// The later of the two sightings, if any and if nothing has been done about it.
std::optional<Sighting> standing_cells(const ColonyStatus& colony, bool* sealed) {
  std::optional<Sighting> seen;
  if (colony.last_charged_cells && colony.last_charged_cells->value > 0) seen = colony.last_charged_cells;
  if (colony.last_sealed_cells && colony.last_sealed_cells->value > 0 &&
      (!seen || colony.last_sealed_cells->date >= seen->date)) {
    seen = colony.last_sealed_cells;
    if (sealed != nullptr) *sealed = true;
  }
  if (seen && colony.queen_lost_or_swarmed && colony.queen_lost_or_swarmed->date >= seen->date)
    return std::nullopt;
  if (seen && colony.last_full_look && colony.last_full_look->date > seen->date) return std::nullopt;
  return seen;
}

// When the first cell may be sealed, and by when all of them are.
struct Sealing {
  Date first, last;
};

// A charged cell holds a larva of one day, or one just about to be sealed: 8 - (3 + 1) days to go, or none.
// Of cells seen at several looks in a row the oldest counts.
Sealing sealing_of(const Asking& asking, const Sighting& seen, bool sealed) {
  if (sealed) return {seen.date, seen.date};
  const int at_most = static_cast<int>(asking.fact("cell_sealed_days") - asking.fact("egg_days")) - 1;
  const auto& since = asking.colony->cells_since;
  const Date first = since && since->date < seen.date ? since->date : seen.date;
  return {first, seen.date + at_most};
}

facts::Reason cells_told(const Asking& asking, const Sighting& seen, bool sealed, const Sealing& sealing) {
  const auto& since = asking.colony->cells_since;
  const bool before = since && since->date < seen.date;
  std::string text =
      counted(seen.value, sealed ? "sealed queen cell" : "charged queen cell") + " on " + day_text(seen.date);
  if (before) text += ", the first of them on " + day_text(since->date);
  text += sealed ? "; a prime swarm leaves at about the first sealing"
                 : "; the oldest may be sealed from " + day_text(sealing.first) + " on, all are by " +
                       day_text(sealing.last) + ", and then they leave";
  std::vector<EntryId> entries{seen.entry};
  if (before) entries.push_back(since->entry);
  return because(text, entries,
                 {asking.source("cell_sealed_days"), asking.source("swarm_with_charged_cells")});
}

// The prime swarm leaves on the first fine days from the sealing on: most are gone within four. Where it has
// gone, thinning the cells still saves the casts, which leave with the first virgins.
facts::LossCurve loss_of_swarms(const Asking& asking, const Sealing& sealing) {
  const double odds = asking.fact("swarm_with_charged_cells");
  const double at_neighbours = asking.site.neighbours ? asking.fact("swarm_at_neighbours_kg") : 0;
  facts::LossCurve loss = loss_when_late(asking, sealing.first, 4 + (sealing.last - sealing.first),
                                         odds * (asking.fact("prime_swarm_kg") + at_neighbours));
  constexpr double days_of_casts = 7;
  const int virgins_out = static_cast<int>(asking.fact("virgin_after_swarm_days"));
  const facts::LossCurve casts = loss_when_late(asking, sealing.first + virgins_out, days_of_casts,
                                                odds * (asking.fact("cast_kg") + at_neighbours));
  for (std::size_t day = 0; day < loss.by_day.size(); ++day) loss.by_day[day] += casts.by_day[day];
  loss.never += casts.never;
  return loss;
}

std::string how_to_part(const Asking& asking, bool sealed) {
  const bool cuts = asking.will(facts::Deed::cutting_of_cells);
  if (sealed)
    return std::string(
               "sealed queen cells: find out whether the old queen is still here; if so, part her off into a "
               "nucleus, and ") +
           (cuts ? "leave one cell" : "leave the cells as they are: a cast may leave with the first virgins");
  return std::string("part it: nucleus with the old queen, a comb of brood and one of stores; ") +
         (cuts ? "leave one good cell on the old stand; if she has gone, leave one cell and no more"
               : "the old stand keeps its cells, and a cast may leave with the first virgins");
}

}  // namespace

bool cells_stand(const Asking& asking) {
  constexpr int cells_last_days = 14;  // by then a virgin is out (day 16 after the egg) whatever was seen
  const auto seen = standing_cells(*asking.colony, nullptr);
  if (queen_awaited(asking)) return false;  // the next queen comes out of them
  return seen && asking.input.today - seen->date <= cells_last_days &&
         asking.opening_season(asking.input.today);
}

Needs split_on_cells(const Asking& asking) {
  if (!cells_stand(asking)) return {};
  const Date today = asking.input.today;
  bool sealed = false;
  const Sighting seen = *standing_cells(*asking.colony, &sealed);
  const Sealing sealing = sealing_of(asking, seen, sealed);
  if (asking.site_suspect) {
    facts::Need wait = asking.need(
        "look-cells", std::string("queen cells stand and the site is suspect: ask the inspector ") +
                          (asking.will(facts::Deed::artificial_swarms) ? "before parting it"
                                                                       : "what is to be done about them"));
    wait.minutes = asking.minutes("check_minutes");
    wait.best = std::max(today, sealing.first);
    wait.loss = loss_when_late(asking, sealing.first, 5, asking.fact("prime_swarm_kg"));
    wait.why.push_back(because(
        "no bees, comb or box moves at a suspect site until the inspector has cleared it", {seen.entry},
        {"house rule on health; Bee Diseases and Pests Control Orders (SI 2006/342) for Great Britain"}));
    return {wait};
  }
  facts::Need need = asking.need("split", how_to_part(asking, sealed));
  need.best = std::max(today, std::min(sealing.first, asking.last_day()));
  need.minutes = asking.minutes("split_minutes");
  need.loss = loss_of_swarms(asking, sealing);
  need.why.push_back(cells_told(asking, seen, sealed, sealing));
  constexpr double worth_saying = 0.1;
  if (asking.outlook != nullptr && asking.outlook->swarmed_unseen >= worth_saying)
    need.why.front().text +=
        "; it may have swarmed unseen since: " + percent_text(asking.outlook->swarmed_unseen);
  const bool cuts = asking.will(facts::Deed::cutting_of_cells);
  need.why.push_back(
      because(std::string("then: ") + (cuts ? "seven days later take down all cells but one, and " : "") +
                  "leave the old stand shut for four weeks",
              {}, {"trade: queenless split by the nucleus method; day 7 from memory of handbooks"}));
  asking.tell_odds(need, facts::EventKind::swarm_preparation, "charged or sealed queen cells", need.best,
                   need.best + 7);
  need.take = {"nucleus box", "smoker and fuel", "hive tool", "water", "comb or foundation to fill the gaps"};
  if (asking.kit("nucleus") == 0)
    need.cautions.push_back(
        "No nucleus box is ready among your kit: bring a spare body with a floor and roof.");
  need.cautions.push_back("Only sealed cells and few bees: she has gone. Look about for the swarm, " +
                          std::string(cuts ? "leave one good cell, " : "") +
                          "close, and leave it shut for four weeks.");
  if (cuts)
    need.cautions.push_back(
        "Taking cells down only delays: the next ones come sooner. Have the box ready before you open.");
  need.cautions.push_back(
      "Smoke out and lid off before the smoker travels; it can set fire to a car or dry grass.");
  need.asks = {{facts::Deed::artificial_swarms, true},
               {facts::Deed::holding_of_swarms, true},
               {facts::Deed::cutting_of_cells, false,
                asking.fact("swarm_with_charged_cells") * asking.fact("cast_kg"), Asking::row("cast_kg")}};
  return {need};
}

Needs thin_cells(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  constexpr double swarmed = 1;  // Sighting::value of queen_lost_or_swarmed
  if (!queen_awaited(asking) || colony.queen_lost_or_swarmed->value != swarmed) return {};
  const auto& sealed = colony.last_sealed_cells;
  const auto& charged = colony.last_charged_cells;
  const double cells = (sealed ? sealed->value : 0) + (charged ? charged->value : 0);
  const Sighting seen = sealed ? *sealed : charged ? *charged : *colony.queen_lost_or_swarmed;
  const Date last =
      colony.queen_lost_or_swarmed->date + static_cast<int>(asking.fact("virgin_after_swarm_days"));
  if (cells <= 1 || seen.date < colony.queen_lost_or_swarmed->date || last < asking.input.today) return {};
  facts::Need need = asking.need(
      "thin-cells",
      "leave one good cell and take the others down, shaking no comb that bears the one you leave");
  need.minutes = asking.minutes("look_minutes");
  need.latest = last;
  const double at_neighbours = asking.site.neighbours ? asking.fact("swarm_at_neighbours_kg") : 0;
  need.loss =
      loss_when_late(asking, asking.input.today, std::max(1, last - asking.input.today),
                     asking.fact("swarm_with_charged_cells") * (asking.fact("cast_kg") + at_neighbours));
  need.why.push_back(because(counted(cells, "queen cell") + " on " + day_text(seen.date) +
                                 " and no laying queen: casts leave with the first virgins, from about " +
                                 day_text(last) + " on",
                             {seen.entry, colony.queen_lost_or_swarmed->entry},
                             {asking.source("cast_kg"), asking.source("virgin_after_swarm_days")}));
  need.take = {"smoker and fuel", "hive tool", "water"};
  need.write_down = "full look, ";
  need.asks = {{facts::Deed::cutting_of_cells, true}, {facts::Deed::holding_of_swarms, true}};
  return {need};
}

}  // namespace beegarth::work
