// What can be said of a colony that was looked at.
#include <algorithm>
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

using I = Inspection;

constexpr double fewest_bees_estimated = 500;  // below it, "5 bees" is a remark

Write number(Number Inspection::*field, bool inside = true) {
  return [=](Said& said, const PatternMatch& m) {
    return change_look(
        said, [&](Inspection& i) { return put(i.*field, m.numbers[0]); }, inside);
  };
}
// "down from 9 seams to 4": the later of the two.
Write second_number(Number Inspection::*field, bool inside = true) {
  return [=](Said& said, const PatternMatch& m) {
    return change_look(
        said, [&](Inspection& i) { return put(i.*field, m.numbers[1]); }, inside);
  };
}
Write none(Number Inspection::*field) {
  return [=](Said& said, const PatternMatch&) {
    return change_look(said, [&](Inspection& i) { return put(i.*field, 0.0); });
  };
}
Write count(Count Inspection::*field) {
  return [=](Said& said, const PatternMatch& m) {
    const auto value = whole(m.numbers[0]);
    return value && change_look(said, [&](Inspection& i) { return put(i.*field, *value); });
  };
}
Write flag(Flag Inspection::*field, bool value, bool inside = true) {
  return [=](Said& said, const PatternMatch&) {
    return change_look(
        said, [&](Inspection& i) { return put(i.*field, value); }, inside);
  };
}
Write no_cells(std::vector<Count Inspection::*> fields) {
  return [fields = std::move(fields)](Said& said, const PatternMatch&) {
    return change_look(said, [&](Inspection& i) {
      return std::all_of(fields.begin(), fields.end(), [&](auto field) { return put(i.*field, 0); });
    });
  };
}
Write looked(Look look) {
  return [=](Said& said, const PatternMatch&) {
    if (said.look_named && said.look->look != look) return false;
    said.look_named = true;
    return change_look(
        said,
        [&](Inspection& i) {
          i.look = look;
          return true;
        },
        false);
  };
}

bool all_stages(Said& said, const PatternMatch&) {
  return change_look(said, [](Inspection& i) {
    return put(i.eggs, true) && put(i.open_brood, true) && put(i.capped_brood, true);
  });
}
bool no_worker_brood(Said& said, const PatternMatch&) {
  return change_look(said, [](Inspection& i) { return put(i.capped_cells, 0.0); });
}
bool one_charged_cell(Said& said, const PatternMatch& m) {
  if (m.typed.find("cells") != std::string::npos || m.typed.find("QCs") != std::string::npos) return false;
  return change_look(said, [](Inspection& i) { return put(i.charged_cells, 1); });
}
// What was done to the cells: they are gone, so they are not counted as seen.
bool remark(Said& said, const PatternMatch& m) {
  return change_look(said, [&](Inspection& i) {
    i.remark = i.remark ? *i.remark + "; " + m.typed : m.typed;
    return true;
  });
}
bool stays_text(Said&, const PatternMatch&) {
  return false;
}
bool no_bees(Said& said, const PatternMatch&) {
  return change_look(said, [](Inspection& i) { return put(i.bees, 0.0); });
}
bool bees(Said& said, const PatternMatch& m) {
  if (m.numbers[0] < fewest_bees_estimated) return false;
  return change_look(said, [&](Inspection& i) { return put(i.bees, m.numbers[0]); });
}
bool pollen(Said& said, const PatternMatch& m) {
  const std::string& word = m.chosen[0];
  const Level level = word == "plenty"   ? Level::plenty
                      : word == "some"   ? Level::some
                      : word == "little" ? Level::little
                                         : Level::none;
  return change_look(said, [&](Inspection& i) { return put(i.pollen, level); });
}
bool super_fill(Said& said, double share) {
  return change_look(
      said, [&](Inspection& i) { return put(i.super_share, share); }, false);
}
bool super_word(Said& said, const PatternMatch& m) {
  const std::string& word = m.chosen[0];
  return super_fill(said, word == "full" ? 1 : word == "half" ? 0.5 : 0);
}

