// Rounds over several days: on small questions the answer is the best there is, by trying every order and by
// a mixed-integer program; on all the answer can be done, and is not worth more than its bound.
#include <gtest/gtest.h>

#include "garth/plan/mip_cbc.hpp"
#include "reference/some_rounds.hpp"
#include "work/rounds/orienteering.hpp"
#include "work/rounds/recombine.hpp"

namespace beegarth {
namespace {

using reference::RoundsSize;
using reference::some_rounds;
using work::rounds::Answer;
using work::rounds::best_rounds;
using work::rounds::Question;

Answer answer_to(const Question& question) {
  auto answer = best_rounds(question);
  EXPECT_TRUE(answer) << one_line(answer.problem());
  return answer ? *answer : Answer{};
}

// Walks the answer as one would go it.
void expect_can_be_done(const Question& question, const Answer& answer, std::uint64_t number) {
  double score = 0;
  std::vector<int> seen(question.places.size(), 0);
  std::vector<double> in_plan(question.limits.size(), 0.0);
  ASSERT_EQ(answer.routes.size(), question.length.size());
  for (std::size_t day = 0; day < answer.routes.size(); ++day) {
    std::size_t at = question.places.size();
    double time = question.begin;
    std::vector<double> today(question.limits.size(), 0.0);
    for (std::size_t i = 0; i < answer.routes[day].size(); ++i) {
      const auto here = static_cast<std::size_t>(answer.routes[day][i]);
      const auto& place = question.places[here];
      time += question.travel[at][here];
      const double work = answer.starts[day][i];
      EXPECT_GE(work, time) << "question " << number;
      bool open = place.windows.empty();
      for (const auto& window : place.windows)
        open = open || (window.day.value_or(static_cast<int>(day)) == static_cast<int>(day) &&
                        window.open <= work && work <= window.close);
      EXPECT_TRUE(open) << "question " << number;
      time = work + place.service;
      at = here;
      score += place.score;
      EXPECT_EQ(++seen[here], 1) << "question " << number;
      for (std::size_t l = 0; l < place.uses.size(); ++l) {
        today[l] += place.uses[l];
        in_plan[l] += place.uses[l];
      }
    }
    if (!answer.routes[day].empty()) time += question.travel[at][question.places.size() + 1];
    EXPECT_EQ(answer.back[day], time) << "question " << number;
    EXPECT_LE(time, question.begin + question.length[day]) << "question " << number;
    for (std::size_t l = 0; l < question.limits.size(); ++l)
      EXPECT_LE(question.limits[l].each_day ? today[l] : in_plan[l], question.limits[l].most)
          << "question " << number;
  }
  EXPECT_EQ(answer.score, score) << "question " << number;
}

// Whether there was something to choose: neither nothing nor all was done.
bool expect_best(std::uint64_t number, const RoundsSize& size, int effort = 100) {
  Question question = some_rounds(number, size);
  question.effort = effort;
  const Answer answer = answer_to(question);
  expect_can_be_done(question, answer, number);
  EXPECT_EQ(answer.score, reference::EveryRound(question).best()) << "question " << number;
  EXPECT_TRUE(answer.proven_optimal) << "question " << number;
  EXPECT_EQ(answer.bound.value_or(-1), answer.score) << "question " << number;
  double all = 0;
  for (const auto& place : question.places) all += place.score;
  return answer.score > 0 && answer.score < all;
}

void expect_best_of_many(std::uint64_t first, std::uint64_t count, const RoundsSize& size, int effort = 100) {
  std::uint64_t with_a_choice = 0;
  for (std::uint64_t number = first; number < first + count; ++number)
    with_a_choice += expect_best(number, size, effort) ? 1 : 0;
  EXPECT_GT(with_a_choice, count / 2);  // questions in which nothing or all can be done would prove little
}

TEST(RoundsOptimum, equals_trying_every_order_at_up_to_ten_places) {
  expect_best_of_many(1, 40, {5, 1});
  expect_best_of_many(101, 40, {7, 2});
  expect_best_of_many(201, 20, {8, 3, true});
  expect_best_of_many(301, 20, {8, 2, false, true});
  expect_best_of_many(401, 10, {10, 3, true, true});
}

// Beyond a dozen places it is no longer every set that is tried, but tours are searched, bounded and put
// together.
TEST(RoundsOptimum, equals_trying_every_order_where_it_is_searched) {
  expect_best_of_many(1001, 12, {13, 1}, 10);
  expect_best_of_many(1101, 12, {13, 2, false, false, true}, 10);
  expect_best_of_many(1201, 12, {13, 2, true}, 10);
  expect_best_of_many(1301, 12, {13, 2, false, true}, 10);
  expect_best_of_many(1401, 6, {14, 3, true, true}, 10);
}

// The bound and the proof by themselves, with no good plan at hand that would hide their faults.
void expect_bound_and_proof(std::uint64_t number, const RoundsSize& size, int& closed) {
  namespace rounds = work::rounds;
  const Question question = some_rounds(number, size);
  const rounds::Terrain terrain(question);
  const auto best = static_cast<rounds::Worth>(1e6 * reference::EveryRound(question).best());
  const rounds::Tours nothing = rounds::no_tours(terrain);
  const rounds::Ways ways(terrain);
  std::vector<rounds::BestTour> days;
  days.reserve(static_cast<std::size_t>(question.days));
  for (int day = 0; day < question.days; ++day) days.emplace_back(terrain, ways, day);
  rounds::Work work{2'000'000'000};
  if (question.days == 1 && question.limits.empty()) {
    const auto found = days[0].solve(terrain.scores(), 0, work);
    EXPECT_TRUE(found.finished && found.simple) << "question " << number;
    EXPECT_EQ(found.bound, best) << "question " << number;
  }
  const auto priced = rounds::price_places(terrain, days, nothing, work);
  ASSERT_TRUE(priced.found) << "question " << number;
  EXPECT_GE(priced.bound, best) << "question " << number;

  std::vector<rounds::Column> columns;
  for (int day = 0; day < question.days; ++day) {
    if (terrain.alike(day) != day) continue;
    std::vector<std::vector<int>> tours;
    const auto least = priced.best[static_cast<std::size_t>(day)] - (priced.bound - best);
    if (!days[static_cast<std::size_t>(day)].every(priced.net_worth, least, work, 60'000, tours)) return;
    for (const auto& stops : tours) {
      rounds::Worth score = 0;
      for (const int stop : stops) score += terrain.score(stop);
      columns.push_back({day, stops, score, 0});
    }
  }
  const auto put = rounds::put_together(terrain, columns, priced, nothing, work);
  if (!put.finished) return;
  ++closed;
  EXPECT_EQ(put.tours.score, best) << "question " << number;
}

TEST(RoundsOptimum, bound_and_proof_stand_by_themselves) {
  int closed = 0;
  for (std::uint64_t number = 1501; number <= 1520; ++number) {
    expect_bound_and_proof(number, {11, 1}, closed);
    expect_bound_and_proof(number, {11, 2, false, false, true}, closed);
    expect_bound_and_proof(number, {10, 2, true}, closed);
    expect_bound_and_proof(number, {10, 2, true, true}, closed);
  }
  EXPECT_GT(closed, 60);
}

void expect_as_the_program_says(std::uint64_t number, const RoundsSize& size) {
  const Question question = some_rounds(number, size);
  const auto best = garth::cbc_solver(200'000)(reference::RoundsProgram(question).program());
  ASSERT_TRUE(best.proven) << "question " << number;
  // 1e-6: the tolerance of the solver's own arithmetic; scores are whole.
  EXPECT_NEAR(answer_to(question).score, -best.value, 1e-6) << "question " << number;
}

TEST(RoundsOptimum, equals_the_mixed_integer_program) {
  const std::vector<RoundsSize> sizes{{5, 1}, {5, 2}, {6, 2, true}, {6, 2, false, true}, {5, 3, true, true}};
  for (std::size_t kind = 0; kind < sizes.size(); ++kind)
    for (std::uint64_t number = 2000 + 100 * kind; number < 2004 + 100 * kind; ++number)
      expect_as_the_program_says(number, sizes[kind]);
}

// With its preprocessing on the solver called less than can be done proven here.
TEST(RoundsOptimum, the_solver_proves_no_less_than_can_be_done) {
  for (const std::uint64_t number : {2216, 2219}) expect_as_the_program_says(number, {6, 2, true});
}

TEST(RoundsOptimum, larger_answers_can_be_done_and_no_more_work_goes_beyond_the_bound_of_less) {
  for (std::uint64_t number = 3001; number <= 3012; ++number) {
    Question question = some_rounds(number, {36, 4, number % 2 == 0, number % 3 == 0});
    question.effort = 1;
    const Answer quick = answer_to(question);
    question.effort = 10;
    question.seed += 1;
    const Answer slow = answer_to(question);
    expect_can_be_done(question, quick, number);
    expect_can_be_done(question, slow, number);
    EXPECT_GE(quick.bound.value_or(0), slow.score) << "question " << number;
    EXPECT_GE(slow.bound.value_or(0), quick.score) << "question " << number;
    EXPECT_EQ(quick.proven_optimal, quick.bound == quick.score) << "question " << number;
    EXPECT_GT(quick.score, 0);
  }
}

TEST(RoundsOptimum, the_same_question_has_the_same_answer_and_another_seed_none_worth_more_than_the_bound) {
  Question question = some_rounds(4001, {30, 3});
  question.effort = 3;
  const Answer once = answer_to(question), again = answer_to(question);
  EXPECT_EQ(once.routes, again.routes);
  EXPECT_EQ(once.bound, again.bound);
  question.seed += 1;
  EXPECT_LE(answer_to(question).score, once.bound.value());
}

}  // namespace
}  // namespace beegarth
