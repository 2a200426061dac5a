#include "entries/note_patterns.hpp"

#include <algorithm>
#include <array>

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
    {"#kg", "kg", 1, 1},
    {"#kg", "g", 1, 1000},
    {"#kg", "lb", 0.45359237, 1},
    {"#kg", "oz", 0.45359237, 16},
    {"#%", "%", 1, 1},
    {"#day", "day", 1, 1},
    {"#day", "week", 7, 1},
    {"#C", "c", 1, 1},
    {"#C",
     "\xC2\xB0"
     "c",
     1, 1},
    {"#C", "degrees", 1, 1},
    {"#mm", "mm", 1, 1},
    {"#mm", "inch", 25.4, 1},
    {"#mm!", "mm", 1, 1},
    {"#mm!", "inch", 25.4, 1},
    {"#wind", "m/s", 1, 1},
    {"#wind", "mph", 0.44704, 1},
    {"#wind", "km/h", 1, 3.6},
    {"#wind", "kmh", 1, 3.6},
    {"#wind", "kn", 1852, 3600},
    {"#h", "h", 1, 1},
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
    if (part[0] == '#' || part == "*") {
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
  if (element.kind == "*") {
    found.chosen.push_back(word.typed);
    return 1;
  }
  if (element.kind.empty()) {
    if (word.mark != Mark::word) return 0;
    if (std::find(element.words.begin(), element.words.end(), word.lemma) == element.words.end()) return 0;
    if (element.remembered) found.chosen.push_back(word.lemma);
    return 1;
  }
  if (word.mark != Mark::number) return 0;
  if (element.kind == "#") {
    found.numbers.push_back(word.number);
    return 1;
  }
  if (at + 1 < segment.size() && segment[at + 1].mark == Mark::word) {
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
  const std::size_t numbers = found.numbers.size();
  const std::size_t chosen = found.chosen.size();
  const std::size_t taken = take(elements_[element], segment, at, found);
  if (taken > 0 && match_from(element + 1, segment, at + taken, found)) return true;
  found.numbers.resize(numbers);
  found.chosen.resize(chosen);
  return elements_[element].optional && match_from(element + 1, segment, at, found);
}

void Pattern::collect_words(std::set<std::string>& into) const {
  for (const Element& element : elements_) into.insert(element.words.begin(), element.words.end());
}

PatternMatch Pattern::match(std::span<const NoteWord> segment, std::size_t at) const {
  PatternMatch found;
  if (begins_ && at != 0) return found;
  if (!match_from(0, segment, at, found)) return {};
  found.words -= at;
  return found;
}

}  // namespace beegarth::entries
