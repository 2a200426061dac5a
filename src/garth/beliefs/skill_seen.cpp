// What was seen, look by look.
#include <algorithm>

#include "garth/beliefs/skill.hpp"
#include "garth/plan/dwelling.hpp"

namespace beegarth::garth {
namespace {

SeenThen& look_on(SeenColony& seen, Date date) {
  const auto at =
      std::find_if(seen.looks.begin(), seen.looks.end(), [&](const SeenThen& s) { return s.date == date; });
  if (at != seen.looks.end()) return *at;
  seen.looks.push_back({.date = date});
  return seen.looks.back();
}

void add_count(SeenColony& seen, Date date, const entries::MiteCount& count) {
  if (count.method == entries::MiteMethod::brood && count.cells.value_or(0) > 0) {
    SeenThen& then = look_on(seen, date);
    then.opened = *count.cells;
    then.infested_share = static_cast<double>(count.mites) / *count.cells;
  } else if ((count.method == entries::MiteMethod::wash || count.method == entries::MiteMethod::sugar_roll) &&
             count.bees.value_or(0) > 0) {
    SeenThen& then = look_on(seen, date);
    then.examined = *count.bees;
    then.rolled = count.method == entries::MiteMethod::sugar_roll;
    then.mites_per_100_bees = 100.0 * count.mites / *count.bees;
  }
}

SeenColony seen_of(const ColonyId& id, const book::ColonyState& colony, double bees_per_seam) {
  SeenColony seen{.colony = id, .looks = {}};
  for (const auto& entry : colony.history) {
    if (const auto* look = std::get_if<entries::Inspection>(&entry.payload)) {
      SeenThen& then = look_on(seen, entry.happened);
      if (look->bees)
        then.bees = *look->bees;
      else if (look->seams)
        then.bees = *look->seams * bees_per_seam;
      if (look->capped_cells) then.capped_cells = *look->capped_cells;
    } else if (const auto* count = std::get_if<entries::MiteCount>(&entry.payload)) {
      add_count(seen, entry.happened, *count);
    } else if (const auto* end = std::get_if<entries::ColonyEnded>(&entry.payload)) {
      if (end->how != entries::Ending::died && end->how != entries::Ending::absconded) continue;
      SeenThen& then = look_on(seen, entry.happened);
      then = {.date = entry.happened, .alive = false, .bees = 0.0, .capped_cells = 0.0};
    }
  }
  std::sort(seen.looks.begin(), seen.looks.end(),
            [](const SeenThen& a, const SeenThen& b) { return a.date < b.date; });
  return seen;
}

}  // namespace

std::vector<SeenColony> seen_in(const Session& session) {
  std::vector<SeenColony> all;
  for (const auto& [id, colony] : session.state.colonies) {
    const auto hive = session.state.hives.find(colony.hive);
    const double bees_per_seam = hive == session.state.hives.end() ? facts::Dwelling{}.bees_per_seam
                                                                   : dwelling_of(hive->second).bees_per_seam;
    all.push_back(seen_of(id, colony, bees_per_seam));
  }
  return all;
}

}  // namespace beegarth::garth
