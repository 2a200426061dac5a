// What can be said of a colony, a site or of neither: patterns and what each one writes down. Private to the
// room.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "entries/entry.hpp"
#include "entries/note_patterns.hpp"

namespace beegarth::entries {

enum class Touched { look, other, weather };

// What was said so far about one colony or site on one day.
struct Said {
  ColonyId colony;
  SiteId site;
  std::optional<int> super_combs;
  std::vector<TreatmentKind> treatments_on;  // as the book has it
  std::optional<Inspection> look;
  bool look_named = false;  // quick, full, outside was said
  bool inside = false;      // combs were looked at
  std::optional<Weather> weather;
  std::vector<Payload> others;
  bool dead = false;                // what is found from now on was found in a dead hive
  Touched touched = Touched::look;  // what the last words went into
  std::size_t other_touched = 0;    // which of the others
};

// False where the words cannot be kept as a field: beyond its limits, or against what was said before.
using Write = std::function<bool(Said&, const PatternMatch&)>;

struct Item {
  Pattern pattern;
  Write write;
  std::string question;  // what the keeper is asked where the words can be read in two ways and stay text
  bool never = false;    // it always can
  bool dead = false;     // tells that the colony is dead
  bool alone = false;    // means what it says only where nothing is left over beside it

  Item(const char* text, Write writes) : pattern(text), write(std::move(writes)) {}
};
// Items in their order, with those at hand that a word can begin.
class ItemList {
 public:
  explicit ItemList(std::vector<Item> items);
  std::span<const Item> all() const { return items_; }
  const std::vector<const Item*>& beginning_with(const NoteWord& word) const;

 private:
  std::vector<Item> items_;
  std::unordered_map<std::string, std::vector<const Item*>> by_lemma_;
  std::vector<const Item*> by_number_;
  std::vector<const Item*> others_;
};

Item unclear(const char* text, const char* question);              // never a field
Item asking(const char* text, Write write, const char* question);  // a question where it is no field

// What the makers of items share: another entry beside the look and the weather, or a change to the last one.
bool add(Said& said, Payload payload);
template <class Kind, class Change>
bool change_last(Said& said, Change change) {
  if (said.others.empty()) return false;
  auto* last = std::get_if<Kind>(&said.others.back());
  if (!last) return false;
  Kind changed = *last;
  if (!change(changed) || !validate(changed)) return false;
  *last = std::move(changed);
  said.touched = Touched::other;
  said.other_touched = said.others.size() - 1;
  return true;
}
// Changes the inspection only where the changed one is valid.
bool change_look(Said& said, const std::function<bool(Inspection&)>& change, bool inside = true);

std::vector<Item> items_seen();      // at a look
std::vector<Item> items_of_signs();  // of ill health
std::vector<Item> items_counted();   // mites, weights
std::vector<Item> items_fed();       // feed, honey
std::vector<Item> items_treated();
std::vector<Item> items_room();    // boxes and combs, splits, unions, other hives
std::vector<Item> items_queens();  // queens, swarms, ends, scores
std::vector<Item> items_found_dead();
std::vector<Item> items_of_land();     // bloom, cutting, planting, nests, flower watches
std::vector<Item> items_of_nobody();   // urgent calls, kit, lots
std::vector<Item> items_of_trouble();  // urgent, of a colony or a site; samples, the inspector
std::vector<Item> items_of_weather();

const ItemList& colony_items();       // of a colony
const ItemList& dead_colony_items();  // the same where it is dead
const ItemList& site_items();
const ItemList& weather_items();
const ItemList& nobody_items();
const ItemList& no_items();
bool is_known_lemma(const std::string& lemma);  // stands in one of the patterns

}  // namespace beegarth::entries
