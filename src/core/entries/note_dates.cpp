#include "entries/note_dates.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>

#include "entries/note_vocabulary.hpp"

namespace beegarth::entries {
namespace {

constexpr auto months =
    std::to_array<std::string_view>({"january", "february", "march", "april", "may", "june", "july", "august",
                                     "september", "october", "november", "december"});
constexpr auto weekdays = std::to_array<std::string_view>(
    {"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"});
constexpr auto verbs_after_may =
    std::to_array<std::string_view>({"be", "have", "need", "swarm", "go", "not", "want", "well", "die"});

bool is(const NoteWord& word, std::string_view raw) {
  return word.mark == Mark::word && word.raw == raw;
}

int month_of(const NoteWord& word) {
  if (word.mark != Mark::word || word.raw.size() < 3) return 0;
  for (std::size_t i = 0; i < months.size(); ++i) {
    if (word.raw == months[i] || word.raw == months[i].substr(0, 3) || (i == 8 && word.raw == "sept"))
      return static_cast<int>(i) + 1;
  }
  return 0;
}

// Short forms of Saturday and Sunday are words of their own, so they do not count.
int weekday_of(const NoteWord& word) {
  if (word.mark != Mark::word || word.raw.size() < 3) return 0;
  for (std::size_t i = 0; i < weekdays.size(); ++i) {
    const bool is_short =
        i < 5 && (word.raw == weekdays[i].substr(0, 3) || word.raw == "tues" || word.raw == "thurs");
    if (word.raw == weekdays[i] || (is_short && weekdays[i].substr(0, word.raw.size()) == word.raw))
      return static_cast<int>(i) + 1;
  }
  return 0;
}

std::optional<int> whole_between(const NoteWord& word, int low, int high) {
  if (word.mark != Mark::number || word.number != std::trunc(word.number)) return std::nullopt;
  if (word.number < low || word.number > high) return std::nullopt;
  return static_cast<int>(word.number);
}

// "3", "3rd", "third".
std::optional<int> day_number(const NoteWord& word) {
  if (word.mark == Mark::number) return whole_between(word, 1, 99);
  if (const auto spoken = spoken_day(word.raw)) return spoken;
  const std::size_t digits = std::min(word.raw.find_first_not_of("0123456789"), word.raw.size());
  const std::string_view ending = std::string_view(word.raw).substr(digits);
  const bool ordinal = ending == "st" || ending == "nd" || ending == "rd" || ending == "th";
  if (!ordinal || digits < 1 || digits > 2) return std::nullopt;
  return std::stoi(word.raw.substr(0, digits));
}

// Digits with two marks between them that are no ISO date: nobody can tell day from month.
bool looks_like_a_date(const NoteWord& word) {
  if (word.mark != Mark::word || word.raw.empty() || word.raw[0] < '0' || word.raw[0] > '9') return false;
  for (const char mark : {'/', '.', '-'}) {
    const auto count = std::count(word.raw.begin(), word.raw.end(), mark);
    const bool only = word.raw.find_first_not_of(std::string("0123456789") + mark) == std::string::npos;
    if (count == 2 && only) return true;
  }
  return false;
}

Expected<SaidDay> day_of_month(std::size_t words, int day, int month, std::optional<int> year, Date today,
                               bool forecast) {
  if (year) {
    if (const auto date = Date::from_ymd(*year, month, day)) return SaidDay{words, *date};
  } else {
    for (int back = 0; back <= 8; ++back) {  // eight years, because of 29 February around 1900 or 2100
      const auto date = Date::from_ymd(forecast ? today.year() + back : today.year() - back, month, day);
      if (date && (forecast ? *date >= today : *date <= today)) return SaidDay{words, *date};
    }
  }
  return bad_input("there is no day " + std::to_string(day) + " " +
                       std::string(months[static_cast<std::size_t>(month) - 1]),
                   "the note", "mend the date");
}

// "3 June", "3rd of June 2026"; no words where it is none.
Expected<SaidDay> day_first(std::span<const NoteWord> words, Date today, bool forecast) {
  const auto day = day_number(words[0]);
  std::size_t at = 1;
  if (at < words.size() && is(words[at], "of")) ++at;
  if (!day || at >= words.size()) return SaidDay{};
  const int month = month_of(words[at]);
  if (month == 0) return SaidDay{};
  ++at;
  const bool is_verb =
      is(words[at - 1], "may") && at < words.size() &&
      std::find(verbs_after_may.begin(), verbs_after_may.end(), words[at].raw) != verbs_after_may.end();
  if (is_verb) return SaidDay{};
  const auto year = at < words.size() ? whole_between(words[at], 1900, 2100) : std::nullopt;
  return day_of_month(at + (year ? 1 : 0), *day, month, year, today, forecast);
}

// "June 3", "June 3rd 2026".
Expected<SaidDay> month_first(std::span<const NoteWord> words, Date today, bool forecast) {
  const int month = month_of(words[0]);
  if (month == 0 || words.size() < 2) return SaidDay{};
  const auto day = day_number(words[1]);
  if (!day) return SaidDay{};
  const std::size_t at = 2;
  const auto year = at < words.size() ? whole_between(words[at], 1900, 2100) : std::nullopt;
  return day_of_month(at + (year ? 1 : 0), *day, month, year, today, forecast);
}

SaidDay weekday(std::span<const NoteWord> words, Date today, bool forecast) {
  const bool last = is(words[0], "last") && words.size() > 1;
  const int day = weekday_of(words[last ? 1 : 0]);
  if (day == 0) return {};
  if (forecast && !last) return {1, today + (day - today.weekday() + 7) % 7};
  int back = (today.weekday() - day + 7) % 7;
  if (last && back == 0) back = 7;
  return {last ? std::size_t{2} : std::size_t{1}, today - back};
}

SaidDay ago(std::span<const NoteWord> words, Date today) {
  if (words.size() > 2 && is(words[0], "a") && is(words[2], "ago")) {
    if (words[1].lemma == "week") return {3, today - 7};
    if (words[1].lemma == "fortnight") return {3, today - 14};
  }
  if (words.size() < 3 || !is(words[2], "ago")) return {};
  const auto count = whole_between(words[0], 0, 400);
  const bool weeks = words[1].lemma == "week";
  if (!count || (!weeks && words[1].lemma != "day")) return {};
  return {3, today - *count * (weeks ? 7 : 1)};
}

// "Sat 16 May": the weekday must be that of the date.
Expected<SaidDay> weekday_and_date(std::span<const NoteWord> words, Date today, bool forecast) {
  int named = weekday_of(words[0]);
  if (is(words[0], "sat")) named = 6;  // before a date no other word
  if (is(words[0], "sun")) named = 7;
  if (named == 0 || words.size() < 3) return SaidDay{};
  auto day = day_first(words.subspan(1), today, forecast);
  if (day && day->words == 0) day = month_first(words.subspan(1), today, forecast);
  if (!day || day->words == 0) return day;
  if (day->date.weekday() != named)
    return bad_input(day->date.iso() + " is another day of the week", "the note",
                     "mend the date or name the year");
  ++day->words;
  return day;
}

Expected<SaidDay> undated(std::span<const NoteWord> words, Date today, bool forecast) {
  const NoteWord& first = words[0];
  if (is(first, "today")) return SaidDay{1, today};
  if (is(first, "yesterday")) return SaidDay{1, today - 1};
  if (words.size() > 3 && is(first, "the") && is(words[1], "day") && is(words[2], "before") &&
      is(words[3], "yesterday"))
    return SaidDay{4, today - 2};
  if (words.size() > 1 && is(first, "this") && is_word_of(WordClass::day_part, words[1].raw))
    return SaidDay{1, today};
  if (is(first, "tomorrow") && forecast) return SaidDay{1, today + 1};
  if (auto day = weekday_and_date(words, today, forecast); !day || day->words > 0) return day;
  if (const SaidDay day = weekday(words, today, forecast); day.words > 0) return day;
  if (const SaidDay day = ago(words, today); day.words > 0) return day;
  if (looks_like_a_date(first)) {
    if (first.raw.size() != 10 || first.raw[4] != '-') {
      return bad_input("'" + first.raw.substr(0, 40) + "' can be read as more than one date", "the note",
                       "write it like 3 June or 2026-06-03");
    }
    const auto date = Date::parse(first.raw);
    if (!date) return bad_input(date.problem().what, "the note", date.problem().remedy);
    return SaidDay{1, *date};
  }
  auto day = day_first(words, today, forecast);
  if (!day || day->words > 0) return day;
  return month_first(words, today, forecast);
}

// "on the 3rd" and nothing behind it that could be the third of something.
Expected<SaidDay> on_the_third(std::span<const NoteWord> words, Date today, bool forecast) {
  if (words.size() < 3 || !is(words[0], "on") || !is(words[1], "the")) return SaidDay{};
  const bool is_ordinal = words[2].mark == Mark::word;
  const auto day = is_ordinal ? day_number(words[2]) : std::nullopt;
  const bool ends = words.size() == 3 || words[3].mark == Mark::colon || !words[3].names.empty();
  if (!day || !ends) return SaidDay{};
  constexpr int most_months = 3;  // the 31st comes at least in every second month
  int year = today.year(), month = today.month();
  for (int i = 0; i < most_months; ++i) {
    const auto date = Date::from_ymd(year, month, *day);
    if (date && (forecast ? *date >= today : *date <= today)) return SaidDay{3, *date};
    month += forecast ? 1 : -1;
    if (month < 1 || month > 12) {
      year += forecast ? 1 : -1;
      month = forecast ? 1 : 12;
    }
  }
  return bad_input("there is no such day in these months", "the note", "write it like 3 June");
}

}  // namespace

Expected<SaidDay> said_day(std::span<const NoteWord> words, Date today, bool forecast) {
  if (words.empty()) return SaidDay{};
  if (auto day = on_the_third(words, today, forecast); !day || day->words > 0) return day;
  const bool on = is(words[0], "on") && words.size() > 1;
  const std::size_t skip = on ? (is(words[1], "the") && words.size() > 2 ? 2 : 1) : 0;
  auto day = undated(words.subspan(skip), today, forecast);
  if (!day || day->words == 0) return day;
  day->words += skip;
  if (day->date > today && !forecast) {
    return bad_input(day->date.iso() + " is still to come", "the note",
                     "write down what was seen, with its date");
  }
  return day;
}

SaidHour said_hour(std::span<const NoteWord> words) {
  const std::size_t skip = words.size() > 1 && is(words[0], "at") ? 1 : 0;
  if (words.size() <= skip) return {};
  const NoteWord& first = words[skip];
  if (first.mark == Mark::number && words.size() > skip + 1) {
    const bool pm = is(words[skip + 1], "pm");
    const auto hour = whole_between(first, 1, 12);
    if (hour && (pm || is(words[skip + 1], "am")))
      return {skip + 2, static_cast<double>(*hour % 12 + (pm ? 12 : 0))};
  }
  const std::size_t colon = first.raw.find(':');
  if (first.mark != Mark::word || colon == std::string::npos || colon < 1 || colon > 2 ||
      first.raw.size() != colon + 3)
    return {};
  if (first.raw.find_first_not_of("0123456789:") != std::string::npos ||
      first.raw.find(':', colon + 1) != std::string::npos)
    return {};
  const int hour = std::stoi(first.raw.substr(0, colon));
  const int minute = std::stoi(first.raw.substr(colon + 1));
  if (hour > 23 || minute > 59) return {};
  return {skip + 1, hour + minute / 60.0};
}

}  // namespace beegarth::entries
