#include "colony/traits.hpp"

#include <cmath>
#include <numbers>
#include <string>

namespace beegarth::colony {

const std::array<TraitInfo, trait_count>& all_traits() {
  static constexpr std::array<TraitInfo, trait_count> traits{{
      {Trait::laying_max, "laying_max", "how much the queen can lay"},
      {Trait::forager_loss, "forager_loss", "how fast foragers are lost"},
      {Trait::collecting, "collecting", "how much the bees bring home"},
      {Trait::swarming, "swarming", "how readily they swarm"},
      {Trait::winter_loss, "winter_loss", "how fast winter bees die"},
      {Trait::season_end, "season_end", "how early brood ends in autumn"},
      {Trait::heat_use, "heat_use", "how much they burn for heat"},
      {Trait::mite_reproduction, "mite_reproduction", "how well mites breed in their brood"},
      {Trait::mite_invasion, "mite_invasion", "how fast mites enter cells"},
      {Trait::mite_immigration, "mite_immigration", "how many mites are carried in"},
      {Trait::treatment_effect, "treatment_effect", "how strongly treatments work on their mites"},
  }};
  return traits;
}

Expected<TraitPrior> TraitPrior::from(const FactTable& colony_table) {
  constexpr double z95 = 1.6448536269514722;  // 95 % point of the standard normal
  TraitPrior prior;
  for (const TraitInfo& info : all_traits()) {
    const FactRow* row = colony_table.find(info.key);
    const std::string where = colony_table.name() + ": row '" + std::string(info.key) + "'";
    if (row == nullptr) return bad_input("the trait has no row", where, "add it with a source");
    if (row->value <= 0 || (row->low && *row->low <= 0)) {
      return bad_input("a trait must be above zero", where, "give value, low and high above 0");
    }
    const double spread = row->low ? std::log(*row->high / *row->low) / (2 * z95) : 0.0;
    prior.rows_[static_cast<std::size_t>(info.trait)] = {row->value, spread};
  }
  return prior;
}

Traits TraitPrior::draw(Stream& stream) const {
  Traits traits;
  for (float& z : traits.z) z = static_cast<float>(stream.normal());
  return traits;
}

double TraitPrior::log_density(const Traits& traits) const {
  double sum = 0;
  for (const float z : traits.z) sum -= 0.5 * static_cast<double>(z) * static_cast<double>(z);
  return sum - 0.5 * trait_count * std::log(2 * std::numbers::pi);
}

double TraitPrior::value(Trait trait, double z) const {
  const Row& row = rows_[static_cast<std::size_t>(trait)];
  return row.middle * std::exp(row.spread * z);
}

double TraitPrior::score(Trait trait, double value) const {
  const Row& row = rows_[static_cast<std::size_t>(trait)];
  return row.spread > 0 ? std::log(value / row.middle) / row.spread : 0.0;
}

}  // namespace beegarth::colony
