// What a hive offers its colony, and what can be done and seen in it.
#pragma once

#include <string>

#include "base/units.hpp"

namespace beegarth::facts {

enum class HiveForm { upright, horizontal };  // boxes stacked, or combs in one long row with a follower

struct Dwelling {
  HiveForm form = HiveForm::upright;
  std::string type;                     // the keeper's own word, e.g. "deep eleven-comb"
  double worker_cells_per_comb = 5000;  // both sides, fully drawn
  double honey_kg_per_comb = 2.2;       // both sides, full and capped
  double bees_per_seam = 2000;          // a seam full of bees
  int brood_combs = 11;                 // combs in the brood space now
  int super_combs = 0;                  // combs in supers (upright) or beyond the nest (horizontal) now
  int undrawn_combs = 0;                // of these, foundation or bare bars still to draw
  int brood_combs_max = 22;             // what the hive can take
  int super_combs_max = 40;
  double conductance_W_K = 1.2;  // heat loss of the whole hive
  bool mesh_floor = false;
  bool sheltered = false;
  bool can_board = true;  // a counting board fits under it
  bool can_heft = true;
  bool can_see_seams = true;
  bool can_super = true;
  bool two_colonies = false;  // shares walls with a second colony
};

}  // namespace beegarth::facts
