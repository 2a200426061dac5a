// A file at hand, as a page sends it: tried, refused row by row, kept whole. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "book/book.hpp"
#include "garth/imports/import.hpp"
#include "garth/imports/shipped_maps.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;

const MapText notes{"mapping", R"([date]
column = "day"

[[entry]]
kind = "note"
[entry.fields]
text = { column = "words" }
)"};
const MapText looks{"mapping", R"([date]
column = "day"

[[entry]]
kind = "inspection"
[entry.fields]
colony = { column = "colony" }
look = "full"
seams = { column = "seams" }
)"};

class ImportText : public testing::Test {
 protected:
  ImportText()
      : path_((std::filesystem::temp_directory_path() /
               (std::string("import-") + testing::UnitTest::GetInstance()->current_test_info()->name() + "-" +
                std::to_string(machine_surroundings().utc_ms()) + ".garth"))
                  .string()) {
    make_anew();
  }
  ~ImportText() override { remove(); }
  void remove() const {
    for (const char* tail : {"", "-wal", "-shm"}) std::filesystem::remove(path_ + tail);
  }
  void make_anew() const {
    remove();
    must(book::Book::open(path_, {.create = true}, machine_surroundings()));
  }
  const std::string& path() const { return path_; }
  template <class Made>
  static void must(const Made& made) {
    if (!made) throw std::runtime_error(one_line(made.problem()));
  }
  Expected<ImportAnswer> bring(const std::string& text, const std::optional<MapText>& map, bool keep,
                               std::string form = "csv") {
    return import_text({.book = path_,
                        .file = "own.csv",
                        .form = std::move(form),
                        .map = {},
                        .dry_run = !keep,
                        .today = Date::from_ymd(2026, 6, 5)},
                       text, map);
  }
  std::size_t entries() {
    const auto book = book::Book::open(path_, {.read_only = true}, machine_surroundings());
    must(book);
    return book->entries()->size();
  }

 private:
  std::string path_;
};

TEST_F(ImportText, tried_writes_nothing_and_kept_writes_all) {
  const std::string text = "day,words\n2026-05-02,ewes in\n2026-05-03,gate mended\n";
  const auto tried = bring(text, notes, false);
  ASSERT_TRUE(tried) << one_line(tried.problem());
  EXPECT_EQ(tried->json.at("entries"), 2);
  EXPECT_EQ(entries(), 0U);
  ASSERT_TRUE(bring(text, notes, true));
  EXPECT_EQ(entries(), 2U);
  EXPECT_EQ(bring(text, notes, false)->json.at("known"), 2) << "the same file again brings nothing new";
}

TEST_F(ImportText, every_row_that_stands_in_the_way_is_told_and_nothing_is_written) {
  const std::string text = "day,colony,seams\n2026-05-02,alder,many\nMay,alder,7\n2026-05-04,alder,7\n";
  for (const bool keep : {false, true}) {
    const auto answer = bring(text, looks, keep);
    ASSERT_TRUE(answer) << one_line(answer.problem());
    ASSERT_EQ(answer->refused.size(), 2U);
    EXPECT_THAT(answer->refused[0].where, HasSubstr("own.csv:2"));
    EXPECT_THAT(answer->refused[1].where, HasSubstr("own.csv:3"));
    EXPECT_THAT(as_one(answer->refused).remedy, HasSubstr("(1 more problems; nothing was written)"));
    EXPECT_EQ(entries(), 0U);
  }
}

TEST_F(ImportText, a_colony_that_nobody_has_begun_stands_in_the_way_of_its_row) {
  const auto answer = bring("day,colony,seams\n2026-05-04,nobody,7\n", looks, true);
  ASSERT_TRUE(answer) << one_line(answer.problem());
  ASSERT_EQ(answer->refused.size(), 1U);
  EXPECT_THAT(one_line(answer->refused[0]), HasSubstr("own.csv:2"));
  EXPECT_EQ(entries(), 0U);
}

TEST_F(ImportText, a_broken_mapping_is_a_problem_at_its_line) {
  const auto answer = bring("day\n2026-05-02\n", notes, false);
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.problem().where, "mapping:7");
}

TEST_F(ImportText, what_another_copy_exported_comes_in_once) {
  ASSERT_TRUE(bring("day,words\n2026-05-02,ewes in\n", notes, true));
  std::string lines;
  {
    const auto book = book::Book::open(path(), {.read_only = true}, machine_surroundings());
    must(book);
    lines = *book->export_lines();
  }
  make_anew();
  EXPECT_EQ(bring(lines, std::nullopt, false, "jsonl")->json.at("added"), 1);
  EXPECT_EQ(entries(), 0U);
  EXPECT_EQ(bring(lines, std::nullopt, true, "jsonl")->json.at("added"), 1);
  EXPECT_EQ(entries(), 1U);
  EXPECT_EQ(bring(lines, std::nullopt, true, "jsonl")->json.at("known"), 1);
  EXPECT_FALSE(bring("{\"torn\n", std::nullopt, true, "jsonl"));
  EXPECT_EQ(entries(), 1U);
}

TEST_F(ImportText, a_table_without_a_mapping_is_refused_and_so_is_a_mapping_for_json_lines) {
  EXPECT_FALSE(bring("day,words\n", std::nullopt, false));
  EXPECT_FALSE(bring("{}\n", notes, false, "jsonl"));
}

TEST(ShippedMaps, each_says_what_it_makes_of_a_row_and_the_one_to_begin_with_is_first) {
  const auto maps = shipped_maps();
  ASSERT_GT(maps.size(), 3U);
  EXPECT_EQ(maps.front().path, "maps/example.toml");
  for (const ShippedMap& map : maps) {
    EXPECT_FALSE(map.about.empty()) << map.path;
    EXPECT_FALSE(map.toml.empty()) << map.path;
  }
}

}  // namespace
}  // namespace beegarth::garth
