// What can be said of counts, weights and of what was done to a colony.
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

bool add(Said& said, Payload payload) {
  if (!validate(payload)) return false;
  said.others.push_back(std::move(payload));
  said.touched = Touched::new_other;
  return true;
}

// ---- counts, weights, feed ----
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
bool board(Said& said, const PatternMatch& m) {
  const auto found = whole(m.numbers[0]);
  return found && add(said, MiteCount{.colony = said.colony, .mites = *found, .days = m.numbers[1]});
}
bool opened_cells(Said& said, double infested, double opened) {
  const auto found = whole(infested);
  const auto cells = whole(opened);
  return found && cells &&
         add(said,
             MiteCount{.colony = said.colony, .method = MiteMethod::brood, .mites = *found, .cells = *cells});
}
bool weight(Said& said, const PatternMatch& m) {
  return add(said, Weight{.colony = said.colony, .kg = m.numbers[0]});
}

bool feed(Said& said, double kg, std::optional<double> sugar_pct, const std::string& what) {
  const FeedForm form = what == "syrup"     ? FeedForm::syrup
                        : what == "fondant" ? FeedForm::fondant
                                            : FeedForm::pollen;
  return add(said, Feed{.colony = said.colony, .kg = kg, .sugar_pct = sugar_pct, .form = form});
}
bool feed_kg_first(Said& said, const PatternMatch& m) {
  return feed(said, m.numbers[0], m.numbers.size() > 1 ? Number(m.numbers[1]) : std::nullopt, m.chosen[0]);
}
bool feed_sugar_first(Said& said, const PatternMatch& m) {
  return feed(said, m.numbers[1], m.numbers[0], m.chosen[0]);
}

// ---- treatment, room, queen, ends ----
Write treated(TreatmentKind kind) {
  return [=](Said& said, const PatternMatch& m) {
    return add(said, Treatment{.colony = said.colony,
                               .kind = kind,
                               .days = m.numbers.empty() ? std::nullopt : Number(m.numbers[0])});
  };
}
bool change_treatment(Said& said, const std::function<bool(Treatment&)>& change) {
  if (said.others.empty()) return false;
  auto* last = std::get_if<Treatment>(&said.others.back());
  if (!last) return false;
  Treatment changed = *last;
  if (!change(changed) || !validate(changed)) return false;
  *last = std::move(changed);
  said.touched = Touched::last_other;
  return true;
}
bool batch(Said& said, const PatternMatch& m) {
  return change_treatment(said, [&](Treatment& t) { return put(t.batch, m.chosen[0]); });
}
bool withdrawal(Said& said, const PatternMatch& m) {
  return change_treatment(said, [&](Treatment& t) { return put(t.withdrawal_days, m.numbers[0]); });
}

// Whole supers, as many combs as the hive's super holds; text where the name book does not say how many.
Write supers(int sign_of_change, bool undrawn = false) {
  return [=](Said& said, const PatternMatch& m) {
    const auto boxes = m.numbers.empty() ? std::optional<int>(1) : whole(m.numbers[0]);
    if (!boxes || !said.super_combs || *boxes < 1 || *boxes > 20) return false;
    const int combs = *boxes * *said.super_combs;
    return add(said, Room{.colony = said.colony,
                          .super_combs = sign_of_change * combs,
                          .undrawn = undrawn ? Count(combs) : std::nullopt});
  };
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
Write queen(QueenEvent event) {
  return [=](Said& said, const PatternMatch& m) {
    Queen said_of_her{.colony = said.colony, .event = event};
    if (!m.chosen.empty()) said_of_her.remark = m.chosen[0];
    if (!m.numbers.empty()) {
      const auto year = whole(m.numbers[0]);
      if (!year) return false;
      said_of_her.year = *year;
    }
    return add(said, said_of_her);
  };
}
Write ended(Ending how) {
  return [=](Said& said, const PatternMatch&) {
    return add(said, ColonyEnded{.colony = said.colony, .how = how});
  };
}
bool swarmed(Said& said, const PatternMatch&) {
  return add(said, Swarmed{.colony = said.colony});
}
bool harvested(Said& said, const PatternMatch& m) {
  const Count combs_taken = m.numbers.size() > 1 ? whole(m.numbers[1]) : std::nullopt;
  if (m.numbers.size() > 1 && !combs_taken) return false;
  return add(said, Harvest{.colony = said.colony, .kg = m.numbers[0], .combs = combs_taken});
}

}  // namespace

