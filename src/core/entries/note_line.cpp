#include "entries/note_line.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>

#include "base/utf8.hpp"
#include "entries/note_clause.hpp"
#include "entries/note_dates.hpp"
#include "entries/note_items.hpp"
#include "entries/note_names.hpp"
#include "entries/note_words.hpp"
#include "entries/read_back.hpp"

namespace beegarth::entries {
namespace {

constexpr std::size_t longest_note = 20000;  // bytes; that of a text in the book

// One site, colony or hive on one day at one hour, and all that was said of it.
struct Group {
  const KnownName* name = nullptr;
  Date date;
  std::optional<double> hour;
  bool forecast = false;
  Said said;
  std::string head;  // the words that said whom and when
  std::string look_words;
  std::string weather_words;
  std::vector<std::string> other_words;
  std::string text;
};

void join(std::string& list, std::string_view more, std::string_view between) {
  if (!list.empty() && !more.empty()) list += between;
  list += more;
}

std::string clock(double hour) {
  const int minutes = static_cast<int>(std::lround(hour * 60));
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return two(minutes / 60) + ":" + two(minutes % 60);
}

class NoteReader {
 public:
  NoteReader(std::string_view line, const NameBook& names, Date today)
      : line_(line), finder_(names), today_(today), date_(today) {}

  Expected<NoteReading> read();

 private:
  Outcome read_clause(Clause& clause);
  Outcome read_heads(Clause& clause, const std::vector<Segment>& segments);
  Outcome read_head(Clause& clause, const Segment& segment);
  Outcome refuse_unknown_address(const Clause& clause, const Segment& segment) const;
  Outcome read_when(Clause& clause, const Segment& segment);
  Outcome take_day(Clause& clause, std::size_t at, std::size_t end, std::size_t& taken);
  void mark_doubtful(const Clause& clause, std::vector<Segment>& segments) const;
  bool speaks_of_nobody(const Clause& clause) const;
  bool is_forecast(const Clause& clause) const;
  void open_group(const Clause& clause, bool of_nobody);
  void read_segment(Clause& clause, const Segment& segment);
  void keep_text(const Clause& clause, const std::vector<Segment>& segments);
  void close_group();
  void close_entries();

  std::string typed(std::size_t begin, std::size_t end) const {
    return std::string(line_.substr(begin, end - begin));
  }

