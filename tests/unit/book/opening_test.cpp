// Whatever stands where a book should be, opening says one plain thing and leaves everything as it was.
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <thread>

#include "book/book.hpp"
#include "desk.hpp"

namespace beegarth::book {
namespace {

void run_sql(const std::string& path, const std::string& sql) {
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &database), SQLITE_OK);
  char* message = nullptr;
  EXPECT_EQ(sqlite3_exec(database, sql.c_str(), nullptr, nullptr, &message), SQLITE_OK) << message;
  sqlite3_free(message);
  sqlite3_close(database);
}

class Opening : public testing::Test {
 protected:
  void make_book() {
    Book book = new_book(path, desk);
    ASSERT_TRUE(book.append({note("first"), note("second")}));
  }
  // Refused for reading and for writing, with nothing changed in the folder.
  void expect_refused(const std::string& said) {
    const auto names = folder.names();
    const std::string before = bytes_of(path);
    for (const bool read_only : {false, true}) {
      const auto book = Book::open(path, {.read_only = read_only}, desk.surroundings());
      ASSERT_FALSE(book);
      EXPECT_EQ(book.problem().kind, ProblemKind::storage);
      EXPECT_NE(one_line(book.problem()).find(said), std::string::npos) << one_line(book.problem());
      EXPECT_EQ(book.problem().where, path);
    }
    EXPECT_EQ(folder.names(), names);
    EXPECT_EQ(bytes_of(path), before);
  }

  // As an older beegarth left it: three entries, the last in place of the second.
  void make_book_of_version(int version) {
    run_sql(path, bytes_of(BEEGARTH_SOURCE_DIR "/tests/unit/book/old/version_2.sql"));
    if (version == 1)
      run_sql(path, "DROP INDEX entry_by_kind; DROP INDEX entry_by_target; PRAGMA user_version=1");
  }

  Folder folder;
  Desk desk;
  std::string path = folder.file("a.garth");
};