std::vector<Item> items_counted() {
  const auto item = [](const char* pattern, Write write) { return Item{Pattern(pattern), std::move(write)}; };
  const auto cells_last = [](Said& s, const PatternMatch& m) {
    return opened_cells(s, m.numbers[0], m.numbers[1]);
  };
  const auto cells_first = [](Said& s, const PatternMatch& m) {
    return opened_cells(s, m.numbers[1], m.numbers[0]);
  };
  return {
      item("alcohol|soap|soapy|mite? wash # mite? in|of|from|/ # bee?", mites_in_bees(MiteMethod::wash)),
      item("# mite? in|of|from|/ # bee? by|in|from? wash|washed", mites_in_bees(MiteMethod::wash)),
      item("wash|washed # bee # mite", bees_with_mites(MiteMethod::wash)),
      item("sugar? roll # mite? in|of|from|/ # bee?", mites_in_bees(MiteMethod::sugar_roll)),
      item("# mite? in|of|from|/ # bee? by|in|from? sugar? roll", mites_in_bees(MiteMethod::sugar_roll)),
      item("sugar? roll # bee # mite", bees_with_mites(MiteMethod::sugar_roll)),
      item("mite? board|drop # mite? in|over|after|for? #day", board),
      item("# mite on the? board in|over|after|for #day", board),
      item("# mite dropped? in|over #day on the? board", board),
      item("# infested in|of|/ # cell", cells_last),
      item("# in|of|/ # cell infested", cells_last),
      item("opened # capped|sealed? cell # infested", cells_first),
      item("hive? weigh #kg", weight),
      item("fed|given #kg of? sugar? =syrup|fondant|pollen #%?", feed_kg_first),
      item("fed|given #kg of? #% sugar? =syrup", feed_kg_first),
      item("fed|given sugar? =syrup|fondant #kg #%?", feed_kg_first),
      item("fed|given sugar? =syrup #% #kg", feed_sugar_first),
      item("fed|given #% sugar? =syrup #kg", feed_sugar_first),
      item("#kg of? =syrup|fondant|pollen given|fed", feed_kg_first),
      item("harvested #kg of? honey?", harvested),
      item("harvested #kg of? honey? from|in? # comb", harvested),
      item("taken #kg of? honey", harvested),
  };
}

std::vector<Item> items_done() {
  using Kind = TreatmentKind;
  using Q = QueenEvent;
  const auto item = [](const char* pattern, Write write) { return Item{Pattern(pattern), std::move(write)}; };
  return {
      item("oxalic acid? trickle for? #day?", treated(Kind::oxalic_trickle)),
      item("trickle oxalic acid?", treated(Kind::oxalic_trickle)),
      item("oxalic acid? vapour", treated(Kind::oxalic_vapour)),
      item("vapour oxalic acid?", treated(Kind::oxalic_vapour)),
      item("formic acid? pad|strip? on|in|given|applied for? #day?", treated(Kind::formic)),
      item("treated with? formic acid? for? #day?", treated(Kind::formic)),
      item("thymol gel|tray|strip? on|in|given|applied for? #day?", treated(Kind::thymol)),
      item("treated with? thymol for? #day?", treated(Kind::thymol)),
      item("amitraz strip? on|in|given|applied for? #day?", treated(Kind::amitraz)),
      item("treated with? amitraz strip? for? #day?", treated(Kind::amitraz)),
      item("pyrethroid strip? on|in|given|applied for? #day?", treated(Kind::pyrethroid)),
      item("hop acid strip? on|in|given|applied for? #day?", treated(Kind::hop_acids)),
      item("treated with? hop acid for? #day?", treated(Kind::hop_acids)),
      item("drone comb|brood removed|cut out?", treated(Kind::drone_comb_removed)),
      item("removed|cut out? drone comb|brood", treated(Kind::drone_comb_removed)),
      item("batch *", batch),
      item("withdrawal #day", withdrawal),
      item("another|new|second|third? super on|added|given", supers(1)),
      item("added another|new|second|third|a? super on?", supers(1)),
      item("super of foundation on|added|given", supers(1, true)),
      item("added a? super of foundation", supers(1, true)),
      item("# super on|added|given", supers(1)),
      item("supered", supers(1)),
      item("added # super", supers(1)),
      item("super off|removed|taken off?", supers(-1)),
      item("removed|taken the? super off?", supers(-1)),
      item("# super off|removed|taken off?", supers(-1)),
      item("removed|taken # super off?", supers(-1)),
      item("added # brood comb", combs(&Room::brood_combs, 1)),
      item("# brood comb on|added", combs(&Room::brood_combs, 1)),
      item("added # brood comb of foundation", combs(&Room::brood_combs, 1, true)),
      item("added # super comb", combs(&Room::super_combs, 1)),
      item("# super comb on|added", combs(&Room::super_combs, 1)),
      item("removed|taken # brood comb off|out?", combs(&Room::brood_combs, -1)),
      item("# brood comb removed|taken off|out?", combs(&Room::brood_combs, -1)),
      item("removed|taken # super comb off?", combs(&Room::super_combs, -1)),
      item("# super comb removed|taken off?", combs(&Room::super_combs, -1)),
      item("queen marked =white|yellow|red|green|blue? #?", queen(Q::marked)),
      item("marked the? queen =white|yellow|red|green|blue? #?", queen(Q::marked)),
      item("queen clipped", queen(Q::clipped)),
      item("clipped the? queen", queen(Q::clipped)),
      item("new? queen introduced", queen(Q::introduced)),
      item("introduced a|the|new? queen", queen(Q::introduced)),
      item("queen cell given|introduced", queen(Q::cell_given)),
      item("given a? queen cell", queen(Q::cell_given)),
      item("virgin emerged", queen(Q::virgin_emerged)),
      item("queen began|started|now laying", queen(Q::laying)),
      item("queen removed|killed", queen(Q::removed)),
      item("removed|killed the? queen", queen(Q::removed)),
      item("queen caged", queen(Q::caged)),
      item("caged the? queen", queen(Q::caged)),
      item("queen released", queen(Q::released)),
      item("released the? queen", queen(Q::released)),
      item("^ swarmed $", swarmed),
      item("swarm left|gone", swarmed),
      item("colony dead|died", ended(Ending::died)),
      item("^ dead|died|dead-out out? $", ended(Ending::died)),
      item("colony absconded", ended(Ending::absconded)),
      item("^ absconded $", ended(Ending::absconded)),
      item("colony sold", ended(Ending::sold)),
      item("colony given away", ended(Ending::given_away)),
  };
}

}  // namespace beegarth::entries
