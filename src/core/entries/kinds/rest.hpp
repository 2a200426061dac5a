// The keeper's own settings, rules and notes, and entries about entries.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

struct Setting {
  std::string name;
  std::string value;
};
struct Note {
  std::string text;
  std::optional<ColonyId> colony;
  std::optional<SiteId> site;
};
struct TableOverride {  // one row of a reference table, for this book
  std::string table;
  std::string row;
  double value = 0;
  Number low;
  Number high;
  std::string unit;
  std::string source;
  Text text;  // of a row whose unit is "text": its words, such as whom to tell
};
struct Removed {  // takes back an earlier entry; both stay in the book
  EntryId entry;
  Text reason;
};
struct Cleared {  // the bee inspector has cleared a suspect colony: the only thing that lifts the suspicion
  ColonyId colony;
  std::string by;
  Text remark;
};

struct Reported {  // a suspicion or a pest was told to the authority
  SiteId site;
  std::optional<ColonyId> colony;
  std::string what;  // "american_foulbrood"
  Text to;
  Text reference;
};
enum class Refusal {
  no_clipping,
  no_cutting_of_cells,
  no_sugar,
  no_synthetic_strips,
  no_organic_acids,
  no_artificial_swarms,
  no_uniting,
  no_queens_bought,
  no_drone_comb_cut,
  swarms_let_go  // not looked for, split away or cut out: bait boxes may catch them
};
struct KeeperRule {  // what this keeper will not do
  Refusal rule = Refusal::no_clipping;
  bool kept = true;  // false: given up from that day on
  Text remark;
};
struct Comparison {
  std::string name;
  std::string question;
  std::vector<ColonyId> first;   // the colonies on one side
  std::vector<ColonyId> second;  // and on the other
  Text measured;
  Flag finished;
  Text remark;
};
struct Photo {  // lies beside the book under its hash
  std::string sha256;
  std::string file_name;
  int bytes = 0;
  std::optional<ColonyId> colony;
  std::optional<SiteId> site;
  std::optional<EntryId> entry;  // that it belongs to
  Text caption;
};

}  // namespace beegarth::entries
