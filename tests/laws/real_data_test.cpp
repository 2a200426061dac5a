// The open records of real colonies, untouched, through the ordinary import; and a forecast knows nothing of
// later rows.
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "garth/beliefs/outlook_json.hpp"
#include "garth/beliefs/skill.hpp"
#include "garth/imports/import.hpp"
#include "garth/plan/plan.hpp"
#include "garth/plan/plan_json.hpp"

namespace beegarth::garth {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

class RealData : public testing::Test {
 protected:
  void SetUp() override {
    for (const char* up : {"/../shared/data/", "/../../shared/data/"}) {
      if (fs::exists(BEEGARTH_SOURCE_DIR + std::string(up) + "colony_mites_autumn.csv"))
        data_ = BEEGARTH_SOURCE_DIR + std::string(up);
    }
    if (data_.empty()) GTEST_SKIP() << "the shared data folder is not there";
    folder_ = fs::temp_directory_path() / ("beegarth-real-data-" + std::to_string(::getpid()));
    fs::create_directories(folder_);
  }
  void TearDown() override {
    if (!folder_.empty()) fs::remove_all(folder_);
  }

  std::string book(const std::string& name) const { return (folder_ / (name + ".garth")).string(); }
  static std::string map(const std::string& name) { return BEEGARTH_SOURCE_DIR "/maps/" + name + ".toml"; }
  static Expected<Session> opened(const std::string& path, const char* today) {
    return open_session(
        path, {.today = Date::parse(today).value(), .members = 64, .weather_members = 8, .threads = 1});
  }

  std::string data_;
  fs::path folder_;
};

TEST_F(RealData, comes_in_untouched_after_a_dry_run_that_writes_nothing) {
  for (const std::string name : {"colony_mites_autumn", "splits_mites_honey_spring"}) {
    ImportWish wish{.book = book(name), .file = data_ + name + ".csv", .map = map(name), .dry_run = true};
    const auto dry = import_file(wish);
    ASSERT_TRUE(dry) << one_line(dry.problem());
    EXPECT_FALSE(fs::exists(wish.book)) << "a dry run made a book";
    wish.dry_run = false;
    const auto real = import_file(wish);
    ASSERT_TRUE(real) << one_line(real.problem());
    const auto session = opened(wish.book, "2026-01-01");
    ASSERT_TRUE(session) << one_line(session.problem());
    EXPECT_EQ(session->state.colonies.size(),
              name == "colony_mites_autumn" ? 37U : 112U);  // rows of README and file
  }
}

// Entries get ids of their own in every book.
json without_ids(json value) {
  if (value.is_object()) {
    for (const char* key : {"entry", "entries"}) value.erase(key);
    for (auto& part : value) part = without_ids(part);
  } else if (value.is_array()) {
    for (auto& part : value) part = without_ids(part);
  }
  return value;
}

json planned(const Session& session) {
  const auto answer = plan_next_days(session, 7);
  EXPECT_TRUE(answer);
  if (!answer) return {};
  json all{{"plan", plan_json(answer->plan, answer->names)}, {"outlooks", json::array()}};
  for (const auto& outlook : answer->outlooks)
    all["outlooks"].push_back(outlook_json(outlook, session.state));
  return without_ids(std::move(all));
}

TEST_F(RealData, plan_and_outlook_of_a_day_are_the_same_whether_or_not_the_book_holds_later_rows) {
  // Four colonies keep it quick; the later rows of the second file are cut away.
  std::ifstream file(data_ + "colony_mites_autumn.csv");
  std::ofstream all(folder_ / "all.csv");
  std::ofstream early(folder_ / "early.csv");
  std::string line;
  int later = 0;
  while (std::getline(file, line)) {
    const std::string colony = line.substr(0, line.find(','));
    const bool heading = colony == "col_no";
    if (!heading && colony != "D10" && colony != "D20" && colony != "D15" && colony != "9") continue;
    all << line << '\n';
    const bool is_later = line.find(",14-Oct,") != std::string::npos ||
                          line.find(",4-Nov,") != std::string::npos ||
                          line.find(",8-Feb,") != std::string::npos;
    later += is_later ? 1 : 0;
    if (!is_later) early << line << '\n';
  }
  all.close();
  early.close();
  ASSERT_GE(later, 8) << "nothing was cut away, so nothing is tested";
  json answers = json::array();
  json answers_later = json::array();
  for (const std::string name : {"all", "early"}) {
    const auto imported = import_file({.book = book(name),
                                       .file = (folder_ / (name + ".csv")).string(),
                                       .map = map("colony_mites_autumn")});
    ASSERT_TRUE(imported) << one_line(imported.problem());
    const auto session = opened(book(name), "2019-10-03");
    ASSERT_TRUE(session) << one_line(session.problem());
    answers.push_back(planned(*session));
    const auto later_on = opened(book(name), "2019-11-05");
    ASSERT_TRUE(later_on) << one_line(later_on.problem());
    answers_later.push_back(planned(*later_on));
  }
  ASSERT_EQ(answers[0]["outlooks"].size(), 4U);
  EXPECT_EQ(answers[0].dump(), answers[1].dump());
  EXPECT_NE(answers_later[0].dump(), answers_later[1].dump()) << "the later rows never mattered";
}

TEST_F(RealData, the_seven_losses_are_scored) {
  const auto imported = import_file(
      {.book = book("losses"), .file = data_ + "colony_mites_autumn.csv", .map = map("colony_mites_autumn")});
  ASSERT_TRUE(imported) << one_line(imported.problem());
  auto session = opened(book("losses"), "2020-02-08");
  ASSERT_TRUE(session) << one_line(session.problem());
  const auto skill = skill_of(*session);
  ASSERT_TRUE(skill) << one_line(skill.problem());
  EXPECT_EQ(session->today.iso(), "2020-02-08") << "the session was not put back";
  std::vector<std::string> dead;
  for (const SkillCase& c : skill->cases) {
    EXPECT_TRUE(std::isfinite(c.ours)) << c.colony << ' ' << name_of(c.what);
    EXPECT_LT(c.from, c.on);
    if (c.what == Scored::alive && c.seen == 0) dead.push_back(c.colony);
    if (c.what == Scored::bees && c.seen == 0) {
      EXPECT_EQ(c.on.iso(), "2020-02-08");
    }
  }
  std::sort(dead.begin(), dead.end());
  dead.erase(std::unique(dead.begin(), dead.end()), dead.end());
  EXPECT_EQ(dead.size(), 7U);  // rows of the file with bees 0
}

}  // namespace
}  // namespace beegarth::garth
