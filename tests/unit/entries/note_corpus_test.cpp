// Three hundred invented lines and what each becomes, and the laws that hold for every one of them.
#include "note_corpus.hpp"

#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <variant>

namespace beegarth::entries {
namespace {

const std::vector<CorpusCase>& notes() {
  static const std::vector<CorpusCase> cases = corpus_in(BEEGARTH_SOURCE_DIR "/tests/corpus/notes.txt");
  return cases;
}

std::string key_of(const Payload& payload) {
  return read_back(payload);
}

// Entries that are no text, as they are told.
std::vector<std::string> understood(const NoteReading& reading) {
  std::vector<std::string> lines;
  for (const ProposedEntry& entry : reading.entries) {
    if (!std::holds_alternative<Note>(entry.payload))
      lines.push_back(entry.happened.iso() + " " + key_of(entry.payload));
  }
  return lines;
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

// A line of a read-back in its two parts: what was understood, and the words it was read from.
struct ToldBack {
  std::string understood;
  std::string words;
};
ToldBack parts_of_read_back(const std::string& line) {
  const std::size_t arrow = line.find("  <- ");
  if (arrow == std::string::npos) return {trimmed(line), ""};
  return {trimmed(line.substr(0, arrow)), line.substr(arrow + 5)};
}

// "Town 2, 2026-06-09" begins what was said of one name; the lines about it are indented.
bool is_heading(const std::string& line) {
  return line.rfind("  ", 0) != 0;
}

TEST(NoteCorpus, is_read_as_it_says) {
  EXPECT_GE(notes().size(), 300U);
  for (const CorpusCase& each : notes()) {
    EXPECT_EQ(told(each.line, each.names, each.today), each.wanted)
        << "notes.txt:" << each.at << ": " << each.line;
  }
}

TEST(NoteCorpus, every_word_is_understood_or_left_as_text) {
  for (const CorpusCase& each : notes()) {
    const auto reading = read_note(each.line, each.names, each.today);
    if (!reading) continue;
    std::multiset<std::string> told_back;
    for (const std::string& line : reading->read_back) {
      if (line.rfind("  unclear: ", 0) == 0) continue;
      const std::size_t text = line.find("kept as text: ");
      const std::string words =
          text != std::string::npos ? line.substr(text + 14) : parts_of_read_back(line).words;
      for (std::string& word : bare_words(words)) told_back.insert(std::move(word));
    }
    for (const std::string& word : bare_words(each.line))
      EXPECT_TRUE(told_back.contains(word)) << "'" << word << "' was lost: " << each.line;
    for (const std::string& word : bare_words(reading->left_as_text))
      EXPECT_NE(each.line.find(word), std::string::npos) << each.line;
  }
}

TEST(NoteCorpus, what_is_left_as_text_is_kept_in_notes) {
  for (const CorpusCase& each : notes()) {
    const auto reading = read_note(each.line, each.names, each.today);
    if (!reading) continue;
    std::string kept;
    for (const ProposedEntry& entry : reading->entries) {
      if (const auto* note = std::get_if<Note>(&entry.payload)) kept += note->text + "\n";
      EXPECT_TRUE(validate(entry.payload)) << each.line;
    }
    for (const std::string& word : bare_words(reading->left_as_text))
      EXPECT_NE(kept.find(word), std::string::npos) << each.line;
  }
}

TEST(NoteCorpus, no_entry_lies_in_the_future_unless_it_is_a_forecast) {
  for (const CorpusCase& each : notes()) {
    const auto reading = read_note(each.line, each.names, each.today);
    if (!reading) continue;
    for (const ProposedEntry& entry : reading->entries) {
      const auto* weather = std::get_if<Weather>(&entry.payload);
      if (weather && weather->forecast) continue;
      EXPECT_LE(entry.happened.iso(), each.today.iso()) << each.line;
    }
  }
}

TEST(NoteCorpus, an_unknown_word_at_the_end_changes_nothing_that_was_understood) {
  for (const CorpusCase& each : notes()) {
    const auto before = read_note(each.line, each.names, each.today);
    if (!before) continue;
    for (const std::string added : {", zzxq", "; zzxq", ". Zzxq", "\nzzxq"}) {
      const auto after = read_note(each.line + added, each.names, each.today);
      ASSERT_TRUE(after) << each.line << added;
      EXPECT_EQ(understood(*after), understood(*before)) << each.line << added;
      EXPECT_NE(after->left_as_text.find(added.substr(added.size() - 3)), std::string::npos);
    }
  }
}

// The words that are shown beside an entry say the same when they are said again of the same name.
TEST(NoteCorpus, the_words_beside_an_entry_say_it_again) {
  int tried = 0;
  for (const CorpusCase& each : notes()) {
    const auto reading = read_note(each.line, each.names, each.today);
    if (!reading) continue;
    std::string name;
    for (const std::string& line : reading->read_back) {
      if (is_heading(line)) name = line.substr(0, line.rfind(", 20"));
      const ToldBack told = parts_of_read_back(line);
      if (is_heading(line) || told.words.empty() || name == "nobody of the book") continue;
      if (line.find("forecast yes") != std::string::npos) continue;  // the word stands in the heading
      // What was found in a dead hive is read so only behind the word that says it is dead, strips end what
      // was said to be in, and "another" is of what was fed before.
      const bool needs_more = line.rfind("  dead colony", 0) == 0 ||
                              line.rfind("  treatment ended", 0) == 0 ||
                              told.words.find("another") != std::string::npos;
      if (needs_more) continue;
      const bool shared = each.line.find("colony Bank") != std::string::npos;
      const bool is_site = each.line.find("site Bank") != std::string::npos;
      const std::string again_line = (shared ? "colony " : is_site ? "site " : "") + name + ": " + told.words;
      const auto again = read_note(again_line, each.names, each.today);
      ASSERT_TRUE(again) << again_line;
      bool found = false;
      for (const std::string& other : again->read_back)
        found = found || parts_of_read_back(other).understood == told.understood;
      EXPECT_TRUE(found) << each.line << " -> " << again_line;
      ++tried;
    }
  }
  EXPECT_GT(tried, 150);
}

// "11.176" may be eleven thousand, so it stays text wherever it is read.
bool has_three_decimals(const std::string& text) {
  static const std::regex three("[.][0-9]{3}([^0-9]|$)");
  return std::regex_search(text, three);
}

// docs/note.md says of which kinds the read-back itself can be said again.
TEST(NoteCorpus, the_read_back_of_looks_and_weather_reads_as_the_same_entry) {
  int tried = 0;
  for (const CorpusCase& each : notes()) {
    const auto reading = read_note(each.line, each.names, each.today);
    if (!reading) continue;
    for (const ProposedEntry& entry : reading->entries) {
      const bool is_look = std::holds_alternative<Inspection>(entry.payload);
      const auto* weather = std::get_if<Weather>(&entry.payload);
      if (!is_look && !weather) continue;
      const ColonyId colony = colony_of(entry.payload);
      const SiteId site = site_of(entry.payload);
      std::string name = site.text() == "all" ? "all sites" : "";
      for (const KnownName& known : each.names.names) {
        if (known.what == NamedThing::hive) continue;
        if (known.what == NamedThing::colony ? known.key == colony.text() : known.key == site.text())
          name = known.shown;
      }
      std::string fields = read_back_fields(entry.payload);
      if (fields.find('"') != std::string::npos) continue;  // a remark is the keeper's own words
      if (has_three_decimals(fields)) continue;
      if (name == "Bank") name = "colony Bank";  // a site is called so too
      const std::string when = weather && weather->forecast ? " forecast " : " ";
      if (weather && weather->forecast) fields = fields.substr(0, fields.rfind(", forecast yes"));
      const std::string line = name + when + entry.happened.iso() + ": " + fields;
      const auto again = read_note(line, each.names, each.today);
      ASSERT_TRUE(again) << line;
      const auto lines = understood(*again);
      EXPECT_EQ(lines, std::vector<std::string>{entry.happened.iso() + " " + key_of(entry.payload)}) << line;
      ++tried;
    }
  }
  EXPECT_GT(tried, 80);
}

}  // namespace
}  // namespace beegarth::entries
