#include "colony/act.hpp"

#include <algorithm>
#include <cmath>

#include "colony/rows.hpp"

namespace beegarth::colony {
namespace {

float f(double x) {
  return static_cast<float>(x);
}

// The rows of adult workers; the luck of an action is drawn apart from the luck of the day.
constexpr std::array<int, 3> home_pools{row::old_hive, row::winter, row::winter_harmed};

class Hands {
 public:
  Hands(Ensemble& ensemble, const Model& model, Date date, const NoiseKey& noise)
      : e_(ensemble), model_(model), date_(date), noise_(noise), turn_(Access::turn(ensemble)) {}

  // What finds no room in any comb stays in the feeder.
  void operator()(const Feed& feed) {
    const facts::Dwelling& d = Access::dwelling(e_);
    const float room = f((d.brood_combs + d.super_combs) * d.honey_kg_per_comb);
    each([&](int i) {
      const float free = std::max(room - at(row::stores, i) - at(row::nectar, i), 0.0F);
      at(row::nectar, i) += std::min(f(feed.stores_kg), free);
      at(row::pollen, i) += f(feed.pollen_kg);
    });
  }

  void operator()(const AddRoom& room) {
    facts::Dwelling& d = Access::dwelling(e_);
    d.brood_combs = std::max(d.brood_combs + room.brood_combs, 0);
    d.super_combs = std::max(d.super_combs + room.super_combs, 0);
    // New combs to draw are counted to the supers first, if any were added, since nests are mostly given
    // drawn ones.
    const int above = std::clamp(room.undrawn_combs, 0, std::max(room.super_combs, 0));
    const int nest = std::max(room.undrawn_combs - above, 0);
    each([&](int i) {
      at(row::undrawn_super, i) = std::min(at(row::undrawn_super, i) + f(above), f(d.super_combs));
      at(row::undrawn_nest, i) = std::min(at(row::undrawn_nest, i) + f(nest), f(d.brood_combs));
    });
  }

  void operator()(const Treat& treatment) {
    const TreatmentKind* kind = model_.treatment(treatment.kind);
    if (kind == nullptr) kind = model_.treatment("other");
    if (kind == nullptr) return;
    Access::start_treatment(e_, *kind, treatment.days > 0 ? f(treatment.days) : kind->days);
  }

  void operator()(const RemoveDroneComb& comb) {
    const float stays = 1 - std::clamp(f(comb.share), 0.0F, 1.0F);
    each([&](int i) {
      for (int age = drone_capping_age; age < drone_days; ++age) at(drone_row(turn_, age), i) *= stays;
      for (int day = 0; day < drone_capped_days; ++day) at(drone_mites_row(turn_, day), i) *= stays;
    });
  }

  void operator()(const RemoveBrood& brood) {
    const float stays = 1 - std::clamp(f(brood.share), 0.0F, 1.0F);
    each([&](int i) { scale_brood(i, stays); });
  }

  void operator()(const CutCells&) {
    each([&](int i) {
      at(row::cells, i) = 0;
      at(row::cell_age, i) = 0;
      at(row::cells_are_swarm, i) = 0;
    });
  }
  void operator()(const CageQueen&) {
    each([&](int i) { at(row::caged, i) = 1; });
  }
  void operator()(const ReleaseQueen&) {
    each([&](int i) { at(row::caged, i) = 0; });
  }
  void operator()(const QueenLost&) {
    each([&](int i) { lose_queen(i); });
  }

  void operator()(const IntroduceQueen& given) {
    each([&](int i) {
      // A colony that has a queen kills the stranger.
      if (at(row::queen, i) > 0 || stream(i).uniform() >= given.accepted) return;
      at(row::queen, i) = 1;
      at(row::mated, i) = given.mated ? 1.0F : 0.0F;
      at(row::queen_clock, i) = 0;
      at(row::queen_age, i) = 30;
      at(row::vigour, i) = 1;
      at(row::caged, i) = 0;
      at(row::cells, i) = 0;
      at(row::cells_are_swarm, i) = 0;
    });
  }

  void operator()(const GiveCell&) {
    each([&](int i) {
      if (at(row::queen, i) > 0) return;
      at(row::cells, i) = 1;
      at(row::cell_age, i) = cell_emerging_age - 2;
      at(row::cells_are_swarm, i) = 0;
    });
  }

  void operator()(const SwarmSeen& seen) {
    const float share = seen.share > 0 ? f(std::min(seen.share, 0.95)) : model_.rates.swarm_share;
    each([&](int i) {
      if (at(row::queen, i) == 0 || at(row::mated, i) == 0) return;
      const float provisions = bees(i) * share * model_.rates.swarm_honey_g_per_bee * 1e-3F;
      at(row::stores, i) = std::max(at(row::stores, i) - provisions, 0.0F);
      leave(i, share, share);
      lose_queen(i);
      at(row::cells, i) = model_.rates.swarm_cells;
      at(row::cell_age, i) = cell_sealed_age;
      at(row::cells_are_swarm, i) = 1;
      note(i, Event::swarm_preparation);
      note(i, Event::swarm);
    });
  }

  void operator()(const SplitAway& split) {
    each([&](int i) {
      const float foragers = split.foragers_stay ? 0.0F : f(split.bees_share);
      leave(i, f(split.bees_share), foragers);
      scale_brood(i, 1 - f(split.brood_share));
      scale_stores(i, 1 - f(split.stores_share));
      if (split.queen_leaves) lose_queen(i);
    });
  }