TEST_F(Opening, a_missing_file) {
  expect_refused("there is no book here");
}
TEST_F(Opening, an_empty_file) {
  write_bytes(path, "");
  expect_refused("empty");
}
TEST_F(Opening, a_text_file) {
  write_bytes(path, "hive,date,bees\nalder,2026-05-01,20000\n");
  expect_refused("not a book");
}
TEST_F(Opening, a_folder) {
  std::filesystem::create_directory(path);
  expect_refused("folder");
}
TEST_F(Opening, a_path_through_a_file) {
  write_bytes(folder.file("b"), "x");
  path = folder.file("b") + "/a.garth";
  expect_refused("cannot be reached");
}
TEST_F(Opening, a_database_of_another_program) {
  run_sql(path, "CREATE TABLE entry(id TEXT)");
  expect_refused("another program");
}
TEST_F(Opening, a_book_of_a_newer_version) {
  make_book();
  run_sql(path, "PRAGMA user_version=4");
  run_sql(path, "PRAGMA journal_mode=DELETE");
  expect_refused("newer beegarth");
}
TEST_F(Opening, a_book_of_an_older_version_is_read_as_it_is_and_brought_up_to_date_for_writing) {
  for (const int version : {1, 2}) {
    path = folder.file("version-" + std::to_string(version) + ".garth");
    make_book_of_version(version);
    const std::string before = bytes_of(path);
    std::string lines;
    {
      const auto book = Book::open(path, {.read_only = true}, desk.surroundings());
      ASSERT_TRUE(book) << one_line(book.problem());
      lines = *book->export_lines();
      EXPECT_TRUE(book->verify()->faults.empty());
      const std::string_view kind = "note";
      EXPECT_EQ(book->entries_of(std::span(&kind, 1))->size(), 3U);
    }
    EXPECT_EQ(bytes_of(path), before);
    auto book = Book::open(path, {}, desk.surroundings());
    ASSERT_TRUE(book) << one_line(book.problem());
    EXPECT_EQ(*book->export_lines(), lines);
    const auto kept = book->append({note("and goes on")});
    ASSERT_TRUE(kept) << one_line(kept.problem());
    const auto all = *book->entries();
    for (const auto& entry : all) EXPECT_LE(entry.written, kept->front().written);
    EXPECT_TRUE(book->verify()->faults.empty()) << book->verify()->faults[0];
  }
}
TEST_F(Opening, an_older_book_brought_up_to_date_is_still_never_changed) {
  make_book_of_version(2);
  { ASSERT_TRUE(Book::open(path, {}, desk.surroundings())); }
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &database), SQLITE_OK);
  for (const char* change : {"UPDATE entry SET who = 'x'", "DELETE FROM entry",
                             "INSERT OR REPLACE INTO entry SELECT * FROM entry"})
    EXPECT_EQ(sqlite3_exec(database, change, nullptr, nullptr, nullptr), SQLITE_CONSTRAINT) << change;
  sqlite3_close(database);
}
TEST_F(Opening, a_book_of_the_first_version_that_lacks_a_table) {
  make_book_of_version(1);
  run_sql(path, "DROP TABLE this_copy");
  run_sql(path, "PRAGMA journal_mode=DELETE");
  expect_refused("not those of a book");
}
TEST_F(Opening, a_newer_version_that_is_still_in_the_log) {
  make_book();
  sqlite3* other = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &other), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(other, "PRAGMA user_version=9", nullptr, nullptr, nullptr), SQLITE_OK);
  const auto book = Book::open(path, {}, desk.surroundings());
  ASSERT_FALSE(book);
  EXPECT_NE(book.problem().what.find("newer"), std::string::npos) << book.problem().what;
  sqlite3_close(other);
}
TEST_F(Opening, a_database_of_another_program_that_is_in_use) {
  sqlite3* other = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &other), SQLITE_OK);
  ASSERT_EQ(
      sqlite3_exec(other, "PRAGMA journal_mode=WAL; CREATE TABLE entry(id TEXT)", nullptr, nullptr, nullptr),
      SQLITE_OK);
  expect_refused("another program");
  sqlite3_close(other);
}
TEST_F(Opening, a_text_file_with_a_log_beside_it) {
  make_book();
  sqlite3* other = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &other), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(other, "PRAGMA user_version=1", nullptr, nullptr, nullptr), SQLITE_OK);
  const std::string log = bytes_of(path + "-wal");
  sqlite3_close(other);
  const std::string text(9000, 'b');
  write_bytes(path, text);
  write_bytes(path + "-wal", log.substr(0, 4) + std::string(100, 'x'));
  const auto book = Book::open(path, {}, desk.surroundings());
  ASSERT_FALSE(book);
  EXPECT_EQ(book.problem().kind, ProblemKind::storage);
  EXPECT_EQ(bytes_of(path), text);
}
TEST_F(Opening, a_book_with_a_trigger_taken_out) {
  make_book();
  run_sql(path, "DROP TRIGGER entry_is_never_deleted");
  expect_refused("tables are not those of a book");
}
TEST_F(Opening, a_book_cut_short_anywhere_is_refused_or_found_by_verify) {
  make_book();
  const std::string whole = bytes_of(path);
  for (std::size_t size = 0; size < whole.size(); size += size < 200 ? 1 : 509) {
    write_bytes(path, whole.substr(0, size));
    const auto book = Book::open(path, {.read_only = true}, desk.surroundings());
    if (!book) {
      EXPECT_EQ(book.problem().kind, ProblemKind::storage);
    } else {
      const auto report = book->verify();
      EXPECT_TRUE(!report || !report->faults.empty()) << size;
    }
  }
}
TEST_F(Opening, a_locked_book) {
  make_book();
  sqlite3* other = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &other), SQLITE_OK);
  sqlite3_exec(other, "PRAGMA locking_mode=EXCLUSIVE; BEGIN EXCLUSIVE; SELECT * FROM entry", nullptr, nullptr,
               nullptr);
  const auto book = Book::open(path, {}, desk.surroundings());
  ASSERT_FALSE(book);
  EXPECT_EQ(book.problem().kind, ProblemKind::storage);
  EXPECT_NE(book.problem().what.find("locked"), std::string::npos) << book.problem().what;
  sqlite3_close(other);
  EXPECT_TRUE(Book::open(path, {}, desk.surroundings()));
}

// The superuser may write everything, so this is tried as somebody else, in a process of its own.
template <class Work>
[[noreturn]] void as_somebody_else(const Work& work) {
  constexpr uid_t nobody = 65534;
  if (geteuid() == 0 && (setresgid(nobody, nobody, nobody) != 0 || setresuid(nobody, nobody, nobody) != 0))
    _exit(2);
  _exit(work() ? 0 : 1);
}

