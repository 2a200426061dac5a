#include "book/book.hpp"

#include <cmath>

#include "desk.hpp"

namespace beegarth::book {
namespace {

TEST(Book, what_was_appended_is_there_after_opening_again) {
  Folder folder;
  Desk desk;
  const std::string path = folder.file("a.garth");
  {
    Book book = new_book(path, desk);
    const auto kept = book.append({note("first"), note("second")});
    ASSERT_TRUE(kept) << one_line(kept.problem());
    ASSERT_EQ(kept->size(), 2U);
  }
  const auto book = Book::open(path, {}, desk.surroundings());
  ASSERT_TRUE(book) << one_line(book.problem());
  const auto all = book->entries();
  ASSERT_TRUE(all) << one_line(all.problem());
  ASSERT_EQ(all->size(), 2U);
  EXPECT_EQ(std::get<entries::Note>((*all)[1].payload).text, "second");
  const auto report = book->verify();
  ASSERT_TRUE(report);
  EXPECT_TRUE(report->faults.empty()) << report->faults[0];
  EXPECT_EQ(report->entries, 2);
}

TEST(Book, exporting_an_import_gives_the_same_lines) {
  Folder folder;
  Desk desk;
  Book from = new_book(folder.file("from.garth"), desk);
  ASSERT_TRUE(from.append({note("first"), note("zweite Zeile, größer")}));
  const auto lines = from.export_lines();
  ASSERT_TRUE(lines);
  Book to = new_book(folder.file("to.garth"), desk);
  const auto count = to.import_lines(*lines, "from.jsonl", false);
  ASSERT_TRUE(count) << one_line(count.problem());
  EXPECT_EQ(count->added, 2);
  EXPECT_EQ(*to.export_lines(), *lines);
  EXPECT_EQ(*to.head(), *from.head());
}

TEST(Book, one_bad_draft_keeps_all_of_them_out) {
  Folder folder;
  Desk desk;
  Book book = new_book(folder.file("a.garth"), desk);
  const auto kept = book.append(
      {note("fine"), {day(2026, 5, 28), {}, entries::Feed{.colony = ColonyId("a"), .kg = -1}, {}}});
  ASSERT_FALSE(kept);
  EXPECT_EQ(kept.problem().where, "draft 2, kg");
  EXPECT_EQ(kept.problem().kind, ProblemKind::bad_input);
  EXPECT_TRUE(book.entries()->empty());
}

TEST(Book, a_draft_that_cannot_be_kept_is_refused) {
  Folder folder;
  Desk desk;
  Book book = new_book(folder.file("a.garth"), desk);
  Draft draft = note("correction");
  draft.supersedes = EntryId("019e6a2f-0000-7000-8000-000000000000");
  EXPECT_FALSE(book.append({draft}));
  EXPECT_FALSE(book.append({{day(2026, 5, 28),
                             {},
                             entries::Removed{.entry = EntryId("019e6a2f-0000-7000-8000-000000000000")},
                             {}}}));
  EXPECT_FALSE(book.append({{day(2026, 5, 28), 24.5, entries::Note{.text = "late"}, {}}}));
  EXPECT_FALSE(book.append({{day(2026, 5, 28), std::nan(""), entries::Note{.text = "late"}, {}}}));
  EXPECT_FALSE(book.append({note("bad \xff byte")}));
  EXPECT_TRUE(book.entries()->empty());
}

TEST(Book, entries_come_by_what_happened_first) {
  Folder folder;
  Desk desk;
  Book book = new_book(folder.file("a.garth"), desk);
  ASSERT_TRUE(book.append({note("later", day(2026, 6, 2)), note("earlier", day(2026, 6, 1)),
                           note("later too", day(2026, 6, 2))}));
  const auto all = book.entries();
  EXPECT_EQ(std::get<entries::Note>((*all)[0].payload).text, "earlier");
  EXPECT_EQ(std::get<entries::Note>((*all)[1].payload).text, "later");
  EXPECT_EQ(std::get<entries::Note>((*all)[2].payload).text, "later too");
}

TEST(Book, the_head_changes_with_every_entry_and_with_nothing_else) {
  Folder folder;
  Desk desk;
  Book book = new_book(folder.file("a.garth"), desk);
  const std::string empty = *book.head();
  EXPECT_EQ(empty.size(), 64U);
  ASSERT_TRUE(book.append({note("one")}));
  const std::string one = *book.head();
  EXPECT_NE(one, empty);
  EXPECT_FALSE(book.append({note("")}));
  EXPECT_EQ(*book.head(), one);
  EXPECT_EQ(*Book::open(folder.file("a.garth"), {.read_only = true}, desk.surroundings())->head(), one);
}

// Two who write at once: what the second is judged by holds what the first has kept since.
TEST(Book, what_is_to_be_kept_is_judged_with_all_that_others_kept_in_the_meantime) {
  Folder folder;
  Desk desk;
  Book mine = new_book(folder.file("a.garth"), desk);
  ASSERT_EQ(mine.entries()->size(), 0U);
  auto theirs = Book::open(folder.file("a.garth"), {}, desk.surroundings());
  ASSERT_TRUE(theirs->append({note("first come")}));
  std::size_t seen = 0;
  const auto kept = mine.append({note("too late")}, [&](std::span<const entries::Entry> all) -> Outcome {
    seen = all.size();
    if (all.empty()) return Done{};
    return bad_input("somebody was quicker", "note", "look again");
  });
  EXPECT_EQ(seen, 1U);
  ASSERT_FALSE(kept);
  EXPECT_EQ(kept.problem().what, "somebody was quicker");
  EXPECT_EQ(mine.entries()->size(), 1U);
  EXPECT_TRUE(theirs->append({note("and nobody is locked out")}));
}

}  // namespace
}  // namespace beegarth::book
