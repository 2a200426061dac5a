// What can be said of mites counted and of weights.
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

bool wash(Said& said, MiteMethod method, double mites, double bees_examined) {
  const auto found = whole(mites);
  const auto examined = whole(bees_examined);
  return found && examined &&
         add(said, MiteCount{.colony = said.colony, .method = method, .mites = *found, .bees = *examined});
}
Write mites_in_bees(MiteMethod method) {
  return [=](Said& said, const PatternMatch& m) { return wash(said, method, m.numbers[0], m.numbers[1]); };
}
Write bees_with_mites(MiteMethod method) {
  return [=](Said& said, const PatternMatch& m) { return wash(said, method, m.numbers[1], m.numbers[0]); };
}
Write none_in_bees(MiteMethod method) {
  return [=](Said& said, const PatternMatch& m) { return wash(said, method, 0, m.numbers[0]); };
}
bool board(Said& said, const PatternMatch& m) {
  const auto found = whole(m.numbers[0]);
  return found && add(said, MiteCount{.colony = said.colony, .mites = *found, .days = m.numbers[1]});
}
bool board_or_more(Said& said, const PatternMatch& m) {
  const auto found = whole(m.numbers[0]);
  return found &&
         add(said, MiteCount{.colony = said.colony, .mites = *found, .days = m.numbers[1], .at_least = true});
}
bool clean_board(Said& said, const PatternMatch& m) {
  return add(said, MiteCount{.colony = said.colony, .mites = 0, .days = m.numbers[0]});
}
Write share_of_board(double share) {
  return [=](Said& said, const PatternMatch&) {
    return change_last<MiteCount>(
        said, [&](MiteCount& c) { return c.method == MiteMethod::board && put(c.board_share, share); });
  };
}
bool opened_cells(Said& said, double infested, double opened) {
  const auto found = whole(infested);
  const auto cells = whole(opened);
  return found && cells &&
         add(said,
             MiteCount{.colony = said.colony, .method = MiteMethod::brood, .mites = *found, .cells = *cells});
}
bool cells_last(Said& said, const PatternMatch& m) {
  return opened_cells(said, m.numbers[0], m.numbers[1]);
}
bool cells_first(Said& said, const PatternMatch& m) {
  return opened_cells(said, m.numbers[1], m.numbers[0]);
}

Write weight(Weighed what) {
  return [=](Said& said, const PatternMatch& m) {
    return add(said, Weight{.colony = said.colony, .kg = m.numbers[0], .what = what});
  };
}
// Each side lifted while the hive turns about the edge of the other: the two add up (docs/duty.md).
bool two_sides(Said& said, const PatternMatch& m) {
  return add(said, Weight{.colony = said.colony, .kg = m.numbers[0] + m.numbers[1]});
}

}  // namespace

std::vector<Item> items_counted() {
  constexpr auto washed = MiteMethod::wash, rolled = MiteMethod::sugar_roll;
  return {
      {"alcohol|soap|soapy|mite? wash|washed # mite? in|of|from|out|per|/ of? # bee?", mites_in_bees(washed)},
      {"mite? count? # mite? in|of|from|out|per|/ of? # bee? by|in|from? alcohol|soap|soapy? wash|washed",
       mites_in_bees(washed)},
      {"wash|washed # bee # mite", bees_with_mites(washed)},
      {"alcohol|soap|soapy|mite? wash no|none|nil mite? in|from # bee?", none_in_bees(washed)},
      {"sugar|icing? sugar? roll|shaken # mite? in|of|from|out|per|/ of? # bee?", mites_in_bees(rolled)},
      {"mite? count? # mite? in|of|from|out|per|/ of? # bee? by|in|from? sugar? roll", mites_in_bees(rolled)},
      {"sugar? roll # bee # mite", bees_with_mites(rolled)},
      {"sugar? roll no|none|nil mite? in|from # bee?", none_in_bees(rolled)},
      unclear("# mite in|of|from|out|per|/ of? # bee", "a wash or a sugar roll?"),
      unclear("mite # in|of|from|out|per|/ of? # bee?", "a wash or a sugar roll?"),
      unclear("alcohol|soap|soapy? wash $", "how many mites in how many bees? say: wash 7 in 300"),
      unclear("sugar roll $", "how many mites in how many bees? say: sugar roll 7 in 300"),
      {"natural? mite? board|drop # mite? in|over|after|for? #day", board},
      {"# mite on the? board in|over|after|for #day", board},
      {"# mite dropped? in|over #day on the? board", board},
      {"more|over than? # mite on the? board in|over|after|for #day", board_or_more},
      {"at least # mite on the? board in|over|after|for #day", board_or_more},
      {"mite? board|drop more|over than? # mite? in|over|after|for? #day", board_or_more},
      {"mite? board|drop at least # mite? in|over|after|for? #day", board_or_more},
      {"board|drop no|none|nil mite? in|over|after #day", clean_board},
      {"no mite on the? board in|over|after #day", clean_board},
      {"half the? board counted", share_of_board(0.5)},
      {"quarter of? the? board counted", share_of_board(0.25)},
      unclear("mite? board|drop #", "over how many days?"),
      {"# infested in|of|out|/ of? # cell", cells_last},
      {"# in|of|out|/ of? # cell infested", cells_last},
      {"opened # capped|sealed? cell # infested", cells_first},
      {"open # capped|sealed? cell # infested", cells_first},
      {"hive? weigh #kg", weight(Weighed::whole_hive)},
      {"whole hive weigh? #kg", weight(Weighed::whole_hive)},
      {"store weigh #kg", weight(Weighed::stores)},
      {"heft left #kg right #kg", two_sides},
      {"heft #kg and|+ #kg both side", two_sides},
      unclear("weigh #", "kg or lb?"),
      unclear("heft #kg", "one side only, or the whole hive?"),
  };
}

}  // namespace beegarth::entries
