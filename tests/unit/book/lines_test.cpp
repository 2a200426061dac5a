#include <nlohmann/json.hpp>

#include "book/book.hpp"
#include "desk.hpp"

namespace beegarth::book {
namespace {

class Lines : public testing::Test {
 protected:
  std::string three_lines() {
    Book book = new_book(folder.file("from.garth"), desk);
    const auto first = book.append({note("one")})->front();
    desk.now_ms += 1000;
    EXPECT_TRUE(
        book.append({{day(2026, 5, 28), 14.25, entries::Feed{.colony = ColonyId("a"), .kg = 1.1}, {}}}));
    desk.now_ms += 1000;
    Draft better = note("one, better said");
    better.supersedes = first.id;
    EXPECT_TRUE(book.append({better}));
    return *book.export_lines();
  }
  void expect_refused(const std::string& lines, const std::string& where, const std::string& said) {
    Book book = new_book(folder.file("to" + std::to_string(++books) + ".garth"), desk);
    for (const bool dry_run : {true, false}) {
      const auto count = book.import_lines(lines, "in.jsonl", dry_run);
      ASSERT_FALSE(count) << said;
      EXPECT_EQ(count.problem().kind, ProblemKind::bad_input);
      EXPECT_EQ(count.problem().where, where) << one_line(count.problem());
      EXPECT_NE(count.problem().what.find(said), std::string::npos) << one_line(count.problem());
    }
    EXPECT_TRUE(book.entries()->empty());
  }
  static std::vector<std::string> split(const std::string& lines) {
    std::vector<std::string> all;
    std::istringstream in(lines);
    for (std::string line; std::getline(in, line);) all.push_back(line);
    return all;
  }
  static std::string changed(std::string text, const std::string& from, const std::string& to) {
    return text.replace(text.find(from), from.size(), to);
  }

