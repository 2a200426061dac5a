// What can be said of a colony that was looked at.
#include <algorithm>
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

constexpr double fewest_bees_estimated = 500;  // below it, "5 bees" is a remark

// Changes the inspection only where the changed one is valid.
bool seen(Said& said, const std::function<bool(Inspection&)>& change, bool inside = true) {
  Inspection changed = said.look.value_or(Inspection{.colony = said.colony});
  if (!change(changed) || !validate(changed)) return false;
  said.look = std::move(changed);
  said.inside = said.inside || inside;
  said.touched = Touched::look;
  return true;
}

Write number(Number Inspection::*field, bool inside = true) {
  return [=](Said& said, const PatternMatch& m) {
    return seen(
        said, [&](Inspection& i) { return put(i.*field, m.numbers[0]); }, inside);
  };
}
Write none(Number Inspection::*field) {
  return [=](Said& said, const PatternMatch&) {
    return seen(said, [&](Inspection& i) { return put(i.*field, 0.0); });
  };
}
Write count(Count Inspection::*field) {
  return [=](Said& said, const PatternMatch& m) {
    const auto value = whole(m.numbers[0]);
    return value && seen(said, [&](Inspection& i) { return put(i.*field, *value); });
  };
}
Write flag(Flag Inspection::*field, bool value, bool inside = true) {
  return [=](Said& said, const PatternMatch&) {
    return seen(
        said, [&](Inspection& i) { return put(i.*field, value); }, inside);
  };
}
Write no_cells(std::vector<Count Inspection::*> fields) {
  return [fields = std::move(fields)](Said& said, const PatternMatch&) {
    return seen(said, [&](Inspection& i) {
      return std::all_of(fields.begin(), fields.end(), [&](auto field) { return put(i.*field, 0); });
    });
  };
}
Write sign(const char* name, bool inside = true) {
  return [=](Said& said, const PatternMatch&) {
    return seen(
        said,
        [&](Inspection& i) {
          if (std::find(i.signs.begin(), i.signs.end(), name) == i.signs.end()) i.signs.emplace_back(name);
          return true;
        },
        inside);
  };
}
Write looked(Look look) {
  return [=](Said& said, const PatternMatch&) {
    if (said.look_named && said.look->look != look) return false;
    said.look_named = true;
    return seen(
        said,
        [&](Inspection& i) {
          i.look = look;
          return true;
        },
        false);
  };
}

bool all_stages(Said& said, const PatternMatch&) {
  return seen(said, [](Inspection& i) {
    return put(i.eggs, true) && put(i.open_brood, true) && put(i.capped_brood, true);
  });
}
bool one_charged_cell(Said& said, const PatternMatch&) {
  return seen(said, [](Inspection& i) { return put(i.charged_cells, 1); });
}
bool stays_text(Said&, const PatternMatch&) {
  return false;
}
bool bees(Said& said, const PatternMatch& m) {
  if (m.numbers[0] < fewest_bees_estimated) return false;
  return seen(said, [&](Inspection& i) { return put(i.bees, m.numbers[0]); });
}
bool pollen(Said& said, const PatternMatch& m) {
  const std::string& word = m.chosen[0];
  const Level level = word == "plenty"   ? Level::plenty
                      : word == "some"   ? Level::some
                      : word == "little" ? Level::little
                                         : Level::none;
  return seen(said, [&](Inspection& i) { return put(i.pollen, level); });
}
bool super_fill(Said& said, double share) {
  return seen(
      said, [&](Inspection& i) { return put(i.super_share, share); }, false);
}
bool super_word(Said& said, const PatternMatch& m) {
  const std::string& word = m.chosen[0];
  return super_fill(said, word == "full" ? 1 : word == "half" ? 0.5 : 0);
}

}  // namespace