// A comb covered on both sides carries the bees of two half seams (arithmetic), so combs of bees are seams.
std::vector<Item> strength_and_brood() {
  return {
      {"# seam of? bee?", number(&I::seams, false)},
      {"seam #", number(&I::seams, false)},
      {"bee on|in|over|cover # seam|comb", number(&I::seams, false)},
      {"# comb of? bee", number(&I::seams, false)},
      {"no bee left|found|inside", no_bees},
      {"no bee in the|it hive?", no_bees},
      {"hive found? empty", no_bees},
      {"hive empty of bee", no_bees},
      {"# bee", bees},
      {"bee #", bees},
      {"down|up to # seam from # seam?", number(&I::seams, false)},
      {"down|up from # seam? to # seam", second_number(&I::seams, false)},
      {"down|up from # seam to #", second_number(&I::seams, false)},
      {"down|up to # brood comb? from # brood? comb?", number(&I::brood_combs)},
      {"# brood comb?", number(&I::brood_combs)},
      {"# comb of|with? brood", number(&I::brood_combs)},
      {"brood comb? #", number(&I::brood_combs)},
      {"brood on|in? # comb", number(&I::brood_combs)},
      {"no brood seen?", none(&I::brood_combs)},
      {"# capped|sealed worker|brood brood? cell", number(&I::capped_cells)},
      {"capped cell #", number(&I::capped_cells)},
      {"# capped|sealed? drone cell", number(&I::drone_cells)},
      {"drone cell #", number(&I::drone_cells)},
      // A queen that lays drones only is known by this: no worker brood is capped.
      {"drone layer|laying queen?", no_worker_brood},
      {"drone-layer|drone-laying queen?", no_worker_brood},
      {"only drone brood", no_worker_brood},
      {"drone brood only", no_worker_brood},
      {"no capped|sealed? worker brood", no_worker_brood},
      {"egg seen|yes?", flag(&I::eggs, true)},
      {"seen egg", flag(&I::eggs, true)},
      {"no egg seen?", flag(&I::eggs, false)},
      {"not seen any? egg", flag(&I::eggs, false)},
      {"egg not seen", flag(&I::eggs, false)},
      {"egg no|none $", flag(&I::eggs, false)},
      {"open brood yes?", flag(&I::open_brood, true)},
      {"young? larva seen|yes?", flag(&I::open_brood, true)},
      {"no open brood", flag(&I::open_brood, false)},
      {"no larva seen?", flag(&I::open_brood, false)},
      {"larva|brood no|none $", stays_text},
      {"#? dead larva in|on? #? cell|comb?", stays_text},
      {"#? dead bee on|in|over? #? seam|comb?", stays_text},
      {"was bee on|in|over # seam|comb", stays_text},
      {"open brood no|none $", flag(&I::open_brood, false)},
      {"capped|sealed brood yes?", flag(&I::capped_brood, true)},
      {"no capped|sealed brood", flag(&I::capped_brood, false)},
      {"capped|sealed brood no|none $", flag(&I::capped_brood, false)},
      {"brood in all stages", all_stages},
      {"bias", all_stages},
      {"all stages of? brood?", all_stages},
  };
}

std::vector<Item> queen_and_cells() {
  return {
      {"marked? queen seen|found", flag(&I::queen, true)},
      {"seen|found the? marked? queen", flag(&I::queen, true)},
      {"queen yes", flag(&I::queen, true)},
      {"queen no $", flag(&I::queen, false)},
      {"queen not seen|found", flag(&I::queen, false)},
      {"queen unseen", flag(&I::queen, false)},
      {"no queen found|seen", flag(&I::queen, false)},
      {"not seen|found|find the|any? queen", flag(&I::queen, false)},
      {"no sign of the? queen", flag(&I::queen, false)},
      {"# cup with egg", count(&I::cups_with_egg)},
      {"cup with egg #", count(&I::cups_with_egg)},
      {"no? egg in|inside them|it|the|cup|cell cup?", stays_text},  // of cups, not of the comb
      {"# charged|open queen? cell|qc", count(&I::charged_cells)},
      {"charged|open queen? cell|qc #", count(&I::charged_cells)},
      {"QC # charged|open", count(&I::charged_cells)},
      {"# QC charged|open", count(&I::charged_cells)},
      {"# queen? cell|qc with|holding larva", count(&I::charged_cells)},
      asking("QC with|holding larva", one_charged_cell, "how many charged cells?"),
      {"no queen? cell|qc with|holding larva", no_cells({&I::charged_cells})},
      {"# charged|open queen? cell|qc with|holding larva", count(&I::charged_cells)},
      {"drone cell with|holding larva", stays_text},
      unclear("# cell with|holding larva", "queen cells?"),
      unclear("cell with|holding larva", "queen cells? and how many?"),
      {"# sealed queen? cell|qc", count(&I::sealed_cells)},
      {"# capped QC", count(&I::sealed_cells)},
      {"sealed queen? cell|qc #", count(&I::sealed_cells)},
      {"QC # sealed|capped", count(&I::sealed_cells)},
      {"# QC sealed|capped", count(&I::sealed_cells)},
      {"no charged|open queen? cell|qc", no_cells({&I::charged_cells})},
      {"no sealed queen? cell|qc", no_cells({&I::sealed_cells})},
      {"no capped QC", no_cells({&I::sealed_cells})},
      {"no queen? cell|qc seen|found?", no_cells({&I::charged_cells, &I::sealed_cells})},
      {"QC no|none|nil|zero $", no_cells({&I::charged_cells, &I::sealed_cells})},
      {"knocked|broke|cut|taken|removed|tore down|out? the|all? #? sealed|charged|open|capped? queen? "
       "cell|qc down|out?",
       remark},
      {"#? sealed|charged|open|capped? queen? cell|qc knocked|broken|cut|taken|removed|torn down|out?",
       remark},
      unclear("# QC", "charged or sealed cells?"),
      unclear("QC #", "charged or sealed cells?"),
      unclear("QC", "charged or sealed cells, and how many?"),
  };
}

