// A plan told as text, as JSON and as a printed sheet.
#include <gtest/gtest.h>

#include <limits>
#include <sstream>

#include "../draw/pdf.hpp"
#include "draw/draw.hpp"
#include "garth/plan/mip_cbc.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"
#include "garth/sheet/sheet.hpp"

namespace beegarth::garth {
namespace {

// The words without the breaks of lines.
std::string unwrapped(const std::string& text) {
  std::istringstream words(text);
  std::string out;
  for (std::string word; words >> word;) out += (out.empty() ? "" : " ") + word;
  return out;
}

Date june(int day) {
  return *Date::from_ymd(2026, 6, day);
}

facts::Need a_need(const char* kind, const char* colony) {
  facts::Need need;
  need.key = std::string(kind) + "/" + colony;
  need.what = "look for queen cells, every comb";
  need.site = SiteId("withy");
  need.colony = ColonyId(colony);
  need.earliest = need.best = june(4);
  need.latest = june(17);
  need.minutes = 25;
  need.take = {"smoker and fuel", "hive tool"};
  need.cautions = {"Smoke out before the smoker travels."};
  need.why = {{"9 seams on the last look", {EntryId("0190-a")}, {"tables/work interval_unclipped_days"}}};
  need.odds = {{"charged queen cells", june(4), {0.381234567, 0.22, 0.55}}};
  need.loss.unit = "kg honey equivalent";
  return need;
}

work::Plan a_plan() {
  work::Plan plan;
  plan.from = june(4);
  plan.to = june(17);
  work::Visit visit;
  visit.date = june(4);
  visit.site = SiteId("withy");
  visit.start_hour = 11.5;
  visit.end_hour = 14 + 10.0 / 60;
  visit.travel_minutes = 14;
  visit.opening_odds = 0.83;
  visit.weather = "17 \u00b0C, light wind, dry";
  visit.fallback = june(6);
  visit.if_lost = "Sat 6 June instead";
  visit.jobs = {{a_need("look-cells", "alder-5")}, {a_need("count-mites", "sallow-1")}};
  plan.visits.push_back(visit);
  plan.undone.push_back(
      {a_need("room", "chalk-2"), "too little time", 3.2, "kg honey equivalent", "costs about 3.2 kg"});
  return plan;
}

PlanNames names() {
  return {{{SiteId("withy"), "Withy Meadow"}}, {{ColonyId("alder-5"), "Alder 5"}}};
}

TEST(PlanJson, HasWhatThePageAsksFor) {
  const auto json = plan_json(a_plan(), names());
  EXPECT_EQ(json["from"], "2026-06-04");
  EXPECT_EQ(json["to"], "2026-06-17");
  const auto& visit = json["visits"][0];
  EXPECT_EQ(visit["date"], "2026-06-04");
  EXPECT_EQ(visit["start"], "11:30");
  EXPECT_EQ(visit["end"], "14:10");
  EXPECT_EQ(visit["site"], "withy");
  EXPECT_EQ(visit["fallback"], "2026-06-06");
  EXPECT_EQ(visit["opening_odds"], 0.83);
  const auto& job = visit["jobs"][0];
  EXPECT_EQ(job["colony"], "alder-5");
  EXPECT_EQ(job["why"][0]["entries"][0], "0190-a");
  EXPECT_EQ(job["odds"][0]["value"], 0.3812);
  EXPECT_EQ(job["odds"][0]["by"], "2026-06-04");
  EXPECT_EQ(job["minutes"], 25);
  const auto& undone = json["undone"][0];
  EXPECT_EQ(undone["site"], "withy");
  EXPECT_EQ(undone["cost"]["value"], 3.2);
  EXPECT_EQ(undone["why"][0]["text"], "9 seams on the last look");
}

TEST(PlanJson, SaysWhetherAHiveIsOpenedAndWhatIsDoneFromHome) {
  auto plan = a_plan();
  EXPECT_TRUE(plan_json(plan, names())["visits"][0]["opens_a_hive"]);
  for (auto& job : plan.visits[0].jobs) job.need.clock = facts::Clock::dusk;
  EXPECT_FALSE(plan_json(plan, names())["visits"][0]["opens_a_hive"]);
  EXPECT_EQ(plan_text(plan, names()).find("fit for opening"), std::string::npos);
  EXPECT_TRUE(plan_json(plan, names())["at_home"].empty());
  plan.at_home.push_back({a_need("tell-inspector", "alder-5")});
  EXPECT_EQ(plan_json(plan, names())["at_home"][0]["key"], "tell-inspector/alder-5");
  EXPECT_NE(plan_text(plan, names()).find("First of all, from home\n   1  Alder 5: "), std::string::npos);
  plan.at_home = {{a_need("stored-combs", "alder-5")}};
  EXPECT_NE(plan_text(plan, names()).find("At home, when it suits\n   1  Alder 5: "), std::string::npos);
}

TEST(PlanJson, BeginsTheNoteThatTellsTheDeed) {
  auto plan = a_plan();
  EXPECT_FALSE(plan_json(plan, names())["visits"][0]["jobs"][0].contains("write_down"));
  plan.visits[0].jobs[0].need.write_down = "full look, ";
  EXPECT_EQ(plan_json(plan, names())["visits"][0]["jobs"][0]["write_down"], "Alder 5: full look, ");
}

TEST(PlanJson, AbsentIsAbsentAndNeverNull) {
  auto plan = a_plan();
  plan.visits[0].fallback.reset();
  plan.visits[0].if_lost.reset();
  plan.visits[0].jobs[0].need.colony.reset();
  const auto json = plan_json(plan, names());
  EXPECT_FALSE(json["visits"][0].contains("fallback"));
  EXPECT_FALSE(json["visits"][0]["jobs"][0].contains("colony"));
  EXPECT_EQ(json.dump().find("null"), std::string::npos);
}

TEST(PlanText, StaysWithinAHundredColumns) {
  auto plan = a_plan();
  plan.visits[0].jobs[0].need.why[0].text.append(std::string(40, 'x') +
                                                 " words that go on and on and on for quite a while longer");
  std::istringstream lines(plan_text(plan, names()));
  for (std::string line; std::getline(lines, line);) {
    const auto columns = std::count_if(
        line.begin(), line.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
    EXPECT_LE(columns, 100) << line;
  }
}

TEST(PlanText, SaysWhereWhenWhatAndWhy) {
  const std::string text = plan_text(a_plan(), names());
  for (const char* words :
       {"Thu 4 June", "Withy Meadow", "11:30", "Alder 5: look for queen cells", "38 % (22 to 55 %)",
        "9 seams", "Sat 6 June instead", "Left undone", "too little time"})
    EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
}

TEST(PlanText, SaysEachCautionOnceAndAddsUpWhatToTake) {
  auto plan = a_plan();
  auto& jobs = plan.visits[0].jobs;
  jobs[0].need.take = {"syrup for 1.0 kg of sugar", "1 feeder"};
  jobs[1].need.take = {"syrup for 1.5 kg of sugar", "1 feeder"};
  plan.visits.push_back(plan.visits[0]);
  plan.visits[1].date = june(9);
  const std::string text = plan_text(plan, names());
  EXPECT_NE(text.find("syrup for 2.5 kg of sugar in all; 2 feeders"), std::string::npos) << text;
  const std::size_t once = text.find("Smoke out before");
  ASSERT_NE(once, std::string::npos);
  EXPECT_EQ(text.find("Smoke out before", once + 1), std::string::npos) << text;
}

TEST(PlanText, KeepsTheJobsOfAColonyTogetherAndDuskForTheEnd) {
  auto plan = a_plan();
  auto feed = a_need("feed", "alder-5");
  feed.what = "feed syrup";
  feed.clock = facts::Clock::dusk;
  auto room = a_need("room", "alder-5");
  room.what = "one super on";
  auto& jobs = plan.visits[0].jobs;  // alder-5, sallow-1
  jobs.insert(jobs.begin(), {feed});
  jobs.push_back({room});
  const std::string text = plan_text(plan, names());
  EXPECT_LT(text.find("Alder 5: look"), text.find("Alder 5: one super"));
  EXPECT_LT(text.find("Alder 5: one super"), text.find("sallow-1: look"));
  EXPECT_LT(text.find("sallow-1: look"), text.find("Alder 5: feed"));
}

TEST(PlanText, NamesTheEntryThatMovedTheOddsMostAndNoOther) {
  auto plan = a_plan();
  auto& why = plan.visits[0].jobs[0].need.why;
  why.push_back({"inspection of 2026-05-22 (9 seams): 38 % with it, 22 % without",
                 {EntryId("a")},
                 {},
                 facts::Moved{"inspection", *Date::parse("2026-05-22")}});
  why.push_back({"mite count of 2025-09-07 (9 mites): 38 % with it, 33 % without",
                 {EntryId("b")},
                 {},
                 facts::Moved{"mite count", *Date::parse("2025-09-07")}});
  const std::string text = unwrapped(plan_text(plan, names()));
  EXPECT_NE(text.find("moved most by the look of 22 May"), std::string::npos) << text;
  EXPECT_EQ(text.find("mite count"), std::string::npos) << text;
  EXPECT_EQ(moved_by(*why.back().moved, 2026), "mite count of 7 September 2025");
}

TEST(OddsText, NeverSaysNoughtOrCertainOfWhatIsNot) {
  EXPECT_EQ(odds_text({0.001, 0, 0.02}), "under 1 % (0 to 2 %)");
  EXPECT_EQ(odds_text({0.999, 0.9, 1}), "over 99 % (90 to 100 %)");
}

TEST(Sheet, CanBeReadBackFromItsPdf) {
  SheetFacts facts{.site = {SiteId("withy"), "Withy Meadow", "XY 123 456", "second gate", true},
                   .names = names()};
  const std::string text = read_back(draw::to_pdf(sheet(a_plan().visits[0], facts)), "sheet");
  for (const char* words : {"Withy Meadow", "Thu 4 June 2026", "11:30", "Emergency: 112", "XY 123 456",
                            "second gate", "smoker and fuel", "Alder 5", "look for queen cells",
                            "sealed cells", "done / not done", "bee inspector"})
    EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
}

TEST(Sheet, AsksForNothingThatTheHiveCannotShow) {
  SheetFacts facts{.site = {SiteId("withy"), "Withy Meadow", "", "", false}, .names = names()};
  facts.paper = scene::Paper::letter;
  facts.dwellings[ColonyId("alder-5")].can_see_seams = false;
  facts.dwellings[ColonyId("sallow-1")].can_board = false;
  const std::string text = read_back(draw::to_pdf(sheet(a_plan().visits[0], facts)), "unseen");
  EXPECT_EQ(text.find("seams of bees"), std::string::npos);
  EXPECT_EQ(text.find("board in"), std::string::npos);
  EXPECT_NE(text.find("wash / roll"), std::string::npos);
}

TEST(MipCbc, FindsTheBestOfASmallKnapsack) {
  // Values 6, 5, 4 and weights 5, 4, 3 into 7: the second and the third.
  work::MipProblem problem;
  problem.cost = {-6, -5, -4};
  problem.integer = {true, true, true};
  problem.rows.push_back({{0, 1, 2}, {5, 4, 3}, -std::numeric_limits<double>::infinity(), 7});
  testing::internal::CaptureStdout();
  const auto answer = cbc_solver()(problem);
  EXPECT_EQ(testing::internal::GetCapturedStdout(), "");
  ASSERT_TRUE(answer.feasible);
  EXPECT_TRUE(answer.proven);
  EXPECT_DOUBLE_EQ(answer.value, -9);
  EXPECT_EQ(answer.x, (std::vector<double>{0, 1, 1}));
}

TEST(MipCbc, SaysSoWhereThereIsNoAnswer) {
  work::MipProblem problem;
  problem.cost = {1};
  problem.integer = {true};
  problem.rows.push_back({{0}, {1}, 2, 3});
  EXPECT_FALSE(cbc_solver()(problem).feasible);
}

}  // namespace
}  // namespace beegarth::garth
