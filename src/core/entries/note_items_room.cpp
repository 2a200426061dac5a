// What can be said of boxes and combs put on and off, of splits and unions, and of other hives.
#include <algorithm>
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"
#include "entries/read_back.hpp"

namespace beegarth::entries {
namespace {

// Whole boxes, as many combs as the hive's box holds; text where the name book does not say how many.
Write boxes(Count Room::*which, int sign_of_change, bool undrawn = false) {
  return [=](Said& said, const PatternMatch& m) {
    const auto count = m.numbers.empty() ? std::optional<int>(1) : whole(m.numbers[0]);
    if (!count || !said.super_combs || *count < 1 || *count > 20) return false;
    const int combs = *count * *said.super_combs;
    Room room{.colony = said.colony, .undrawn = undrawn ? Count(combs) : std::nullopt};
    room.*which = sign_of_change * combs;
    return add(said, room);
  };
}
Write supers(int sign_of_change, bool undrawn = false) {
  return boxes(&Room::super_combs, sign_of_change, undrawn);
}
Write combs(Count Room::*which, int sign_of_change, bool undrawn = false) {
  return [=](Said& said, const PatternMatch& m) {
    const auto value = whole(m.numbers[0]);
    if (!value || *value < 1) return false;
    Room room{.colony = said.colony, .undrawn = undrawn ? Count(*value) : std::nullopt};
    room.*which = sign_of_change * *value;
    return add(said, room);
  };
}

std::string key_from_name(std::string_view name) {
  std::string key;
  for (const char c : name) {
    key += c == ' ' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return key;
}
bool split_into(Said& said, const PatternMatch& m) {
  const std::string name = m.chosen[0] + (m.numbers.empty() ? "" : " " + plain_number(m.numbers[0]));
  return add(said, Split{.colony = said.colony,
                         .into = ColonyId(key_from_name(name)),
                         .name = name,
                         .hive = HiveId(m.chosen[1])});
}
Write queen_of_split(bool goes) {
  return [=](Said& said, const PatternMatch&) {
    return change_last<Split>(said, [&](Split& s) {
      s.queen_goes = goes;
      return true;
    });
  };
}
bool ends_in(Said& said, const PatternMatch& m) {
  return add(said, Unite{.colony = ColonyId(m.chosen[0]), .from = said.colony});
}
bool takes_in(Said& said, const PatternMatch& m) {
  return add(said, Unite{.colony = said.colony, .from = ColonyId(m.chosen[0])});
}
Write transferred(TransferWay how) {
  return [=](Said& said, const PatternMatch& m) {
    return add(said, Transfer{.colony = said.colony, .hive = HiveId(m.chosen[0]), .how = how});
  };
}
bool moved(Said& said, const PatternMatch& m) {
  return add(said, ColonyMoved{.colony = said.colony, .hive = HiveId(m.chosen[0])});
}

constexpr const char* how_many_combs = "how many combs are that? say it in combs";

std::vector<Item> boxes_and_combs() {
  return {
      asking("another|new|second|third|first|honey? super on|added|given", supers(1), how_many_combs),
      asking("added|given another|new|second|third|a|first? honey? super on?", supers(1), how_many_combs),
      asking("super of foundation on|added|given", supers(1, true), how_many_combs),
      asking("added a? super of foundation on?", supers(1, true), how_many_combs),
      asking("# super on|added|given", supers(1), how_many_combs),
      asking("supered", supers(1), how_many_combs),
      asking("added # super on?", supers(1), how_many_combs),
      asking("super off|removed|taken off?", supers(-1), how_many_combs),
      asking("removed|taken the|a? super off?", supers(-1), how_many_combs),
      asking("# super off|removed|taken off?", supers(-1), how_many_combs),
      asking("removed|taken # super off?", supers(-1), how_many_combs),
      asking("brood box|body on|added", boxes(&Room::brood_combs, 1), how_many_combs),
      asking("added a|second|another? brood box|body on?", boxes(&Room::brood_combs, 1), how_many_combs),
      asking("brood box|body of foundation on|added", boxes(&Room::brood_combs, 1, true), how_many_combs),
      asking("brood box|body off|removed", boxes(&Room::brood_combs, -1), how_many_combs),
      {"added # brood comb", combs(&Room::brood_combs, 1)},
      {"# brood comb on|added", combs(&Room::brood_combs, 1)},
      {"added # brood comb of foundation", combs(&Room::brood_combs, 1, true)},
      {"added # comb of foundation in? the? brood box|body|nest", combs(&Room::brood_combs, 1, true)},
      unclear("added # comb of? foundation?", "brood combs or super combs?"),
      {"added # super comb", combs(&Room::super_combs, 1)},
      {"# super comb on|added", combs(&Room::super_combs, 1)},
      {"added # super comb of foundation", combs(&Room::super_combs, 1, true)},
      {"removed|taken # brood comb off|out?", combs(&Room::brood_combs, -1)},
      {"# brood comb removed|taken off|out?", combs(&Room::brood_combs, -1)},
      {"removed|taken # super comb off?", combs(&Room::super_combs, -1)},
      {"# super comb removed|taken off?", combs(&Room::super_combs, -1)},
  };
}

}  // namespace

std::vector<Item> items_room() {
  std::vector<Item> items = boxes_and_combs();
  for (Item& item : std::vector<Item>{
           {"split into + in|into|to @hive", split_into},
           {"split into + # in|into|to @hive", split_into},
           {"queen went|goes|moved with|to|into it|split|them|the? split?", queen_of_split(true)},
           {"queen goes $", queen_of_split(true)},
           {"queen stays|stayed|left behind|here|put?", queen_of_split(false)},
           unclear("split",
                   "into which new name, in which hive that the book knows? say: split into NAME in HIVE"),
           {"united into|onto @colony", ends_in},
           {"@colony united into|onto it|this|here", takes_in},
           {"united @colony into|onto it|this|here", takes_in},
           unclear("united with @colony", "which of the two goes on? say: united into NAME"),
           {"shaken into @hive", transferred(TransferWay::shaken)},
           {"cut and tied|tie into @hive", transferred(TransferWay::cut_and_tied)},
           {"grown down into @hive", transferred(TransferWay::grown_down)},
           {"grown across into @hive", transferred(TransferWay::grown_across)},
           {"comb lifted over? into @hive", transferred(TransferWay::combs_lifted_over)},
           unclear("transferred into|to @hive", "how: shaken, cut and tied, grown down, combs lifted over?"),
           {"moved into|to @hive", moved},
       })
    items.push_back(std::move(item));
  return items;
}

}  // namespace beegarth::entries
