// The plan of the demo is held to what demo/README.md says an experienced keeper should see in it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <string>

#include "asking_words.hpp"
#include "entries/fields.hpp"
#include "garth/demo.hpp"
#include "garth/plan/plan.hpp"
#include "garth/plan/plan_json.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

class DemoPlan : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    path_ = (std::filesystem::temp_directory_path() /
             ("beegarth-demo-plan-" + std::to_string(::getpid()) + ".garth"))
                .string();
    remove_book();
    ASSERT_TRUE(write_demo(path_, 1));
    const auto answer = planned({});
    ASSERT_TRUE(answer) << one_line(answer.problem());
    answer_ = new PlanAnswer(*answer);
  }
  static void TearDownTestSuite() {
    delete answer_;
    answer_ = nullptr;
    remove_book();
  }
  static void remove_book() {
    for (const char* tail : {"", "-wal", "-shm"}) std::filesystem::remove(path_ + tail);
  }

  static Expected<PlanAnswer> planned(SessionOptions options) {
    options.members = 256;
    auto session = open_session(path_, options);
    if (!session) return session.problem();
    return plan_next_days(*session, 14);
  }

  struct Found {
    const work::Visit* visit = nullptr;
    const facts::Need* need = nullptr;
  };
  // The first job of the plan whose key starts so.
  static Found job(const std::string& start) {
    for (const auto& visit : answer_->plan.visits) {
      for (const auto& planned_job : visit.jobs) {
        if (planned_job.need.key.rfind(start, 0) == 0) return {&visit, &planned_job.need};
      }
    }
    return {};
  }
  static bool is_named(const std::string& key) {
    const auto& undone = answer_->plan.undone;
    return job(key).need ||
           std::any_of(undone.begin(), undone.end(), [&](const auto& u) { return u.need.key == key; });
  }
  static double odds(const std::string& colony, facts::EventKind kind, int days_ahead) {
    for (const auto& outlook : answer_->outlooks) {
      if (outlook.colony.text() != colony) continue;
      for (const auto& event : outlook.events) {
        if (event.kind != kind) continue;
        return event
            .course[std::min<std::size_t>(static_cast<std::size_t>(days_ahead), event.course.size() - 1)]
            .odds.value;
      }
    }
    ADD_FAILURE() << "no such odds at " << colony;
    return 0;
  }

  static std::string path_;
  static PlanAnswer* answer_;
};
std::string DemoPlan::path_;
PlanAnswer* DemoPlan::answer_ = nullptr;

TEST_F(DemoPlan, goes_to_the_town_yard_first_because_cells_are_charged_there) {
  const Found split = job("split/cobble");
  ASSERT_NE(split.need, nullptr);
  EXPECT_LE(split.visit->date, answer_->plan.from + 2);
  EXPECT_THAT(split.need->take, testing::Contains(testing::HasSubstr("nucleus")));
  ASSERT_FALSE(split.need->why.empty());
  EXPECT_FALSE(split.need->why.front().entries.empty());
}

TEST_F(DemoPlan, sees_the_heavy_mite_case_as_by_far_the_worst) {
  const double thrush = odds("thrush", facts::EventKind::winter_mites, 1000);
  EXPECT_GT(thrush, 0.6);
  for (const char* other : {"finch", "lark", "heron", "cobble", "teal"}) {
    EXPECT_LT(odds(other, facts::EventKind::winter_mites, 1000), thrush) << other;
  }
  EXPECT_TRUE(is_named("treat/thrush"));
}

TEST_F(DemoPlan, believes_that_siskin_has_lost_its_layer_and_says_what_to_do) {
  EXPECT_GT(odds("siskin", facts::EventKind::queen_trouble, 7), 0.5);
  EXPECT_TRUE(is_named("comb-of-eggs/siskin"));
}

TEST_F(DemoPlan, waits_for_the_young_queen_of_the_nucleus_and_then_looks) {
  const Found check = job("check-queen/wren");
  ASSERT_NE(check.need, nullptr);
  EXPECT_GE(check.visit->date, *Date::parse("2026-06-01"));
  EXPECT_EQ(job("look-cells/wren").need, nullptr);
}

TEST_F(DemoPlan, feeds_the_hungry_one_at_the_river) {
  EXPECT_GT(odds("teal", facts::EventKind::stores_short, 14), 0.5);
  EXPECT_TRUE(is_named("feed/teal"));
}

TEST_F(DemoPlan, asks_no_board_of_a_hive_that_takes_none) {
  for (const auto& visit : answer_->plan.visits) {
    for (const auto& planned_job : visit.jobs) {
      if (planned_job.need.key != "count-mites/lark") continue;
      EXPECT_THAT(planned_job.need.what, testing::Not(testing::HasSubstr("board in")));
    }
  }
}

