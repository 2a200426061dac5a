// What can be read of a member.
#include <algorithm>
#include <array>
#include <cassert>

#include "colony/lanes.hpp"
#include "colony/rows.hpp"

namespace beegarth::colony {
namespace {

constexpr std::array<std::string_view, quantity_count> names{"bees",
                                                             "hive_bees",
                                                             "foragers",
                                                             "winter_bees",
                                                             "drones",
                                                             "brood_cells",
                                                             "eggs",
                                                             "open_brood",
                                                             "capped_cells",
                                                             "drone_brood",
                                                             "drone_eggs",
                                                             "open_drone_brood",
                                                             "capped_drone_cells",
                                                             "stores_kg",
                                                             "pollen_kg",
                                                             "super_kg",
                                                             "mites",
                                                             "mites_on_bees",
                                                             "mites_under_cappings",
                                                             "mites_per_100_bees",
                                                             "infested_share",
                                                             "mite_fall_per_day",
                                                             "charged_cells",
                                                             "sealed_cells",
                                                             "swarm_cells",
                                                             "cups_with_egg",
                                                             "queen_present",
                                                             "queen_laying",
                                                             "drone_laying",
                                                             "eggs_laid",
                                                             "laying_room_cells",
                                                             "super_room_kg",
                                                             "undrawn_combs",
                                                             "infested_winter_share",
                                                             "alive"};

// Four members side by side, with the sums that several quantities share. Each lane is reckoned as if it were
// alone.
class Four {
 public:
  Four(const Ensemble& ensemble, const Rates& rates, const Block& block, int lane)
      : rates_(rates), d_(ensemble.dwelling()), turn_(Access::turn(ensemble)), block_(block), lane_(lane) {}

  Float4 at(int r) const { return load<Float4>(&block_.rows[r][lane_]); }
  Float4 worker_brood(int from, int to) const {
    Float4 sum{};
    for (int age = from; age < to; ++age) sum += at(worker_row(turn_, age));
    return sum;
  }
  Float4 drone_brood(int from, int to) const {
    Float4 sum{};
    for (int age = from; age < to; ++age) sum += at(drone_row(turn_, age));
    return sum;
  }
  Float4 rows(int from, int count) const {
    Float4 sum{};
    for (int r = from; r < from + count; ++r) sum += at(r);
    return sum;
  }
  Float4 hive() const { return rows(row::hive, hive_ages) + at(row::old_hive); }
  Float4 winter() const { return at(row::winter) + at(row::winter_harmed); }
  Float4 bees() const { return hive() + winter() + at(row::foragers); }
  Float4 mites_under() const {
    return rows(row::worker_mites, worker_capped_days) + rows(row::drone_mites, drone_capped_days);
  }
  Float4 honey() const { return at(row::stores) + at(row::nectar); }
  Float4 super_cap() const {
    return most(static_cast<float>(d_.super_combs) - at(row::undrawn_super), Float4{}) *
           static_cast<float>(d_.honey_kg_per_comb);
  }
  Float4 super_kg() const { return least(super_cap(), most(honey() - rates_.nest_stores_kg, Float4{})); }
  Float4 laying_room() const {
    const auto cells = static_cast<float>(d_.worker_cells_per_comb);
    const Float4 nest = most(static_cast<float>(d_.brood_combs) - at(row::undrawn_nest), Float4{}) * cells;
    const Float4 all_food = (honey() - super_kg()) * cells / static_cast<float>(d_.honey_kg_per_comb) +
                            at(row::pollen) * rates_.pollen_cells_per_kg;
    const Float4 food =
        pick(above_zero(at(row::undrawn_nest)), least(all_food, nest * rates_.new_nest_food_share), all_food);
    const Float4 used =
        worker_brood(0, worker_days) + drone_brood(0, drone_days) * rates_.drone_cell_room + food;
    return most(nest - used, Float4{});
  }
  // Share of capped worker cells with one mite or more, where mites enter the cells of a day at random.
  Float4 infested_share() const {
    Float4 cells{};
    Float4 infested{};
    for (int day = 0; day < worker_capped_days; ++day) {
      const Float4 capped = at(worker_row(turn_, worker_capping_age + day));
      cells += capped;
      const Float4 per_cell = at(worker_mites_row(turn_, day)) / most(capped, all<Float4>(1.0F));
      infested += capped * (1.0F - exp_minus(per_cell));
    }
    return share(infested, cells);
  }
  Float4 cells_between(float from, float to) const {
    const Float4 age = at(row::cell_age);
    return only(less(age, all<Float4>(to)) & !less(age, all<Float4>(from)), at(row::cells));
  }
  Float4 queen_clock_is(bool mated, float over) const {
    const Mask<Float4> is_mated = above_zero(at(row::mated));
    return flag((mated ? is_mated : !is_mated) & above_zero(at(row::queen)) &
                !less(at(row::queen_clock), all<Float4>(over)) & !above_zero(at(row::caged)));
  }
  Float4 share(Float4 part, Float4 whole) const { return only(less(all<Float4>(1.0F), whole), part / whole); }
  Float4 read(Quantity quantity) const;

