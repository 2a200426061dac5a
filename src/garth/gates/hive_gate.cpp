// A hive is asked for nothing that it cannot take or show; each refusal names what to do instead.
#include <algorithm>
#include <string>

#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

const entries::Hive* hive_of(const Known& known, const ColonyId& colony) {
  const auto at = known.state.colonies.find(colony);
  if (at == known.state.colonies.end()) return nullptr;
  const auto hive = known.state.hives.find(at->second.hive);
  return hive == known.state.hives.end() ? nullptr : &hive->second;
}

Outcome cannot(const entries::Hive& hive, const std::string& what, const std::string& instead) {
  return bad_input("the hive '" + hive.name + "' " + what, "hive " + hive.hive.text(), instead);
}

Outcome can_do(const Known& known, const entries::Room& room) {
  const auto* hive = hive_of(known, room.colony);
  if (hive == nullptr || room.super_combs.value_or(0) <= 0) return Done{};
  if (hive->can_super.value_or(hive->form == entries::HiveForm::upright)) return Done{};
  return cannot(*hive, "takes no box on top",
                "give room beside the nest: brood_combs for the combs or bars that the follower is moved by");
}
Outcome can_do(const Known& known, const entries::MiteCount& count) {
  const auto* hive = hive_of(known, count.colony);
  if (hive == nullptr || count.method != entries::MiteMethod::board || hive->can_board.value_or(true))
    return Done{};
  return cannot(*hive, "has no place for a board", "count by a sugar roll or a wash");
}
Outcome can_do(const Known& known, const entries::Weight& weight) {
  const auto* hive = hive_of(known, weight.colony);
  if (hive == nullptr || weight.what != entries::Weighed::whole_hive || hive->can_heft.value_or(true))
    return Done{};
  return cannot(*hive, "cannot be lifted or weighed", "say the stores that you see: what = stores");
}
// The queen may have laid in the supers too.
Outcome brood_fits(const entries::Hive& hive, const entries::Inspection& look) {
  if (!hive.brood_combs_max || !look.brood_combs) return Done{};
  const int most =
      *hive.brood_combs_max + std::max(hive.super_combs.value_or(0), hive.super_combs_max.value_or(0));
  if (*look.brood_combs <= most) return Done{};
  return bad_input("the hive '" + hive.name + "' takes " + std::to_string(most) + " combs at most",
                   "brood_combs", "check the number, or correct what the hive takes");
}
Outcome can_do(const Known& known, const entries::Inspection& look) {
  const auto* hive = hive_of(known, look.colony);
  if (hive == nullptr) return Done{};
  if (Outcome fits = brood_fits(*hive, look); !fits) return fits;
  if (!look.seams || hive->can_see_seams.value_or(true)) return Done{};
  return cannot(*hive, "shows no seams", "count combs covered with bees, or say bees as an estimate");
}
template <class Other>
Outcome can_do(const Known&, const Other&) {
  return Done{};
}

}  // namespace

Outcome hive_gate(const Known& known, const book::Draft& draft) {
  return std::visit([&](const auto& said) { return can_do(known, said); }, draft.payload);
}

}  // namespace beegarth::garth
