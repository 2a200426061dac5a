#include "entries/note_vocabulary.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

namespace beegarth::entries {
namespace {

// Plurals, short forms and synonyms of the trade: the lemma, a colon, what stands for it.
constexpr auto lemma_lines = std::to_array<std::string_view>({
    // what is counted
    "seam: seams",
    "comb: frame frames combs bar bars fr frs frm frms",
    "egg: eggs",
    "larva: larvae grub grubs",
    "pupa: pupae",
    "cell: cells",
    "qc: qcs qc's",
    "cup: cups",
    "super: supers",
    "mite: mites varroa",
    "bee: bees",
    "day: days",
    "week: weeks wk wks",
    "minute: minutes mins",
    "drone: drones",
    "store: stores provisions",
    "strip: strips",
    "pad: pads",
    "tray: trays",
    "jar: jars",
    "box: boxes",
    "side: sides",
    "sign: signs",
    "head: heads",
    "acid: acids",
    "plant: plants",
    "tree: trees",
    "flower: flowers flowering",
    "visitor: visitors",
    "bumblebee: bumblebees bumble bumbles",
    "hoverfly: hoverflies",
    "butterfly: butterflies",
    "wasp: wasps",
    "fly: flies",
    "beetle: beetles",
    "hornet: hornets",
    "moth: moths",
    "mouse: mice",
    "crawler: crawlers",
    "capping: cappings",
    "wing: wings",
    "queen: q queenie",
    "nucleus: nuc nucs nuclei",
    // what is seen
    "weigh: weighs weighed weight",
    "heft: hefts hefted hefting",
    "seen: saw see spotted sighted",
    "calm: docile gentle",
    "cross: tetchy angry aggressive bad-tempered",
    "plenty: lots ample",
    "little: scant",
    "open: uncapped unsealed",
    "chalk: chalkbrood",
    "sac: sacbrood",
    "bald: balding",
    "foulbrood: afb efb",
    "patchy: spotty peppered pepperpot",
    "ropy: ropey roped",
    "discoloured: discolored",
    "mould: mouldy mold moldy",
    // what is done
    "given: gave",
    "fed: feeding",
    "added: put",
    "taken: took",
    "oxalic: oa",
    "vapour: vapor vaporised vaporized sublimated vape vaped vaping",
    "trickle: trickled dribbled dribble",
    "fondant: candy",
    "harvested: harvest",
    "shaken: shook",
    "knocked: squashed",
    "supered: super'd",
    "foundation: fdn",
    // units
    "kg: kilo kilos kilogram kilograms kgs",
    "g: gram grams",
    "lb: lbs pound pounds",
    "oz: ounce ounces",
    "%: percent",
    "h: hours hour hr hrs",
    "inch: inches",
    "mm: millimetres",
    "f: fahrenheit \xC2\xB0"
    "f",
    "c: celsius centigrade \xC2\xB0"
    "c",
    "gust: gusts gusting",
    "kn: knots knot",
    "sun: sunshine",
    "min: minimum",
    "max: maximum",
    // turned round
    "not: cannot can't didn't isn't aren't wasn't couldn't don't doesn't haven't hasn't weren't didnt "
    "couldnt",
});

struct ClassLine {
  WordClass what;
  std::string_view words;
};
constexpr auto class_lines = std::to_array<ClassLine>({
    {WordClass::doubt,
     "maybe perhaps possibly probably might may if unless should must need needs needed want wants wanted "
     "will "
     "would could next since until till plan plans planned todo to-do remember order later tomorrow before "
     "last expect expects expected expecting hoped hoping formerly previously soon almost unsure think "
     "thought guess undone intend due unfinished consider"
     " looks seems hopefully reckon"},
    {WordClass::negation,
     "no not without never none nothing nor neither hardly barely gone missing absent lost lacking nil few "
     "stopped less more than except cleared negative ruled instead"},
    {WordClass::act,
     "taken removed added given fed moved swapped shaken united split transferred killed bought sold treated "
     "knocked culled destroyed"},
    {WordClass::measure,
     "seam comb brood cell qc cup bee mite kg g lb oz % day week super store cm m ft l litre litres ml f k "
     "bft "
     "beaufort c mm inch mph kn h min minute box side half quarter third / x - couple dozen hundred thousand "
     "pint "
     "pints gallon gallons stone \xC2\xBD \xC2\xBC \xC2\xBE"},
    {WordClass::filler,
     "and the a an also plus & about approx approximately roughly around sign there then so ok well but"},
    {WordClass::each, "both each all"},
    {WordClass::weather, "forecast weather"},
    {WordClass::day_part, "morning afternoon evening night lunchtime noon midday dusk dawn"},
    {WordClass::lead_in, "at in on for checked inspected opened visited looked into went to had look a"},
    {WordClass::deed_to, "fed given treated supered washed marked"},
    {WordClass::heading,
     "note notes todo to-do remember left undone remark remarks weather forecast kit swarm shopping buy "
     "bring "
     "home next jobs reminder"},
    {WordClass::motion, "to into onto from"},
    {WordClass::correction, "no sorry correction rather"},
    {WordClass::joining,
     "on in at by near from to with of the a an and all bee bees no not is are was were it they them this "
     "that "
     "for under over into out off first full still half some plenty little more less than very nearly about "
     "hive blown gone"},
});

constexpr auto small_numbers = std::to_array<std::string_view>(
    {"zero",     "one",     "two",     "three",     "four",     "five",    "six",
     "seven",    "eight",   "nine",    "ten",       "eleven",   "twelve",  "thirteen",
     "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"});
constexpr auto tens = std::to_array<std::string_view>(
    {"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"});
constexpr auto days_in_order = std::to_array<std::string_view>(
    {"first",        "second",       "third",          "fourth",        "fifth",        "sixth",
     "seventh",      "eighth",       "ninth",          "tenth",         "eleventh",     "twelfth",
     "thirteenth",   "fourteenth",   "fifteenth",      "sixteenth",     "seventeenth",  "eighteenth",
     "nineteenth",   "twentieth",    "twenty-first",   "twenty-second", "twenty-third", "twenty-fourth",
     "twenty-fifth", "twenty-sixth", "twenty-seventh", "twenty-eighth", "twenty-ninth", "thirtieth",
     "thirty-first"});

template <class Take>
void for_each_word(std::string_view text, Take take) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (end > 0) take(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

template <std::size_t N>
std::optional<int> place_in(const std::array<std::string_view, N>& list, std::string_view word) {
  for (std::size_t i = 0; i < N; ++i) {
    if (list[i] == word) return static_cast<int>(i);
  }
  return std::nullopt;
}

}  // namespace

std::string_view lemma_of(std::string_view raw) {
  static const auto known = [] {
    std::unordered_map<std::string_view, std::string_view> all;
    for (const std::string_view line : lemma_lines) {
      const std::size_t colon = line.find(':');
      for_each_word(line.substr(colon + 1),
                    [&](std::string_view word) { all[word] = line.substr(0, colon); });
    }
    return all;
  }();
  const auto at = known.find(raw);
  return at == known.end() ? raw : at->second;
}

bool is_word_of(WordClass what, std::string_view lemma) {
  static const auto known = [] {
    std::vector<std::unordered_set<std::string_view>> all(class_lines.size());
    for (const ClassLine& line : class_lines) {
      for_each_word(line.words,
                    [&](std::string_view word) { all[static_cast<std::size_t>(line.what)].insert(word); });
    }
    return all;
  }();
  return known[static_cast<std::size_t>(what)].contains(lemma);
}

std::optional<int> spoken_number(std::string_view raw) {
  if (const auto small = place_in(small_numbers, raw)) return small;
  if (const auto ten = place_in(tens, raw)) return 20 + 10 * *ten;
  const std::size_t hyphen = raw.find('-');
  if (hyphen == std::string_view::npos) return std::nullopt;
  const auto ten = place_in(tens, raw.substr(0, hyphen));
  const auto unit = place_in(small_numbers, raw.substr(hyphen + 1));
  if (!ten || !unit || *unit < 1 || *unit > 9) return std::nullopt;
  return 20 + 10 * *ten + *unit;
}

std::optional<int> spoken_day(std::string_view raw) {
  const auto place = place_in(days_in_order, raw);
  return place ? std::optional<int>(*place + 1) : std::nullopt;
}

}  // namespace beegarth::entries
