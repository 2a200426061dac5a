// Kit with its past, hives put together of it, combs with their ages, and building.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

struct Kit {
  std::string what;
  int count = 0;  // owned and ready now
  Text where;
};

enum class PartKind {
  floor,
  brood_body,
  super,
  crown_board,
  roof,
  frames,
  bars,
  excluder,
  feeder,
  follower,
  stand,
  nucleus_box,
  bait_box,
  whole_hive,
  clothing,
  tool,
  other
};
enum class PartOrigin { own_build, bought_new, bought_used, inherited, found, unknown };
struct Part {
  PartId part;
  std::string name;
  PartKind what = PartKind::other;
  PartOrigin origin = PartOrigin::unknown;
  Text pattern;  // the hive it belongs to: "National"
  Count count;
  Flag unknown_paint;
  Flag asbestos;
  Flag old_comb;
  std::optional<SiteId> site;
  Text remark;
};
enum class PartState { suspect, kept_out, scorched, dipped, sent_away, clean, usable, worn_out, burnt };
struct PartNow {
  PartId part;
  PartState state = PartState::suspect;
  Text remark;
};
struct Assembled {  // a hive is put together of parts
  HiveId hive;
  std::vector<PartId> parts;
  Text remark;
};
enum class CombUse { brood, honey };
enum class CombOrigin { own, bought_new, bought_used, inherited, found, with_bees, unknown };
struct Combs {  // a batch of combs alike in age and use
  CombsId combs;
  std::string name;
  int count = 0;
  CombUse use = CombUse::brood;
  Count drawn_year;
  std::optional<CombsId> parted_from;  // the batch that these were part of: as old as it, and marked as it is
  std::optional<ColonyId> colony;      // on which hive; absent: in store
  Flag for_people;                     // absent means yes where the use is honey
  Text store;
  Text remark;
  std::optional<CombOrigin> origin;  // absent: own. with_bees: they came with the colony that is named
};
enum class CombsGo { on_hive, into_store, melted, burnt };
struct CombsMoved {
  CombsId combs;
  CombsGo to = CombsGo::into_store;
  std::optional<ColonyId> colony;  // on_hive: whose
  Text remark;
};
struct Wax {  // wax in, foundation out
  double kg = 0;
  Count sheets;
  Text remark;
};
struct BuildStep {
  std::string build;
  std::string step;
  Number hours;
  Flag finished;  // the whole build
  Text remark;
};

}  // namespace beegarth::entries
