#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstring>

#include "colony/rows.hpp"

namespace beegarth::colony {

Ensemble::Ensemble() = default;
Ensemble::Ensemble(const Ensemble& other) = default;
Ensemble::Ensemble(Ensemble&& other) noexcept = default;
Ensemble& Ensemble::operator=(const Ensemble& other) = default;
Ensemble& Ensemble::operator=(Ensemble&& other) noexcept = default;
Ensemble::~Ensemble() = default;

namespace {

std::size_t blocks_for(int members) {
  return static_cast<std::size_t>((members + lanes - 1) / lanes);
}

void copy_member(const std::vector<Block>& from, std::size_t source, std::vector<Block>& to,
                 std::size_t target) {
  const Block& a = from[source / lanes];
  Block& b = to[target / lanes];
  for (int r = 0; r < row::count; ++r) b.rows[r][target % lanes] = a.rows[r][source % lanes];
}

// Spreads a number over the days of the brood as a steadily laying queen would have left it.
void put_brood(Ensemble& e, int member, double cells) {
  for (int age = 0; age < worker_days; ++age) {
    Access::at(e, worker_row(0, age), member) = static_cast<float>(cells / worker_days);
  }
}

void put_bees(Ensemble& e, int member, const Start& start) {
  const double winter = start.bees * start.winter_share;
  const double summer = start.bees - winter;
  const double foragers = summer / 3;  // the share of the compartment model's equilibrium at usual losses
  Access::at(e, row::winter, member) = static_cast<float>(winter);
  Access::at(e, row::foragers, member) = static_cast<float>(foragers);
  for (int age = 0; age < hive_ages; ++age) {
    Access::at(e, hive_row(0, age), member) = static_cast<float>((summer - foragers) / hive_ages);
  }
}

// Under cappings in the share of the delay model at its usual growth (0.37 on bees), where there is brood to
// be in.
void put_mites(Ensemble& e, int member, const Start& start) {
  const double cells_per_bee = start.brood_cells / std::max(start.bees, 1.0);
  const double under = start.mites * 0.63 * std::min(1.0, cells_per_bee / 0.5);
  for (int day = 0; day < worker_capped_days; ++day) {
    Access::at(e, worker_mites_row(0, day), member) = static_cast<float>(under / worker_capped_days);
  }
  Access::at(e, row::mites, member) = static_cast<float>(start.mites - under);
}

void put_queen(Ensemble& e, int member, const Start& start) {
  Access::at(e, row::queen, member) = start.queen_laying || start.drone_laying ? 1.0F : 0.0F;
  Access::at(e, row::mated, member) = start.queen_laying ? 1.0F : 0.0F;
  Access::at(e, row::queen_clock, member) = start.queen_laying   ? static_cast<float>(start.queen_age_days)
                                            : start.drone_laying ? virgin_too_old_days + 1
                                                                 : 0.0F;
  Access::at(e, row::queen_age, member) = static_cast<float>(start.queen_age_days);
  Access::at(e, row::vigour, member) = 1.0F;
}

}  // namespace

Ensemble make_ensemble(const Model& model, const facts::Dwelling& dwelling, Date evening, int members,
                       std::span<const Start> starts, std::span<const Traits> traits) {
  [[maybe_unused]] const auto count = static_cast<std::size_t>(members);
  assert(members > 0 && (starts.size() == 1 || starts.size() == count));
  assert(traits.size() == 1 || traits.size() == count);
  Ensemble e;
  Access::members(e) = members;
  Access::date(e) = evening;
  Access::dwelling(e) = dwelling;
  Access::rates(e) = model.rates;
  Access::blocks(e).resize(blocks_for(members), Block{});
  const int nest_undrawn = std::min(dwelling.undrawn_combs, dwelling.brood_combs);
  for (int i = 0; i < members; ++i) {
    const Start& start = starts[starts.size() == 1 ? 0 : static_cast<std::size_t>(i)];
    put_brood(e, i, start.brood_cells);
    put_bees(e, i, start);
    put_mites(e, i, start);
    put_queen(e, i, start);
    Access::at(e, row::stores, i) = static_cast<float>(start.stores_kg);
    Access::at(e, row::pollen, i) = static_cast<float>(start.pollen_kg);
    Access::at(e, row::undrawn_nest, i) = static_cast<float>(nest_undrawn);
    Access::at(e, row::undrawn_super, i) = static_cast<float>(dwelling.undrawn_combs - nest_undrawn);
    Access::at(e, row::alive, i) = start.bees > 0 ? 1.0F : 0.0F;
    e.set_traits(model, i, traits[traits.size() == 1 ? 0 : static_cast<std::size_t>(i)]);
  }
  e.forget_events();
  return e;
}

void Ensemble::forget_events() {
  for (Block& block : blocks_) {
    for (int r = 0; r < event_count; ++r) std::fill_n(block.rows[row::first_event + r], lanes, never);
  }
}

std::optional<Date> Ensemble::first_day(Event event, int member) const {
  const float day = Access::at(*this, row::first_event + static_cast<int>(event), member);
  if (day >= never) return std::nullopt;
  return Date::from_day_number(static_cast<std::int32_t>(day));
}

// The natural values stand in the rows; the scores beside them are what samplers walk on.
void Ensemble::set_traits(const Model& model, int member, const Traits& traits) {
  for (int t = 0; t < trait_count; ++t) {
    const auto trait = static_cast<Trait>(t);
    Access::at(*this, row::first_trait + t, member) =
        static_cast<float>(model.prior.value(trait, traits[trait]));
    Access::at(*this, row::first_score + t, member) = traits[trait];
  }
  Access::at(*this, row::first_trait + static_cast<int>(Trait::season_end), member) =
      model.season_end(static_cast<double>(traits[Trait::season_end]));
}

Traits Ensemble::traits(int member) const {
  Traits traits;
  for (int t = 0; t < trait_count; ++t) {
    traits[static_cast<Trait>(t)] = Access::at(*this, row::first_score + t, member);
  }
  return traits;
}

Ensemble Ensemble::take(std::span<const std::uint32_t> ancestors) const {
  Ensemble result;
  result.members_ = static_cast<int>(ancestors.size());
  result.date_ = date_;
  result.turn_ = turn_;
  result.daylength_yesterday_h_ = daylength_yesterday_h_;
  result.dwelling_ = dwelling_;
  result.rates_ = rates_;
  result.treatments_ = treatments_;
  result.blocks_.resize(blocks_for(result.members_), Block{});
  for (std::size_t i = 0; i < ancestors.size(); ++i) {
    assert(static_cast<int>(ancestors[i]) < members_);
    copy_member(blocks_, ancestors[i], result.blocks_, i);
  }
  return result;
}

Ensemble Ensemble::join(const Ensemble& first, const Ensemble& second) {
  assert(first.date_ == second.date_ && first.turn_ == second.turn_);
  Ensemble result = first;
  result.members_ = first.members_ + second.members_;
  result.blocks_.resize(blocks_for(result.members_), Block{});
  for (int i = 0; i < second.members_; ++i) {
    copy_member(second.blocks_, static_cast<std::size_t>(i), result.blocks_,
                static_cast<std::size_t>(first.members_) + static_cast<std::size_t>(i));
  }
  return result;
}

std::uint64_t Ensemble::hash() const {
  std::uint64_t hash = 14695981039346656037ULL;
  const auto mix = [&hash](std::uint32_t word) {
    hash ^= word;
    hash *= 1099511628211ULL;
  };
  mix(static_cast<std::uint32_t>(date_.day_number()));
  for (int i = 0; i < members_; ++i) {
    for (int r = 0; r < row::count; ++r) {
      const float x = Access::at(*this, r, i);
      std::uint32_t word = 0;
      std::memcpy(&word, &x, sizeof word);
      mix(word);
    }
  }
  return hash;
}

std::vector<Traits> draw_traits(const Model& model, int members, const NoiseKey& noise) {
  std::vector<Traits> drawn;
  drawn.reserve(static_cast<std::size_t>(members));
  for (int i = 0; i < members; ++i) {
    const auto at = static_cast<std::size_t>(i);
    Stream stream({.seed = noise.seed,
                   .colony = noise.colony,
                   .member = noise.ids.empty() ? static_cast<std::uint32_t>(i) : noise.ids[at],
                   .day = 0,
                   .purpose = Purpose::prior});
    drawn.push_back(model.prior.draw(stream));
  }
  return drawn;
}

}  // namespace beegarth::colony
