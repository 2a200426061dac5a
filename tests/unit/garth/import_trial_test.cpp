// A trial of an export says what the import would say, and changes nothing. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "book/book.hpp"
#include "garth/imports/import.hpp"
#include "garth/session.hpp"
#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class ImportTrial : public testing::Test {
 protected:
  ImportTrial() {
    std::filesystem::create_directories(folder);
    ToldBook told;
    std::vector<book::Draft> drafts;
    for (const auto& entry : told.all())
      drafts.push_back({.happened = entry.happened, .payload = entry.payload});
    append(here, drafts, true);
    write(lines_of(here), "common.jsonl");
    EXPECT_TRUE(import_file({.book = there, .file = path_of("common.jsonl")}));
    append(here, {{.happened = day_of(5, 10), .payload = ropy(alder)}}, false);
    append(
        there,
        {{.happened = day_of(5, 12), .payload = entries::ColonyMoved{.colony = alder, .hive = HiveId("h4")}}},
        false);
    write(lines_of(there), "theirs.jsonl");
  }
  ~ImportTrial() override { std::filesystem::remove_all(folder); }

  std::string path_of(const char* name) const { return (folder / name).string(); }
  static void append(const std::string& path, const std::vector<book::Draft>& drafts, bool create) {
    auto book = book::Book::open(path, {.create = create}, machine_surroundings());
    ASSERT_TRUE(book);
    ASSERT_TRUE(book->append(drafts));
  }
  static std::string lines_of(const std::string& path) {
    return *book::Book::open(path, {.read_only = true}, machine_surroundings())->export_lines();
  }
  void write(const std::string& text, const char* name) const { std::ofstream(path_of(name)) << text; }

  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("beegarth-import-trial-" + std::to_string(getpid()));
  const std::string here = path_of("here.garth"), there = path_of("there.garth");
};

TEST_F(ImportTrial, names_what_the_gates_would_have_refused_and_changes_nothing) {
  const std::string before = lines_of(here);
  const auto trial = import_file({.book = here, .file = path_of("theirs.jsonl"), .dry_run = true});
  ASSERT_TRUE(trial) << one_line(trial.problem());
  EXPECT_EQ(trial->json["added"], 1);
  EXPECT_THAT(trial->remarks, ElementsAre(HasSubstr("suspect")));
  EXPECT_EQ(lines_of(here), before);
  const auto done = import_file({.book = here, .file = path_of("theirs.jsonl")});
  ASSERT_TRUE(done);
  EXPECT_EQ(done->remarks, trial->remarks);
  EXPECT_NE(lines_of(here), before);
}

TEST_F(ImportTrial, makes_no_book_where_there_is_none) {
  const auto trial =
      import_file({.book = path_of("none.garth"), .file = path_of("theirs.jsonl"), .dry_run = true});
  ASSERT_TRUE(trial);
  EXPECT_GT(trial->json["added"], 1);
  EXPECT_FALSE(std::filesystem::exists(path_of("none.garth")));
}

}  // namespace
}  // namespace beegarth::garth
