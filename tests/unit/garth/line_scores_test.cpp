// Each score with the queen who was there and the site of its own day. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "garth/lines/scores.hpp"
#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

const QueenId ada("ada"), eve("eve");

ToldBook with_queens() {
  ToldBook book;
  book.must(day_of(1, 3), entries::QueenBegan{.queen = ada, .name = "Ada"});
  book.must(day_of(1, 3), entries::QueenBegan{.queen = eve, .name = "Eve"});
  return book;
}

lines::Pedigree both() {
  std::vector<lines::Queen> queens(2);
  queens[0].id = lines::QueenId("ada");
  queens[1].id = lines::QueenId("eve");
  return *lines::Pedigree::of(std::move(queens));
}

entries::Queen seen(const QueenId& queen) {
  return {.colony = alder, .event = entries::QueenEvent::seen, .which = queen};
}
entries::Score calm(double score, std::optional<QueenId> queen = {}) {
  return {.colony = alder, .queen = std::move(queen), .trait = "calm", .score = score};
}

struct Told {
  std::vector<lines::Score> scores;
  std::vector<std::string> remarks;
};
Told told(const ToldBook& book) {
  Told all;
  const auto standing = book.standing(day_of(12, 31));
  all.scores = scores_in(standing, both(), all.remarks);
  return all;
}

TEST(LineScores, stay_with_the_site_where_the_colony_stood_then) {
  ToldBook book = with_queens();
  book.must(day_of(5, 1), calm(4, ada));
  book.must(day_of(6, 1), entries::ColonyMoved{.colony = alder, .hive = HiveId("h4")});
  book.must(day_of(7, 1), calm(3, ada));
  const Told all = told(book);
  ASSERT_THAT(all.scores, SizeIs(2));
  EXPECT_EQ(all.scores[0].site, "bank");
  EXPECT_EQ(all.scores[1].site, "yard");
}

TEST(LineScores, without_a_queen_are_of_her_who_was_there_then) {
  ToldBook book = with_queens();
  book.must(day_of(5, 1), seen(ada));
  book.must(day_of(5, 9), calm(4));
  book.must(day_of(6, 1), seen(eve));
  book.must(day_of(6, 9), calm(2));
  const Told all = told(book);
  ASSERT_THAT(all.scores, SizeIs(2));
  EXPECT_NE(all.scores[0].queen, all.scores[1].queen);
  EXPECT_THAT(all.remarks, IsEmpty());
}

TEST(LineScores, of_a_colony_whose_queen_nobody_told_of_are_left_out_and_said_to_be) {
  ToldBook book = with_queens();
  book.must(day_of(5, 9), calm(4));
  book.must(day_of(5, 10), seen(ada));
  book.must(day_of(5, 11), entries::Queen{.colony = alder, .event = entries::QueenEvent::lost});
  book.must(day_of(5, 12), calm(1));
  const Told all = told(book);
  EXPECT_THAT(all.scores, IsEmpty());
  ASSERT_THAT(all.remarks, SizeIs(1));
  EXPECT_THAT(all.remarks.front(), HasSubstr("2 scores of Alder name no queen"));
}

}  // namespace
}  // namespace beegarth::garth
