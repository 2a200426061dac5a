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

}  // namespace

bool cells_stand(const Asking& asking) {
  constexpr int cells_last_days = 14;  // by then a virgin is out (day 16 after the egg) whatever was seen
  const auto seen = standing_cells(*asking.colony, nullptr);
  return seen && asking.input.today - seen->date <= cells_last_days &&
         asking.opening_season(asking.input.today);
}

Needs split_on_cells(const Asking& asking) {
  if (!cells_stand(asking)) return {};
  const Date today = asking.input.today;
  bool sealed = false;
  const Sighting seen = *standing_cells(*asking.colony, &sealed);
  // A charged cell holds a larva of a day or more: 8 - (3 + 1) days to sealing at the most.
  const int to_sealing = static_cast<int>(asking.fact("cell_sealed_days") - asking.fact("egg_days")) - 1;
  const Date sealing = sealed ? seen.date : seen.date + to_sealing;
  if (asking.site_suspect) {
    facts::Need wait = asking.need(
        "look-cells", "queen cells stand and the site is suspect: ask the inspector before parting it");
    wait.minutes = asking.minutes("check_minutes");
    wait.best = std::max(today, sealing);
    wait.loss = loss_when_late(asking, sealing, 5, asking.fact("prime_swarm_kg"));
    wait.why.push_back(because(
        "no bees, comb or box moves at a suspect site until the inspector has cleared it", {seen.entry},
        {"house rule on health; Bee Diseases and Pests Control Orders (SI 2006/342) for Great Britain"}));
    return {wait};
  }
  facts::Need need = asking.need(
      "split", std::string(sealed ? "sealed queen cells: find out whether the old queen is still here; if "
                                    "so, part her off into a nucleus, and leave one cell"
                                  : "part it: nucleus with the old queen, a comb of brood and one of "
                                    "stores; leave one open cell on the old stand; if she has gone, "
                                    "leave one cell and no more"));
  need.best = std::max(today, std::min(sealing, asking.last_day()));
  need.minutes = asking.minutes("split_minutes");
  double price = asking.fact("prime_swarm_kg") * asking.fact("swarm_with_charged_cells");
  if (asking.site.neighbours)
    price += asking.fact("swarm_at_neighbours_kg") * asking.fact("swarm_with_charged_cells");
  // The swarm leaves on the first fine days from the sealing on: most are gone within four.
  need.loss = loss_when_late(asking, sealing, 4, price);
  need.why.push_back(because(
      number_text(seen.value, 0) + (sealed ? " sealed" : " charged") + " queen cells on " +
          day_text(seen.date) +
          (sealed ? "; a prime swarm leaves at about the first sealing"
                  : "; the oldest is sealed by " + day_text(sealing) + " at the latest, and then they leave"),
      {seen.entry}, {asking.source("cell_sealed_days"), asking.source("swarm_with_charged_cells")}));
  if (asking.outlook != nullptr) {
    for (const facts::Reason& remark : asking.outlook->remarks) {
      if (remark.text.find("swarmed unseen") != std::string::npos)
        need.why.front().text += "; " + remark.text;
    }
  }
  need.why.push_back(because(
      "then: seven days later take down all cells but one, and leave the old stand shut for four weeks", {},
      {"trade: queenless split by the nucleus method; day 7 from memory of handbooks"}));
  asking.tell_odds(need, facts::EventKind::swarm_preparation, "charged or sealed queen cells", need.best,
                   need.best + 7);
  need.take = {"nucleus box", "smoker and fuel", "hive tool", "water", "comb or foundation to fill the gaps"};
  if (asking.kit("nucleus") == 0)
    need.cautions.push_back(
        "No nucleus box is ready among your kit: bring a spare body with a floor and roof.");
  need.cautions.push_back(
      "Taking cells down only delays: the next ones come sooner. Have the box ready before you open.");
  need.cautions.push_back(
      "Smoke out and lid off before the smoker travels; it can set fire to a car or dry grass.");
  return {need};
}

}  // namespace beegarth::work
