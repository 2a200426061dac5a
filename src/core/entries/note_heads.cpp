#include "entries/note_heads.hpp"

#include <algorithm>

#include "entries/note_dates.hpp"
#include "entries/note_items.hpp"
#include "entries/note_vocabulary.hpp"

namespace beegarth::entries {
namespace {

bool is_word(const NoteWord& word, WordClass what) {
  return word.mark == Mark::word && is_word_of(what, word.lemma);
}
bool has_open(const Clause& clause, std::size_t begin, std::size_t end) {
  const auto first = clause.state.begin() + static_cast<std::ptrdiff_t>(begin);
  const auto last = clause.state.begin() + static_cast<std::ptrdiff_t>(end);
  return std::find(first, last, State::open) != last;
}

// "checked", "went to": how many words lead in to a name; 0 where no name follows.
std::size_t lead_in(const Clause& clause, std::size_t at, std::size_t end) {
  std::size_t next = at;
  while (next < end && next < at + 5 && clause.words[next].names.empty() &&
         (is_word(clause.words[next], WordClass::lead_in) || is_word(clause.words[next], WordClass::filler)))
    ++next;
  return next < end && !clause.words[next].names.empty() ? next - at : 0;
}

// "Alder and Elder fed ...": somebody is meant who is not in the book.
Outcome refuse_unknown_companion(const Clause& clause, const std::vector<Segment>& segments,
                                 const Head& head) {
  if (head.names.empty()) return Done{};
  for (const Segment& segment : segments) {
    for (std::size_t i = segment.begin; i < segment.end; ++i) {
      if (clause.state[i] == State::head) continue;
      const bool joined = i > segment.begin && clause.words[i - 1].mark == Mark::word &&
                          (clause.words[i].raw == "and" || clause.words[i].raw == "&");
      if (!joined) return Done{};
      return bad_input("two names are said of one thing, and the second is nobody's", "the note",
                       "use a name of the book, or put a comma or colon behind the first");
    }
  }
  return Done{};
}

}  // namespace

// A forecast goes on until a name or "weather" is said.
bool HeadReader::is_forecast(const Clause& clause, bool goes_on) const {
  for (const NoteWord& word : clause.words) {
    if (word.lemma == "forecast") return true;
    goes_on = goes_on && word.lemma != "weather" && word.names.empty();
  }
  return goes_on;
}

bool HeadReader::says_a_day(const Clause& clause, std::size_t at, std::size_t end) const {
  const auto day = said_day(clause.from(at, end), today_, false);
  return day && day->words > 0;
}

Outcome HeadReader::take_day(Clause& clause, std::size_t at, std::size_t end, Head& head,
                             std::size_t& taken) const {
  taken = 0;
  const auto words = clause.from(at, end);
  const auto day = said_day(words, today_, head.forecast);
  if (!day) return day.problem();
  if (day->words > 0) {
    if (head.date && *head.date != day->date) {
      return bad_input("two dates are said of one thing", "the note",
                       "put a semicolon between what belongs to each");
    }
    head.date = day->date;
    taken = day->words;
  } else if (const SaidHour hour = said_hour(words); hour.words > 0 && !head.hour) {
    head.hour = hour.hour;
    taken = hour.words;
  }
  clause.take(at, taken, State::head);
  return Done{};
}

// How many words a name took there; another name must be joined to the one before.
Expected<std::size_t> HeadReader::take_name(Clause& clause, std::size_t at, std::size_t end,
                                            Head& head) const {
  const std::size_t lead = head.names.empty() ? lead_in(clause, at, end) : 0;
  const bool joined =
      !head.names.empty() &&
      (clause.words[at].raw == "and" || clause.words[at].lemma == "&" || clause.words[at].raw == "plus");
  // A comma stands before the other names of a list, if it is there at all.
  const bool after_comma = !head.names.empty() && at > 0 && clause.words[at - 1].mark == Mark::segment_end;
  if (!head.names.empty() && !joined && !after_comma) return std::size_t{0};
  const std::size_t skip = joined ? 1 : lead;
  const auto found = finder_.at(clause.from(at + skip, end));
  if (!found) return found.problem();
  if (found->words == 0) return std::size_t{0};
  head.names.push_back(found->name);
  clause.take(at, skip + found->words, State::head);
  return skip + found->words;
}

// Names, date and hour in any order at the start of a clause.
Outcome HeadReader::take_segment(Clause& clause, const Segment& segment, Head& head) const {
  const std::size_t end = segment.end;
  for (std::size_t at = segment.begin; at < end;) {
    const NoteWord& word = clause.words[at];
    if (word.mark == Mark::colon) {
      clause.state[at++] = State::head;
      continue;
    }
    const auto name = take_name(clause, at, end, head);
    if (!name) return name.problem();
    if (*name > 0) {
      at += *name;
      continue;
    }
    std::size_t taken = 0;
    if (auto ok = take_day(clause, at, end, head, taken); !ok) return ok;
    const bool part_of_day = taken == 0 && head.date && at > segment.begin &&
                             clause.state[at - 1] == State::head && is_word(word, WordClass::day_part);
    const bool deed = taken == 0 && head.names.empty() && at + 1 < end &&
                      !clause.words[at + 1].names.empty() && is_word(word, WordClass::deed_to);
    const bool foretold = taken == 0 && head.names.empty() && head.forecast && word.lemma == "forecast";
    if (taken == 0 && !part_of_day && !deed && !foretold) break;
    at += std::max<std::size_t>(taken, 1);
  }
  return Done{};
}

// "Elder 9: ..." is meant for somebody, so it must not end up with another; so must "3/6 Alder 5 ...".
Outcome HeadReader::refuse_unknown_address(const Clause& clause, const Segment& segment) const {
  const std::size_t end = segment.end;
  std::size_t first = segment.begin;
  while (first < end && clause.state[first] == State::head) ++first;
  for (std::size_t i = first; i < end && clause.words[i].mark == Mark::number; i += 2) {
    const bool stroke = i + 1 < end && clause.words[i + 1].raw == "/";
    const std::size_t after = std::min(end, stroke ? i + 3 : i + 1);
    if (after < end && !clause.words[after].names.empty()) {
      return bad_input("the number before the name may be a date", "the note",
                       "write it like 3 June or 2026-06-03");
    }
    if (!stroke) break;
  }
  std::size_t colon = first;
  bool all_known = true, like_a_name = true;
  while (colon < end && clause.words[colon].mark != Mark::colon) {
    const NoteWord& word = clause.words[colon];
    const char letter = line_[word.begin];
    all_known =
        all_known && (word.mark == Mark::number || is_known_lemma(word.lemma) || is_weather_mark(word));
    like_a_name = like_a_name && (word.mark == Mark::number || (letter >= 'A' && letter <= 'Z')) &&
                  !is_word(word, WordClass::heading);
    ++colon;
  }
  if (colon == end || colon == first || all_known) return Done{};
  const std::string said(
      line_.substr(clause.words[first].begin, clause.words[colon - 1].end - clause.words[first].begin));
  if (!like_a_name && finder_.near(said).empty()) return Done{};
  return finder_.nobody(said);
}

// What is said of two names may be meant of each or of both together.
Outcome HeadReader::every_one_of_several(Clause& clause, const std::vector<Segment>& segments,
                                         const Head& head) const {
  if (head.names.size() < 2) return Done{};
  bool each = false;
  for (const Segment& segment : segments) {
    std::size_t first = segment.begin;
    while (first < segment.end && clause.state[first] == State::head) ++first;
    for (const std::size_t i : {first, segment.end - 1}) {
      if (i >= segment.end || !is_word(clause.words[i], WordClass::each)) continue;
      clause.state[i] = State::head;
      each = true;
    }
  }
  for (const KnownName* name : head.names) {
    if (std::count(head.names.begin(), head.names.end(), name) > 1 || name->what != head.names[0]->what)
      each = false;
  }
  if (each) return Done{};
  return bad_input("two names are said of one thing", "the note",
                   "say 'both' or 'each' behind them, or write a line for each of them");
}

// The head may be cut by commas: "yesterday, Alder 5, ...".
Expected<Head> HeadReader::read(Clause& clause, const std::vector<Segment>& segments, bool forecast) const {
  Head head{.forecast = is_forecast(clause, forecast)};
  for (const Segment& segment : segments) {
    if (auto ok = take_segment(clause, segment, head); !ok) return ok.problem();
    if (head.names.empty()) {
      if (auto ok = refuse_unknown_address(clause, segment); !ok) return ok.problem();
    }
    if (has_open(clause, segment.begin, segment.end)) break;
  }
  if (auto ok = refuse_unknown_companion(clause, segments, head); !ok) return ok.problem();
  if (auto ok = every_one_of_several(clause, segments, head); !ok) return ok.problem();
  return head;
}

Outcome HeadReader::read_when(Clause& clause, const Segment& segment, Head& head) const {
  for (std::size_t at = segment.begin; at < segment.end;) {
    std::size_t taken = 0;
    if (clause.state[at] == State::open) {
      if (auto ok = take_day(clause, at, segment.end, head, taken); !ok) return ok;
    }
    at += std::max<std::size_t>(taken, 1);
  }
  return Done{};
}

}  // namespace beegarth::entries
