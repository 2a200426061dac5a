#include "entries/note_words.hpp"

#include <algorithm>
#include <charconv>
#include <optional>
#include <utility>

#include "entries/note_numbers.hpp"
#include "entries/note_vocabulary.hpp"

namespace beegarth::entries {
namespace {

// A number and its unit may be written as one: "2kg".
constexpr std::string_view joined_units =
    " kg kgs g lb lbs oz mm cm inch m/s mph km/h kmh kn c C f F \xC2\xB0"
    "C \xC2\xB0"
    "c \xC2\xB0"
    "F \xC2\xB0"
    "f h am pm l ml days weeks fr min ";

bool is_unit(std::string_view text) {
  if (text.empty() || text.find(' ') != std::string_view::npos) return false;
  return joined_units.find(" " + std::string(text) + " ") != std::string_view::npos;
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

// The part that a sign like "\xC2\xBD" stands for; 0 where it is none.
double part_of_one(std::string_view text) {
  return text == "\xC2\xBD" ? 0.5 : text == "\xC2\xBC" ? 0.25 : text == "\xC2\xBE" ? 0.75 : 0;
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

  bool ends_sentence(std::size_t stop) const {
    const std::size_t next = stop + 1;
    return space_at(next) || std::string_view(".,;:?!()\"").find(line_[next]) != std::string_view::npos;
  }

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
    if (c == ',' || c == '(' || c == ')' || c == '!' || (c == '.' && ends_sentence(at_)))
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
           !(line_[end] == '.' && ends_sentence(end))) {
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
      if (part_of_one(rest) > 0 && run.find_first_of(".,-") == std::string_view::npos)
        return number(whole_end, part_of_one(rest));
      return word(whole_end);
    }
    word(end);
  }

  // `part` is written behind the digits as one sign of two bytes.
  void number(std::size_t end, double part = 0) {
    const std::string_view text = line_.substr(at_, end - at_);
    const std::string_view digits = text.substr(0, text.size() - (part > 0 ? 2 : 0));
    words_.push_back({.mark = Mark::number,
                      .typed = std::string(text),
                      .raw = std::string(text),
                      .number = plain_number_in(digits).value_or(0) + part,
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
    const auto spoken = spoken_number(word.raw);
    const double part = part_of_one(word.raw);
    if (spoken || part > 0) {
      word.mark = Mark::number;
      word.number = spoken ? *spoken : part;
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
  return join_numbers(line, Cutter(line).cut());
}

}  // namespace beegarth::entries
