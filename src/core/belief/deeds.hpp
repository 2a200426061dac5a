// What the keeper did, as the model of a colony understands it.
#pragma once

#include <span>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "colony/colony.hpp"
#include "entries/entry.hpp"
#include "facts/dwelling.hpp"

namespace beegarth::belief {

struct DeedFigures {
  double united_bees, united_brood, united_stores_kg, united_mites;
  double syrup_sugar_pct, fondant_sugar_pct, stores_per_sugar;
  double tied_brood_kept;             // share, where comb was cut and tied into frames
  double move_range_km, move_strays;  // share of foragers that fly back from within that range
  double strays_after(double km) const { return km < move_range_km ? move_strays : 0; }
};
Expected<DeedFigures> read_deed_figures(const FactTable& observation);

// Empty where the entry does nothing to the bees.
std::vector<colony::Action> actions_of(const entries::Payload& payload, const DeedFigures& figures,
                                       const colony::Model& model, const facts::Dwelling& dwelling);

}  // namespace beegarth::belief
