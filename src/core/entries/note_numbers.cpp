#include "entries/note_numbers.hpp"

#include <algorithm>
#include <span>
#include <string>

namespace beegarth::entries {
namespace {

struct Taken {
  std::size_t words = 0;
  double value = 0;
};

bool is(std::span<const NoteWord> words, std::size_t at, std::string_view raw) {
  return at < words.size() && words[at].mark == Mark::word && words[at].raw == raw;
}
bool is_spoken(std::span<const NoteWord> words, std::size_t at) {
  return at < words.size() && words[at].mark == Mark::number && !words[at].raw.empty() &&
         words[at].raw[0] >= 'a' && words[at].raw[0] <= 'z';
}

// "seven", "twenty", "twenty one".
Taken below_hundred(std::span<const NoteWord> words, std::size_t at) {
  if (!is_spoken(words, at)) return {};
  const double first = words[at].number;
  const bool tens = first >= 20 && first < 100 && static_cast<int>(first) % 10 == 0;
  const bool goes_on =
      tens && is_spoken(words, at + 1) && words[at + 1].number >= 1 && words[at + 1].number <= 9;
  return goes_on ? Taken{2, first + words[at + 1].number} : Taken{1, first};
}

// "three hundred and twelve", "a hundred".
Taken below_thousand(std::span<const NoteWord> words, std::size_t at) {
  Taken head = below_hundred(words, at);
  if (head.words == 0 && is(words, at, "a") && is(words, at + 1, "hundred")) head = {1, 1};
  if (head.words == 0 || head.value < 1 || head.value > 9 || !is(words, at + head.words, "hundred"))
    return is(words, at, "a") ? Taken{} : head;
  Taken all{head.words + 1, head.value * 100};
  const std::size_t next = at + all.words;
  const bool with_and = is(words, next, "and");
  const Taken rest = below_hundred(words, next + (with_and ? 1 : 0));
  if (with_and && rest.words > 0 && rest.value > 0)
    all = {all.words + 1 + rest.words, all.value + rest.value};
  return all;
}

Taken spoken(std::span<const NoteWord> words, std::size_t at) {
  Taken head = below_thousand(words, at);
  if (head.words > 0 && is(words, at + head.words, "dozen")) return {head.words + 1, head.value * 12};
  if (head.words == 0 && is(words, at, "a") && is(words, at + 1, "dozen")) return {2, 12};
  if (head.words == 0 && is(words, at, "a") && is(words, at + 1, "thousand")) head = {1, 1};
  if (head.words == 0 || head.value == 0 || !is(words, at + head.words, "thousand")) return head;
  Taken all{head.words + 1, head.value * 1000};
  const Taken rest = below_thousand(words, at + all.words);
  if (rest.words > 0 && rest.value >= 100) all = {all.words + rest.words, all.value + rest.value};
  return all;
}

// What there may be half of: "half a frame", "half a kilo". A super half full is told otherwise.
bool can_be_halved(std::span<const NoteWord> words, std::size_t at) {
  static constexpr std::string_view things[] = {"comb", "kg", "lb", "seam", "inch"};
  return at < words.size() && words[at].mark == Mark::word &&
         std::find(std::begin(things), std::end(things), words[at].lemma) != std::end(things);
}

Taken with_half(std::span<const NoteWord> words, std::size_t at) {
  if (is(words, at, "half")) {
    const std::size_t article = is(words, at + 1, "a") || is(words, at + 1, "an") ? 1 : 0;
    if (article == 1 && is(words, at + 2, "dozen")) return {3, 6};
    if (can_be_halved(words, at + 1 + article)) return {1 + article, 0.5};
    return {};
  }
  const bool digits = at < words.size() && words[at].mark == Mark::number;
  Taken head = spoken(words, at);
  if (head.words == 0 && digits) head = {1, words[at].number};
  if (head.words == 0) return {};
  const std::size_t next = at + head.words;
  if (is(words, next, "and") && is(words, next + 1, "a")) {
    if (is(words, next + 2, "half")) return {head.words + 3, head.value + 0.5};
    if (is(words, next + 2, "quarter")) return {head.words + 3, head.value + 0.25};
  }
  return head;
}

}  // namespace

namespace {

// Only blanks may stand between them: what is joined is kept as it was typed.
bool apart_by_blanks(std::string_view line, std::span<const NoteWord> words) {
  for (std::size_t i = 1; i < words.size(); ++i) {
    const std::string_view gap = line.substr(words[i - 1].end, words[i].begin - words[i - 1].end);
    if (gap.find_first_not_of(' ') != std::string_view::npos) return false;
  }
  return true;
}

}  // namespace

std::vector<NoteWord> join_numbers(std::string_view line, std::vector<NoteWord> words) {
  std::vector<NoteWord> joined;
  joined.reserve(words.size());
  for (std::size_t at = 0; at < words.size();) {
    Taken taken = with_half(words, at);
    if (!apart_by_blanks(line, std::span(words).subspan(at, std::max<std::size_t>(1, taken.words))))
      taken = {};
    const std::size_t count = std::max<std::size_t>(1, taken.words);
    NoteWord word = words[at];
    if (taken.words > 1) {
      word.mark = Mark::number;
      word.number = taken.value;
      word.end = words[at + count - 1].end;
      word.typed = std::string(line.substr(word.begin, word.end - word.begin));
      word.raw = word.typed;
      word.lemma.clear();
    } else if (taken.words == 1 && word.mark != Mark::number) {  // "half" before a comb
      word.mark = Mark::number;
      word.number = taken.value;
    }
    joined.push_back(std::move(word));
    at += count;
  }
  return joined;
}

}  // namespace beegarth::entries
