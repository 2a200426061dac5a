// A hive is asked for nothing that it cannot take or show; each refusal names what to do instead.
#include <algorithm>
#include <string>

#include "garth/gates/gates.hpp"
#include "garth/ledgers/comb_stays.hpp"
#include "garth/plan/dwelling.hpp"

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
std::string combs_in_words(int combs) {
  return std::to_string(combs) + (combs == 1 ? " comb" : " combs");
}

constexpr const char* beside_the_nest =
    "give room beside the nest: brood_combs for the combs or bars that the follower is moved by; or correct "
    "the "
    "hive: can_super";

// What a hive would hold, against what it says that it takes. One that does not say is taken to grow.
Outcome holds(const entries::Hive& hive, const HiveCombs& combs) {
  if (combs.boxes > 0 && !dwelling_of(hive).can_super)
    return cannot(hive, "takes no box on top", beside_the_nest);
  if (hive.super_combs_max && combs.boxes > *hive.super_combs_max)
    return cannot(hive,
                  "takes " + combs_in_words(*hive.super_combs_max) + " in boxes on top, and would hold " +
                      std::to_string(combs.boxes),
                  "check the number, or correct the hive: super_combs_max");
  if (hive.brood_combs_max && combs.nest > *hive.brood_combs_max)
    return cannot(hive,
                  "takes " + combs_in_words(*hive.brood_combs_max) + " in the nest, and would hold " +
                      std::to_string(combs.nest),
                  "check the number, or correct the hive: brood_combs_max");
  return Done{};
}
HiveCombs combs_now(const Known& known, const HiveId& hive) {
  const auto stays = comb_stays_on(known.standing, known.day);
  const auto there = stays.hives.find(hive);
  return there == stays.hives.end() ? HiveCombs{} : there->second;
}

Outcome can_do(const Known&, const entries::Hive& hive) {
  return holds(hive, {hive.brood_combs, hive.super_combs.value_or(0)});
}
Outcome can_do(const Known& known, const entries::Room& room) {
  const auto* hive = hive_of(known, room.colony);
  const int boxes = room.super_combs.value_or(0), nest = room.brood_combs.value_or(0);
  if (hive == nullptr) return Done{};
  const HiveCombs before = combs_now(known, hive->hive);
  // Supers that nobody told of when the hive was entered may come off all the same.
  const bool told_of_boxes = hive->super_combs || before.boxes > 0;
  if (told_of_boxes && before.boxes + boxes < 0)
    return cannot(*hive, "has " + combs_in_words(before.boxes) + " in boxes on top", "check the number");
  if (before.nest + nest < 0)
    return cannot(*hive, "has " + combs_in_words(before.nest) + " in the nest", "check the number");
  if (boxes <= 0 && nest <= 0) return Done{};
  HiveCombs after;  // only what is added to is asked after
  if (boxes > 0) after.boxes = before.boxes + boxes;
  if (nest > 0) after.nest = before.nest + nest;
  return holds(*hive, after);
}
Outcome can_do(const Known& known, const entries::Harvest& harvest) {
  const auto* hive = hive_of(known, harvest.colony);
  if (hive == nullptr || !harvest.combs) return Done{};
  const facts::Dwelling takes = dwelling_of(*hive);
  const HiveCombs now = combs_now(known, hive->hive);
  const int most = std::max(takes.brood_combs_max, now.nest) + std::max(takes.super_combs_max, now.boxes);
  if (*harvest.combs <= most) return Done{};
  return cannot(*hive,
                "takes " + combs_in_words(most) + " in all, and " + std::to_string(*harvest.combs) +
                    " would be harvested from it",
                "check the number, enter a harvest for each time, or correct what the hive takes");
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
  if (look.super_share && !dwelling_of(*hive).can_super)
    return cannot(*hive, "takes no box on top, so none is full",
                  "say the combs of honey beside the nest: store_combs; or correct the hive: can_super");
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