  Folder folder;
  Desk desk;
  int books = 0;
};

TEST_F(Lines, importing_twice_adds_nothing_the_second_time) {
  const std::string lines = three_lines();
  Book book = new_book(folder.file("to.garth"), desk);
  EXPECT_EQ(book.import_lines(lines, "in", false)->added, 3);
  const auto again = book.import_lines(lines, "in", false);
  EXPECT_EQ(again->added, 0);
  EXPECT_EQ(again->known, 3);
  EXPECT_EQ(*book.export_lines(), lines);
}
TEST_F(Lines, a_dry_run_counts_and_writes_nothing) {
  Book book = new_book(folder.file("to.garth"), desk);
  const auto count = book.import_lines(three_lines(), "in", true);
  ASSERT_TRUE(count) << one_line(count.problem());
  EXPECT_EQ(count->added, 3);
  EXPECT_TRUE(book.entries()->empty());
}
TEST_F(Lines, a_dry_run_works_on_a_book_that_is_open_for_reading_only) {
  const std::string lines = three_lines();
  auto book = Book::open(folder.file("from.garth"), {.read_only = true}, desk.surroundings());
  EXPECT_EQ(book->import_lines(lines, "in", true)->known, 3);
  EXPECT_FALSE(book->import_lines(lines, "in", false));
}
TEST_F(Lines, line_order_breaks_and_layout_do_not_matter) {
  const auto lines = split(three_lines());
  std::string shuffled = "\xef\xbb\xbf" + nlohmann::json::parse(lines[2]).dump(-1, ' ', true) + "\r\n\n" +
                         lines[0] + "\r\n   \n" + lines[1];
  Book book = new_book(folder.file("to.garth"), desk);
  const auto count = book.import_lines(shuffled, "in", false);
  ASSERT_TRUE(count) << one_line(count.problem());
  EXPECT_EQ(*book.export_lines(), lines[0] + "\n" + lines[1] + "\n" + lines[2] + "\n");
}
TEST_F(Lines, nothing_is_a_fine_file) {
  Book book = new_book(folder.file("to.garth"), desk);
  EXPECT_EQ(book.import_lines("", "in", false)->added, 0);
  EXPECT_EQ(*book.export_lines(), "");
}
TEST_F(Lines, a_bad_line_is_named_and_nothing_is_written) {
  const std::string good = three_lines();
  const auto lines = split(good);
  expect_refused(good + "{\"id\":", "in.jsonl:4", "is not JSON");
  expect_refused(good + "[]", "in.jsonl:4", "not a JSON object");
  expect_refused(good + "\xff", "in.jsonl:4", "is not UTF-8");
  expect_refused(changed(good, "1.1", "1.2"), "in.jsonl:2", "the hash does not fit the content");
  expect_refused(changed(good, "14.25", "99"), "in.jsonl:2", "happened_hour is not within 0 to 24");
  expect_refused(changed(good, "\"kg\"", "\"kilos\""), "in.jsonl:2", "kg is missing");
  expect_refused(changed(good, "\"who\"", "\"by\""), "in.jsonl:1", "no field 'by'");
  expect_refused(changed(good, "\"kind\":\"note\"", "\"kind\":\"rumour\""), "in.jsonl:1", "no kind 'rumour'");
  expect_refused(changed(good, "\"happened\":\"2026-05-28\"", "\"happened\":\"2026-05-48\""), "in.jsonl:1",
                 "happened is no date");
  expect_refused(changed(good, ":1,\"who\"", ":0,\"who\""), "in.jsonl:1", "sequence does not count from 1");
  expect_refused(std::string(1'000'001, 'x'), "in.jsonl:1", "longer than 1000000 bytes");
}
TEST_F(Lines, a_missing_line_is_noticed) {
  const auto lines = split(three_lines());
  expect_refused(lines[0] + "\n" + lines[2] + "\n", "in.jsonl:2", "entries before");
  expect_refused(lines[1] + "\n" + lines[2] + "\n", "in.jsonl:1", "entries before");
}
TEST_F(Lines, other_content_under_a_known_id_is_refused) {
  const auto lines = split(three_lines());
  // Made with the same id, device and place but another text: what a forged or doubly used device would
  // bring.
  Folder other_folder;
  Desk twin;
  Book forged = new_book(other_folder.file("b.garth"), twin);
  ASSERT_TRUE(forged.append({note("something else")}));
  const std::string other = *forged.export_lines();
  const auto id = nlohmann::json::parse(other).at("id").get<std::string>();
  ASSERT_EQ(id, nlohmann::json::parse(lines[0]).at("id")) << "the two desks draw the same random bytes";
  Book book = new_book(folder.file("to.garth"), desk);
  ASSERT_TRUE(book.import_lines(lines[0], "in", false));
  const auto count = book.import_lines(other, "other.jsonl", false);
  ASSERT_FALSE(count);
  EXPECT_EQ(count.problem().where, "other.jsonl:1");
  EXPECT_NE(count.problem().what.find("another entry with the id"), std::string::npos);
  EXPECT_EQ(*book.export_lines(), lines[0] + "\n");
}
TEST_F(Lines, a_device_with_two_histories_is_refused) {
  const std::string mine = three_lines();
  Folder other_folder;
  Desk later;
  later.now_ms += 5'000'000;
  Book fork = new_book(other_folder.file("b.garth"), later);
  Book other =
      *Book::open(other_folder.file("b.garth"),
                  {.device = nlohmann::json::parse(split(mine)[0]).at("device")}, later.surroundings());
  ASSERT_TRUE(other.append({note("forked")}));
  Book book = new_book(folder.file("to.garth"), desk);
  ASSERT_TRUE(book.import_lines(mine, "in", false));
  const auto count = book.import_lines(*other.export_lines(), "b.jsonl", false);
  ASSERT_FALSE(count);
  EXPECT_NE(count.problem().what.find("two copies"), std::string::npos) << one_line(count.problem());
  EXPECT_EQ(*book.export_lines(), mine);
}
TEST_F(Lines, two_books_that_swap_lines_hold_the_same) {
  Book one = new_book(folder.file("one.garth"), desk);
  Book two = new_book(folder.file("two.garth"), desk);
  for (int i = 0; i < 5; ++i) {
    desk.now_ms += 10;
    ASSERT_TRUE(one.append({note("from one")}));
    desk.now_ms -= 7;  // two clocks that differ
    ASSERT_TRUE(two.append({note("from two")}));
  }
  ASSERT_TRUE(one.import_lines(*two.export_lines(), "two", false));
  ASSERT_TRUE(two.import_lines(*one.export_lines(), "one", false));
  EXPECT_EQ(*one.export_lines(), *two.export_lines());
  EXPECT_EQ(*one.head(), *two.head());
  EXPECT_EQ(one.entries()->size(), 10U);
  EXPECT_TRUE(one.verify()->faults.empty());
}

}  // namespace
}  // namespace beegarth::book
