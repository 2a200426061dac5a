#include "entries/note_groups.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "entries/read_back.hpp"

namespace beegarth::entries {
namespace {

void join(std::string& list, std::string_view more, std::string_view between) {
  if (!list.empty() && !more.empty()) list += between;
  list += more;
}

std::string clock(double hour) {
  const int minutes = static_cast<int>(std::lround(hour * 60));
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return two(minutes / 60) + ":" + two(minutes % 60);
}

}  // namespace

const ItemList& items_about(const KnownName* name, bool forecast) {
  if (forecast) {
    const bool is_site = name && name->what == NamedThing::site;
    return is_site ? weather_items() : no_items();
  }
  if (!name) return nobody_items();
  if (name->what == NamedThing::hive) return no_items();
  return name->what == NamedThing::site ? site_items() : colony_items();
}

NoteGroup::NoteGroup(std::string_view line, const KnownName* name, Date date, std::optional<double> hour,
                     bool forecast, int line_number)
    : line_(line),
      name_(name),
      date_(date),
      hour_(hour),
      forecast_(forecast),
      line_number_(line_number),
      first_line_(line_number) {
  if (!name) return;
  if (name->what == NamedThing::colony) said_.colony = ColonyId(name->key);
  if (name->what == NamedThing::site) said_.site = SiteId(name->key);
  said_.super_combs = name->super_combs;
  said_.treatments_on = name->treatments_on;
}

const ItemList& NoteGroup::items() const {
  return said_.dead ? dead_colony_items() : items_about(name_, forecast_);
}

void NoteGroup::add_head(const Clause& clause) {
  std::string head;
  std::size_t last_end = 0;
  for (std::size_t i = 0; i < clause.size(); ++i) {
    const NoteWord& word = clause.words[i];
    if (clause.state[i] != State::head || word.mark == Mark::colon) continue;
    join(head, typed(word.begin, word.end), word.begin > last_end ? " " : "");
    last_end = word.end;
  }
  join(head_, head, " ");
}

void NoteGroup::read_segment(Clause& clause, const Segment& segment,
                             const std::vector<Correction>& corrections) {
  std::vector<NoteWord> words;
  std::vector<std::size_t> where;
  const bool is_site = !said_.site.empty();
  for (std::size_t i = segment.begin; i < segment.end; ++i) {
    if (clause.state[i] != State::open || clause.words[i].mark == Mark::colon) continue;
    if (is_site && is_weather_mark(clause.words[i])) {
      clause.state[i] = State::head;
      join(head_, typed(clause.words[i].begin, clause.words[i].end), " ");
      continue;
    }
    words.push_back(clause.words[i]);
    where.push_back(i);
  }
  auto found = match_all(words, items());
  const auto tells_death = [](const Matched& each) { return each.item->dead; };
  if (!said_.dead && std::any_of(found.begin(), found.end(), tells_death))
    found = match_all(words, dead_colony_items());
  const bool turned = turned_round(words, found);
  if (!turned) drop_ambiguous(words, found);
  std::size_t understood = 0;
  for (const Matched& each : found) understood += each.match.words;
  const auto fillers = static_cast<std::size_t>(std::count_if(words.begin(), words.end(), is_filler));
  const bool left_over = words.size() > understood + fillers;
  for (const Matched& each : found) {
    if (each.item->alone && left_over) {
      if (std::any_of(words.begin(), words.end(), is_negation)) continue;
      questions_.push_back(each.match.typed +
                           ": was it seen in this colony? say it alone: " + each.match.typed);
    } else if (!turned && each.item->write(said_, each.match)) {
      take(clause, words, where, each, corrections);
    } else if (!each.item->question.empty() && (!turned || each.item->never)) {
      questions_.push_back(each.match.typed + ": " + each.item->question);
    }
  }
}

void NoteGroup::ask_about(const Clause& clause, const Segment& segment) {
  for (std::size_t i = segment.begin; i < segment.end; ++i) {
    if (clause.words[i].lemma == "foulbrood" && !said_.colony.empty())
      questions_.push_back(clause.words[i].typed + ": is it suspected? say: foulbrood suspected");
  }
}

void NoteGroup::take(Clause& clause, const std::vector<NoteWord>& words,
                     const std::vector<std::size_t>& where, const Matched& match,
                     const std::vector<Correction>& corrections) {
  std::size_t first = match.at;
  while (first > 0 && clause.state[where[first - 1]] == State::open && is_filler(words[first - 1])) --first;
  const std::size_t last = match.at + match.match.words - 1;
  std::string said;
  for (std::size_t i = first; i <= last; ++i) {
    clause.state[where[i]] = State::read;
    said += (i > first && words[i].begin > words[i - 1].end ? " " : "") + typed(words[i].begin, words[i].end);
  }
  for (const Correction& each : corrections) {
    if (clause.state[each.number_at] != State::read || clause.state[each.words.front()] == State::read)
      continue;
    std::size_t next = 0;  // behind a comma where that is no longer the word before it
    for (const std::size_t i : each.words) {
      clause.state[i] = State::read;
      join(said, typed(clause.words[i].begin, clause.words[i].end), i == next ? " " : ", ");
      next = i + 1;
    }
  }
  switch (said_.touched) {
    case Touched::look:
      return join(look_words_, said, ", ");
    case Touched::weather:
      return join(weather_words_, said, ", ");
    case Touched::other:
      if (other_words_.size() <= said_.other_touched) {
        other_words_.resize(said_.other_touched + 1);
        other_lines_.resize(said_.other_touched + 1, line_number_);
      }
      return join(other_words_[said_.other_touched], said, ", ");
  }
}

void NoteGroup::keep_text(const Clause& clause, const std::vector<Segment>& segments) {
  for (const Segment& segment : segments) {
    std::string text;
    std::size_t last_end = 0;
    for (std::size_t i = segment.begin; i < segment.end; ++i) {
      const NoteWord& word = clause.words[i];
      const bool kept = clause.state[i] == State::open || clause.state[i] == State::correction;
      if (!kept || word.mark == Mark::segment_end || (word.mark == Mark::colon && text.empty())) continue;
      const bool apart = !text.empty() && word.begin > last_end;
      text += (apart ? " " : "") + typed(word.begin, word.end);
      last_end = word.end;
    }
    if (text.find_first_not_of(":?") == std::string::npos) continue;
    join(text_, text, ", ");
  }
}

void NoteGroup::propose(NoteReading& into, Payload payload, const std::string& words, int line_number) const {
  std::string kind(kind_name(payload));
  std::replace(kind.begin(), kind.end(), '_', ' ');
  const std::string fields = read_back_fields(payload);
  into.read_back.push_back("  " + kind + (fields.empty() ? "" : ": " + fields) +
                           (words.empty() ? "" : "  <- " + words));
  into.entries.push_back({date_, hour_, std::move(payload), line_number});
}

void NoteGroup::close(NoteReading& into) {
  const std::string when = date_.iso() + (hour_ ? " " + clock(*hour_) : "") + (forecast_ ? ", forecast" : "");
  into.read_back.push_back((name_ ? name_->shown : "nobody of the book") + ", " + when +
                           (head_.empty() ? "" : "  <- " + head_));
  if (said_.look) {
    if (!said_.look_named) said_.look->look = said_.inside ? Look::full : Look::quick;
    propose(into, *said_.look, look_words_, first_line_);
  }
  if (said_.weather) {
    said_.weather->forecast = forecast_;
    propose(into, *said_.weather, weather_words_, first_line_);
  }
  for (std::size_t i = 0; i < said_.others.size(); ++i)
    propose(into, std::move(said_.others[i]), other_words_[i], other_lines_[i]);
  if (text_.empty()) return;
  Note note{.text = text_};
  if (!said_.colony.empty()) note.colony = said_.colony;
  if (!said_.site.empty()) note.site = said_.site;
  if (name_ && name_->what == NamedThing::hive) note.text = name_->shown + ": " + note.text;
  into.read_back.push_back("  kept as text: " + text_);
  for (const std::string& question : questions_) {
    into.read_back.push_back("  unclear: " + question);
    into.questions.push_back(question);
  }
  join(into.left_as_text, text_, "; ");
  into.about_nobody = into.about_nobody || !name_;
  into.entries.push_back({date_, hour_, std::move(note), first_line_});
}

}  // namespace beegarth::entries
