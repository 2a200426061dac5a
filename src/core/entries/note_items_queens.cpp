// What can be said of queens, of swarms, of ends, and of the keeper's own judgement.
#include <algorithm>
#include <utility>

#include "entries/fields.hpp"
#include "entries/note_items.hpp"
#include "entries/note_values.hpp"
#include "entries/read_back.hpp"

namespace beegarth::entries {
namespace {

constexpr int no_year_below = 1990;  // limits::year

std::optional<QueenColour> colour_in(const PatternMatch& m) {
  for (const std::string& word : m.chosen) {
    const auto& words = Words<QueenColour>::list;
    const auto at = std::find(words.begin(), words.end(), word);
    if (at != words.end()) return static_cast<QueenColour>(at - words.begin());
  }
  return std::nullopt;
}
Write queen(QueenEvent event) {
  return [=](Said& said, const PatternMatch& m) {
    Queen told{.colony = said.colony, .event = event, .colour = colour_in(m)};
    if (!m.numbers.empty()) {
      const auto year = whole(m.numbers[0]);
      if (!year || *year < no_year_below) return false;
      told.year = *year;
    }
    return add(said, told);
  };
}
// With the number of the disc on her back, and the year behind it where it is said.
Write queen_with_disc(QueenEvent event) {
  return [=](Said& said, const PatternMatch& m) {
    const auto disc = whole(m.numbers[0]);
    if (!disc || *disc < 0 || *disc > 999) return false;
    return add(said, Queen{.colony = said.colony,
                           .event = event,
                           .colour = colour_in(m),
                           .number = plain_number(m.numbers[0])});
  };
}
Write ended(Ending how) {
  return [=](Said& said, const PatternMatch&) {
    if (how == Ending::died) said.dead = true;
    return add(said, ColonyEnded{.colony = said.colony, .how = how});
  };
}
Item died(const char* text) {
  Item item(text, ended(Ending::died));
  item.dead = true;
  return item;
}
bool swarmed(Said& said, const PatternMatch& m) {
  return add(said, Swarmed{.colony = said.colony, .remark = m.chosen.empty() ? Text() : Text(m.chosen[0])});
}
// The scale is kept beside the score.
bool score(Said& said, const PatternMatch& m) {
  if (m.numbers[0] < 0 || m.numbers[0] > m.numbers[1]) return false;
  return add(said, Score{.colony = said.colony,
                         .trait = m.chosen[0],
                         .score = m.numbers[0],
                         .remark = "of " + plain_number(m.numbers[1])});
}

bool marked_and_clipped(Said& said, const PatternMatch&) {
  return add(said, Queen{.colony = said.colony, .event = QueenEvent::marked}) &&
         add(said, Queen{.colony = said.colony, .event = QueenEvent::clipped});
}

constexpr const char* year_or_disc = "the year in four digits, or the number of a disc?";

std::vector<Item> queen_events() {
  using Q = QueenEvent;
  return {
      asking("queen marked =white|yellow|red|green|blue? #?", queen(Q::marked), year_or_disc),
      asking("marked the|new? queen =white|yellow|red|green|blue? #?", queen(Q::marked), year_or_disc),
      {"marked her =white|yellow|red|green|blue? #?", queen(Q::marked)},
      {"queen marked =white|yellow|red|green|blue? disc|number|no #", queen_with_disc(Q::marked)},
      {"marked the|new? queen =white|yellow|red|green|blue? disc|number|no #", queen_with_disc(Q::marked)},
      {"queen =white|yellow|red|green|blue? disc|number|no # seen", queen_with_disc(Q::seen)},
      {"seen queen =white|yellow|red|green|blue? disc|number|no #", queen_with_disc(Q::seen)},
      {"queen clipped", queen(Q::clipped)},
      {"clipped the? queen", queen(Q::clipped)},
      {"queen marked and|& clipped", marked_and_clipped},
      {"new|mated? queen introduced", queen(Q::introduced)},
      {"introduced a|the? new|mated? queen", queen(Q::introduced)},
      {"requeened", queen(Q::introduced)},
      {"QC given|introduced", queen(Q::cell_given)},
      {"given a? QC", queen(Q::cell_given)},
      {"virgin emerged", queen(Q::virgin_emerged)},
      {"queen began|started|now laying", queen(Q::laying)},
      {"new|young queen laying", queen(Q::laying)},
      {"queen superseded", queen(Q::superseded)},
      {"queen lost", queen(Q::lost)},
      {"lost the? queen", queen(Q::lost)},
      {"queen dead|died", queen(Q::died)},
      {"dead queen found|seen", queen(Q::died)},
      {"found|seen the|a? dead queen", queen(Q::died)},
      {"old? queen removed|killed|culled", queen(Q::removed)},
      {"removed|killed|culled the? old? queen", queen(Q::removed)},
      {"queen caged", queen(Q::caged)},
      {"caged the? queen", queen(Q::caged)},
      {"queen released", queen(Q::released)},
      {"released the? queen", queen(Q::released)},
      unclear("no queen", "not seen, or none there?"),
      unclear("queenless", "what was seen: no eggs, queen not seen?"),
  };
}

}  // namespace

std::vector<Item> items_queens() {
  std::vector<Item> items = queen_events();
  for (Item& item : std::vector<Item>{
           {"^ swarmed $", swarmed},
           {"swarm left|gone", swarmed},
           {"=prime|cast swarm? left|gone", swarmed},
           {"seen the|a? swarm leave|leaving|go|going|issue", swarmed},
           died("colony dead|died"),
           died("^ dead|died|dead-out|deadout out? $"),
           died("dead out"),
           died("dead-out|deadout"),
           died("found dead"),
           {"colony absconded", ended(Ending::absconded)},
           {"^ absconded $", ended(Ending::absconded)},
           {"colony sold", ended(Ending::sold)},
           {"colony given away", ended(Ending::given_away)},
           {"=calm|temper|honey|hygiene|vigour|swarming score? # of|/|out of? #", score},
           {"score =calm|temper|honey|hygiene|vigour|swarming # of|/ #", score},
       })
    items.push_back(std::move(item));
  return items;
}

}  // namespace beegarth::entries
