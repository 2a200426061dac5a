#include "garth/lines/descent.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "garth/lines/book_lines.hpp"
#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

entries::QueenBegan queen(const char* key, const char* name, const char* mother = "") {
  entries::QueenBegan began{.queen = QueenId(key), .name = name};
  if (*mother != '\0') began.mother = QueenId(mother);
  return began;
}

TEST(Descent, no_queen_is_entered_as_her_own_ancestor) {
  ToldBook book;
  book.must(day_of(2, 1), queen("q1", "Ash"));
  const EntryId first = book.last();
  book.must(day_of(2, 2), queen("q2", "Birch", "q1"));
  book.must(day_of(2, 3), queen("q3", "Cherry", "q2"));
  EXPECT_THAT(book.say(day_of(2, 1), queen("q1", "Ash", "q3"), first),
              HasSubstr("'Ash' and 'Cherry' and 'Birch' would each descend from the other"));
  // By way of the drones that her mother mated with.
  EXPECT_THAT(
      book.say(day_of(2, 9), entries::QueenMated{.queen = QueenId("q1"), .drone_mothers = {QueenId("q3")}}),
      HasSubstr("would each descend from the other"));
  EXPECT_THAT(book.say(day_of(2, 1), queen("q1", "Ash tree"), first), IsEmpty());
}

// Such a book can only come from elsewhere.
TEST(Descent, a_circle_is_told_in_names_and_the_rest_is_shown) {
  const std::string path = testing::TempDir() + "circle.garth";
  std::filesystem::remove(path);
  {
    auto book = book::Book::open(path, {.create = true}, machine_surroundings());
    ASSERT_TRUE(book) << book.problem().what;
    const Date day = day_of(2, 1);
    const auto kept = book->append({{.happened = day, .payload = queen("q1", "Ash", "q2")},
                                    {.happened = day, .payload = queen("q2", "Birch", "q1")},
                                    {.happened = day, .payload = queen("q3", "Cherry", "q2")},
                                    {.happened = day, .payload = queen("q4", "Damson", "nobody")}});
    ASSERT_TRUE(kept) << kept.problem().what;
  }
  const auto session = open_session(path, {.today = day_of(3, 1)});
  ASSERT_TRUE(session) << session.problem().what;
  const auto lines = lines_of(*session);
  ASSERT_TRUE(lines) << lines.problem().what;
  EXPECT_THAT(lines->names, ElementsAre("Ash", "Birch", "Cherry", "Damson"));
  EXPECT_EQ(lines->pedigree.mother(2), 1U);
  EXPECT_THAT(lines->remarks, ElementsAre(HasSubstr("'nobody', who is not in the book"),
                                          HasSubstr("Ash and Birch would descend from each other")));
  EXPECT_THAT(lines_text(*lines), HasSubstr("Ash and Birch would descend from each other"));
}

}  // namespace
}  // namespace beegarth::garth
