// Which combs may still give honey for people. A comb that was on a hive during feeding or treatment never
// may: that is a property of the comb, and it goes with the comb to whatever hive or store.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "base/fact_table.hpp"
#include "entries/entry.hpp"
#include "garth/ledgers/comb_store.hpp"
#include "garth/ledgers/side_by_side.hpp"

namespace beegarth::garth {

struct CombBatch {
  entries::Combs combs;
  std::optional<ColonyId> on;  // absent: in store, melted or burnt
  bool gone = false;           // melted or burnt
  std::set<ColonyId> been_on;  // every colony that it was ever on
  std::optional<HoneyMark> mark;
  std::map<ColonyId, Date> taken_off;  // when it last came off each
};

struct CropFrom {  // one harvest and what speaks against offering it
  EntryId entry;
  Date date;
  entries::Harvest harvest;
  std::optional<std::string> fault;  // empty: fit to be offered
  std::vector<EntryId> because;
  std::optional<EntryId> outdone_by;  // the smaller correction of the same harvest, which counts instead
};

struct HoneyRules {
  int feed_taken_days = 0;        // a comb put on so long after a feed takes some of it in
  int unsaid_treatment_days = 0;  // a treatment whose end nobody entered
  int boxes_wait_days = 0;        // at most between hive and extractor, for their harvest to be theirs
  static Expected<HoneyRules> from(const FactTable& work);
};

struct BoxesOn {  // of a colony, that nobody entered as a batch
  int combs = 0;
  std::string type;  // of its hive
  std::optional<HoneyMark> mark;
};

struct HoneyLedger {
  std::map<CombsId, CombBatch> batches;
  std::map<ColonyId, BoxesOn> boxes;  // on the day, as is what lies in store
  CombStore store;
  std::vector<CropFrom> crops;  // in date order
  std::map<LotId, entries::Lot> lots;
  std::map<LotId, std::vector<entries::Jars>> jars;

  double held_kg(const LotId& lot) const;    // by its harvests
  double jarred_kg(const LotId& lot) const;  // by its jars
  // What speaks against offering a lot; empty where nothing does. An unknown lot has no honey.
  std::vector<std::string> faults_of(const LotId& lot) const;
};

// More in the jars than was harvested; a sum of decimals may be off by less than a gram.
bool holds_too_much(double jarred_kg, double held_kg);
std::string kg_in_words(double kg);  // to the gram

// `first`: what corrects what (Session::first_said), so that a harvest corrected twice is counted once.
HoneyLedger honey_on(std::span<const entries::Entry> standing, Date day, const HoneyRules& rules,
                     const FirstSaid& first = {});

}  // namespace beegarth::garth
