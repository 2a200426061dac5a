#include "lines/ancestry.hpp"

#include <gmock/gmock.h>

#include "reference/queens.hpp"

namespace beegarth::lines {
namespace {

using reference::drones_of;
using reference::queen;
using reference::unrelated;

std::vector<std::string> shared(const Pedigree& pedigree, const char* first, const char* second) {
  const std::size_t a = *pedigree.find(QueenId(first)), b = *pedigree.find(QueenId(second));
  std::vector<std::string> words;
  for (const auto& ancestor : shared_ancestors(pedigree, a, b))
    words.push_back(in_words(pedigree, a, b, ancestor));
  return words;
}

Pedigree family() {
  return *Pedigree::of({queen("Rosa"), queen("Dora", {}, {}, {drones_of("Rosa", 4)}), queen("Anna", "Dora"),
                        queen("Bess", "Dora", {}, {unrelated()}), queen("Cora", "Bess"),
                        queen("Edda", {}, {}, {drones_of("Rosa")}), queen("Fern", "Edda"), queen("Gwen")});
}

using testing::ElementsAre;
using testing::IsEmpty;

TEST(SharedAncestors, SistersShareTheirMotherAndHerMates) {
  EXPECT_THAT(
      shared(family(), "Anna", "Bess"),
      ElementsAre(
          "Anna and Bess share Rosa (Anna's father's mother, Bess's father's mother)",
          "Anna and Bess share Dora (Anna's mother, Bess's mother) and, by a chance of 0.25, their father"));
}

TEST(SharedAncestors, AreFoundOnTheDroneSideToo) {
  EXPECT_THAT(
      shared(family(), "Cora", "Fern"),
      ElementsAre("Cora and Fern share Rosa (Cora's mother's father's mother, Fern's father's mother)"));
}

TEST(SharedAncestors, MothersAndDaughtersAreNamedAsSuch) {
  EXPECT_THAT(shared(family(), "Cora", "Dora"), ElementsAre("Dora is Cora's mother's mother"));
  EXPECT_THAT(shared(family(), "Dora", "Cora"), ElementsAre("Dora is Cora's mother's mother"));
  EXPECT_THAT(shared(family(), "Anna", "Anna"), ElementsAre("the drones are Anna's own sons"));
  EXPECT_THAT(shared(family(), "Anna", "Gwen"), IsEmpty());
}

TEST(OneFather, IsAsLikelyAsTheDronesAreFew) {
  const auto by = [](std::vector<Drones> mating, std::optional<std::string> first,
                     std::optional<std::string> second) {
    const auto pedigree = *Pedigree::of({queen("Dora", {}, {}, std::move(mating)),
                                         queen("Anna", "Dora", first), queen("Bess", "Dora", second)});
    return chance_of_one_father(pedigree, 1, 2);
  };
  EXPECT_EQ(by({unrelated(1)}, {}, {}), 1);
  EXPECT_EQ(by({unrelated(4)}, {}, {}), 0.25);
  EXPECT_EQ(by({unrelated()}, {}, {}), 0);
  const std::vector<Drones> two{unrelated(1, {1, 2}, "one"), unrelated(2, {1, 2}, "two")};
  EXPECT_EQ(by(two, {}, {}), 0.25 + 0.25 / 2);
  EXPECT_EQ(by(two, "one", "two"), 0);
  EXPECT_EQ(by(two, "two", {}), 0.25);
}

}  // namespace
}  // namespace beegarth::lines
