#include "entries/note_patterns.hpp"

#include <algorithm>
#include <array>

#include "entries/note_line.hpp"
#include "entries/note_vocabulary.hpp"

namespace beegarth::entries {
namespace {

struct UnitWord {
  std::string_view element;
  std::string_view word;
  double times;
  double over;
};

// Exact by definition: SI, and the international yard and pound of 1959.
constexpr auto unit_words = std::to_array<UnitWord>({
    {"#kg", "kg", 1, 1},           {"#kg", "g", 1, 1000},     {"#kg", "lb", 0.45359237, 1},
    {"#kg", "oz", 0.45359237, 16}, {"#%", "%", 1, 1},         {"#day", "day", 1, 1},
    {"#day", "week", 7, 1},        {"#C", "c", 1, 1},         {"#C", "degrees", 1, 1},
    {"#len", "mm", 1, 1},          {"#len", "cm", 10, 1},     {"#min", "minute", 1, 1},
    {"#min", "min", 1, 1},         {"#mm", "mm", 1, 1},       {"#mm", "inch", 25.4, 1},
    {"#mm!", "mm", 1, 1},          {"#mm!", "inch", 25.4, 1}, {"#wind", "m/s", 1, 1},
    {"#wind", "mph", 0.44704, 1},  {"#wind", "km/h", 1, 3.6}, {"#wind", "kmh", 1, 3.6},
    {"#wind", "kn", 1852, 3600},   {"#h", "h", 1, 1},
});

bool may_lack_unit(std::string_view element) {
  return element == "#C" || element == "#mm" || element == "#wind" || element == "#h";
}

std::vector<std::string> split(std::string_view text, char by) {
  std::vector<std::string> parts;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(by, at), text.size());
    if (end > at) parts.emplace_back(text.substr(at, end - at));
    at = end + 1;
  }
  return parts;
}

}  // namespace

namespace {

std::size_t take_name(std::string_view kind, std::span<const NoteWord> words, PatternMatch& found) {
  const NamedThing wanted = kind == "@colony" ? NamedThing::colony
                            : kind == "@hive" ? NamedThing::hive
                                              : NamedThing::site;
  const NameHere* best = nullptr;
  for (const NameHere& each : words[0].names) {
    if (each.name->what == wanted && (!best || each.words > best->words)) best = &each;
  }
  if (!best || best->words > words.size()) return 0;
  found.chosen.push_back(best->name->key);
  return best->words;
}

// "1:1", "2:1": sugar to water.
std::size_t take_ratio(const NoteWord& word, PatternMatch& found) {
  const bool is_ratio = word.mark == Mark::word && word.raw.size() == 3 && word.raw[1] == ':' &&
                        word.raw[0] >= '1' && word.raw[0] <= '9' && word.raw[2] >= '1' && word.raw[2] <= '9';
  if (!is_ratio) return 0;
  found.numbers.push_back(word.raw[0] - '0');
  found.numbers.push_back(word.raw[2] - '0');
  found.chosen.push_back(word.typed);
  return 1;
}

// A word that may be part of what a thing or a plant is called.
bool is_plain(const NoteWord& word) {
  return word.mark == Mark::word && word.names.empty() && word.raw != "/" && word.raw != "%" &&
         word.raw != "&" && !is_word_of(WordClass::joining, word.lemma) &&
         !is_word_of(WordClass::negation, word.lemma) && !is_word_of(WordClass::doubt, word.lemma) &&
         !is_word_of(WordClass::act, word.lemma) && !is_word_of(WordClass::filler, word.lemma) &&
         !(word.raw[0] >= '0' && word.raw[0] <= '9');
}

std::string joined(std::span<const NoteWord> words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0 && words[i].begin > words[i - 1].end) text += ' ';
    text += words[i].typed;
  }
  return text;
}

}  // namespace

Pattern::Pattern(std::string_view text) {
  for (std::string& part : split(text, ' ')) {
    if (part == "^" || part == "$") {
      (part == "^" ? begins_ : ends_) = true;
      continue;
    }
    Element element;
    if (part.size() > 1 && part.back() == '?') {
      element.optional = true;
      part.pop_back();
    }
    if (part[0] == '#' || part[0] == '@' || part == "*" || part == "+" || part == "~" || part == "QC") {
      element.kind = part;
    } else {
      element.remembered = part[0] == '=';
      element.words = split(element.remembered ? std::string_view(part).substr(1) : part, '|');
    }
    elements_.push_back(std::move(element));
  }
}