  std::string_view line_;
  NameFinder finder_;
  Date today_;
  const KnownName* name_ = nullptr;  // holds until another is said
  Date date_;                        // likewise
  std::optional<Date> clause_date_;
  std::optional<double> clause_hour_;
  bool clause_forecast_ = false;
  bool clause_named_ = false;
  std::optional<Group> group_;
  NoteReading reading_;
};

// ---- whom and when ----
Outcome NoteReader::take_day(Clause& clause, std::size_t at, std::size_t end, std::size_t& taken) {
  taken = 0;
  const auto words = clause.from(at, end);
  const auto day = said_day(words, today_, clause_forecast_);
  if (!day) return day.problem();
  if (day->words > 0) {
    if (clause_date_ && *clause_date_ != day->date) {
      return bad_input("two dates are said of one thing", "the note",
                       "put a semicolon between what belongs to each");
    }
    clause_date_ = day->date;
    taken = day->words;
  } else if (const SaidHour hour = said_hour(words); hour.words > 0 && !clause_hour_) {
    clause_hour_ = hour.hour;
    taken = hour.words;
  }
  clause.take(at, taken, State::head);
  return Done{};
}

// Date, hour and name in any order at the start of a clause.
Outcome NoteReader::read_head(Clause& clause, const Segment& segment) {
  const std::size_t end = segment.end;
  for (std::size_t at = segment.begin; at < end;) {
    if (clause.words[at].mark == Mark::colon) {
      clause.state[at++] = State::head;
      continue;
    }
    if (!clause_named_) {
      const auto found = finder_.at(clause.from(at, end));
      if (!found) return found.problem();
      if (found->words > 0) {
        name_ = found->name;
        clause_named_ = true;
        clause.take(at, found->words, State::head);
        at += found->words;
        const bool another = at + 1 < end && (clause.words[at].raw == "and" || clause.words[at].raw == "&") &&
                             finder_.begins(clause.from(at + 1, end));
        if (another)
          return bad_input("two names are said of one thing", "the note", "write a line for each of them");
        continue;
      }
    }
    std::size_t taken = 0;
    if (auto ok = take_day(clause, at, end, taken); !ok) return ok;
    if (taken == 0) break;
    at += taken;
  }
  return Done{};
}

// "Elder 9: ..." is meant for somebody, so it must not end up with another; so must "3/6 Alder 5 ...".
Outcome NoteReader::refuse_unknown_address(const Clause& clause, const Segment& segment) const {
  const std::size_t end = segment.end;
  std::size_t first = segment.begin;
  while (first < end && clause.state[first] == State::head) ++first;
  for (std::size_t i = first; i < end && clause.words[i].mark == Mark::number; i += 2) {
    const bool stroke = i + 1 < end && clause.words[i + 1].raw == "/";
    const std::size_t after = std::min(end, stroke ? i + 3 : i + 1);
    if (finder_.begins(clause.from(after, end))) {
      return bad_input("the number before the name may be a date", "the note",
                       "write it like 3 June or 2026-06-03");
    }
    if (!stroke) break;
  }
  std::size_t colon = first;
  bool all_known = true;
  while (colon < end && clause.words[colon].mark != Mark::colon) {
    const NoteWord& word = clause.words[colon];
    all_known =
        all_known && (word.mark == Mark::number || is_known_lemma(word.lemma) || is_weather_mark(word));
    ++colon;
  }
  if (colon == end || colon == first || all_known) return Done{};
  return finder_.nobody(typed(clause.words[first].begin, clause.words[colon - 1].end));
}

Outcome NoteReader::read_when(Clause& clause, const Segment& segment) {
  for (std::size_t at = segment.begin; at < segment.end;) {
    std::size_t taken = 0;
    if (clause.state[at] == State::open) {
      if (auto ok = take_day(clause, at, segment.end, taken); !ok) return ok;
    }
    at += std::max<std::size_t>(taken, 1);
  }
  return Done{};
}

// ---- what stays text as a whole ----
bool says_a_day(std::span<const NoteWord> words, Date today) {
  const auto day = said_day(words, today, false);
  return day && day->words > 0;
}

void NoteReader::mark_doubtful(const Clause& clause, std::vector<Segment>& segments) const {
  bool rest_too = false;
  for (Segment& segment : segments) {
    segment.text = rest_too;
    for (std::size_t i = segment.begin; i < segment.end; ++i) {
      const NoteWord& word = clause.words[i];
      if (clause.state[i] != State::open) continue;
      const bool named_day = word.lemma == "last" && says_a_day(clause.from(i, segment.end), today_);
      const bool coming_day = clause_forecast_ && word.lemma == "tomorrow";
      const bool month =
          word.raw == "may" && ((i > segment.begin && clause.words[i - 1].mark == Mark::number) ||
                                (i + 1 < segment.end && clause.words[i + 1].mark == Mark::number));
      if (word.mark == Mark::query || (is_doubt(word) && !named_day && !coming_day && !month))
        segment.text = true;
      if (finder_.begins(clause.from(i, segment.end))) {
        segment.text = true;
        rest_too = rest_too || i == segment.begin;  // what follows may be about that other one
      }
    }
  }
}

// Without a name of its own, a clause goes on about the last one, unless it begins with what looks like a
// name.
bool NoteReader::speaks_of_nobody(const Clause& clause) const {
  if (!name_) return true;
  if (clause_named_) return false;
  const auto open = std::find(clause.state.begin(), clause.state.end(), State::open);
  if (open == clause.state.end()) return false;
  const NoteWord& word = clause.words[static_cast<std::size_t>(open - clause.state.begin())];
  const char first = line_[word.begin];
  return word.mark == Mark::word && first >= 'A' && first <= 'Z' && !is_known_lemma(word.lemma) &&
         !is_filler(word) && !is_doubt(word) && !is_negation(word);
}

// ---- what was said ----
void NoteReader::open_group(const Clause& clause, bool of_nobody) {
  const KnownName* name = of_nobody ? nullptr : name_;
  const bool same = group_ && group_->name == name && group_->date == date_ &&
                    group_->forecast == clause_forecast_ && (!clause_hour_ || group_->hour == clause_hour_);
  if (!same) {
    close_group();
    group_.emplace();
    group_->name = name;
    group_->date = date_;
    group_->hour = clause_hour_;
    group_->forecast = clause_forecast_;
    if (name && name->what == NamedThing::colony) group_->said.colony = ColonyId(name->key);
    if (name && name->what == NamedThing::site) group_->said.site = SiteId(name->key);
    if (name) group_->said.super_combs = name->super_combs;
  }
  std::string head;
  std::size_t last_end = 0;
  for (std::size_t i = 0; i < clause.size(); ++i) {
    const NoteWord& word = clause.words[i];
    if (clause.state[i] != State::head || word.mark == Mark::colon) continue;
    join(head, typed(word.begin, word.end), word.begin > last_end ? " " : "");
    last_end = word.end;
  }
  join(group_->head, head, " ");
}

void NoteReader::read_segment(Clause& clause, const Segment& segment) {
  std::vector<NoteWord> words;
  std::vector<std::size_t> where;
  const bool is_site = !group_->said.site.empty();
  for (std::size_t i = segment.begin; i < segment.end; ++i) {
    if (clause.state[i] != State::open) continue;
    if (clause.words[i].mark == Mark::colon) continue;
    if (is_site && is_weather_mark(clause.words[i])) {
      clause.state[i] = State::head;
      join(group_->head, typed(clause.words[i].begin, clause.words[i].end), " ");
      continue;
    }
    words.push_back(clause.words[i]);
    where.push_back(i);
  }
  const auto items = is_site ? weather_items() : colony_items();
  auto found = match_all(words, items);
  const std::vector<bool> taken = taken_by(found, words.size());
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!taken[i] && (is_negation(words[i]) || is_act(words[i])))
      return;  // nothing is taken, so all stays text
  }
  drop_ambiguous(words, found);
  for (const Matched& each : found) {
    if (!each.item->write(group_->said, each.match)) continue;
    std::size_t first = each.at;
    while (first > 0 && clause.state[where[first - 1]] == State::open && is_filler(words[first - 1])) --first;
    const std::size_t last = each.at + each.match.words - 1;
    for (std::size_t i = first; i <= last; ++i) clause.state[where[i]] = State::read;
    std::string said;
    for (std::size_t i = first; i <= last; ++i) {
      const bool apart = i > first && words[i].begin > words[i - 1].end;
      said += (apart ? " " : "") + typed(words[i].begin, words[i].end);
    }
    switch (group_->said.touched) {
      case Touched::look:
        join(group_->look_words, said, ", ");
        break;
      case Touched::weather:
        join(group_->weather_words, said, ", ");
        break;
      case Touched::new_other:
        group_->other_words.push_back(said);
        break;
      case Touched::last_other:
        join(group_->other_words.back(), said, ", ");
        break;
    }
  }
}

