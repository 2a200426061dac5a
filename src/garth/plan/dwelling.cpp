#include "garth/plan/dwelling.hpp"

#include <algorithm>

namespace beegarth::garth {

facts::Dwelling dwelling_of(const entries::Hive& hive) {
  facts::Dwelling d;
  const bool horizontal = hive.form == entries::HiveForm::horizontal;
  d.form = horizontal ? facts::HiveForm::horizontal : facts::HiveForm::upright;
  d.type = hive.type;
  d.brood_combs = hive.brood_combs;
  d.super_combs = hive.super_combs.value_or(0);
  d.undrawn_combs = hive.undrawn_combs.value_or(0);
  d.worker_cells_per_comb = hive.worker_cells_per_comb.value_or(d.worker_cells_per_comb);
  d.honey_kg_per_comb = hive.honey_kg_per_comb.value_or(d.honey_kg_per_comb);
  d.bees_per_seam = hive.bees_per_seam.value_or(d.bees_per_seam);
  d.conductance_W_K = hive.conductance_W_K.value_or(d.conductance_W_K);
  d.mesh_floor = hive.mesh_floor.value_or(false);
  d.sheltered = hive.sheltered.value_or(false);
  // A nucleus box is grown out of, not added to: the next step is a full hive. From memory: boxes of up to
  // six combs are sold and made as nuclei.
  constexpr int nucleus_combs = 6;
  const bool nucleus = !horizontal && d.brood_combs <= nucleus_combs;
  // A horizontal hive holds what its length holds; an upright one takes boxes until a ladder is wanted.
  d.brood_combs_max =
      std::max(d.brood_combs,
               hive.brood_combs_max.value_or(horizontal || nucleus ? d.brood_combs : 2 * d.brood_combs));
  d.can_super = hive.can_super.value_or(!horizontal && !nucleus);
  d.super_combs_max = std::max(d.super_combs, hive.super_combs_max.value_or(d.can_super ? 40 : 0));
  d.can_board = hive.can_board.value_or(d.mesh_floor);
  d.can_heft = hive.can_heft.value_or(!horizontal);
  d.can_see_seams = hive.can_see_seams.value_or(true);
  return d;
}

facts::Dwelling half_of(facts::Dwelling shared) {
  const auto half = [](int combs) { return (combs + 1) / 2; };
  shared.brood_combs = half(shared.brood_combs);
  shared.brood_combs_max = std::max(shared.brood_combs, half(shared.brood_combs_max));
  shared.super_combs = half(shared.super_combs);
  shared.super_combs_max = std::max(shared.super_combs, half(shared.super_combs_max));
  shared.undrawn_combs = half(shared.undrawn_combs);
  shared.conductance_W_K /= 2;
  shared.two_colonies = true;
  return shared;
}

facts::Dwelling home_of(const book::State& state, const book::ColonyState& colony) {
  const auto hive = state.hives.find(colony.hive);
  if (hive == state.hives.end()) return {};
  const auto there = std::count_if(state.colonies.begin(), state.colonies.end(), [&](const auto& other) {
    return !other.second.ended && other.second.hive == colony.hive;
  });
  return there > 1 ? half_of(dwelling_of(hive->second)) : dwelling_of(hive->second);
}

}  // namespace beegarth::garth
