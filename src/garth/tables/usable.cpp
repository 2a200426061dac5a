#include "garth/tables/usable.hpp"

#include "almanac/hours.hpp"
#include "belief/beginning.hpp"
#include "belief/deeds.hpp"
#include "belief/doubts.hpp"
#include "belief/observation.hpp"
#include "belief/ranking.hpp"
#include "belief/shared.hpp"
#include "colony/model.hpp"
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
      const auto start = belief::start_prior(observation, timeline, from_split, 52);
      if (!start) return start.problem();
    }
  }
  return Done{};
}

}  // namespace

Outcome usable(const Tables& tables) {
  if (const auto model = colony::Model::from(tables["colony"]); !model) return model.problem();
  if (auto belief = of_belief(tables["observation"]); !belief) return belief;
  if (const auto prices = belief::Prices::from(tables["choices"], tables["work"]); !prices)
    return prices.problem();
  if (const auto hours = almanac::HourRules::from(tables["hours"]); !hours) return hours.problem();
  if (const auto rules = GateRules::from(tables); !rules) return rules.problem();
  return Done{};
}

}  // namespace beegarth::garth