void NoteReader::keep_text(const Clause& clause, const std::vector<Segment>& segments) {
  for (const Segment& segment : segments) {
    std::string text;
    std::size_t last_end = 0;
    for (std::size_t i = segment.begin; i < segment.end; ++i) {
      const NoteWord& word = clause.words[i];
      if (clause.state[i] != State::open || (word.mark == Mark::colon && text.empty())) continue;
      const bool apart = !text.empty() && word.begin > last_end;
      text += (apart ? " " : "") + typed(word.begin, word.end);
      last_end = word.end;
    }
    if (text.find_first_not_of(":?") == std::string::npos) continue;
    join(group_->text, text, ", ");
  }
}

void NoteReader::close_entries() {
  Group& group = *group_;
  const auto propose = [&](Payload payload, const std::string& words) {
    std::string kind(kind_name(payload));
    std::replace(kind.begin(), kind.end(), '_', ' ');
    const std::string fields = read_back_fields(payload);
    reading_.read_back.push_back("  " + kind + (fields.empty() ? "" : ": " + fields) + "  <- " + words);
    reading_.entries.push_back({group.date, group.hour, std::move(payload)});
  };
  if (group.said.look) {
    if (!group.said.look_named) group.said.look->look = group.said.inside ? Look::full : Look::quick;
    propose(*group.said.look, group.look_words);
  }
  if (group.said.weather) {
    group.said.weather->forecast = group.forecast;
    propose(*group.said.weather, group.weather_words);
  }
  for (std::size_t i = 0; i < group.said.others.size(); ++i)
    propose(std::move(group.said.others[i]), group.other_words[i]);
}

