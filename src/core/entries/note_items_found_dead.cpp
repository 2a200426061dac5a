// What lay in a hive whose colony is dead.
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

using D = DeadColony;

bool found(Said& said, const std::function<bool(D&)>& change) {
  for (std::size_t i = 0; i < said.others.size(); ++i) {
    auto* dead = std::get_if<D>(&said.others[i]);
    if (!dead) continue;
    D changed = *dead;
    if (!change(changed) || !validate(changed)) return false;
    *dead = std::move(changed);
    said.touched = Touched::other;
    said.other_touched = i;
    return true;
  }
  D fresh{.colony = said.colony};
  return change(fresh) && add(said, fresh);
}
Write flag(Flag D::*field, bool value = true) {
  return [=](Said& said, const PatternMatch&) {
    return found(said, [&](D& d) { return put(d.*field, value); });
  };
}
Write bees(Level level) {
  return [=](Said& said, const PatternMatch&) {
    return found(said, [&](D& d) { return put(d.dead_bees, level); });
  };
}
bool stores(Said& said, const PatternMatch& m) {
  return found(said, [&](D& d) { return put(d.stores_kg, m.numbers[0]); });
}
bool no_stores(Said& said, const PatternMatch&) {
  return found(said, [](D& d) { return put(d.stores_kg, 0.0); });
}

}  // namespace

std::vector<Item> items_found_dead() {
  return {
      {"plenty of? dead? bee", bees(Level::plenty)},
      {"some dead bee", bees(Level::some)},
      {"little dead bee", bees(Level::little)},
      {"no dead? bee left?", bees(Level::none)},
      {"small? cluster of? dead? bee?", flag(&D::cluster)},
      {"no cluster", flag(&D::cluster, false)},
      {"bee? head first? in the|empty? cell", flag(&D::heads_in_cells)},
      {"store #kg left?", stores},
      {"#kg of? store left?", stores},
      {"no store left?", no_stores},
      {"store within reach", flag(&D::stores_within_reach)},
      {"store out of reach", flag(&D::stores_within_reach, false)},
      {"no store within reach", flag(&D::stores_within_reach, false)},
      {"brood left|present", flag(&D::brood)},
      {"no brood", flag(&D::brood, false)},
      {"dead? queen found|seen", flag(&D::queen_found)},
      {"found|seen the|dead? queen", flag(&D::queen_found)},
      {"no queen found|seen", flag(&D::queen_found, false)},
      {"queen not found|seen", flag(&D::queen_found, false)},
      {"no queen? cell|qc", flag(&D::queen_cells, false)},
      {"QC found|seen|present", flag(&D::queen_cells)},
      {"dysentery", flag(&D::dysentery)},
      {"no dysentery", flag(&D::dysentery, false)},
      {"damp", flag(&D::damp)},
      {"mould on|over? the? comb?", flag(&D::damp)},
      {"ragged|torn capping", flag(&D::ragged_cappings)},
      {"white specks|spots in the|brood? cell", flag(&D::mite_droppings)},
      {"mite droppings", flag(&D::mite_droppings)},
      {"deformed wing", flag(&D::deformed_wings)},
      {"mouse|woodpecker in|damage|hole?", flag(&D::mouse_or_woodpecker)},
      {"closed|sealed up?", flag(&D::closed)},
      {"closed|sealed the? hive|entrance|it up?", flag(&D::closed)},
      {"hive|entrance closed|sealed|blocked", flag(&D::closed)},
  };
}

}  // namespace beegarth::entries
