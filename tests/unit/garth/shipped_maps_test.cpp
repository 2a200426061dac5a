// The maps that come with the program, on the untouched open data files.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>

#include "garth/embedded.hpp"
#include "garth/imports/import_plan.hpp"

namespace beegarth::garth {
namespace {

std::string_view map_text(std::string_view name) {
  for (const EmbeddedFile& file : embedded_files()) {
    if (file.path == "maps/" + std::string(name) + ".toml") return file.bytes;
  }
  return {};
}

std::optional<std::string> shared_file(const std::string& name) {
  for (const char* up :
       {"/../shared/data/", "/../../shared/data/"}) {  // beside the source folder, or one further up
    std::ifstream file(BEEGARTH_SOURCE_DIR + std::string(up) + name, std::ios::binary);
    if (!file) continue;
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
  }
  return std::nullopt;
}

std::map<std::string, std::size_t> kinds_of(const ImportPlan& plan) {
  return {plan.kinds.begin(), plan.kinds.end()};
}

#define READ_OR_SKIP(plan, name)                                                      \
  const auto text_of_file = shared_file(name ".csv");                                 \
  if (!text_of_file) GTEST_SKIP() << "the shared data folder is not there";           \
  auto maybe = plan_import(*text_of_file, name ".csv", map_text(name), name ".toml"); \
  ASSERT_TRUE(maybe) << one_line(maybe.problem());                                    \
  const ImportPlan plan = *std::move(maybe);                                          \
  for (const Problem& problem : plan.problems) ADD_FAILURE() << one_line(problem)

// The counts below were taken from the files with another program (Python's csv module).
TEST(ShippedMap, autumn) {
  READ_OR_SKIP(plan, "colony_mites_autumn");
  EXPECT_EQ(plan.rows, 181U);
  const auto kinds = kinds_of(plan);
  EXPECT_EQ(kinds.at("colony_began"), 37U);
  EXPECT_EQ(kinds.at("hive"), 37U);
  EXPECT_EQ(kinds.at("site"), 1U);
  EXPECT_EQ(kinds.at("mite_count"), (181U - 44U) + (181U - 83U));
  EXPECT_EQ(kinds.at("colony_ended"), 7U);
  EXPECT_EQ(plan.drafts.front().happened.iso(), "2019-09-18");
  EXPECT_EQ(plan.drafts.back().happened.iso(), "2020-02-08");
}

TEST(ShippedMap, autumn_first_row_of_the_file) {
  READ_OR_SKIP(plan, "colony_mites_autumn");
  const auto first = std::find_if(plan.drafts.begin(), plan.drafts.end(), [](const ImportDraft& d) {
    return d.line == 2 && std::holds_alternative<entries::Inspection>(d.payload);
  });
  ASSERT_NE(first, plan.drafts.end());
  const auto& look = std::get<entries::Inspection>(first->payload);
  EXPECT_EQ(look.colony.text(), "autumn-D10");
  EXPECT_DOUBLE_EQ(*look.bees, 8899.88);
  EXPECT_DOUBLE_EQ(*look.capped_cells, 18642.8);
}

TEST(ShippedMap, spring) {
  READ_OR_SKIP(plan, "splits_mites_honey_spring");
  EXPECT_EQ(plan.rows, 112U);
  const auto kinds = kinds_of(plan);
  EXPECT_EQ(kinds.at("site"), 4U);
  EXPECT_EQ(kinds.at("colony_began"), 112U);
  EXPECT_EQ(kinds.at("treatment"), 112U - 18U);
}

TEST(ShippedMap, weather_with_blanks) {
  READ_OR_SKIP(plan, "daily_st_J_1991_2020");
  EXPECT_EQ(plan.drafts.size(), 10958U);
  const auto dry = std::count_if(plan.drafts.begin(), plan.drafts.end(), [](const ImportDraft& d) {
    return !std::get<entries::Weather>(d.payload).rain_mm;
  });
  EXPECT_EQ(dry, 799);
}

TEST(ShippedMap, weather_with_three_date_columns) {
  READ_OR_SKIP(plan, "daily_st_K_1998_2010");
  EXPECT_EQ(plan.drafts.size(), 4534U);
  EXPECT_EQ(plan.drafts.front().happened.iso(), "1998-01-01");
}

TEST(ShippedMap, weather_with_a_marked_gap) {
  READ_OR_SKIP(plan, "daily_st_M_1981_2010");
  EXPECT_EQ(plan.rows, 10957U);
  EXPECT_EQ(plan.drafts.size(), 10956U) << "one day has a minimum above its maximum";
}

TEST(ShippedMap, example_reads_the_file_in_its_own_comment) {
  const std::string_view text = map_text("example");
  std::string csv;
  std::istringstream lines{std::string(text)};
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("#   ", 0) == 0) csv += line.substr(4) + "\n";
  }
  const auto plan = plan_import(csv, "visits.csv", text, "example.toml");
  ASSERT_TRUE(plan) << one_line(plan.problem());
  EXPECT_TRUE(plan->ready());
  EXPECT_EQ(kinds_of(*plan), (std::map<std::string, std::size_t>{{"inspection", 2}, {"mite_count", 1}}));
}

}  // namespace
}  // namespace beegarth::garth
