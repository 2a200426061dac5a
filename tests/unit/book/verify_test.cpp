// Whoever changes the file behind the book's back is noticed, and the first entry concerned is named.
#include <sqlite3.h>

#include "book/book.hpp"
#include "desk.hpp"

namespace beegarth::book {
namespace {

class Verify : public testing::Test {
 protected:
  void SetUp() override {
    Book book = new_book(path, desk);
    for (int i = 0; i < 5; ++i) {
      desk.now_ms += 1000;
      ids.push_back(
          book.append({{day(2026, 5, 1 + i), {}, entries::Feed{.colony = ColonyId("a"), .kg = 1.0 + i}, {}}})
              ->front()
              .id.text());
    }
  }
  // Changes the file as somebody with a database tool could, and puts the triggers back so that nothing else
  // shows it.
  void tamper(const std::string& sql) {
    sqlite3* database = nullptr;
    ASSERT_EQ(sqlite3_open(path.c_str(), &database), SQLITE_OK);
    std::string restore;
    sqlite3_exec(
        database, "SELECT sql FROM sqlite_schema WHERE type = 'trigger'",
        [](void* all, int, char** row, char**) {
          *static_cast<std::string*>(all) += std::string(row[0]) + ";";
          return 0;
        },
        &restore, nullptr);
    char* message = nullptr;
    const std::string all =
        "DROP TRIGGER entry_is_never_changed; DROP TRIGGER entry_is_never_deleted; DROP TRIGGER "
        "entry_is_never_replaced;" +
        sql + ";" + restore;
    EXPECT_EQ(sqlite3_exec(database, all.c_str(), nullptr, nullptr, &message), SQLITE_OK) << message;
    sqlite3_close(database);
  }
  void expect_fault(const std::string& id, const std::string& said) {
    const auto book = Book::open(path, {}, desk.surroundings());
    ASSERT_TRUE(book) << one_line(book.problem());
    const auto report = book->verify();
    ASSERT_TRUE(report);
    ASSERT_FALSE(report->faults.empty()) << said;
    EXPECT_NE(report->faults[0].find(id), std::string::npos) << report->faults[0];
    EXPECT_NE(report->faults[0].find(said), std::string::npos) << report->faults[0];
  }

  Folder folder;
  Desk desk;
  std::string path = folder.file("a.garth");
  std::vector<std::string> ids;
};

TEST_F(Verify, a_sound_book_has_no_faults) {
  const auto report = Book::open(path, {}, desk.surroundings())->verify();
  ASSERT_TRUE(report);
  EXPECT_EQ(report->entries, 5);
  EXPECT_TRUE(report->faults.empty());
  EXPECT_EQ(report->head, *Book::open(path, {}, desk.surroundings())->head());
}
TEST_F(Verify, a_changed_number) {
  tamper("UPDATE entry SET payload = replace(payload, ':3', ':4') WHERE sequence = 3");
  expect_fault(ids[2], "the hash does not fit the content");
}
TEST_F(Verify, a_changed_date) {
  tamper("UPDATE entry SET happened = '2026-06-03' WHERE sequence = 3");
  expect_fault(ids[2], "the hash does not fit the content");
}
TEST_F(Verify, a_day_that_is_not_in_the_calendar) {
  tamper("UPDATE entry SET happened = '2026-02-30' WHERE sequence = 3");
  expect_fault(ids[2], "no day of the calendar");
}
TEST_F(Verify, somebody_elses_name) {
  tamper("UPDATE entry SET who = 'nobody' WHERE sequence = 1");
  expect_fault(ids[0], "the hash does not fit the content");
}
TEST_F(Verify, another_layout_of_the_same_payload) {
  tamper("UPDATE entry SET payload = replace(payload, ',', ', ') WHERE sequence = 2");
  expect_fault(ids[1], "canonical form");
}
TEST_F(Verify, a_payload_out_of_its_limits) {
  tamper("UPDATE entry SET payload = replace(payload, ':2', ':200') WHERE sequence = 2");
  expect_fault(ids[1], "kg is 200");
}
TEST_F(Verify, an_entry_taken_out_of_the_middle) {
  tamper("DELETE FROM entry WHERE sequence = 3");
  expect_fault(ids[3], "entry 3 of this device is missing");
}
TEST_F(Verify, an_entry_written_over_with_a_hash_of_its_own) {
  tamper("UPDATE entry SET hash = '" + std::string(64, 'a') + "' WHERE sequence = 2");
  expect_fault(ids[1], "the hash does not fit the content");
}
TEST_F(Verify, a_clock_that_ran_backwards) {
  tamper("UPDATE entry SET written_ms = 1000 WHERE sequence = 4");
  expect_fault(ids[3], "the clock ran backwards");
}
TEST_F(Verify, a_correction_of_nothing) {
  tamper(
      "PRAGMA foreign_keys=OFF; UPDATE entry SET supersedes = '019e6a2f-0000-7000-8000-000000000000' WHERE "
      "sequence = 5");
  const auto report = Book::open(path, {}, desk.surroundings())->verify();
  ASSERT_TRUE(report);
  ASSERT_GE(report->faults.size(), 3U);
  EXPECT_NE(report->faults[2].find("names entry 019e6a2f"), std::string::npos) << report->faults[2];
}

TEST_F(Verify, the_book_itself_changes_and_deletes_nothing) {
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &database), SQLITE_OK);
  for (const char* sql : {"UPDATE entry SET who = 'x'", "DELETE FROM entry",
                          "INSERT OR REPLACE INTO entry SELECT * FROM entry WHERE sequence = 1",
                          "INSERT OR REPLACE INTO entry SELECT 99, id, 'other', sequence, kind, happened, "
                          "happened_hour, written_ms, written_counter, who, supersedes, payload, previous, "
                          "hash FROM entry WHERE sequence = 1"}) {
    EXPECT_EQ(sqlite3_exec(database, sql, nullptr, nullptr, nullptr), SQLITE_CONSTRAINT) << sql;
  }
  sqlite3_close(database);
  EXPECT_TRUE(Book::open(path, {}, desk.surroundings())->verify()->faults.empty());
}

