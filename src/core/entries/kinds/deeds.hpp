// What was done to a colony, and what happened that needs an answer at once.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

enum class FeedForm { syrup, fondant, comb, pollen };
enum class FeedSource { sugar, own_honey, own_combs, bought_feed, honey_of_unknown_origin };
struct Feed {
  ColonyId colony;
  double kg = 0;     // as given
  Number sugar_pct;  // by weight
  FeedForm form = FeedForm::syrup;
  std::optional<FeedSource> source;
  Text product;
};
enum class TreatmentKind {
  oxalic_trickle,
  oxalic_vapour,
  formic,
  thymol,
  amitraz,
  pyrethroid,
  hop_acids,
  drone_comb_removed,
  brood_removed,
  other
};
struct Treatment {
  ColonyId colony;
  TreatmentKind kind = TreatmentKind::other;
  Number days;  // how long it stays on, by the label
  Text product;
  Text batch;
  Text amount;             // as the keeper writes it; beegarth never works out a dose
  Number withdrawal_days;  // by the label
  Text supplier;
  Flag supers_on;  // boxes for people were on the hive
  Text remark;
};
struct Room {  // combs put on or, negative, taken off
  ColonyId colony;
  Count brood_combs;
  Count super_combs;
  Count undrawn;                 // of those put on, how many still want drawing
  std::optional<CombsId> combs;  // the batch that they are of; absent: boxes and combs that nobody named
};
struct Swarmed {
  ColonyId colony;
  Text remark;
};
struct Split {
  ColonyId colony;
  ColonyId into;
  std::string name;
  HiveId hive;
  double bees_share = 0.4;  // of adults to the new one
  double brood_share = 0.4;
  bool queen_goes = false;
};
struct Unite {
  ColonyId colony;  // that goes on
  ColonyId from;    // that ends in it
};

struct TreatmentEnded {  // strips out, tray off
  ColonyId colony;
  TreatmentKind kind = TreatmentKind::other;
  Text remark;
};
enum class TransferWay {
  shaken,
  cut_and_tied,
  grown_down,
  grown_across,
  bars_among_frames,
  combs_lifted_over
};
struct Transfer {  // of a colony into a hive of another pattern
  ColonyId colony;
  HiveId hive;
  TransferWay how = TransferWay::shaken;
  Number brood_kept;  // share 0..1; absent: as is usual for the way
  Text remark;
};
enum class Urgency { swarm_call, blown_over, robbing, spraying, flood, theft, stings, fire, other };
struct Urgent {
  Urgency what = Urgency::other;
  std::optional<SiteId> site;
  std::optional<ColonyId> colony;
  Text place;  // where it is no site of ours
  Text remark;
};
struct NeedAnswered {
  std::string need;  // its key
  enum class Answer { done, skipped, put_off, rained_off } answer = Answer::done;
  std::optional<Date> until;
  Text remark;
};

}  // namespace beegarth::entries
