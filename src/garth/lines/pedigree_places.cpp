#include "garth/lines/pedigree_places.hpp"

#include <algorithm>

namespace beegarth::garth {

std::vector<PedigreePlace> pedigree_places(const lines::Pedigree& pedigree) {
  std::vector<PedigreePlace> places(pedigree.size());
  std::vector<std::vector<std::size_t>> daughters(pedigree.size());
  const auto order = pedigree.oldest_first();
  for (const std::size_t queen : order) {
    const auto mother = pedigree.mother(queen);
    if (!mother) continue;
    daughters[*mother].push_back(queen);
    places[queen].column = places[*mother].column + 1;
    for (const std::size_t dam : pedigree.fathers_dams(queen))
      places[queen].column = std::max(places[queen].column, places[dam].column + 1);
  }
  // Walks down each mother line: who has no daughter takes the next free row.
  std::vector<std::size_t> walk;
  for (auto queen = order.rbegin(); queen != order.rend(); ++queen)
    if (!pedigree.mother(*queen)) walk.push_back(*queen);
  std::size_t free_row = 0;
  while (!walk.empty()) {
    const std::size_t queen = walk.back();
    walk.pop_back();
    if (daughters[queen].empty()) places[queen].row = free_row++;
    walk.insert(walk.end(), daughters[queen].rbegin(), daughters[queen].rend());
  }
  for (auto queen = order.rbegin(); queen != order.rend(); ++queen)
    if (!daughters[*queen].empty())
      places[*queen].row = places[daughters[*queen][(daughters[*queen].size() - 1) / 2]].row;
  return places;
}

}  // namespace beegarth::garth
