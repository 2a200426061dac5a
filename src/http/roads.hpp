// The addresses under /api/ and what each does. Private to the room.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "http/respond.hpp"

namespace beegarth::http {

// What the body of a question has to be. A page from elsewhere can send neither without asking first.
enum class Takes { json, picture };

struct Road {
  std::string_view path;  // "*" in it stands for a key, which may hold slashes
  std::string_view method;
  Reply (*go)(const Ask&, const std::string& key, const Api&);
  std::string_view asks = {};  // what may stand behind the question mark: "from to known"
  Takes takes = Takes::json;
};

// A more particular address stands before one that would match it too.
std::span<const Road> plan_roads();   // the plan, colonies, notes, needs, sheets, computations
std::span<const Road> entry_roads();  // the book itself: entries, kinds, registers
std::span<const Road> form_roads();   // queens, photos, checklists, the book in other forms, a filled sheet

}  // namespace beegarth::http
