// Colonies and their queens.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

enum class Beginning { overwintered, swarm, split, bought, unknown };
struct ColonyBegan {
  ColonyId colony;
  std::string name;
  HiveId hive;
  Beginning how = Beginning::unknown;
  Number bees;  // estimate
  Number stores_kg;
  Count queen_year;  // hatched
  Flag queen_clipped;
  Text remark;
  std::optional<ColonyId> swarm_of;  // the own colony that it came out of, where that was seen
  Text from_whom;                    // the seller or giver, with a registration number where there is one
};
struct ColonyMoved {
  ColonyId colony;
  HiveId hive;
};
enum class Ending { died, sold, united, given_away, absconded };
struct ColonyEnded {
  ColonyId colony;
  Ending how = Ending::died;
  Text cause;
};
enum class QueenEvent {
  marked,
  clipped,
  introduced,
  cell_given,
  virgin_emerged,
  laying,
  lost,
  removed,
  caged,
  released,
  seen,
  superseded,
  died
};
enum class QueenColour { white, yellow, red, green, blue, none };
struct Queen {
  ColonyId colony;
  QueenEvent event = QueenEvent::marked;
  std::optional<QueenId> which;  // where the queens are told apart
  Count year;
  std::optional<QueenColour> colour;
  Text number;  // of the disc
  Text remark;
};

enum class QueenOrigin { reared, swarm, supersedure, emergency, bought, given, unknown };
struct QueenBegan {
  QueenId queen;
  std::string name;
  std::optional<QueenId> mother;
  QueenOrigin origin = QueenOrigin::unknown;
  Count year;  // hatched
  Text line;
  Text breeder;
  Text remark;
};
enum class MatingKind { open, mating_site, inseminated };
struct QueenMated {
  QueenId queen;
  MatingKind how = MatingKind::open;
  std::vector<QueenId> drone_mothers;  // whose drones flew, as far as it is known
  Count drones;                        // inseminated: how many
  Text place;
  Text remark;
};
struct Score {  // the keeper's own judgement, higher is better
  ColonyId colony;
  std::optional<QueenId> queen;
  std::string trait;  // "calm", "honey", "stays on the comb"
  double score = 0;
  Text remark;
};
struct Quarantine {  // a stock of unknown origin is kept apart
  ColonyId colony;
  std::optional<Date> until;  // absent with `lifted`
  Flag lifted;
  Text reason;
};
struct StockAim {  // how many stocks where by which month
  SiteId site;     // "all" for every site
  int month = 1;
  int colonies = 0;
  Text remark;
};

}  // namespace beegarth::entries
