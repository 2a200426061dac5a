#include "lines/ancestry.hpp"

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

std::string standing(const Pedigree& pedigree, std::size_t queen, const std::string& way) {
  return way.empty() ? "" : pedigree.queen(queen).id.text() + "'s " + way;
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
  const std::string one = pedigree.queen(first).id.text(), other = pedigree.queen(second).id.text();
  if (first == second) return "the drones are " + one + "'s own sons";
  const std::string ancestor = pedigree.queen(shared.queen).id.text();
  if (shared.to_first.empty()) return one + " is " + standing(pedigree, second, shared.to_second);
  if (shared.to_second.empty()) return other + " is " + standing(pedigree, first, shared.to_first);
  return one + " and " + other + " share " + ancestor + " (" + standing(pedigree, first, shared.to_first) +
         ", " + standing(pedigree, second, shared.to_second) + ")";
}

}  // namespace beegarth::lines