void NoteReader::close_group() {
  if (!group_) return;
  Group& group = *group_;
  std::string when =
      group.date.iso() + (group.hour ? " " + clock(*group.hour) : "") + (group.forecast ? ", forecast" : "");
  reading_.read_back.push_back((group.name ? group.name->shown : "nobody of the book") + ", " + when +
                               (group.head.empty() ? "" : "  <- " + group.head));
  close_entries();
  if (!group.text.empty()) {
    Note note{.text = group.text};
    if (!group.said.colony.empty()) note.colony = group.said.colony;
    if (!group.said.site.empty()) note.site = group.said.site;
    if (group.name && group.name->what == NamedThing::hive) note.text = group.name->shown + ": " + note.text;
    reading_.read_back.push_back("  kept as text: " + group.text);
    join(reading_.left_as_text, group.text, "; ");
    reading_.about_nobody = reading_.about_nobody || !group.name;
    reading_.entries.push_back({group.date, group.hour, std::move(note)});
  }
  group_.reset();
}

// The head may be cut by commas: "yesterday, Alder 5, ...".
Outcome NoteReader::read_heads(Clause& clause, const std::vector<Segment>& segments) {
  for (const Segment& segment : segments) {
    if (auto ok = read_head(clause, segment); !ok) return ok;
    if (!clause_named_) {
      if (auto ok = refuse_unknown_address(clause, segment); !ok) return ok;
    }
    const auto first = clause.state.begin() + static_cast<std::ptrdiff_t>(segment.begin);
    const auto last = clause.state.begin() + static_cast<std::ptrdiff_t>(segment.end);
    if (std::find(first, last, State::open) != last) break;
  }
  return Done{};
}

// A forecast goes on until a name or "weather" is said.
bool NoteReader::is_forecast(const Clause& clause) const {
  bool goes_on = clause_forecast_;
  for (std::size_t i = 0; i < clause.size(); ++i) {
    if (clause.words[i].lemma == "forecast") return true;
    goes_on = goes_on && clause.words[i].lemma != "weather" && !finder_.begins(clause.from(i, clause.size()));
  }
  return goes_on;
}

Outcome NoteReader::read_clause(Clause& clause) {
  std::vector<Segment> segments = segments_of(clause);
  if (segments.empty()) return Done{};
  clause.state.assign(clause.size(), State::open);
  clause_date_.reset();
  clause_hour_.reset();
  clause_named_ = false;
  clause_forecast_ = is_forecast(clause);
  if (auto ok = read_heads(clause, segments); !ok) return ok;
  mark_doubtful(clause, segments);
  for (const Segment& segment : segments) {
    if (segment.text) continue;
    if (auto ok = read_when(clause, segment); !ok) return ok;
  }
  if (clause_date_) date_ = *clause_date_;
  const bool of_nobody = speaks_of_nobody(clause);
  open_group(clause, of_nobody);
  for (const Segment& segment : segments) {
    if (!segment.text && !of_nobody && group_->name->what != NamedThing::hive) read_segment(clause, segment);
  }
  keep_text(clause, segments);
  return Done{};
}

Expected<NoteReading> NoteReader::read() {
  Clause clause;
  for (NoteWord& word : note_words(line_)) {
    if (word.mark != Mark::clause_end) {
      clause.words.push_back(std::move(word));
      continue;
    }
    if (auto ok = read_clause(clause); !ok) return ok.problem();
    clause.words.clear();
  }
  if (auto ok = read_clause(clause); !ok) return ok.problem();
  close_group();
  if (reading_.entries.empty())
    return bad_input("the note says nothing", "the note", "write what was seen or done");
  return std::move(reading_);
}

}  // namespace

Expected<NoteReading> read_note(std::string_view line, const NameBook& names, Date today) {
  if (line.size() > longest_note)
    return bad_input("the note is longer than 20000 bytes", "the note", "write it in parts");
  if (!is_utf8(line)) return bad_input("the note is not UTF-8", "the note", "type it again");
  if (line.find('\0') != std::string_view::npos)
    return bad_input("the note holds a zero byte", "the note", "type it again");
  return NoteReader(line, names, today).read();
}

}  // namespace beegarth::entries