std::vector<Item> items_seen() {
  using I = Inspection;
  const auto item = [](const char* pattern, Write write) { return Item{Pattern(pattern), std::move(write)}; };
  return {
      item("# seam of? bee?", number(&I::seams, false)),
      item("seam #", number(&I::seams, false)),
      item("bee on|in # seam", number(&I::seams, false)),
      item("# bee", bees),
      item("bee #", bees),
      item("# brood comb?", number(&I::brood_combs)),
      item("# comb of|with? brood", number(&I::brood_combs)),
      item("brood comb? #", number(&I::brood_combs)),
      item("brood on|in? # comb", number(&I::brood_combs)),
      item("no brood", none(&I::brood_combs)),
      item("# capped|sealed worker|brood brood? cell", number(&I::capped_cells)),
      item("# capped|sealed? drone cell", number(&I::drone_cells)),
      item("egg seen?", flag(&I::eggs, true)),
      item("seen egg", flag(&I::eggs, true)),
      item("no egg seen?", flag(&I::eggs, false)),
      item("egg not seen", flag(&I::eggs, false)),
      item("open brood", flag(&I::open_brood, true)),
      item("larva seen?", flag(&I::open_brood, true)),
      item("no open brood", flag(&I::open_brood, false)),
      item("no larva", flag(&I::open_brood, false)),
      item("capped|sealed brood", flag(&I::capped_brood, true)),
      item("no capped|sealed brood", flag(&I::capped_brood, false)),
      item("brood in all stages", all_stages),
      item("bias", all_stages),
      item("all stages of? brood?", all_stages),
      item("marked? queen seen", flag(&I::queen, true)),
      item("seen the? marked? queen", flag(&I::queen, true)),
      item("queen not seen", flag(&I::queen, false)),
      item("queen unseen", flag(&I::queen, false)),
      item("queen not found", flag(&I::queen, false)),
      item("no queen found", flag(&I::queen, false)),
      item("no queen seen", flag(&I::queen, false)),
      item("# cup with egg", count(&I::cups_with_egg)),
      item("# charged|open queen? cell", count(&I::charged_cells)),
      item("charged|open queen? cell #", count(&I::charged_cells)),
      item("# queen? cell with|holding larva", count(&I::charged_cells)),
      item("queen cell with|holding larva", one_charged_cell),
      item("no? egg in|inside them|it|the|cup|cell", stays_text),  // of cups, not of the comb
      item("# sealed queen? cell", count(&I::sealed_cells)),
      item("# capped queen cell", count(&I::sealed_cells)),
      item("sealed queen? cell #", count(&I::sealed_cells)),
      item("no charged|open queen? cell", no_cells({&I::charged_cells})),
      item("no sealed queen? cell", no_cells({&I::sealed_cells})),
      item("no queen? cell", no_cells({&I::charged_cells, &I::sealed_cells})),
      item("store # comb", number(&I::store_combs)),
      item("# comb of? store|honey", number(&I::store_combs)),
      item("# store comb", number(&I::store_combs)),
      item("no store", none(&I::store_combs)),
      item("store #kg", number(&I::stores_kg)),
      item("#kg of? store", number(&I::stores_kg)),
      item("=plenty|some|little|no of? pollen", pollen),
      item("pollen =plenty|some|little|none", pollen),
      item("super =empty", super_word),
      item("super =full|half full?", super_word),
      item("super #% full?",
           [](Said& s, const PatternMatch& m) { return super_fill(s, m.numbers[0] / 100); }),
      item("super # / # full",
           [](Said& s, const PatternMatch& m) {
             return m.numbers[1] > 0 && super_fill(s, m.numbers[0] / m.numbers[1]);
           }),
      item("drone seen?", flag(&I::drones, true, false)),
      item("no drone", flag(&I::drones, false)),
      item("calm bee?", flag(&I::calm, true, false)),
      item("bee calm", flag(&I::calm, true, false)),
      item("cross bee?", flag(&I::calm, false, false)),
      item("bee cross", flag(&I::calm, false, false)),
      item("full inspection|look", looked(Look::full)),
      item("quick inspection|look|check|peek", looked(Look::quick)),
      item("looked? from outside only?", looked(Look::outside)),
      item("patchy brood", sign("patchy_brood")),
      item("brood patchy", sign("patchy_brood")),
      item("sunken capping", sign("sunken_cappings")),
      item("perforated capping", sign("perforated_cappings")),
      item("greasy capping", sign("greasy_cappings")),
      item("ropy larva", sign("ropy_larva")),
      item("discoloured|twisted|melted|slumped larva", sign("discoloured_larvae")),
      item("larva discoloured|twisted|melted|slumped", sign("discoloured_larvae")),
      item("suspected|suspect? american|european? foulbrood suspected?", sign("foulbrood_suspected")),
      item("suspected|suspect? american|european? foul brood suspected?", sign("foulbrood_suspected")),
      item("chalk brood?", sign("chalk_brood")),
      item("deformed wing", sign("deformed_wings", false)),
      item("dwv", sign("deformed_wings", false)),
      item("dysentery", sign("dysentery", false)),
      item("crawling bee", sign("crawling_bees", false)),
      item("bee crawling", sign("crawling_bees", false)),
      item("crawler", sign("crawling_bees", false)),
      item("hornet seen?", sign("hornet", false)),
      item("small? hive beetle", sign("hive_beetle")),
      item("mite on brood|larva|pupa", sign("mite_on_brood")),
      item("wax moth", sign("wax_moth")),
      item("being? robbing|robbed", sign("robbing", false)),
  };
}

}  // namespace beegarth::entries
