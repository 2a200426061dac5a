#include "book/book.hpp"

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

}  // namespace
}  // namespace beegarth::book
