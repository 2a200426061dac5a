#include "entries/note_line.hpp"

#include <algorithm>
#include <span>
#include <utility>

#include "base/utf8.hpp"
#include "entries/note_clause.hpp"
#include "entries/note_corrections.hpp"
#include "entries/note_doubts.hpp"
#include "entries/note_groups.hpp"
#include "entries/note_heads.hpp"
#include "entries/note_names.hpp"
#include "entries/note_words.hpp"

namespace beegarth::entries {
namespace {

constexpr std::size_t longest_note = 20000;  // bytes; that of a text in the book

class NoteReader {
 public:
  NoteReader(std::string_view line, const NameBook& names, Date today)
      : line_(line), finder_(names), heads_(line, finder_, today), date_(today) {}

  Expected<NoteReading> read();

 private:
  Outcome read_clause(Clause& clause);
  Outcome read_when(Clause& clause, const Segment& segment);
  bool says_something(const Clause& clause, const Segment& segment) const;
  void mark_doubtful(const Clause& clause, std::vector<Segment>& segments) const;
  bool speaks_of_nobody(const Clause& clause) const;
  void open_groups(const Clause& clause);
  void close_groups();
  Problem in_its_line(Problem problem) const;

  std::string_view line_;
  NameFinder finder_;
  HeadReader heads_;
  std::vector<const KnownName*> names_;  // hold until others are said
  Date date_;                            // likewise
  Head head_;                            // of the clause
  int line_number_ = 1;
  std::vector<NoteGroup> groups_;  // one for each name
  NoteReading reading_;
};

// ---- what stays text as a whole ----
bool is_doubtful(const Clause& clause, const Segment& segment, std::size_t i, const HeadReader& heads,
                 bool forecast) {
  const NoteWord& word = clause.words[i];
  if (word.mark == Mark::query) return true;
  if (!is_doubt(word)) return false;
  if (word.lemma == "last" && heads.says_a_day(clause, i, segment.end)) return false;
  if (word.lemma == "before" && i >= segment.begin + 2 && heads.says_a_day(clause, i - 2, segment.end))
    return false;
  if (word.lemma == "tomorrow" && forecast) return false;
  const bool is_month =
      word.raw == "may" && ((i > segment.begin && clause.words[i - 1].mark == Mark::number) ||
                            (i + 1 < segment.end && clause.words[i + 1].mark == Mark::number) ||
                            (i > segment.begin && clause.words[i - 1].raw == "of"));
  return !is_month;
}

void NoteReader::mark_doubtful(const Clause& clause, std::vector<Segment>& segments) const {
  const KnownName* about = names_.empty() ? nullptr : names_.front();
  bool rest_too = false;
  Segment* last = nullptr;
  std::vector<NoteWord> last_open;
  for (Segment& segment : segments) {
    segment.text = segment.text || rest_too;
    std::vector<NoteWord> open;
    bool doubtful = false;
    for (std::size_t i = segment.begin; i < segment.end; ++i) {
      const NoteWord& word = clause.words[i];
      // "Left undone: ..." goes for all that follows.
      if (word.mark == Mark::colon && doubtful) rest_too = true;
      if (clause.state[i] != State::open) continue;
      doubtful = doubtful || is_doubtful(clause, segment, i, heads_, head_.forecast);
      if (word.mark != Mark::colon) open.push_back(word);
    }
    const bool undone = last != nullptr && takes_back(open, last_open);
    if (undone) last->text = true;
    const bool others = about && about->what == NamedThing::colony && tells_of_another_keeper(open);
    segment.text = segment.text || doubtful || undone || others || tells_of_before(open);
    last = &segment;
    last_open = open;
    const bool begins_with_name = !open.empty() && !open[0].names.empty();
    if (!names_another(open, match_all(open, items_about(about, head_.forecast)))) continue;
    segment.text = true;
    rest_too = rest_too || begins_with_name;  // what follows may be about that other one
  }
}

// Without a name of its own, a clause goes on about the last one, unless it begins with what looks like a
// name.
bool NoteReader::speaks_of_nobody(const Clause& clause) const {
  if (names_.empty()) return true;
  if (!head_.names.empty()) return false;
  const auto open = std::find(clause.state.begin(), clause.state.end(), State::open);
  if (open == clause.state.end()) return false;
  const NoteWord& word = clause.words[static_cast<std::size_t>(open - clause.state.begin())];
  const char first = line_[word.begin];
  return word.mark == Mark::word && first >= 'A' && first <= 'Z' && !is_known_lemma(word.lemma) &&
         !is_filler(word) && !is_doubt(word) && !is_negation(word);
}

// ---- what was said ----
void NoteReader::open_groups(const Clause& clause) {
  std::vector<const KnownName*> about = names_;
  if (speaks_of_nobody(clause)) about = {nullptr};
  bool same = groups_.size() == about.size();
  for (std::size_t i = 0; i < about.size() && same; ++i)
    same = groups_[i].goes_on(about[i], date_, head_.hour, head_.forecast);
  if (!same) {
    close_groups();
    for (const KnownName* name : about)
      groups_.emplace_back(line_, name, date_, head_.hour, head_.forecast, line_number_);
  }
  for (NoteGroup& group : groups_) {
    group.at_line(line_number_);
    group.add_head(clause);
  }
}

void NoteReader::close_groups() {
  for (NoteGroup& group : groups_) group.close(reading_);
  groups_.clear();
}

// Whether anything is understood of the open words.
bool NoteReader::says_something(const Clause& clause, const Segment& segment) const {
  std::vector<NoteWord> open;
  for (std::size_t i = segment.begin; i < segment.end; ++i) {
    if (clause.state[i] == State::open && clause.words[i].mark != Mark::colon)
      open.push_back(clause.words[i]);
  }
  if (open.empty()) return true;
  auto found = match_all(open, items_about(names_.empty() ? nullptr : names_.front(), head_.forecast));
  if (turned_round(open, found)) return false;
  drop_ambiguous(open, found);
  return std::any_of(found.begin(), found.end(), [](const Matched& each) { return !each.item->never; });
}

// A day in a segment that stays text is part of that text: "feed on Saturday".
Outcome NoteReader::read_when(Clause& clause, const Segment& segment) {
  const auto first = clause.state.begin() + static_cast<std::ptrdiff_t>(segment.begin);
  const auto last = clause.state.begin() + static_cast<std::ptrdiff_t>(segment.end);
  const std::vector<State> undated(first, last);
  const Head head = head_;
  Outcome read = heads_.read_when(clause, segment, head_);
  if (read && says_something(clause, segment)) return Done{};
  std::copy(undated.begin(), undated.end(), first);
  head_ = head;
  if (read || !says_something(clause, segment)) return Done{};
  return read;
}

Outcome NoteReader::read_clause(Clause& clause) {
  std::vector<Segment> segments = segments_of(clause);
  if (segments.empty()) return Done{};
  clause.state.assign(clause.size(), State::open);
  auto head = heads_.read(clause, segments, head_.forecast);
  if (!head) return in_its_line(head.problem());
  head_ = *std::move(head);
  if (!head_.names.empty()) names_ = head_.names;
  const std::vector<Correction> corrections = take_corrections(clause, segments);
  mark_doubtful(clause, segments);
  for (const Segment& segment : segments) {
    if (segment.text) continue;
    if (auto ok = read_when(clause, segment); !ok) return in_its_line(ok.problem());
  }
  if (head_.date) date_ = *head_.date;
  open_groups(clause);
  for (NoteGroup& group : groups_) {
    Clause own = clause;
    for (const Segment& segment : segments)
      segment.text ? group.ask_about(own, segment) : group.read_segment(own, segment, corrections);
    group.keep_text(own, segments);
  }
  return Done{};
}

Problem NoteReader::in_its_line(Problem problem) const {
  if (line_.find('\n') != std::string_view::npos)
    problem.where = "line " + std::to_string(line_number_) + " of the note";
  return problem;
}

Expected<NoteReading> NoteReader::read() {
  std::vector<NoteWord> words = note_words(line_);
  finder_.mark(words);
  // "Alder: 9 seams, Cobble: 7 seams" are two clauses.
  const auto is_address = [&](std::size_t at) {
    return std::any_of(words[at].names.begin(), words[at].names.end(), [&](const NameHere& name) {
      return at + name.words < words.size() && words[at + name.words].mark == Mark::colon;
    });
  };
  Clause clause;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool another = !clause.words.empty() && words[i - 1].mark == Mark::segment_end && is_address(i);
    const bool ends = words[i].mark == Mark::clause_end;
    if (ends || another) {
      if (auto ok = read_clause(clause); !ok) return ok.problem();
      clause.words.clear();
      const std::string_view passed = line_.substr(begin, words[i].end - begin);
      line_number_ += static_cast<int>(std::count(passed.begin(), passed.end(), '\n'));
      begin = words[i].end;
    }
    if (!ends) clause.words.push_back(words[i]);
  }
  if (auto ok = read_clause(clause); !ok) return ok.problem();
  close_groups();
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