TEST_F(DemoPlan, names_what_it_leaves_undone_with_its_cost) {
  for (const auto& undone : answer_->plan.undone) {
    EXPECT_FALSE(undone.because.empty()) << undone.need.key;
    EXPECT_FALSE(undone.text.empty()) << undone.need.key;
    EXPECT_GE(undone.cost, 0) << undone.need.key;
  }
}

// Every word of what is to be done, with its cautions, kit and reasons.
std::string words_of(const facts::Need& need) {
  std::string words = need.what + "\n" + need.write_down;
  for (const auto& list : {need.cautions, need.take})
    for (const auto& one : list) words += "\n" + one;
  for (const auto& reason : need.why)
    if (!reason.moved) words += "\n" + reason.text;
  return words;
}
std::vector<const facts::Need*> needs_in(const work::Plan& plan) {
  std::vector<const facts::Need*> needs;
  for (const auto& job : plan.at_home) needs.push_back(&job.need);
  for (const auto& undone : plan.undone) needs.push_back(&undone.need);
  for (const auto& visit : plan.visits)
    for (const auto& job : visit.jobs) needs.push_back(&job.need);
  return needs;
}

TEST_F(DemoPlan, asks_in_no_word_for_what_the_keeper_will_not_do) {
  constexpr auto& rules = entries::Words<entries::Refusal>::list;
  for (std::size_t i = 0; i < rules.size(); ++i) {
    const std::string rule(rules.at(i));
    auto session = open_session(path_, {.members = 64});
    ASSERT_TRUE(session);
    entries::Entry said = session->standing.back();
    said.payload = entries::KeeperRule{.rule = static_cast<entries::Refusal>(i)};
    session->standing.push_back(said);
    const auto answer = plan_next_days(*session, 14);
    ASSERT_TRUE(answer);
    for (const facts::Need* need : needs_in(answer->plan)) {
      if (need->key.rfind("build/", 0) == 0) continue;  // names the keeper's own build in the keeper's words
      EXPECT_EQ(own_rules::asked_in(words_of(*need), rule), "") << rule << " " << need->key << "\n"
                                                                << words_of(*need);
    }
    std::string spoken = rule;
    std::replace(spoken.begin(), spoken.end(), '_', ' ');
    EXPECT_THAT(answer->plan.remarks, testing::Contains(testing::HasSubstr("our own rule " + spoken)));
  }
}

TEST_F(DemoPlan, is_the_same_to_the_last_bit_on_any_number_of_threads) {
  const json one = plan_json(planned({.threads = 1})->plan, answer_->names);
  for (const int threads : {2, 7})
    EXPECT_EQ(one, plan_json(planned({.threads = threads})->plan, answer_->names)) << threads;
}

TEST_F(DemoPlan, changes_its_odds_and_reasons_when_the_last_look_is_taken_back) {
  auto book = book::Book::open(path_, {}, machine_surroundings());
  ASSERT_TRUE(book);
  const auto all = book->entries();
  ASSERT_TRUE(all);
  const auto look = std::find_if(all->begin(), all->end(), [](const entries::Entry& e) {
    return e.happened == *Date::parse("2026-05-29") && entries::colony_of(e.payload).text() == "cobble";
  });
  ASSERT_NE(look, all->end());
  const json before = plan_json(answer_->plan, answer_->names);
  ASSERT_NE(before.dump().find(look->id.text()), std::string::npos);
  const double odds_before = odds("cobble", facts::EventKind::swarm_preparation, 7);

  const auto removal =
      book->append({{.happened = *Date::parse("2026-06-03"),
                     .payload = entries::Removed{.entry = look->id, .reason = "wrong hive"}}});
  ASSERT_TRUE(removal);
  const auto after = planned({});
  ASSERT_TRUE(after);
  EXPECT_EQ(plan_json(after->plan, after->names).dump().find(look->id.text()), std::string::npos);
  for (const auto& outlook : after->outlooks) {
    if (outlook.colony.text() != "cobble") continue;
    for (const auto& event : outlook.events) {
      if (event.kind != facts::EventKind::swarm_preparation) continue;
      EXPECT_NE(event.course[7].odds.value, odds_before);
    }
  }
  // Both the look and its removal stay in the book; undo the removal so that the tests can run in any order.
  ASSERT_TRUE(book->append(
      {{.happened = *Date::parse("2026-06-03"),
        .payload = entries::Removed{.entry = removal->front().id, .reason = "right after all"}}}));
  const auto again = planned({});
  ASSERT_TRUE(again);
  EXPECT_EQ(plan_json(again->plan, again->names), before);
}

}  // namespace
}  // namespace beegarth::garth