std::size_t Pattern::take(const Element& element, std::span<const NoteWord> segment, std::size_t at,
                          PatternMatch& found) {
  if (at >= segment.size()) return 0;
  const NoteWord& word = segment[at];
  if (element.kind.empty()) {
    if (word.mark != Mark::word) return 0;
    if (std::find(element.words.begin(), element.words.end(), word.lemma) == element.words.end()) return 0;
    if (element.remembered) found.chosen.push_back(word.lemma);
    return 1;
  }
  if (element.kind == "*") {
    found.chosen.push_back(word.typed);
    return 1;
  }
  if (element.kind[0] == '@') return take_name(element.kind, segment.subspan(at), found);
  if (element.kind == "QC") {
    if (word.mark == Mark::word && word.lemma == "qc") return 1;
    const bool both = word.mark == Mark::word && word.lemma == "queen" && at + 1 < segment.size() &&
                      segment[at + 1].lemma == "cell";
    return both ? 2 : 0;
  }
  if (element.kind == "#ratio") return take_ratio(word, found);
  if (word.mark != Mark::number) return 0;
  if (element.kind == "#") {
    found.numbers.push_back(word.number);
    return 1;
  }
  if (at + 1 < segment.size() && segment[at + 1].mark == Mark::word) {
    if (element.kind == "#C" && segment[at + 1].lemma == "f") {  // exact by definition
      found.numbers.push_back((word.number - 32) * 5 / 9);
      return 2;
    }
    for (const UnitWord& unit : unit_words) {
      if (unit.element != element.kind || unit.word != segment[at + 1].lemma) continue;
      found.numbers.push_back(word.number * unit.times / unit.over);
      return 2;
    }
  }
  if (!may_lack_unit(element.kind)) return 0;
  found.numbers.push_back(word.number);
  return 1;
}

bool Pattern::match_from(std::size_t element, std::span<const NoteWord> segment, std::size_t at,
                         PatternMatch& found) const {
  if (element == elements_.size()) {
    if (ends_ && at != segment.size()) return false;
    found.words = at;
    return true;
  }
  if (elements_[element].kind == "+" || elements_[element].kind == "~")
    return free_words(element, segment, at, found);
  const std::size_t numbers = found.numbers.size();
  const std::size_t chosen = found.chosen.size();
  const std::size_t taken = take(elements_[element], segment, at, found);
  if (taken > 0 && match_from(element + 1, segment, at + taken, found)) return true;
  found.numbers.resize(numbers);
  found.chosen.resize(chosen);
  return elements_[element].optional && match_from(element + 1, segment, at, found);
}

bool Pattern::free_words(std::size_t element, std::span<const NoteWord> segment, std::size_t at,
                         PatternMatch& found) const {
  constexpr std::size_t most_plain_words = 3;
  const std::size_t numbers = found.numbers.size();
  const std::size_t chosen = found.chosen.size();
  const std::size_t left = segment.size() - at;
  const bool to_the_end = elements_[element].kind == "~";
  std::size_t most = to_the_end ? left : 0;
  if (!to_the_end) {
    while (most < std::min(left, most_plain_words) && is_plain(segment[at + most])) ++most;
  }
  const bool holds_name = std::any_of(segment.begin() + static_cast<std::ptrdiff_t>(at), segment.end(),
                                      [](const NoteWord& word) { return !word.names.empty(); });
  if (to_the_end && holds_name) most = 0;
  for (std::size_t count = most; count >= 1; --count) {
    found.chosen.push_back(joined(segment.subspan(at, count)));
    if (match_from(element + 1, segment, at + count, found)) return true;
    found.numbers.resize(numbers);
    found.chosen.resize(chosen);
    if (to_the_end) break;
  }
  return elements_[element].optional && match_from(element + 1, segment, at, found);
}

void Pattern::collect_words(std::set<std::string>& into) const {
  for (const Element& element : elements_) into.insert(element.words.begin(), element.words.end());
}

Pattern::Beginning Pattern::beginning() const {
  Beginning begins;
  for (const Element& element : elements_) {
    if (element.kind.empty())
      begins.lemmas.insert(element.words.begin(), element.words.end());
    else if (element.kind == "QC")
      begins.lemmas.insert({"qc", "queen"});
    else if (element.kind[0] == '#' && element.kind != "#ratio")
      begins.number = true;
    else
      begins.any = true;
    if (!element.optional) break;
  }
  return begins;
}

PatternMatch Pattern::match(std::span<const NoteWord> segment, std::size_t at) const {
  PatternMatch found;
  if (begins_ && at != 0) return found;
  if (!match_from(0, segment, at, found)) return {};
  found.words -= at;
  found.typed = joined(segment.subspan(at, found.words));
  return found;
}

}  // namespace beegarth::entries
