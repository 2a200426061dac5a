#include "entries/note_items.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace beegarth::entries {
namespace {

constexpr double fewest_bees_estimated = 500;  // below it, "5 bees" is a remark

template <class T>
bool put(std::optional<T>& slot, const T& value) {
  if (slot && *slot != value) return false;
  slot = value;
  return true;
}

std::optional<int> whole(double value) {
  if (value != std::trunc(value) || std::abs(value) > 1e8) return std::nullopt;
  return static_cast<int>(value);
}

// Changes the inspection only where the changed one is valid.
bool seen(Said& said, const std::function<bool(Inspection&)>& change, bool inside = true) {
  Inspection changed = said.look.value_or(Inspection{.colony = said.colony});
  if (!change(changed) || !validate(changed)) return false;
  said.look = std::move(changed);
  said.inside = said.inside || inside;
  said.touched = Touched::look;
  return true;
}

bool add(Said& said, Payload payload) {
  if (!validate(payload)) return false;
  said.others.push_back(std::move(payload));
  said.touched = Touched::new_other;
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
      item("all stages of? brood?", all_stages),
      item("marked? queen seen", flag(&I::queen, true)),
      item("seen the? marked? queen", flag(&I::queen, true)),
      item("queen not seen", flag(&I::queen, false)),
      item("queen unseen", flag(&I::queen, false)),
      item("no queen seen", flag(&I::queen, false)),
      item("# cup with egg", count(&I::cups_with_egg)),
      item("# charged|open queen? cell", count(&I::charged_cells)),
      item("charged|open queen? cell #", count(&I::charged_cells)),
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
      item("discoloured larva", sign("discoloured_larvae")),
      item("chalk brood?", sign("chalk_brood")),
      item("deformed wing", sign("deformed_wings", false)),
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

bool weather(Said& said, const std::function<bool(Weather&)>& change) {
  Weather changed = said.weather.value_or(Weather{.site = said.site});
  if (!change(changed) || !validate(changed)) return false;
  said.weather = std::move(changed);
  said.touched = Touched::weather;
  return true;
}
Write of_weather(Number Weather::*field) {
  return [=](Said& said, const PatternMatch& m) {
    return weather(said, [&](Weather& w) { return put(w.*field, m.numbers[0]); });
  };
}
bool no_rain(Said& said, const PatternMatch&) {
  return weather(said, [](Weather& w) { return put(w.rain_mm, 0.0); });
}
bool low_and_high(Said& said, const PatternMatch& m) {
  return weather(said, [&](Weather& w) {
    return put(w.temperature_min_C, m.numbers[0]) && put(w.temperature_max_C, m.numbers[1]);
  });
}

}  // namespace

std::span<const Item> colony_items() {
  static const std::vector<Item> items = [] {
    std::vector<Item> all = items_seen();
    for (auto part : {items_counted, items_done}) {
      for (Item& item : part()) all.push_back(std::move(item));
    }
    return all;
  }();
  return items;
}

std::span<const Item> weather_items() {
  using W = Weather;
  static const std::vector<Item> items = [] {
    const auto item = [](const char* pattern, Write write) {
      return Item{Pattern(pattern), std::move(write)};
    };
    return std::vector<Item>{
        item("min #C", of_weather(&W::temperature_min_C)),
        item("max #C", of_weather(&W::temperature_max_C)),
        item("#C / #C", low_and_high),
        item("#C to #C", low_and_high),
        item("min #C max #C", low_and_high),
        item("rain #mm", of_weather(&W::rain_mm)),
        item("#mm! of? rain", of_weather(&W::rain_mm)),
        item("no rain", no_rain),
        item("dry", no_rain),
        item("wind #wind", of_weather(&W::wind_m_s)),
        item("gust #wind", of_weather(&W::gust_m_s)),
        item("sun #h", of_weather(&W::sun_hours)),
        item("#h of? sun", of_weather(&W::sun_hours)),
    };
  }();
  return items;
}

bool is_known_lemma(const std::string& lemma) {
  static const std::set<std::string> known = [] {
    std::set<std::string> words;
    for (const auto items : {colony_items(), weather_items()}) {
      for (const Item& item : items) item.pattern.collect_words(words);
    }
    return words;
  }();
  return known.contains(lemma);
}

}  // namespace beegarth::entries
