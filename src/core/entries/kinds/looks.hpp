// What was seen: looks into a hive, counts, weights, signs of ill health, samples, a dead colony.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

enum class Look { full, quick, outside };  // every comb; under the roof; from the entrance
struct Inspection {
  ColonyId colony;
  Look look = Look::full;
  Number seams;         // spaces between combs full of bees
  Number bees;          // estimate of all adult bees
  Number brood_combs;   // combs with brood
  Number capped_cells;  // estimate, worker
  Number drone_cells;   // estimate, capped
  Flag eggs;
  Flag open_brood;
  Flag capped_brood;
  Flag queen;  // seen
  Count cups_with_egg;
  Count charged_cells;  // open queen cells with larva
  Count sealed_cells;
  Number store_combs;  // in full combs
  Number stores_kg;    // estimate
  std::optional<Level> pollen;
  Number super_share;  // 0..1, how full the supers are
  Flag drones;
  Flag calm;
  Flag looked_because_wrong;
  std::vector<std::string> signs;  // of ill health, from signs_of_health
  Text remark;
};
enum class MiteMethod { board, sugar_roll, wash, brood };
struct MiteCount {
  ColonyId colony;
  MiteMethod method = MiteMethod::board;
  int mites = 0;       // brood: cells infested
  Number days;         // board: days it lay
  Number board_share;  // board: share counted, 0..1
  Count bees;          // roll, wash: bees examined
  Count cells;         // brood: capped cells opened
  Flag at_least;       // so many or more: the board was full, or counting was given up
};
enum class Weighed { whole_hive, stores };
struct Weight {
  ColonyId colony;
  double kg = 0;
  Weighed what = Weighed::whole_hive;
};

struct Sign {  // of ill health, on its own
  ColonyId colony;
  std::vector<std::string> signs;  // from signs_of_health
  std::optional<Level> how_much;
  Count cells;       // that show it
  Number thread_mm;  // how far a matchstick drew a thread out of a cell
  Text remark;
};
enum class SampleOf { bees, brood, comb, honey, debris, other };
enum class Finding { pending, nothing_found, found };
struct Sample {  // sent away, and what came back
  ColonyId colony;
  SampleOf of = SampleOf::bees;
  Finding finding = Finding::pending;
  Text reference;
  Text sent_to;
  Text result;
};
struct DeadColony {  // what lay in a dead hive when it was opened
  ColonyId colony;
  std::optional<Level> dead_bees;
  Flag cluster;              // the dead bees hang together
  Flag heads_in_cells;       // dead bees head first in empty cells
  Number stores_kg;          // left
  Flag stores_within_reach;  // beside the cluster
  Flag brood;
  Flag queen_found;
  Flag queen_cells;
  Flag dysentery;
  Flag damp;             // mould, water on the combs
  Flag ragged_cappings;  // torn open, wax crumbs on the floor: robbed
  Flag mite_droppings;   // white specks on the roof of brood cells
  Flag deformed_wings;
  Flag mouse_or_woodpecker;
  std::vector<std::string> signs;
  Flag closed;  // sealed against robbing at once
  Text remark;
};

}  // namespace beegarth::entries
