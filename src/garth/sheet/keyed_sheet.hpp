// A filled sheet comes back: the boxes of one site and day in the order of the printed sheet, and what was
// written in them as entries, kept all together or not at all.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "garth/plan/plan.hpp"
#include "garth/session.hpp"
#include "garth/sheet/sheet_boxes.hpp"

namespace beegarth::garth {

struct SheetJob {
  int number = 0;    // on the sheet
  std::string need;  // its key
  std::string what;
};

struct FrameToKeyIn {
  std::string row;   // how it is named: "#3 Alder", or "Alder" or "colony 2" where it is not on the sheet
  std::string name;  // of the colony, or of the site
  std::optional<ColonyId> colony;
  std::vector<SheetJob> jobs;   // empty where it is not on the sheet
  std::vector<BoxSet> printed;  // in the sheet's own order; the closing boxes last
  std::vector<BoxSet> others;   // that the sheet did not ask for, and that may be filled in all the same
};

struct SheetToKeyIn {
  SiteId site;
  std::string site_name;
  Date date;
  Date printed;          // the day from whose plan the order of the boxes comes
  bool planned = false;  // false: that plan had no such visit, and only the colonies of the site stand here
  std::vector<FrameToKeyIn> frames;
};

struct KeyInWish {
  std::string site;             // key or name
  Date date;                    // of the visit
  std::optional<Date> printed;  // absent: the day of the visit
  friend bool operator==(const KeyInWish&, const KeyInWish&) = default;
};

// The sheet as it was printed: the plan of the day on which it was, with what was known then. `today` is the
// plan of the session's own day where it is at hand. A Problem for a day to come.
Expected<SheetToKeyIn> sheet_to_key_in(const Session& session, const KeyInWish& wish,
                                       const PlanAnswer* today = nullptr);
// The same from a plan: `state` is that of the day on which it was made.
SheetToKeyIn sheet_to_key_in(const PlanAnswer& plan, const book::State& state, const SiteId& site, Date date,
                             Date printed);

// What was written in one box. `where` is how the keeper finds it again: "line 3", or empty.
struct WrittenBox {
  std::string row;
  std::string box;
  std::string value;
  std::string where = {};
};

struct KeyedIn {
  std::vector<entries::Entry> entries;  // in the sheet's order; without ids where nothing was kept
  bool kept = false;
};

// An empty box makes no entry. A Problem names row and box: "#3 Alder/brood combs".
Expected<KeyedIn> key_in(Session& session, const SheetToKeyIn& sheet, const std::vector<WrittenBox>& written,
                         bool keep);

// ---- as lines of text: "#3 Alder/brood combs: 6" ----
// Every box as such a line, to be filled in; lines that begin with "--" are for reading only.
std::string lines_to_fill_in(const SheetToKeyIn& sheet);
Expected<std::vector<WrittenBox>> boxes_in_lines(const SheetToKeyIn& sheet, std::string_view text);

nlohmann::json sheet_to_key_in_json(const SheetToKeyIn& sheet);

// The frame that `row` names: by the number of one of its jobs ("#3", or "3" where no colony is called so),
// by the colony's name or key, or by number and name. A Problem where there is none, or several.
Expected<const FrameToKeyIn*> frame_named(const SheetToKeyIn& sheet, std::string_view row);
// The box of that name in the frame, printed or not; nothing where there is none.
const Box* box_named(const FrameToKeyIn& frame, std::string_view name);

}  // namespace beegarth::garth