 private:
  const Rates& rates_;
  const facts::Dwelling& d_;
  std::int32_t turn_;
  const Block& block_;
  int lane_;
};

Float4 Four::read(Quantity quantity) const {
  switch (quantity) {
    case Quantity::bees:
      return bees();
    case Quantity::hive_bees:
      return hive();
    case Quantity::foragers:
      return at(row::foragers);
    case Quantity::winter_bees:
      return winter();
    case Quantity::drones:
      return at(row::drones);
    case Quantity::brood_cells:
      return worker_brood(0, worker_days);
    case Quantity::eggs:
      return worker_brood(0, egg_days);
    case Quantity::open_brood:
      return worker_brood(egg_days, worker_capping_age);
    case Quantity::capped_cells:
      return worker_brood(worker_capping_age, worker_days);
    case Quantity::drone_brood:
      return drone_brood(0, drone_days);
    case Quantity::drone_eggs:
      return drone_brood(0, egg_days);
    case Quantity::open_drone_brood:
      return drone_brood(egg_days, drone_capping_age);
    case Quantity::capped_drone_cells:
      return drone_brood(drone_capping_age, drone_days);
    case Quantity::stores_kg:
      return honey();
    case Quantity::pollen_kg:
      return at(row::pollen);
    case Quantity::super_kg:
      return super_kg();
    case Quantity::mites:
      return at(row::mites) + mites_under();
    case Quantity::mites_on_bees:
      return at(row::mites);
    case Quantity::mites_under_cappings:
      return mites_under();
    case Quantity::mites_per_100_bees:
      return 100.0F * share(at(row::mites), bees());
    case Quantity::infested_share:
      return infested_share();
    case Quantity::mite_fall_per_day:
      return at(row::mites_emerged_today) * rates_.fall_per_emerging +
             at(row::mites) * rates_.mite_winter_loss_per_day;
    case Quantity::charged_cells:
      return cells_between(cell_charged_age, cell_sealed_age);
    case Quantity::sealed_cells:
      return cells_between(cell_sealed_age, never);
    case Quantity::swarm_cells:
      return cells_between(cell_charged_age, never) * at(row::cells_are_swarm);
    case Quantity::cups_with_egg:
      return cells_between(0, cell_charged_age);
    case Quantity::queen_present:
      return at(row::queen);
    case Quantity::queen_laying:
      return queen_clock_is(true, mated_to_laying_days);
    case Quantity::drone_laying:
      return queen_clock_is(false, virgin_too_old_days);
    case Quantity::eggs_laid:
      return at(row::eggs_today);
    case Quantity::laying_room_cells:
      return laying_room();
    case Quantity::super_room_kg:
      return super_cap() - super_kg();
    case Quantity::undrawn_combs:
      return at(row::undrawn_nest) + at(row::undrawn_super);
    case Quantity::infested_winter_share:
      return share(at(row::winter_reared_infested), at(row::winter_reared));
    case Quantity::alive:
      return at(row::alive);
  }
  return Float4{};
}

}  // namespace

std::string_view name_of(Event event) {
  static constexpr std::array<std::string_view, event_count> events{
      "swarm_preparation", "swarm",   "cast",       "queen_loss", "supersedure",
      "starvation",        "robbing", "absconding", "death"};
  return events.at(static_cast<std::size_t>(event));
}

std::string_view name_of(Quantity quantity) {
  return names[static_cast<std::size_t>(quantity)];
}

std::optional<Quantity> quantity_named(std::string_view name) {
  const auto at = std::find(names.begin(), names.end(), name);
  if (at == names.end()) return std::nullopt;
  return static_cast<Quantity>(at - names.begin());
}

void Ensemble::read(Quantity quantity, std::span<float> out) const {
  assert(out.size() == static_cast<std::size_t>(members_));
  constexpr int width = Lane<Float4>::width;
  for (int i = 0; i < members_; i += width) {
    const Block& block = Access::blocks(*this)[static_cast<std::size_t>(i / lanes)];
    std::array<float, width> four{};
    store(four.data(), Four(*this, rates_, block, i % lanes).read(quantity));
    std::copy_n(four.begin(), std::min(width, members_ - i), out.begin() + i);
  }
}

std::vector<float> Ensemble::read(Quantity quantity) const {
  std::vector<float> out(static_cast<std::size_t>(members_));
  read(quantity, out);
  return out;
}

}  // namespace beegarth::colony
