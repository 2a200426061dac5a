// Finding entries in a book, and the file of words that this goes by.
#include "book/find.hpp"

#include <gmock/gmock.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>
#include <sqlite3.h>

#include "reference/plain_search.hpp"
#include "unit/book/desk.hpp"

namespace beegarth::book {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::Not;

Draft began(const std::string& colony, const std::string& name) {
  return {day(2026, 1, 2),
          {},
          entries::ColonyBegan{.colony = ColonyId(colony), .name = name, .hive = HiveId("h1")},
          {}};
}
Draft weight(const std::string& colony, double kg, Date happened = day(2026, 5, 28)) {
  return {happened, {}, entries::Weight{.colony = ColonyId(colony), .kg = kg}, {}};
}
std::vector<EntryId> ids_of(const Hits& hits) {
  std::vector<EntryId> ids;
  for (const Hit& hit : hits.entries) ids.push_back(hit.entry.id);
  return ids;
}

class Finding : public ::testing::Test {
 protected:
  EntryId keep(const Draft& draft) { return book.append({draft})->front().id; }
  std::vector<EntryId> with_words(std::vector<std::string> words) {
    const auto hits = book.find({.words = std::move(words)});
    EXPECT_TRUE(hits) << one_line(hits.problem());
    return ids_of(*hits);
  }
  // More entries than are gathered in memory each time, so that there is a file of words.
  void grow_large() {
    std::vector<Draft> many;
    for (int i = 0; i < 5000; ++i) many.push_back(weight("stock", 10 + i % 50, day(2020, 1, 1) + i % 1000));
    ASSERT_TRUE(book.append(many));
  }
  void open_again() { book = *Book::open(path, {.read_only = true}, desk.surroundings()); }