// Every bit of a small book is too many for every run, so one bit in every 61st byte is turned over, each in
// a copy.
TEST_F(Verify, a_bit_turned_over_is_refused_found_or_touches_nothing_that_was_said) {
  const std::string whole = bytes_of(path);
  const std::string said = *Book::open(path, {}, desk.surroundings())->export_lines();
  const std::string copy = folder.file("copy.garth");
  int noticed = 0;
  for (std::size_t at = 0; at < whole.size(); at += 61) {
    std::string bent = whole;
    bent[at] = static_cast<char>(bent[at] ^ (1 << (at % 8)));
    write_bytes(copy, bent);
    const auto book = Book::open(copy, {.read_only = true}, desk.surroundings());
    if (!book) {
      EXPECT_EQ(book.problem().kind, ProblemKind::storage) << at;
      ++noticed;
      continue;
    }
    const auto report = book->verify();
    if (!report || !report->faults.empty()) {
      ++noticed;
      continue;
    }
    const auto lines = book->export_lines();
    ASSERT_TRUE(lines) << at;
    EXPECT_EQ(*lines, said) << "byte " << at;
  }
  EXPECT_GT(noticed, 50);
}

TEST(Copies, a_copied_book_writes_under_a_name_of_its_own) {
  Folder folder;
  Desk desk;
  std::string first;
  {
    Book book = new_book(folder.file("a.garth"), desk);
    first = book.append({note("one")})->front().device;
    EXPECT_EQ(book.append({note("two")})->front().device, first);
  }
  std::filesystem::copy_file(folder.file("a.garth"), folder.file("b.garth"));
  Book copy = *Book::open(folder.file("b.garth"), {}, desk.surroundings());
  const auto kept = copy.append({note("three")});
  EXPECT_NE(kept->front().device, first);
  Book original = *Book::open(folder.file("a.garth"), {}, desk.surroundings());
  EXPECT_EQ(original.append({note("four")})->front().device, first);
  ASSERT_TRUE(original.import_lines(*copy.export_lines(), "b", false));
  EXPECT_EQ(original.entries()->size(), 4U);
  EXPECT_TRUE(original.verify()->faults.empty());
}
TEST(Copies, a_book_that_was_only_moved_keeps_its_name) {
  Folder folder;
  Desk desk;
  const std::string first = new_book(folder.file("a.garth"), desk).append({note("one")})->front().device;
  std::filesystem::rename(folder.file("a.garth"), folder.file("b.garth"));
  EXPECT_EQ(
      Book::open(folder.file("b.garth"), {}, desk.surroundings())->append({note("two")})->front().device,
      first);
}

}  // namespace
}  // namespace beegarth::book
