// What a keeper does to a colony on a day, or what is seen to have befallen it.
#pragma once

#include <string>
#include <variant>

#include "facts/dwelling.hpp"

namespace beegarth::colony {

struct Feed {  // sugar as honey equivalent: 1 kg of sugar makes about 1.2 kg of stores
  double stores_kg = 0;
  double pollen_kg = 0;
};
struct AddRoom {  // combs added; negative takes away (never below none)
  int brood_combs = 0;
  int super_combs = 0;
  int undrawn_combs = 0;  // of those added, still to be drawn
};
struct Treat {
  std::string kind;  // a row group of tables/colony.toml: oxalic, formic, thymol, amitraz, pyrethroid, other
  double days = 0;   // on the hive; 0 takes the usual time of the kind
};
struct RemoveDroneComb {
  double share = 1;  // of all capped drone brood
};
struct RemoveBrood {
  double share = 1;  // of all brood, with the mites in it
};
struct CutCells {};  // every queen cell taken out
struct CageQueen {};
struct ReleaseQueen {};
struct QueenLost {};  // dead, removed or sold; the bees raise cells if they have brood young enough
struct IntroduceQueen {
  bool mated = true;
  double accepted = 0.85;  // odds that the bees take her
};
struct GiveCell {};  // a sealed cell two days from emerging
struct SwarmSeen {   // a swarm was seen to leave today: it does so in every member that has a laying queen
  double share = 0;  // of adults that left; 0 takes the usual share
};
struct SplitAway {  // this part leaves; the rest stays here
  double bees_share = 0.5;
  double brood_share = 0.5;
  double stores_share = 0.5;
  bool queen_leaves = false;
  bool foragers_stay = true;  // the moved part flies back
};
struct KeepPart {  // the part that left goes on as this ensemble: SplitAway seen from the other side
  SplitAway split;
};
struct UniteWith {  // added to this colony
  double bees = 0;
  double brood_cells = 0;
  double stores_kg = 0;
  double mites = 0;
};
struct Rehouse {  // from today on it lives in this
  facts::Dwelling dwelling;
  bool other_combs = false;  // undrawn_combs of these are still to be drawn; else as many as were left
};
struct MovedSite {
  double foragers_stray = 0;  // share of the foragers that fly back to where the hive stood
};
struct Harvest {
  double honey_kg = 0;  // taken as far as it is there
};
struct SetStores {  // weighed: every member has this much, plus or minus nothing
  double stores_kg = 0;
};
struct Kill {};  // the colony ends

using Action = std::variant<Feed, AddRoom, Treat, RemoveDroneComb, RemoveBrood, CutCells, CageQueen,
                            ReleaseQueen, QueenLost, IntroduceQueen, GiveCell, SwarmSeen, SplitAway, KeepPart,
                            UniteWith, Rehouse, MovedSite, Harvest, SetStores, Kill>;

}  // namespace beegarth::colony
