// Signs of ill health: each with the ways it is said. At a look they go into the inspection; said with how
// much or on how many cells, they are an entry of their own.
#include <algorithm>
#include <array>
#include <string_view>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

struct SignPhrases {
  const char* sign;
  bool inside;  // combs were looked at
  std::vector<const char*> phrases;
};

const std::vector<SignPhrases>& sign_phrases() {
  static const std::vector<SignPhrases> all{
      {"patchy_brood", true, {"patchy brood", "brood patchy"}},
      {"sunken_cappings", true, {"sunken capping"}},
      {"perforated_cappings", true, {"perforated capping"}},
      {"greasy_cappings", true, {"greasy capping"}},
      {"ropy_larva", true, {"ropy larva"}},
      {"discoloured_larvae",
       true,
       {"discoloured|twisted|melted|slumped larva", "larva discoloured|twisted|melted|slumped"}},
      {"foulbrood_suspected",
       true,
       {"suspected|suspect? american|european? foulbrood suspected?",
        "suspected|suspect? american|european? foul brood suspected?"}},
      {"chalk_brood", true, {"chalk brood?"}},
      {"bald_brood", true, {"bald brood"}},
      {"sac_brood", true, {"sac brood?"}},
      {"chilled_brood", true, {"chilled brood"}},
      {"laying_workers", true, {"laying worker|workers", "worker laying|layer"}},
      {"deformed_wings", false, {"deformed wing", "dwv"}},
      {"dysentery", false, {"dysentery"}},
      {"crawling_bees", false, {"crawling bee", "bee crawling", "crawler"}},
      {"hornet", false, {"hornet seen?"}},
      {"hive_beetle", true, {"small? hive beetle"}},
      {"mite_on_brood", true, {"mite on brood|larva|pupa"}},
      {"other_brood_mite", true, {"other brood mite"}},
      {"wax_moth", true, {"wax moth"}},
      {"mouse", true, {"mouse seen|in?"}},
      {"robbing", false, {"being? robbing|robbed"}},
  };
  return all;
}

// "AFB check clear" and "hornet trap set" tell of none: these count only where nothing else is said with
// them.
bool is_grave(std::string_view sign) {
  constexpr auto grave =
      std::to_array<std::string_view>({"foulbrood_suspected", "hive_beetle", "other_brood_mite", "ropy_larva",
                                       "hornet", "robbing", "wax_moth", "mouse"});
  return std::find(grave.begin(), grave.end(), sign) != grave.end();
}

Write at_the_look(const char* sign, bool inside) {
  return [=](Said& said, const PatternMatch&) {
    return change_look(
        said,
        [&](Inspection& i) {
          if (std::find(i.signs.begin(), i.signs.end(), sign) == i.signs.end()) i.signs.emplace_back(sign);
          return true;
        },
        inside);
  };
}
Write how_much(const char* sign) {
  return [=](Said& said, const PatternMatch& m) {
    const Level level = m.chosen[0] == "plenty"   ? Level::plenty
                        : m.chosen[0] == "little" ? Level::little
                                                  : Level::some;
    return add(said, Sign{.colony = said.colony, .signs = {sign}, .how_much = level});
  };
}
Write on_cells(const char* sign) {
  return [=](Said& said, const PatternMatch& m) {
    const auto cells = whole(m.numbers[0]);
    return cells && add(said, Sign{.colony = said.colony, .signs = {sign}, .cells = *cells});
  };
}
bool thread(Said& said, const PatternMatch& m) {
  return m.numbers[0] > 0 &&
         add(said, Sign{.colony = said.colony, .signs = {"ropy_larva"}, .thread_mm = m.numbers[0]});
}

}  // namespace

std::vector<Item> items_of_signs() {
  std::vector<Item> items;
  for (const SignPhrases& each : sign_phrases()) {
    for (const char* phrase : each.phrases) {
      const std::string text = phrase;
      items.emplace_back(phrase, at_the_look(each.sign, each.inside));
      items.back().alone = is_grave(each.sign);
      items.emplace_back(("=plenty|some|little of? " + text).c_str(), how_much(each.sign));
      items.emplace_back(("# cell of|with " + text).c_str(), on_cells(each.sign));
      items.emplace_back((text + " on|in # cell").c_str(), on_cells(each.sign));
    }
  }
  items.emplace_back("thread|threads|ropy of? #len", thread);
  items.emplace_back("matchstick drew|draws #len thread?", thread);
  return items;
}

}  // namespace beegarth::entries