std::vector<Item> food_and_temper() {
  return {
      {"store # comb", number(&I::store_combs)},
      {"store comb #", number(&I::store_combs)},
      {"# comb of? store|honey", number(&I::store_combs)},
      {"# store comb", number(&I::store_combs)},
      {"no store left?", none(&I::store_combs)},
      {"store no|none|nil $", none(&I::store_combs)},
      {"store #kg", number(&I::stores_kg)},
      {"#kg of? store", number(&I::stores_kg)},
      unclear("store #", "combs or kg?"),
      {"=plenty|some|little|no of? pollen", pollen},
      {"pollen =plenty|some|little|none", pollen},
      {"pollen no $",
       [](Said& s, const PatternMatch&) {
         return change_look(s, [](I& i) { return put(i.pollen, Level::none); });
       }},
      {"super =empty", super_word},
      {"super =full|half full? of? honey?", super_word},
      {"=half a? super of honey|store", super_word},
      unclear("half a? super", "a super half full, or half of one put on or taken off?"),
      {"super #% full?", [](Said& s, const PatternMatch& m) { return super_fill(s, m.numbers[0] / 100); }},
      {"super # / # full",
       [](Said& s, const PatternMatch& m) {
         return m.numbers[1] > 0 && super_fill(s, m.numbers[0] / m.numbers[1]);
       }},
      {"super share #", [](Said& s, const PatternMatch& m) { return super_fill(s, m.numbers[0]); }},
      {"drone seen|yes?", flag(&I::drones, true, false)},
      {"no drone seen?", flag(&I::drones, false)},
      {"drone no|none $", flag(&I::drones, false)},
      {"drone layer|laying queen?", stays_text},
      {"drone brood", stays_text},
      {"dead drone", stays_text},
      {"calm bee|yes?", flag(&I::calm, true, false)},
      {"bee|temper calm", flag(&I::calm, true, false)},
      {"cross bee?", flag(&I::calm, false, false)},
      {"calm no $", flag(&I::calm, false, false)},
      {"bee|temper cross", flag(&I::calm, false, false)},
      {"looked because wrong yes?",
       [](Said& s, const PatternMatch&) {
         return change_look(
             s, [](I& i) { return put(i.looked_because_wrong, true); }, false);
       }},
      {"full inspection|look", looked(Look::full)},
      {"look full", looked(Look::full)},
      {"quick inspection|look|check|peek", looked(Look::quick)},
      {"look quick", looked(Look::quick)},
      {"looked? from outside only?", looked(Look::outside)},
      {"look outside", looked(Look::outside)},
  };
}

}  // namespace

std::vector<Item> items_seen() {
  std::vector<Item> items = strength_and_brood();
  for (const auto part : {queen_and_cells, food_and_temper}) {
    for (Item& item : part()) items.push_back(std::move(item));
  }
  return items;
}

}  // namespace beegarth::entries
