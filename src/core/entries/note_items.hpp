// What can be said of a colony or of a site's weather: patterns and what each one writes down. Private to the
// room.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "entries/entry.hpp"
#include "entries/note_patterns.hpp"

namespace beegarth::entries {

enum class Touched { look, new_other, last_other, weather };

// What was said so far about one colony or site on one day.
struct Said {
  ColonyId colony;
  SiteId site;
  std::optional<int> super_combs;
  std::optional<Inspection> look;
  bool look_named = false;  // quick, full, outside was said
  bool inside = false;      // combs were looked at
  std::optional<Weather> weather;
  std::vector<Payload> others;
  Touched touched = Touched::look;  // what the last words went into
};

// False where the words cannot be kept as a field: beyond its limits, or against what was said before.
using Write = std::function<bool(Said&, const PatternMatch&)>;

struct Item {
  Pattern pattern;
  Write write;
};

std::vector<Item> items_seen();     // at a look
std::vector<Item> items_counted();  // mites, weights, feed, honey
std::vector<Item> items_done();     // treatments, room, queens, ends

std::span<const Item> colony_items();  // all of these
std::span<const Item> weather_items();
bool is_known_lemma(const std::string& lemma);  // stands in one of the patterns

}  // namespace beegarth::entries
