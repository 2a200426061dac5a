// The addresses under /api/ and what each does. Private to the room.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "http/respond.hpp"

namespace beegarth::http {

// What the body of a question has to be: `file` is JSON with a whole file in it. A page from elsewhere can
// send none of them without asking first.
enum class Takes { json, picture, file };

struct Road {
  std::string_view path;  // "*" in it stands for a key, which may hold slashes
  std::string_view method;
  Reply (*go)(const Ask&, const std::string& key, const Api&);
  std::string_view asks = {};  // what may stand behind the question mark: "from to known"
  Takes takes = Takes::json;
  bool tagged = true;  // the book's head says whether the answer has changed
};

// A more particular address stands before one that would match it too.
std::span<const Road> plan_roads();     // the plan, colonies, notes, needs, sheets, computations
std::span<const Road> week_roads();     // the plan in other forms, and a week of the keeper's own
std::span<const Road> suppose_roads();  // what would come of other deeds
std::span<const Road> entry_roads();    // the book itself: entries, kinds, registers
std::span<const Road> import_roads();   // a file comes in; the book checked, and as it stood on a day
std::span<const Road> form_roads();     // queens, photos, checklists, the book in other forms, a filled sheet

}  // namespace beegarth::http
