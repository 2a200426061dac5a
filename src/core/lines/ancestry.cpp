#include "lines/ancestry.hpp"

#include <cstdio>
#include <deque>
#include <map>
#include <set>

namespace beegarth::lines {
namespace {

using Ways = std::map<std::size_t, std::string>;

std::vector<std::pair<std::size_t, std::string>> steps(const Pedigree& pedigree, std::size_t queen) {
  std::vector<std::pair<std::size_t, std::string>> up;
  if (const auto mother = pedigree.mother(queen)) up.emplace_back(*mother, "mother");
  for (const std::size_t dam : pedigree.fathers_dams(queen)) up.emplace_back(dam, "father's mother");
  return up;
}

// The shortest way up to every ancestor, the queen herself included.
Ways ways_up(const Pedigree& pedigree, std::size_t queen) {
  Ways ways{{queen, ""}};
  std::deque<std::size_t> next{queen};
  while (!next.empty()) {
    const std::size_t at = next.front();
    next.pop_front();
    const std::string before = ways[at].empty() ? "" : ways[at] + "'s ";
    for (const auto& [parent, step] : steps(pedigree, at))
      if (ways.emplace(parent, before + step).second) next.push_back(parent);
  }
  return ways;
}

std::string rounded(double chance) {
  char text[32];
  std::snprintf(text, sizeof text, "%.2g", chance);
  return text;
}

std::string standing(const Pedigree& pedigree, std::size_t queen, const std::string& way) {
  return way.empty() ? "" : pedigree.called(queen) + "'s " + way;
}

}  // namespace

std::vector<SharedAncestor> shared_ancestors(const Pedigree& pedigree, std::size_t first,
                                             std::size_t second) {
  const Ways of_first = ways_up(pedigree, first), of_second = ways_up(pedigree, second);
  std::set<std::size_t> shared, beyond;
  for (const auto& [queen, way] : of_first)
    if (of_second.count(queen) != 0) shared.insert(queen);
  for (const std::size_t queen : shared)
    for (const auto& [parent, step] : steps(pedigree, queen)) beyond.insert(parent);
  std::vector<SharedAncestor> nearest;
  for (const std::size_t queen : shared)
    if (beyond.count(queen) == 0) nearest.push_back({queen, of_first.at(queen), of_second.at(queen)});
  return nearest;
}

std::string in_words(const Pedigree& pedigree, std::size_t first, std::size_t second,
                     const SharedAncestor& shared) {
  const std::string one = pedigree.called(first), other = pedigree.called(second);
  if (first == second) return "the drones are " + one + "'s own sons";
  const std::string ancestor = pedigree.called(shared.queen);
  if (shared.to_first.empty()) return one + " is " + standing(pedigree, second, shared.to_second);
  if (shared.to_second.empty()) return other + " is " + standing(pedigree, first, shared.to_first);
  std::string words = one + " and " + other + " share " + ancestor + " (" +
                      standing(pedigree, first, shared.to_first) + ", " +
                      standing(pedigree, second, shared.to_second) + ")";
  if (pedigree.mother(first) != shared.queen) return words;
  const double chance = chance_of_one_father(pedigree, first, second);
  if (chance >= 1) return words + " and their father";
  return chance > 0 ? words + " and, by a chance of " + rounded(chance) + ", their father" : words;
}

double chance_of_one_father(const Pedigree& pedigree, std::size_t first, std::size_t second) {
  const auto mother = pedigree.mother(first);
  if (!mother || first == second || pedigree.mother(second) != mother) return 0;
  const auto mating = pedigree.mating(*mother);
  double chance = 0;
  for (std::size_t part = 0; part < mating.size(); ++part) {
    if (!mating[part].number) continue;
    const double share =
        static_cast<double>(mating[part].share.part) / static_cast<double>(mating[part].share.of);
    const auto is_of = [&](std::size_t queen) {
      const auto father = pedigree.father(queen);
      return father ? (*father == part ? 1.0 : 0.0) : share;
    };
    chance += is_of(first) * is_of(second) / *mating[part].number;
  }
  return chance;
}

}  // namespace beegarth::lines
