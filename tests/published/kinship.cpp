// Kinship among honey bees, each figure with its source, as exact fractions.
#include <gtest/gtest.h>

#include "lines/exact_kinship.hpp"
#include "reference/queens.hpp"

namespace beegarth {
namespace {

using lines::ExactKinship;
using lines::Pedigree;
using lines::Queen;
using reference::drones_of;
using reference::queen;
using reference::unrelated;

Pedigree pedigree(std::vector<Queen> queens) {
  auto made = Pedigree::of(std::move(queens));
  EXPECT_TRUE(made) << one_line(made.problem());
  return *made;
}

std::string relationship(const Pedigree& queens, const char* a, const char* b) {
  return lines::text(
      ExactKinship(queens).relationship(*queens.find(lines::QueenId(a)), *queens.find(lines::QueenId(b))));
}

std::string inbreeding(const Pedigree& queens, const char* name) {
  return lines::text(ExactKinship(queens).inbreeding(*queens.find(lines::QueenId(name))));
}

// Dora's mates are two drones of Rosa; Anna and Bess are of the first, Cora of the second. Edda is by a drone
// of nobody's, the third part, and Fern by another such.
Pedigree sisters() {
  return pedigree({queen("Rosa"),
                   queen("Dora", {}, {},
                         {drones_of("Rosa", 1, {1, 4}, "one"), drones_of("Rosa", 1, {1, 4}, "two"),
                          unrelated(1, {1, 4}, "three"), unrelated(1, {1, 4}, "four")}),
                   queen("Anna", "Dora", "one", {unrelated(1)}), queen("Bess", "Dora", "one"),
                   queen("Cora", "Dora", "two"), queen("Edda", "Dora", "three", {unrelated(1)}),
                   queen("Fern", "Dora", "four", {unrelated(1)}), queen("Gwen", "Edda"),
                   queen("Hild", "Fern")});
}

// Textbook relatednesses in haplodiploid families (a behavioural-ecology textbook and a university course
// page): 3/4 super-sisters, 1/2 mother and daughter, 1/4 half sisters. Full sisters by two drones of one dam,
// and cousins: derived by hand from the same recursion.
TEST(PublishedKinship, sisters_are_as_near_as_their_fathers_make_them) {
  EXPECT_EQ(relationship(sisters(), "Anna", "Bess"), "3/4");
  EXPECT_EQ(relationship(sisters(), "Anna", "Cora"), "1/2");
  EXPECT_EQ(relationship(sisters(), "Anna", "Edda"), "1/4");
  EXPECT_EQ(relationship(sisters(), "Edda", "Fern"), "1/4");
  EXPECT_EQ(relationship(sisters(), "Dora", "Anna"), "1/2");
  EXPECT_EQ(relationship(sisters(), "Gwen", "Hild"), "1/16");
}

// A drone is a gamete of his dam: on the scale of queens his relationship with her is that of the queen with
// herself.
TEST(PublishedKinship, a_son_is_all_his_mothers) {
  const Pedigree one = pedigree({queen("Anna", {}, {}, {drones_of("Anna", 1)})});
  const auto son_with_mother = ExactKinship(one).daughters_inbreeding(0, one.mating(0));
  EXPECT_EQ(lines::text(2 * son_with_mother), "1");
}

// Mean relationship of workers 1/4 + 1/(2n) by n unrelated drones of equal share (Crozier & Pamilo 1996, from
// memory).
TEST(PublishedKinship, workers_are_less_akin_the_more_drones_there_were) {
  struct Case {
    int drones;
    const char* relationship;
  };
  for (const Case& c : {Case{1, "3/4"}, {2, "1/2"}, {10, "3/10"}, {15, "17/60"}}) {
    const Pedigree one = pedigree({queen("Anna", {}, {}, {unrelated(c.drones)})});
    EXPECT_EQ(lines::text(ExactKinship(one).daughters_relationship(0, one.mating(0))), c.relationship);
    // The same as ten single drones that are named.
    std::vector<lines::Drones> each;
    for (int i = 0; i < c.drones; ++i) each.push_back(unrelated(1, {1, c.drones}));
    const Pedigree other = pedigree({queen("Anna", {}, {}, each)});
    EXPECT_EQ(lines::text(ExactKinship(other).daughters_relationship(0, other.mating(0))), c.relationship);
  }
}

// By exact recursion, apart from this program.
TEST(PublishedKinship, daughters_of_close_matings_are_inbred) {
  const Pedigree own_son =
      pedigree({queen("Anna", {}, {}, {drones_of("Anna", 1)}),
                queen("Bess", "Anna", {}, {drones_of("Anna", 1)}), queen("Cora", "Bess")});
  EXPECT_EQ(inbreeding(own_son, "Bess"), "1/2");
  EXPECT_EQ(inbreeding(own_son, "Cora"), "1/2");

  const auto crossed_with = [](const char* father_of_sister) {
    return pedigree({queen("Dora", {}, {}, {unrelated(1, {1, 2}, "one"), unrelated(1, {1, 2}, "two")}),
                     queen("Anna", "Dora", "one", {drones_of("Bess", 1)}),
                     queen("Bess", "Dora", father_of_sister), queen("Cora", "Anna")});
  };
  EXPECT_EQ(inbreeding(crossed_with("one"), "Cora"), "3/8");  // drone of a super-sister
  EXPECT_EQ(inbreeding(crossed_with("two"), "Cora"), "1/8");  // drone of a half sister
}

// Falconer & Mackay 1996, the series of full-sib mating (from memory): with one drone, a queen and her
// brother are to their daughters what brother and sister are elsewhere.
TEST(PublishedKinship, sister_with_brother_again_and_again_gives_the_classical_series) {
  std::vector<Queen> queens{queen("0", {}, {}, {unrelated(1)}), queen("1", "0", {}, {drones_of("0", 1)})};
  for (int generation = 2; generation <= 10; ++generation) {
    const std::string mother = std::to_string(generation - 1);
    queens.push_back(queen(std::to_string(generation), mother.c_str(), {}, {drones_of(mother.c_str(), 1)}));
  }
  const Pedigree line = pedigree(queens);
  const char* const series[] = {"1/4",   "3/8",     "1/2",     "19/32", "43/64",
                                "47/64", "201/256", "423/512", "55/64"};
  for (int generation = 1; generation <= 9; ++generation)
    EXPECT_EQ(inbreeding(line, std::to_string(generation + 1).c_str()), series[generation - 1]) << generation;
}

}  // namespace
}  // namespace beegarth
