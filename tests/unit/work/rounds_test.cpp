// Rounds over several days, on questions small enough to see the answer.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "work/rounds/orienteering.hpp"

namespace beegarth::work::rounds {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

// Places along a road, so many minutes from home; each takes ten minutes and is worth what is said.
struct OnTheRoad {
  double minutes, score;
  std::vector<OpenTime> windows;
};

Question question(std::vector<double> length, const std::vector<OnTheRoad>& road) {
  Question asked;
  asked.days = static_cast<int>(length.size());
  asked.length = std::move(length);
  std::vector<double> at;
  for (const auto& place : road) {
    asked.places.push_back({place.windows, 10, place.score, {}});
    at.push_back(place.minutes);
  }
  at.insert(at.end(), {0.0, 0.0});
  for (const double from : at) {
    auto& row = asked.travel.emplace_back();
    for (const double to : at) row.push_back(std::abs(from - to));
  }
  return asked;
}

Answer answer(const Question& asked) {
  const auto found = best_rounds(asked);
  EXPECT_TRUE(found) << one_line(found.problem());
  return found ? *found : Answer{};
}

std::string refusal(const Question& asked) {
  const auto found = best_rounds(asked);
  return found ? "answered" : one_line(found.problem());
}

TEST(Rounds, leaves_out_what_does_not_fit_and_is_worth_least) {
  const Answer found = answer(question({60}, {{10, 5, {}}, {-10, 3, {}}, {20, 4, {}}}));
  EXPECT_THAT(found.routes, ElementsAre(UnorderedElementsAre(0, 2)));
  EXPECT_EQ(found.score, 9);
  EXPECT_EQ(found.bound, 9);
  EXPECT_TRUE(found.proven_optimal);
}

TEST(Rounds, waits_where_it_comes_early) {
  const Answer found = answer(question({60}, {{10, 5, {{{}, 30, 40}}}}));
  EXPECT_THAT(found.starts, ElementsAre(ElementsAre(30)));
  EXPECT_THAT(found.back, ElementsAre(50));
}

TEST(Rounds, work_can_begin_at_the_last_moment_and_not_after_it) {
  EXPECT_EQ(answer(question({60}, {{10, 5, {{{}, 0, 10}}}})).score, 5);
  EXPECT_EQ(answer(question({60}, {{10, 5, {{{}, 0, 9.999999}}}})).score, 0);
  EXPECT_EQ(answer(question({30}, {{10, 5, {}}})).score, 5);
  EXPECT_EQ(answer(question({29.999999}, {{10, 5, {}}})).score, 0);
}

TEST(Rounds, goes_on_the_day_on_which_a_place_is_open) {
  const Answer found = answer(question({60, 60, 60}, {{10, 5, {{1, 0, 60}}}}));
  EXPECT_THAT(found.routes, ElementsAre(IsEmpty(), ElementsAre(0), IsEmpty()));
}

TEST(Rounds, takes_the_later_of_two_windows_where_the_first_has_closed) {
  const Answer found = answer(question({100}, {{20, 5, {{{}, 0, 10}, {{}, 50, 60}}}}));
  EXPECT_THAT(found.starts, ElementsAre(ElementsAre(50)));
}

TEST(Rounds, keeps_to_what_there_is_each_day_and_in_the_plan) {
  Question asked = question({100, 100}, {{1, 1, {}}, {2, 1, {}}, {3, 1, {}}});
  for (Place& place : asked.places) place.uses = {1};
  asked.limits = {{1, true}};
  EXPECT_EQ(answer(asked).score, 2);
  asked.limits = {{1, false}};
  EXPECT_EQ(answer(asked).score, 1);
  asked.limits = {{3, false}};
  EXPECT_EQ(answer(asked).score, 3);
}

TEST(Rounds, decimals_that_just_fit_do_fit) {
  Question asked = question({10.6}, {{0.1, 1, {}}, {0.3, 1, {}}});
  asked.places[1].service = 0;
  EXPECT_EQ(answer(asked).score, 2);
}

TEST(Rounds, a_question_that_contradicts_itself_is_refused_where_it_does) {
  Question asked = question({60}, {{10, 5, {{{}, 30, 40}}}});
  Question other = asked;
  other.places[0].windows[0].close = 29;
  EXPECT_EQ(refusal(other), "places[0].windows[0]: it closes before it opens; give a close not before open");
  other = asked;
  other.places[0].windows[0].day = 1;
  EXPECT_EQ(refusal(other), "places[0].windows[0].day: there is no such day; count the days from 0");
  other = asked;
  other.travel[1].pop_back();
  EXPECT_EQ(
      refusal(other),
      "travel_matrix[1]: the row has not the size of the places; give 3 rows of 3: the places, then start "
      "and end");
  other = asked;
  other.travel[1][0] = NAN;
  EXPECT_EQ(refusal(other), "travel_matrix[1][0]: not a finite number; give 0 to 1000000");
  other = asked;
  other.places[0].score = -1;
  EXPECT_EQ(refusal(other), "places[0].score: the number is out of range; give 0 to 1000000");
  other = asked;
  other.days = 0;
  EXPECT_EQ(refusal(other), "days: the number is out of range; give 1 to 31");
  other = asked;
  other.length = {60, 60};
  EXPECT_EQ(refusal(other), "limit: not one for each day; give one number, or one for each day");
}

}  // namespace
}  // namespace beegarth::work::rounds
