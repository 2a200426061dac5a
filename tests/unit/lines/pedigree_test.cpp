#include "lines/pedigree.hpp"

#include <gtest/gtest.h>

#include "reference/queens.hpp"

namespace beegarth::lines {
namespace {

using reference::drones_of;
using reference::queen;
using reference::unrelated;

// Where it is refused, or "taken".
std::string refused_at(std::vector<Queen> queens) {
  const auto made = Pedigree::of(std::move(queens));
  return made ? "taken" : made.problem().where;
}

Date day(int year, int month = 6) {
  return *Date::from_ymd(year, month, 1);
}

TEST(Pedigree, KnowsParentsInWhateverOrderTheyWereGiven) {
  const auto made = Pedigree::of(
      {queen("Cora", "Anna", "two"),
       queen("Anna", {}, {}, {drones_of("Bess", 1, {1, 3}, "one"), drones_of("Cora2", {}, {2, 3}, "two")}),
       queen("Bess"), queen("Cora2")});
  ASSERT_TRUE(made) << one_line(made.problem());
  EXPECT_EQ(made->mother(0), std::optional<std::size_t>(1));
  EXPECT_EQ(made->father(0), std::optional<std::size_t>(1));
  EXPECT_EQ(made->fathers_dams(0), std::vector<std::size_t>{3});
  EXPECT_EQ(made->oldest_first().back(), 0U);
  EXPECT_EQ(made->line(0), "Anna");
}

TEST(Pedigree, AQueenMayMateWithHerOwnSon) {
  EXPECT_EQ(refused_at({queen("Anna", {}, {}, {drones_of("Anna", 1)}), queen("Bess", "Anna")}), "taken");
}

TEST(Pedigree, NobodyIsHerOwnAncestor) {
  EXPECT_EQ(refused_at({queen("Anna", "Anna")}), "queens[0]");
  EXPECT_EQ(refused_at({queen("Anna", "Bess"), queen("Bess", "Anna")}), "queens[0]");
  // By her mother's mate: Cora's father is a son of her own granddaughter.
  EXPECT_EQ(refused_at({queen("Anna", {}, {}, {drones_of("Dora", 1)}), queen("Cora", "Anna"),
                        queen("Dora", "Cora")}),
            "queens[1]");
  const auto made = Pedigree::of({queen("Anna", "Bess"), queen("Bess", "Cora"), queen("Cora", "Anna")});
  ASSERT_FALSE(made);
  EXPECT_NE(made.problem().what.find("Anna, Bess, Cora, Anna"), std::string::npos) << made.problem().what;
}

TEST(Pedigree, AVeryLongLineIsTaken) {
  std::vector<Queen> queens{queen("0")};
  for (int i = 1; i < 20000; ++i) queens.push_back(queen(std::to_string(i), std::to_string(i - 1)));
  EXPECT_EQ(refused_at(queens), "taken");
}

TEST(Pedigree, UnknownAndDoubledNamesAreRefused) {
  EXPECT_EQ(refused_at({queen("Anna", "Bess")}), "queens[0].mother");
  EXPECT_EQ(refused_at({queen("Anna"), queen("Anna")}), "queens[1].id");
  EXPECT_EQ(refused_at({queen("")}), "queens[0].id");
  EXPECT_EQ(refused_at({queen("Anna", {}, {}, {drones_of("Bess")})}), "queens[0].mating[0].dam");
  EXPECT_EQ(refused_at({queen("Anna", {}, "one")}), "queens[0].father");
  EXPECT_EQ(refused_at({queen("Anna"), queen("Bess", "Anna", "one")}), "queens[1].father");
  EXPECT_EQ(refused_at({queen("Anna", {}, {}, {unrelated({}, {1, 2}, "x"), unrelated({}, {1, 2}, "x")})}),
            "queens[0].mating[1].name");
}

TEST(Pedigree, SharesComeToOneWhole) {
  const auto with = [](Share one, Share two, Share three) {
    return refused_at(
        {queen("Anna", {}, {}, {unrelated({}, one), unrelated({}, two), unrelated({}, three)})});
  };
  EXPECT_EQ(with({1, 3}, {1, 3}, {1, 3}), "taken");
  EXPECT_EQ(with({1, 2}, {1, 3}, {1, 6}), "taken");
  EXPECT_EQ(with({1, 2}, {1, 3}, {1, 7}), "queens[0].mating");
  EXPECT_EQ(with({3333333333, 10000000000}, {3333333333, 10000000000}, {3333333333, 10000000000}),
            "queens[0].mating");
  EXPECT_EQ(with({2, 1}, {-1, 2}, {-1, 2}), "queens[0].mating[1].share");
  EXPECT_EQ(with({1, 0}, {1, 2}, {1, 2}), "queens[0].mating[0].share");
}

TEST(Pedigree, DronesAreCountedFromOne) {
  EXPECT_EQ(refused_at({queen("Anna", {}, {}, {unrelated(0)})}), "queens[0].mating[0].drones");
  EXPECT_EQ(refused_at({queen("Anna", {}, {}, {unrelated(1001)})}), "queens[0].mating[0].drones");
}

TEST(Pedigree, DatesFollowEachOther) {
  Queen mother = queen("Anna", {}, {}, {drones_of("Cora")}), daughter = queen("Bess", "Anna"),
        dam = queen("Cora");
  mother.born = day(2024);
  mother.mated = day(2024, 7);
  daughter.born = day(2025);
  dam.born = day(2023);
  EXPECT_EQ(refused_at({mother, daughter, dam}), "taken");
  const auto with = [&](auto change) {
    auto a = mother, b = daughter, c = dam;
    change(a, b, c);
    return refused_at({a, b, c});
  };
  EXPECT_EQ(with([](Queen&, Queen& b, Queen&) { b.born = day(2024); }), "queens[1].born");
  EXPECT_EQ(with([](Queen& a, Queen&, Queen&) { a.mated = day(2023); }), "queens[0].mated");
  EXPECT_EQ(with([](Queen& a, Queen&, Queen&) { a.mated = day(2026); }), "queens[1].born");
  EXPECT_EQ(with([](Queen&, Queen&, Queen& c) { c.born = day(2024, 7); }), "queens[0].mated");
  EXPECT_EQ(with([](Queen& a, Queen&, Queen& c) { a.mated.reset(), c.born = day(2025); }), "queens[1].born");
}

}  // namespace
}  // namespace beegarth::lines
