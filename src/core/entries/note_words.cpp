#include "entries/note_words.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <utility>

namespace beegarth::entries {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;

// Plurals and synonyms of the trade. What is not here is its own lemma.
constexpr auto lemmas = std::to_array<Pair>({
    {"seams", "seam"},
    {"frame", "comb"},
    {"frames", "comb"},
    {"combs", "comb"},
    {"bar", "comb"},
    {"bars", "comb"},
    {"eggs", "egg"},
    {"larvae", "larva"},
    {"grub", "larva"},
    {"grubs", "larva"},
    {"pupae", "pupa"},
    {"cells", "cell"},
    {"cups", "cup"},
    {"supers", "super"},
    {"mites", "mite"},
    {"varroa", "mite"},
    {"bees", "bee"},
    {"days", "day"},
    {"weeks", "week"},
    {"drones", "drone"},
    {"stores", "store"},
    {"provisions", "store"},
    {"weighs", "weigh"},
    {"weighed", "weigh"},
    {"weight", "weigh"},
    {"saw", "seen"},
    {"spotted", "seen"},
    {"gave", "given"},
    {"fed", "fed"},
    {"kilo", "kg"},
    {"kilos", "kg"},
    {"kilogram", "kg"},
    {"kilograms", "kg"},
    {"kgs", "kg"},
    {"gram", "g"},
    {"grams", "g"},
    {"lbs", "lb"},
    {"pound", "lb"},
    {"pounds", "lb"},
    {"percent", "%"},
    {"cappings", "capping"},
    {"wings", "wing"},
    {"hornets", "hornet"},
    {"beetles", "beetle"},
    {"crawlers", "crawler"},
    {"moths", "moth"},
    {"chalkbrood", "chalk"},
    {"afb", "foulbrood"},
    {"efb", "foulbrood"},
    {"q", "queen"},
    {"ropey", "ropy"},
    {"discolored", "discoloured"},
    {"spotty", "patchy"},
    {"docile", "calm"},
    {"gentle", "calm"},
    {"tetchy", "cross"},
    {"angry", "cross"},
    {"aggressive", "cross"},
    {"bad-tempered", "cross"},
    {"lots", "plenty"},
    {"ample", "plenty"},
    {"scant", "little"},
    {"candy", "fondant"},
    {"vapor", "vapour"},
    {"vaporised", "vapour"},
    {"vaporized", "vapour"},
    {"sublimated", "vapour"},
    {"trickled", "trickle"},
    {"dribbled", "trickle"},
    {"dribble", "trickle"},
    {"strips", "strip"},
    {"pads", "pad"},
    {"acids", "acid"},
    {"put", "added"},
    {"took", "taken"},
    {"removed", "removed"},
    {"harvest", "harvested"},
    {"hours", "h"},
    {"hour", "h"},
    {"gusts", "gust"},
    {"gusting", "gust"},
    {"knots", "kn"},
    {"knot", "kn"},
    {"inches", "inch"},
    {"millimetres", "mm"},
    {"sunshine", "sun"},
    {"minimum", "min"},
    {"maximum", "max"},
    {"uncapped", "open"},
    {"unsealed", "open"},
    {"cannot", "not"},
    {"can't", "not"},
    {"didn't", "not"},
    {"isn't", "not"},
    {"aren't", "not"},
    {"wasn't", "not"},
    {"couldn't", "not"},
    {"don't", "not"},
    {"doesn't", "not"},
    {"haven't", "not"},
    {"hasn't", "not"},
    {"weren't", "not"},
});

constexpr auto number_words =
    std::to_array<std::string_view>({"zero", "one", "two", "three", "four", "five", "six", "seven", "eight",
                                     "nine", "ten", "eleven", "twelve"});

constexpr auto joined_units = std::to_array<std::string_view>({"kg",
                                                               "kgs",
                                                               "g",
                                                               "lb",
                                                               "lbs",
                                                               "oz",
                                                               "mm",
                                                               "cm",
                                                               "inch",
                                                               "m/s",
                                                               "mph",
                                                               "km/h",
                                                               "kmh",
                                                               "kn",
                                                               "c",
                                                               "C",
                                                               "\xC2\xB0"
                                                               "C",
                                                               "\xC2\xB0"
                                                               "c",
                                                               "h",
                                                               "am",
                                                               "pm",
                                                               "l",
                                                               "ml",
                                                               "days",
                                                               "weeks"});

bool is_unit(std::string_view text) {
  return std::find(joined_units.begin(), joined_units.end(), text) != joined_units.end();
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_space(char c) {
  return static_cast<unsigned char>(c) <= ' ' || c == '\x7f';
}
char small_letter(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string_view lemma_of(std::string_view raw) {
  const auto at =
      std::find_if(lemmas.begin(), lemmas.end(), [&](const Pair& pair) { return pair.first == raw; });
  return at == lemmas.end() ? raw : at->second;
}

// "2.5", "2,5", "-3", "12000"; nullopt where it is no number, or may be one of two.
std::optional<double> plain_number_in(std::string_view text) {
  const std::size_t mark = text.find_first_of(".,");
  if (mark != std::string_view::npos && text.size() - mark == 4) return std::nullopt;
  std::string plain(text);
  if (mark != std::string_view::npos) plain[mark] = '.';
  double value = 0;
  const auto [end, error] =
      std::from_chars(plain.data(), plain.data() + plain.size(), value, std::chars_format::fixed);
  if (error != std::errc() || end != plain.data() + plain.size() || value > 1e9 || value < -1e9)
    return std::nullopt;
  return value;
}

class Cutter {
 public:
  explicit Cutter(std::string_view line) : line_(line) {}

  std::vector<NoteWord> cut() {
    while (at_ < line_.size()) step();
    return std::move(words_);
  }

 private:
  bool digit_at(std::size_t i) const { return i < line_.size() && is_digit(line_[i]); }
  bool space_at(std::size_t i) const { return i >= line_.size() || is_space(line_[i]); }

  void mark(Mark mark) {
    words_.push_back({.mark = mark, .begin = at_, .end = at_ + 1});
    ++at_;
  }

  void step() {
    const char c = line_[at_];
    if (c == '\n' || c == '\r' || c == ';') return mark(Mark::clause_end);
    if (is_space(c) || c == '"') {
      ++at_;
      return;
    }
    if (c == ',' || c == '(' || c == ')' || c == '!' || (c == '.' && space_at(at_ + 1)))
      return mark(Mark::segment_end);
    if (c == ':') return mark(Mark::colon);
    if (c == '?') return mark(Mark::query);
    if (is_digit(c) || (c == '-' && digit_at(at_ + 1))) return number_run();
    if (c == '/' || c == '%' || c == '&') return word(at_ + 1);
    word(end_of_word());
  }

  std::size_t end_of_word() const { return end_of_word_from(at_ + 1); }
  std::size_t end_of_word_from(std::size_t end) const {
    while (end < line_.size() && !is_space(line_[end]) &&
           std::string_view(",;:?!()\"").find(line_[end]) == std::string_view::npos &&
           !(line_[end] == '.' && space_at(end + 1))) {
      ++end;
    }
    return end;
  }

  // Digits with . , : / - between them: a number, two numbers over a stroke, a time, a date, or a word that
  // is none.
  void number_run() {
    std::size_t end = at_ + 1;
    while (digit_at(end) ||
           (end < line_.size() && std::string_view(".,:/-").find(line_[end]) != std::string_view::npos &&
            is_digit(line_[end - 1]) && digit_at(end + 1))) {
      ++end;
    }
    const std::string_view run = line_.substr(at_, end - at_);
    const std::size_t stroke = run.find('/');
    if (stroke != std::string_view::npos && plain_number_in(run.substr(0, stroke)) &&
        plain_number_in(run.substr(stroke + 1))) {
      const std::size_t first = at_;
      number(first + stroke);
      word(first + stroke + 1);
      number(end);
      return;
    }
    if (plain_number_in(run)) {
      // "2kg" is a number and its unit; "3rd" and "6x" are words.
      const std::size_t whole_end = end_of_word_from(end);
      const std::string_view rest = line_.substr(end, whole_end - end);
      if (rest.empty() || rest[0] == '%' || is_unit(rest)) return number(end);
      return word(whole_end);
    }
    word(end);
  }

  void number(std::size_t end) {
    const std::string_view text = line_.substr(at_, end - at_);
    words_.push_back({.mark = Mark::number,
                      .typed = std::string(text),
                      .raw = std::string(text),
                      .number = plain_number_in(text).value_or(0),
                      .begin = at_,
                      .end = end});
    at_ = end;
  }

  void word(std::size_t end) {
    NoteWord word{.typed = std::string(line_.substr(at_, end - at_)), .begin = at_, .end = end};
    std::transform(line_.begin() + static_cast<std::ptrdiff_t>(at_),
                   line_.begin() + static_cast<std::ptrdiff_t>(end), std::back_inserter(word.raw),
                   small_letter);
    word.lemma = lemma_of(word.raw);
    const auto spoken = std::find(number_words.begin(), number_words.end(), word.raw);
    if (spoken != number_words.end()) {
      word.mark = Mark::number;
      word.number = static_cast<double>(spoken - number_words.begin());
    }
    words_.push_back(std::move(word));
    at_ = end;
  }

  std::string_view line_;
  std::size_t at_ = 0;
  std::vector<NoteWord> words_;
};

}  // namespace

std::vector<NoteWord> note_words(std::string_view line) {
  return Cutter(line).cut();
}

}  // namespace beegarth::entries