TEST_F(Opening, a_file_or_folder_that_may_not_be_written) {
  make_book();
  for (const bool folder_too : {false, true}) {
    chmod(path.c_str(), 0444);
    chmod(folder.path().c_str(), folder_too ? 0555 : 0777);
    const auto refused = [&] {
      const auto book = Book::open(path, {}, desk.surroundings());
      return !book && book.problem().kind == ProblemKind::storage &&
             book.problem().what.find("cannot be written") != std::string::npos;
    };
    const auto read = [&] {
      const auto book = Book::open(path, {.read_only = true}, desk.surroundings());
      return book && book->entries() && book->entries()->size() == 2 && book->verify()->faults.empty();
    };
    EXPECT_EXIT(as_somebody_else(refused), testing::ExitedWithCode(0), "");
    EXPECT_EXIT(as_somebody_else(read), testing::ExitedWithCode(0), "");
    EXPECT_EQ(folder.names(), std::vector<std::string>{"a.garth"});
  }
  chmod(path.c_str(), 0644);
  chmod(folder.path().c_str(), 0555);
  const auto refused = [&] { return !Book::open(path, {}, desk.surroundings()); };
  const auto not_made = [&] {
    return !Book::open(folder.file("b.garth"), {.create = true}, desk.surroundings());
  };
  EXPECT_EXIT(as_somebody_else(refused), testing::ExitedWithCode(0), "");
  EXPECT_EXIT(as_somebody_else(not_made), testing::ExitedWithCode(0), "");
}

TEST_F(Opening, a_file_that_may_not_be_read) {
  make_book();
  chmod(path.c_str(), 0);
  chmod(folder.path().c_str(), 0777);
  const auto refused = [&] {
    const auto book = Book::open(path, {.read_only = true}, desk.surroundings());
    return !book && book.problem().kind == ProblemKind::storage;
  };
  EXPECT_EXIT(as_somebody_else(refused), testing::ExitedWithCode(0), "");
}

TEST_F(Opening, a_new_book_never_takes_the_place_of_anything) {
  write_bytes(path, "a shopping list");
  const auto book = Book::open(path, {.create = true}, desk.surroundings());
  ASSERT_FALSE(book);
  EXPECT_EQ(book.problem().kind, ProblemKind::storage);
  EXPECT_EQ(bytes_of(path), "a shopping list");
  EXPECT_EQ(folder.names(), std::vector<std::string>{"a.garth"});
}
TEST_F(Opening, a_new_book_needs_a_folder) {
  const auto book = Book::open(folder.file("none/a.garth"), {.create = true}, desk.surroundings());
  ASSERT_FALSE(book);
  EXPECT_NE(book.problem().what.find("folder"), std::string::npos);
  EXPECT_TRUE(folder.names().empty());
}
TEST_F(Opening, a_name_with_signs_that_mean_something_in_an_address) {
  path = folder.file("my bees?mode=memory#50% ü.garth");
  make_book();
  EXPECT_EQ(folder.names(), std::vector<std::string>{"my bees?mode=memory#50% ü.garth"});
  EXPECT_EQ(Book::open(path, {.read_only = true}, desk.surroundings())->entries()->size(), 2U);
}
TEST_F(Opening, reading_leaves_the_file_as_it_is) {
  make_book();
  const std::string before = bytes_of(path);
  {
    auto book = Book::open(path, {.read_only = true}, desk.surroundings());
    ASSERT_TRUE(book);
    EXPECT_EQ(book->entries()->size(), 2U);
    const auto refused = book->append({note("third")});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.problem().kind, ProblemKind::storage);
  }
  EXPECT_EQ(bytes_of(path), before);
  EXPECT_EQ(folder.names(), std::vector<std::string>{"a.garth"});
}
TEST_F(Opening, two_writers_and_a_reader_at_once_lose_nothing) {
  make_book();
  const auto write_fifty = [&](std::uint64_t seed) {
    Desk own;
    own.random = Stream({.seed = seed, .purpose = Purpose::demo});
    auto book = Book::open(path, {}, own.surroundings());
    ASSERT_TRUE(book) << one_line(book.problem());
    for (int i = 0; i < 50; ++i) {
      const auto kept = book->append({note("line")});
      ASSERT_TRUE(kept) << one_line(kept.problem());
    }
  };
  std::thread one([&] { write_fifty(1); });
  std::thread two([&] { write_fifty(2); });
  auto reader = Book::open(path, {.read_only = true}, desk.surroundings());
  ASSERT_TRUE(reader);
  std::size_t seen = 0;
  for (int i = 0; i < 20; ++i) {
    const auto all = reader->entries();
    ASSERT_TRUE(all);
    EXPECT_GE(all->size(), seen);
    seen = all->size();
  }
  one.join();
  two.join();
  EXPECT_EQ(reader->entries()->size(), 102U);
  EXPECT_TRUE(reader->verify()->faults.empty());
}

}  // namespace
}  // namespace beegarth::book