  void operator()(const KeepPart& part) {
    const SplitAway& split = part.split;
    each([&](int i) {
      const float foragers = split.foragers_stay ? 1.0F : 1 - f(split.bees_share);
      leave(i, 1 - f(split.bees_share), foragers);
      scale_brood(i, f(split.brood_share));
      scale_stores(i, f(split.stores_share));
      if (!split.queen_leaves) lose_queen(i);
    });
  }

  void operator()(const UniteWith& other) {
    each([&](int i) {
      if (at(row::alive, i) == 0) return;
      // As many of each kind as there are here, so that neither side's age is guessed.
      const float here = bees(i);
      if (here > 0) {
        const float grows = 1 + f(other.bees) / here;
        for (int r = 0; r < hive_ages; ++r) at(row::hive + r, i) *= grows;
        for (const int pool : home_pools) at(pool, i) *= grows;
        at(row::foragers, i) *= grows;
      }
      for (int age = 0; age < worker_days; ++age)
        at(worker_row(turn_, age), i) += f(other.brood_cells / worker_days);
      at(row::stores, i) += f(other.stores_kg);
      at(row::mites, i) += f(other.mites);
    });
  }

  void operator()(const Rehouse& home) {
    const facts::Dwelling& d = Access::dwelling(e_) = home.dwelling;
    each([&](int i) {
      const float nest = home.other_combs ? f(d.undrawn_combs) : at(row::undrawn_nest, i);
      const float above = home.other_combs ? 0.0F : at(row::undrawn_super, i);
      at(row::undrawn_nest, i) = std::clamp(nest, 0.0F, f(std::max(d.brood_combs, 0)));
      at(row::undrawn_super, i) = std::clamp(above, 0.0F, f(std::max(d.super_combs, 0)));
    });
  }
  void operator()(const MovedSite& moved) {
    each([&](int i) { leave(i, 0, f(std::clamp(moved.foragers_stray, 0.0, 1.0))); });
  }

  void operator()(const Harvest& harvest) {
    // With boxes on it is they that are taken, and what is by the brood is left.
    const facts::Dwelling& d = Access::dwelling(e_);
    const auto above = e_.read(Quantity::super_kg);
    each([&](int i) {
      const float to_take = d.super_combs > 0 ? above[static_cast<std::size_t>(i)] : at(row::stores, i);
      at(row::stores, i) -= std::min({f(harvest.honey_kg), to_take, at(row::stores, i)});
    });
  }
  void operator()(const SetStores& weighed) {
    each([&](int i) {
      at(row::stores, i) = f(weighed.stores_kg);
      at(row::nectar, i) = 0;
    });
  }

  void operator()(const Kill&) {
    each([&](int i) {
      if (at(row::alive, i) > 0) note(i, Event::death);
      for (int r = 0; r < row::first_event; ++r) {
        if (r != row::stores && r != row::nectar && r != row::pollen) at(r, i) = 0;
      }
      at(row::alive, i) = 0;
    });
  }

 private:
  float& at(int r, int member) { return Access::at(e_, r, member); }
  template <class Do>
  void each(Do&& work) {
    for (int i = 0; i < e_.members(); ++i) {
      if (at(row::alive, i) > 0) work(i);
    }
  }
  Stream stream(int member) const {
    const auto i = static_cast<std::size_t>(member);
    return Stream({.seed = noise_.seed,
                   .colony = noise_.colony,
                   .member = noise_.ids.empty() ? static_cast<std::uint32_t>(member) : noise_.ids[i],
                   .day = date_.day_number(),
                   .purpose = Purpose::event});
  }
  void note(int member, Event event) {
    float& day = at(row::first_event + static_cast<int>(event), member);
    day = std::min(day, f(date_.day_number()));
  }
  float bees(int member) {
    float sum = at(row::foragers, member);
    for (int r = 0; r < hive_ages; ++r) sum += at(row::hive + r, member);
    for (const int pool : home_pools) sum += at(pool, member);
    return sum;
  }
  // Mites go with the bees they sit on.
  void leave(int member, float home_share, float forager_share) {
    const float before = bees(member);
    for (int r = 0; r < hive_ages; ++r) at(row::hive + r, member) *= 1 - home_share;
    for (const int pool : home_pools) at(pool, member) *= 1 - home_share;
    at(row::foragers, member) *= 1 - forager_share;
    at(row::drones, member) *= 1 - home_share;
    if (before > 0) at(row::mites, member) *= bees(member) / before;
  }
  void scale_brood(int member, float by) {
    for (int r = 0; r < row::hive; ++r) at(r, member) *= by;  // brood of both kinds and the mites in it
  }
  void scale_stores(int member, float by) {
    for (const int r : {+row::stores, +row::nectar, +row::pollen}) at(r, member) *= by;
  }
  void lose_queen(int member) {
    if (at(row::queen, member) > 0) note(member, Event::queen_loss);
    for (const int r : {+row::queen, +row::mated, +row::queen_clock, +row::caged}) at(r, member) = 0;
  }

  Ensemble& e_;
  const Model& model_;
  Date date_;
  const NoiseKey& noise_;
  std::int32_t turn_;
};

}  // namespace

void act(Ensemble& ensemble, const Model& model, const Action& action, Date date, const NoiseKey& noise) {
  std::visit(Hands(ensemble, model, date, noise), action);
}

}  // namespace beegarth::colony
