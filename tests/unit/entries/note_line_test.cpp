#include "entries/note_line.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <set>

#include "base/random.hpp"
#include "note_corpus_names.hpp"

namespace beegarth::entries {
namespace {

std::string unescaped(std::string_view text) {
  std::string line;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool line_end = text[i] == '\\' && i + 1 < text.size() && text[i + 1] == 'n';
    line.push_back(line_end ? '\n' : text[i]);
    if (line_end) ++i;
  }
  return line;
}

struct Case {
  int at = 0;
  std::string line;
  std::vector<std::string> wanted;
};

std::vector<Case> corpus() {
  std::ifstream file(BEEGARTH_SOURCE_DIR "/tests/unit/entries/note_corpus.txt");
  std::vector<Case> cases;
  int at = 0;
  for (std::string text; std::getline(file, text);) {
    ++at;
    if (text.rfind("> ", 0) == 0) {
      cases.push_back({at, unescaped(std::string_view(text).substr(2)), {}});
    } else if (!text.empty() && text[0] != '#' && !cases.empty()) {
      cases.back().wanted.push_back(text);
    }
  }
  return cases;
}

// The words of a line, without marks.
std::vector<std::string> bare_words(std::string_view line) {
  std::vector<std::string> words(1);
  for (const char c : line) {
    const bool apart = static_cast<unsigned char>(c) <= ' ' ||
                       std::string_view(",;:?!()\"/.%").find(c) != std::string_view::npos;
    if (!apart) words.back().push_back(c);
    if (apart && !words.back().empty()) words.emplace_back();
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

// Each word stands in the read-back as often as in the line, in what was understood or in what is kept as
// text.
void expect_no_word_lost(const std::string& line) {
  const auto reading = read_note(line, invented_names(), invented_today());
  if (!reading) return;
  std::multiset<std::string> told_back;
  for (const std::string& each : reading->read_back) {
    const std::size_t arrow = each.find("  <- ");
    const std::size_t text = each.find("kept as text: ");
    const std::string_view words = arrow != std::string::npos  ? std::string_view(each).substr(arrow + 5)
                                   : text != std::string::npos ? std::string_view(each).substr(text + 14)
                                                               : std::string_view();
    for (std::string& word : bare_words(words)) told_back.insert(std::move(word));
  }
  for (const std::string& word : bare_words(line)) {
    const auto found = told_back.find(word);
    ASSERT_NE(found, told_back.end()) << "'" << word << "' of \"" << line << "\" was lost";
    told_back.erase(found);
  }
  EXPECT_TRUE(told_back.empty()) << "'" << *told_back.begin() << "' was said back twice of \"" << line
                                 << "\"";
  for (const ProposedEntry& entry : reading->entries) {
    EXPECT_TRUE(validate(entry.payload)) << line;
    const auto* note = std::get_if<Note>(&entry.payload);
    EXPECT_TRUE(!note || !note->text.empty());
  }
}

TEST(NoteLine, reads_every_line_of_the_corpus_as_it_says) {
  const auto cases = corpus();
  EXPECT_GE(cases.size(), 80U);
  for (const Case& each : cases) {
    EXPECT_EQ(told(each.line), each.wanted) << "note_corpus.txt:" << each.at << ": " << each.line;
  }
}

TEST(NoteLine, loses_no_word_of_the_corpus) {
  for (const Case& each : corpus()) expect_no_word_lost(each.line);
}

TEST(NoteLine, loses_no_word_however_the_words_are_mixed) {
  std::vector<std::string> words;
  for (const Case& each : corpus()) {
    for (const std::string& word : bare_words(each.line)) words.push_back(word);
  }
  words.insert(words.end(), {",", ";", ":", "?", "\n", ".", "(", ")", "Alder 5", "Alder 5:", "Withy Meadow",
                             "purple", "Zed"});
  Stream stream({.seed = 20260610, .purpose = Purpose::demo});
  int read = 0;
  for (int i = 0; i < 5000; ++i) {
    std::string line = stream.uniform() < 0.7 ? "Alder 5: " : "";
    const int length = 1 + static_cast<int>(stream.uniform() * 12);
    for (int k = 0; k < length; ++k)
      line += words[static_cast<std::size_t>(stream.uniform() * static_cast<double>(words.size()))] + " ";
    read += read_note(line, invented_names(), invented_today()) ? 1 : 0;
    expect_no_word_lost(line);
    if (HasFatalFailure()) return;
  }
  EXPECT_GT(read, 1000) << "most lines were refused, so little was tried";
}

TEST(NoteLine, what_is_left_is_kept_in_a_note_about_that_colony) {
  const auto reading = read_note("Town 2: lid cracked, 7 seams", invented_names(), invented_today());
  ASSERT_TRUE(reading);
  EXPECT_EQ(reading->left_as_text, "lid cracked");
  const auto& note = std::get<Note>(reading->entries.at(1).payload);
  EXPECT_EQ(note.colony, ColonyId("town-2"));
  EXPECT_FALSE(reading->about_nobody);
}

TEST(NoteLine, the_read_back_shows_what_was_understood_beside_what_was_typed) {
  const auto reading =
      read_note("yesterday 14:30 Town 2 board 43 in 3 days, lid cracked", invented_names(), invented_today());
  ASSERT_TRUE(reading);
  EXPECT_EQ(reading->read_back,
            (std::vector<std::string>{"Town 2, 2026-06-09 14:30  <- yesterday 14:30 Town 2",
                                      "  mite count: method board, mites 43, days 3  <- board 43 in 3 days",
                                      "  kept as text: lid cracked"}));
}

TEST(NoteLine, two_colonies_of_one_name_are_refused) {
  const NameBook names{{{"a", "Alder 5", NamedThing::colony, {}}, {"b", "Alder 5", NamedThing::colony, {}}}};
  EXPECT_FALSE(read_note("Alder 5: 9 seams", names, invented_today()));
}

TEST(NoteLine, a_name_and_a_number_that_is_a_name_too_wants_a_colon) {
  const NameBook names{{{"a", "Alder", NamedThing::colony, {}}, {"a5", "Alder 5", NamedThing::colony, {}}}};
  EXPECT_FALSE(read_note("Alder 5 seams", names, invented_today()));
  EXPECT_TRUE(read_note("Alder 5: 9 seams", names, invented_today()));
  EXPECT_TRUE(read_note("Alder: 5 seams", names, invented_today()));
}

TEST(NoteLine, what_is_no_text_is_refused) {
  EXPECT_FALSE(read_note("Alder 5: \xE9", invented_names(), invented_today()));
  EXPECT_FALSE(read_note(std::string_view("Alder 5: \0", 10), invented_names(), invented_today()));
  EXPECT_FALSE(read_note(std::string(20001, 'a'), invented_names(), invented_today()));
}

TEST(NoteLine, twenty_thousand_bytes_are_read_at_once) {
  std::string line = "Alder 5: ";
  while (line.size() < 19990) line += "a 9 ";
  EXPECT_TRUE(read_note(line, invented_names(), invented_today()));
}

}  // namespace
}  // namespace beegarth::entries
