#include "entries/note_corrections.hpp"

#include "entries/note_vocabulary.hpp"

namespace beegarth::entries {
namespace {

bool is(const Clause& clause, std::size_t at, std::size_t end, std::string_view raw) {
  return at < end && clause.words[at].mark == Mark::word && clause.words[at].raw == raw;
}

struct Phrase {
  std::size_t words = 0;
  bool sure = false;  // more than "no", which may be a part of what follows: "no 8"
};

Phrase phrase_at(const Clause& clause, std::size_t at, std::size_t end) {
  Phrase phrase;
  while (at + phrase.words < end) {
    const std::size_t next = at + phrase.words;
    const bool two_words = (is(clause, next, end, "make") && is(clause, next + 1, end, "that")) ||
                           (is(clause, next, end, "i") &&
                            (is(clause, next + 1, end, "mean") || is(clause, next + 1, end, "meant")));
    const bool one_word =
        clause.words[next].mark == Mark::word && is_word_of(WordClass::correction, clause.words[next].lemma);
    if (!two_words && !one_word) break;
    phrase.sure = phrase.sure || two_words || clause.words[next].raw != "no";
    phrase.words += two_words ? 2 : 1;
  }
  return phrase;
}

// Dictated without a comma: "9 seams no sorry 8".
void cut_before_phrases(const Clause& clause, std::vector<Segment>& segments) {
  std::vector<Segment> cut;
  for (Segment segment : segments) {
    for (std::size_t at = segment.begin + 1; at < segment.end; ++at) {
      const Phrase phrase = clause.state[at] == State::open ? phrase_at(clause, at, segment.end) : Phrase{};
      const std::size_t after = at + phrase.words;
      if (!phrase.sure || after >= segment.end || clause.words[after].mark != Mark::number) continue;
      cut.push_back({segment.begin, at, segment.text});
      segment.begin = at;
      at = after;
    }
    cut.push_back(segment);
  }
  segments = std::move(cut);
}

std::vector<std::size_t> open_words(const Clause& clause, const Segment& segment) {
  std::vector<std::size_t> open;
  for (std::size_t i = segment.begin; i < segment.end; ++i) {
    if (clause.state[i] == State::open && clause.words[i].mark != Mark::colon) open.push_back(i);
  }
  return open;
}

}  // namespace

std::vector<Correction> take_corrections(Clause& clause, std::vector<Segment>& segments) {
  cut_before_phrases(clause, segments);
  std::vector<Correction> corrections;
  std::size_t corrected = 0, correction_ends = segments.size();  // of the last one
  for (std::size_t k = 1; k < segments.size(); ++k) {
    Segment& said = segments[k];
    const Phrase phrase = phrase_at(clause, said.begin, said.end);
    const bool alone = phrase.words > 0 && said.begin + phrase.words == said.end;
    if (phrase.words == 0 || (!alone && !phrase.sure) || (alone && k + 1 >= segments.size())) continue;
    const std::size_t number = alone ? segments[k + 1].begin : said.begin + phrase.words;
    const std::size_t end = alone ? segments[k + 1].end : said.end;
    if (clause.words[number].mark != Mark::number) continue;

    const std::vector<std::size_t> before = open_words(clause, segments[k - 1]);
    std::size_t numbers = 0, which = 0;
    for (std::size_t i = 0; i < before.size(); ++i) {
      if (clause.words[before[i]].mark == Mark::number) {
        ++numbers;
        which = i;
      }
    }
    bool fits = numbers == 1;
    for (std::size_t i = number + 1; i < end && fits; ++i) {  // the unit may be said again
      const std::size_t same = which + (i - number);
      fits = same < before.size() && clause.words[before[same]].lemma == clause.words[i].lemma &&
             clause.words[i].mark == Mark::word;
    }
    if (!fits) {
      if (correction_ends == k - 1) segments[corrected].text = true;  // taken back twice
      segments[k - 1].text = said.text = true;
      if (alone) segments[k + 1].text = true;
      continue;
    }
    Correction correction{.number_at = before[which]};
    clause.words[before[which]].number = clause.words[number].number;
    for (std::size_t i = said.begin; i < end; ++i) {
      if (clause.words[i].mark == Mark::segment_end) continue;
      clause.state[i] = State::correction;
      correction.words.push_back(i);
    }
    corrections.push_back(std::move(correction));
    corrected = k - 1;
    if (alone) ++k;
    correction_ends = k;
  }
  return corrections;
}

}  // namespace beegarth::entries
