#include "garth/sheet/sheet_boxes.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "entries/fields.hpp"

namespace beegarth::garth {

namespace {

template <class E>
std::vector<std::string> words_of() {
  std::vector<std::string> words;
  for (const auto& listed : entries::Words<E>::list) {
    std::string word(listed);
    std::replace(word.begin(), word.end(), '_', ' ');
    words.push_back(std::move(word));
  }
  return words;
}

BoxSet look(const facts::Dwelling* dwelling) {
  std::vector<Box> first;
  if (dwelling == nullptr || dwelling->can_see_seams)
    first.push_back({"seams of bees", "", 1, BoxReads::number});
  first.insert(first.end(), {{"brood combs", "", 1, BoxReads::number},
                             {"eggs", "eggs  yes / no", 1, BoxReads::yes_no},
                             {"queen", "queen  yes / no", 1, BoxReads::yes_no}});
  return {"look",
          "a look into the hive",
          {first,
           {{"cups with egg", "", 1, BoxReads::whole},
            {"open cells", "", 1, BoxReads::whole},
            {"sealed cells", "", 1, BoxReads::whole},
            {"store combs", "", 1, BoxReads::number},
            {"supers full", "supers full %", 1, BoxReads::percent}},
           {{"health signs", "", 2, BoxReads::signs}, {"calm", "calm  yes / no", 1, BoxReads::yes_no}}}};
}

BoxSet mites(const facts::Dwelling* dwelling) {
  if (dwelling == nullptr || dwelling->can_board)
    return {"board",
            "mites on a board",
            {{{"board in", "board in (date)", 1, BoxReads::day},
              {"board out", "board out (date)", 1, BoxReads::day},
              {"mites", "", 1, BoxReads::whole},
              {"share counted", "share counted %", 1, BoxReads::percent}}}};
  return {"sample",
          "mites in a sample of bees",
          {{{"wash or roll", "wash / roll", 1, BoxReads::choice, {"wash", "roll"}},
            {"bees", "", 1, BoxReads::whole},
            {"mites", "", 1, BoxReads::whole}}}};
}

// Combs beside the nest of a horizontal hive and combs in a super are different things to the book.
BoxSet room(const facts::Dwelling* dwelling) {
  std::vector<Box> boxes{{"brood combs put on", "", 1, BoxReads::whole}};
  if (dwelling == nullptr || dwelling->can_super)
    boxes.push_back({"super combs put on", "", 1, BoxReads::whole});
  boxes.push_back({"undrawn", "of these undrawn", 1, BoxReads::whole});
  std::vector<Box> off{{"brood combs taken off", "", 1, BoxReads::whole}};
  if (dwelling == nullptr || dwelling->can_super)
    off.push_back({"super combs taken off", "", 1, BoxReads::whole});
  return {"room", "room given or taken", {boxes, off}};
}

BoxSet feed(const facts::Dwelling* /*any*/) {
  return {"feed",
          "feed given",
          {{{"kg given", "", 1, BoxReads::number},
            {"sugar", "sugar % by weight", 1, BoxReads::number},
            {"syrup or fondant", "syrup / fondant", 1, BoxReads::choice, words_of<entries::FeedForm>()}}}};
}

BoxSet treatment(const facts::Dwelling* /*any*/) {
  return {"treatment",
          "a treatment given",
          {{{"kind of treatment", "kind: oxalic, formic, thymol ...", 2, BoxReads::choice,
             words_of<entries::TreatmentKind>()},
            {"product", "", 2},
            {"batch", "", 1}},
           {{"amount", "amount, by the label", 1},
            {"days on", "", 1, BoxReads::number},
            {"withdrawal", "withdrawal, days", 1, BoxReads::number},
            {"brood", "brood  yes / no", 1, BoxReads::yes_no}}}};
}

BoxSet strips_out(const facts::Dwelling* /*any*/) {
  return {"taken out",
          "a treatment taken out",
          {{{"taken out", "what was taken out", 1, BoxReads::choice, words_of<entries::TreatmentKind>()}}}};
}

BoxSet heft(const facts::Dwelling* /*any*/) {
  return {"heft",
          "the hive hefted",
          {{{"left", "left, kg", 1, BoxReads::number},
            {"right", "right, kg", 1, BoxReads::number},
            {"by feel", "by feel: light / fair / heavy", 2, BoxReads::choice, {"light", "fair", "heavy"}}}}};
}

BoxSet dead(const facts::Dwelling* /*any*/) {
  return {"dead",
          "found dead",
          {{{"dead", "dead  yes / no", 1, BoxReads::yes_no},
            {"likely cause", "", 2},
            {"combs of stores left", "", 1, BoxReads::number},
            {"sample taken", "sample taken  yes / no", 1, BoxReads::yes_no}}}};
}

using MakeSet = BoxSet (*)(const facts::Dwelling*);

struct Asks {
  std::string_view need;  // kind of the need: its key up to the slash
  MakeSet set;
};
constexpr auto asked = std::to_array<Asks>({{"look-cells", look},
                                            {"first-look", look},
                                            {"split", look},
                                            {"thin-cells", look},
                                            {"check-queen", look},
                                            {"comb-of-eggs", look},
                                            {"look-eggs", look},
                                            {"quarantine", look},
                                            {"count-mites", mites},
                                            {"count-after", mites},
                                            {"watch", mites},
                                            {"room", room},
                                            {"feed", feed},
                                            {"treat", treatment},
                                            {"winter-treatment", treatment},
                                            {"strips-out", strips_out},
                                            {"heft", heft},
                                            {"dead-out", dead}});

}  // namespace

std::vector<BoxSet> sets_of(const std::vector<const facts::Need*>& needs, const facts::Dwelling* dwelling) {
  std::vector<BoxSet> sets;
  for (const facts::Need* need : needs) {
    const std::string_view kind = std::string_view(need->key).substr(0, need->key.find('/'));
    const auto* const found =
        std::find_if(asked.begin(), asked.end(), [&](const Asks& one) { return one.need == kind; });
    if (found == asked.end()) continue;
    BoxSet set = found->set(dwelling);
    const bool told =
        std::any_of(sets.begin(), sets.end(), [&](const BoxSet& one) { return one.key == set.key; });
    if (!told) sets.push_back(std::move(set));
  }
  return sets;
}

std::vector<BoxSet> every_set(const facts::Dwelling* dwelling) {
  std::vector<BoxSet> sets;
  for (const MakeSet set : {look, mites, room, feed, treatment, strips_out, heft, dead}) {
    if (set == heft && dwelling != nullptr && !dwelling->can_heft) continue;
    sets.push_back(set(dwelling));
  }
  return sets;
}

BoxSet closing_set(bool has_jobs) {
  std::vector<Box> row;
  if (has_jobs) row.push_back({"answer", "done / not done / put off until", 1, BoxReads::answer});
  row.push_back({"notes", "", 2.2});
  return {"closing", "", {std::move(row)}};
}

std::vector<scene::WriteIn> printed_boxes(const std::vector<Box>& row) {
  std::vector<scene::WriteIn> boxes;
  boxes.reserve(row.size());
  for (const Box& box : row) boxes.push_back({box.printed(), box.share});
  return boxes;
}

}  // namespace beegarth::garth