  Folder folder;
  Desk desk;
  std::string path = folder.file("a.garth");
  std::string words_path = path + "-words";
  Book book = new_book(path, desk);
};

TEST_F(Finding, sees_what_was_kept_a_moment_ago) {
  const EntryId first = keep(note("ivy in flower"));
  EXPECT_THAT(with_words({"ivy"}), ElementsAre(first));
  const EntryId second = keep(note("ivy is over"));
  EXPECT_THAT(with_words({"ivy"}), ElementsAre(second, first));
}

TEST_F(Finding, takes_marks_and_operators_of_the_search_library_for_plain_words) {
  const EntryId kept = keep(note("drone OR queen, 9.5 kg \"quoted\" (NEAR) text: it's"));
  for (const char* word : {"OR", "\"quoted\"", "(NEAR)", "9.5", "text:", "it's", "NEAR", "kg", "^drone"})
    EXPECT_THAT(with_words({word}), ElementsAre(kept)) << word;
  for (const char* word : {"a OR b", "\"", "*", "NOT drone", "{mark}:", "mark:k", "5.9"})
    EXPECT_THAT(with_words({word}), IsEmpty()) << word;
  EXPECT_THAT(with_words({std::string("dro\0ne", 6)}), ElementsAre(kept))
      << "what cannot be typed is left out";
}

TEST_F(Finding, a_stock_that_was_renamed_is_found_by_its_new_name_in_old_entries) {
  keep(began("stock", "Alder"));
  const EntryId old = keep(weight("stock", 30));
  EXPECT_THAT(with_words({"alder", "weight"}), ElementsAre(old));
  EXPECT_THAT(with_words({"birch"}), IsEmpty());
  keep(began("stock", "Birch"));
  EXPECT_THAT(with_words({"birch", "weight"}), ElementsAre(old));
  EXPECT_THAT(with_words({"alder", "weight"}), IsEmpty());
}

TEST_F(Finding, an_entry_of_long_ago_comes_in_its_place) {
  const EntryId now = keep(note("moth in the store", day(2026, 5, 1)));
  const EntryId before = keep(note("moth again", day(1969, 7, 1)));
  EXPECT_THAT(with_words({"moth"}), ElementsAre(now, before));
}

TEST_F(Finding, a_small_book_has_no_file_of_words) {
  keep(note("ivy"));
  with_words({"ivy"});
  EXPECT_THAT(folder.names(), Not(Contains("a.garth-words")));
}

TEST_F(Finding, a_large_book_has_one_and_it_can_be_deleted_at_any_time) {
  grow_large();
  const EntryId kept = keep(note("ivy"));
  EXPECT_THAT(with_words({"ivy"}), ElementsAre(kept));
  EXPECT_TRUE(std::filesystem::exists(words_path));
  std::filesystem::remove(words_path);
  open_again();
  EXPECT_THAT(with_words({"ivy"}), ElementsAre(kept));
}

TEST_F(Finding, a_damaged_file_of_words_is_made_anew) {
  grow_large();
  const EntryId kept = keep(note("ivy"));
  with_words({"ivy"});
  open_again();
  std::string bytes = bytes_of(words_path);
  for (std::size_t i = 200; i < bytes.size(); ++i) bytes[i] = 'x';
  write_bytes(words_path, bytes);
  std::filesystem::remove(words_path + "-wal");
  EXPECT_THAT(with_words({"ivy"}), ElementsAre(kept));
}

TEST_F(Finding, words_of_a_copy_that_went_its_own_way_are_not_believed) {
  grow_large();
  with_words({"ivy"});
  const std::string other = folder.file("b.garth");
  { const auto closed = std::move(book); }
  std::filesystem::copy_file(path, other);
  std::filesystem::copy_file(words_path, other + "-words");
  book = *Book::open(other, {}, desk.surroundings());
  const EntryId kept = keep(note("ivy"));
  EXPECT_THAT(with_words({"ivy"}), ElementsAre(kept));
}

TEST_F(Finding, a_file_of_that_name_which_is_not_ours_is_left_alone) {
  write_bytes(words_path,
              "my own words, more than seventy-two of them in this line, I am sure of that, so there");
  grow_large();
  const EntryId kept = keep(note("ivy"));
  EXPECT_THAT(with_words({"ivy"}), ElementsAre(kept));
  EXPECT_EQ(bytes_of(words_path).substr(0, 12), "my own words");
}

TEST_F(Finding, an_entry_that_is_not_there_has_no_line) {
  const auto line = book.whole_line(EntryId("nothing"));
  ASSERT_FALSE(line);
  EXPECT_EQ(line.problem().kind, ProblemKind::bad_input);
}

// ---- by the slow, obvious way ----

RC_GTEST_PROP(FindingLaws, it_finds_what_a_look_at_every_entry_finds, ()) {
  Folder folder;
  Desk desk;
  Book book = new_book(folder.file("a.garth"), desk);
  std::vector<entries::Entry> arrived;
  const auto colony = [] { return "stock-" + std::to_string(*rc::gen::inRange(0, 3)); };
  const auto some_day = [] { return day(2026, 5, 1) + *rc::gen::inRange(0, 4); };
  for (int i = *rc::gen::inRange(1, 25); i > 0; --i) {
    Draft draft =
        note(*rc::gen::element<std::string>("ivy", "old ivy moth", "Moth 12", "stock 1"), some_day());
    if (*rc::gen::inRange(0, 2) == 0) draft = weight(colony(), *rc::gen::inRange(10, 13), some_day());
    if (*rc::gen::inRange(0, 6) == 0)
      draft = began(colony(), *rc::gen::element<std::string>("Ivy", "Oak", "Old Oak"));
    if (!arrived.empty() && *rc::gen::inRange(0, 6) == 0)
      draft.supersedes = arrived[*rc::gen::inRange<std::size_t>(0, arrived.size())].id;
    arrived.push_back(book.append({draft})->front());
    if (*rc::gen::inRange(0, 5) == 0) (void)book.find({});  // brought up to date along the way or at the end
  }
  Wanted wanted;
  if (*rc::gen::arbitrary<bool>())
    wanted.words = *rc::gen::container<std::vector<std::string>>(
        1, rc::gen::element<std::string>("ivy", "old", "moth", "1", "sto", "o", "oak", "weight"));
  if (*rc::gen::arbitrary<bool>()) wanted.kinds = {*rc::gen::element<std::string_view>("note", "weight")};
  if (*rc::gen::arbitrary<bool>()) wanted.colonies = {ColonyId(colony())};
  if (*rc::gen::arbitrary<bool>()) wanted.from = some_day();
  if (*rc::gen::arbitrary<bool>()) wanted.to = some_day();
  const auto expected = reference::plain_search(arrived, wanted);
  wanted.limit = *rc::gen::inRange<std::size_t>(1, 6);
  std::vector<EntryId> found;
  for (bool more = true; more;) {
    const auto page = book.find(wanted);
    RC_ASSERT(page.has_value());
    RC_ASSERT(page->count == expected.size());
    for (const EntryId& id : ids_of(*page)) found.push_back(id);
    more = page->more;
    if (more) wanted.after = found.back();
  }
  RC_ASSERT(found == expected);
  const auto all = *book.entries();
  const auto fates = fates_of(all);
  const auto hits = book.find({.limit = arrived.size()});
  RC_ASSERT(hits->entries.size() == all.size());
  for (const Hit& hit : hits->entries) {
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const auto& entry) { return entry.id == hit.entry.id; });
    const Fate& fate = fates[static_cast<std::size_t>(at - all.begin())];
    RC_ASSERT(hit.fate.counts == fate.counts);
    RC_ASSERT(hit.fate.removed_by == fate.removed_by);
    RC_ASSERT(hit.fate.corrected_by == fate.corrected_by);
  }
}

}  // namespace
}  // namespace beegarth::book
