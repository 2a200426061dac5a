#include "garth/tables/usable.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

#include "almanac/hours.hpp"
#include "belief/beginning.hpp"
#include "belief/deeds.hpp"
#include "belief/doubts.hpp"
#include "belief/observation.hpp"
#include "belief/ranking.hpp"
#include "belief/shared.hpp"
#include "colony/colony.hpp"
#include "colony/model.hpp"
#include "colony/traits.hpp"
#include "garth/gates/gate_rules.hpp"

namespace beegarth::garth {
namespace {

Outcome of_belief(const FactTable& observation) {
  if (const auto errors = belief::read_errors(observation); !errors) return errors.problem();
  if (const auto observer = belief::read_observer_prior(observation); !observer) return observer.problem();
  if (const auto figures = belief::read_deed_figures(observation); !figures) return figures.problem();
  if (const auto prior = belief::shared_prior(observation); !prior) return prior.problem();
  if (const auto slips = belief::read_slip_odds(observation); !slips) return slips.problem();
  for (int month = 1; month <= 12; ++month) {
    belief::Timeline timeline;
    timeline.began = *Date::from_ymd(2026, month, 15);
    for (const bool from_split : {false, true}) {
      for (const bool said : {false, true}) {
        timeline.beginning.reset();
        if (said) timeline.beginning = {.bees = 10000, .stores_kg = 10};
        const auto start = belief::start_prior(observation, timeline, from_split, 52);
        if (!start) return start.problem();
      }
    }
  }
  return Done{};
}

// Weather and forage of a temperate year, by plain formulas.
facts::DayForcing temperate_day(Date date) {
  const double of_year = std::cos(2 * std::numbers::pi * (date.day_of_year() - 200) / 365.25);
  const double mean = 7 + 10 * of_year;
  facts::DayForcing day;
  day.date = date;
  day.temperature_min_C = mean - 4;
  day.temperature_max_C = mean + 5;
  day.daylength_h = 12.2 + 4.3 * std::cos(2 * std::numbers::pi * (date.day_of_year() - 172) / 365.25);
  day.flight_hours = std::max(0.0, 6 * of_year + 2);
  day.nectar_kg_per_day = std::max(0.0, 1.5 * of_year);
  day.pollen_index = std::max(0.0, of_year);
  return day;
}

// Of usual colonies in usual weather: no row may make more or less of them than there can be.
Outcome lives_through_a_year(const colony::Model& model) {
  using colony::Quantity;
  constexpr int members = 32, days = 400;
  const colony::Start start{
      .bees = 13000, .brood_cells = 4000, .stores_kg = 15, .mites = 100, .winter_share = 0.5};
  const auto traits = colony::draw_traits(model, members, {.seed = 1, .ids = {}});
  const Date begun = *Date::from_ymd(2026, 3, 20);
  auto colonies =
      colony::make_ensemble(model, facts::Dwelling{}, begun, members, std::span(&start, 1), traits);
  for (int day = 1; day <= days; ++day) {
    colony::advance_day(colonies, model, temperate_day(begun + day), {}, {.seed = 1, .ids = {}});
    for (int q = 0; day % 10 == 0 && q < colony::quantity_count; ++q) {
      const auto quantity = static_cast<Quantity>(q);
      for (const float x : colonies.read(quantity)) {
        if (x >= 0 && x < 1e6F) continue;
        return bad_input("with this row a usual colony comes to senseless numbers of " +
                             std::string(colony::name_of(quantity)) + " within " + std::to_string(day) +
                             " days",
                         "table_override", "mend the value");
      }
    }
  }
  return Done{};
}

Outcome of_colonies(const FactTable& table) {
  const auto model = colony::Model::from(table);
  if (!model) return model.problem();
  return lives_through_a_year(*model);
}

}  // namespace

Outcome usable(const Tables& tables) {
  if (auto colonies = of_colonies(tables["colony"]); !colonies) return colonies;
  if (auto belief = of_belief(tables["observation"]); !belief) return belief;
  if (const auto prices = belief::Prices::from(tables["choices"], tables["work"]); !prices)
    return prices.problem();
  if (const auto hours = almanac::HourRules::from(tables["hours"]); !hours) return hours.problem();
  if (const auto rules = GateRules::from(tables); !rules) return rules.problem();
  return Done{};
}

}  // namespace beegarth::garth
