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
Write found_flag(Flag D::*field, bool value = true) {
  return [=](Said& said, const PatternMatch&) {
    return found(said, [&](D& d) { return put(d.*field, value); });
  };
}
Write dead_bees(Level level) {
  return [=](Said& said, const PatternMatch&) {
    return found(said, [&](D& d) { return put(d.dead_bees, level); });
  };
}
bool stores_left(Said& said, const PatternMatch& m) {
  return found(said, [&](D& d) { return put(d.stores_kg, m.numbers[0]); });
}
bool no_stores(Said& said, const PatternMatch&) {
  return found(said, [](D& d) { return put(d.stores_kg, 0.0); });
}

}  // namespace

std::vector<Item> items_found_dead() {
  return {
      {"plenty of? dead? bee", dead_bees(Level::plenty)},
      {"some dead bee", dead_bees(Level::some)},
      {"little dead bee", dead_bees(Level::little)},
      {"no dead? bee left?", dead_bees(Level::none)},
      {"small? cluster of? dead? bee?", found_flag(&D::cluster)},
      {"no cluster", found_flag(&D::cluster, false)},
      {"bee? head first? in the|empty? cell", found_flag(&D::heads_in_cells)},
      {"store #kg left?", stores_left},
      {"#kg of? store left?", stores_left},
      {"no store left?", no_stores},
      {"store within reach", found_flag(&D::stores_within_reach)},
      {"store out of reach", found_flag(&D::stores_within_reach, false)},
      {"no store within reach", found_flag(&D::stores_within_reach, false)},
      {"brood left|present", found_flag(&D::brood)},
      {"no brood", found_flag(&D::brood, false)},
      {"dead? queen found|seen", found_flag(&D::queen_found)},
      {"found|seen the|dead? queen", found_flag(&D::queen_found)},
      {"no queen found|seen", found_flag(&D::queen_found, false)},
      {"queen not found|seen", found_flag(&D::queen_found, false)},
      {"no queen? cell|qc", found_flag(&D::queen_cells, false)},
      {"QC found|seen|present", found_flag(&D::queen_cells)},
      {"dysentery", found_flag(&D::dysentery)},
      {"no dysentery", found_flag(&D::dysentery, false)},
      {"damp", found_flag(&D::damp)},
      {"mould on|over? the? comb?", found_flag(&D::damp)},
      {"ragged|torn capping", found_flag(&D::ragged_cappings)},
      {"white specks|spots in the|brood? cell", found_flag(&D::mite_droppings)},
      {"mite droppings", found_flag(&D::mite_droppings)},
      {"deformed wing", found_flag(&D::deformed_wings)},
      {"mouse|woodpecker in|damage|hole?", found_flag(&D::mouse_or_woodpecker)},
      {"closed|sealed up?", found_flag(&D::closed)},
      {"closed|sealed the? hive|entrance|it up?", found_flag(&D::closed)},
      {"hive|entrance closed|sealed|blocked", found_flag(&D::closed)},
  };
}

}  // namespace beegarth::entries
