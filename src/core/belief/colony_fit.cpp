#include "belief/colony_fit.hpp"

#include "belief/settle.hpp"

namespace beegarth::belief {
namespace {

std::vector<SharedCoordinates> shared_of_all(const Fitted& fitted) {
  std::vector<SharedCoordinates> shared;
  shared.reserve(fitted.weights.size());
  for (std::size_t i = 0; i < fitted.weights.size(); ++i)
    shared.push_back(shared_of(fitted.members.at(static_cast<int>(i))));
  return shared;
}

// Figures that, averaged over the crowd, only a slip explains.
int taken_for_slips(const Setting& setting, const Fitted& fitted) {
  constexpr double of_one_figure = -7, of_a_look = -22;  // of the log likelihood
  int slips = 0;
  for (std::size_t o = 0; o < fitted.members.log_seen.size(); ++o) {
    const std::vector<double>& logs = fitted.members.log_seen[o];
    if (logs.empty() || setting.is_left_out(o)) continue;
    double mean = 0;
    for (std::size_t i = 0; i < logs.size(); ++i) mean += fitted.weights[i] * logs[i];
    const bool look = std::holds_alternative<entries::Inspection>(setting.timeline.observations[o].sight);
    slips += mean < (look ? of_a_look : of_one_figure) ? 1 : 0;
  }
  return slips;
}

// Slips are all alike to every member: where several figures that agree with each other are taken for slips,
// no member is drawn to what they tell. A crowd to which nothing is a slip goes there if any can; of the two
// the one that made everything seen the likelier is kept.
void hear_what_agrees(ColonyFit& fit) {
  constexpr double hardly_ever = 1e-6;
  if (taken_for_slips(*fit.setting, fit.fitted) < 2) return;
  Setting stern = *fit.setting;
  stern.errors.mistaken = hardly_ever;
  Fitted again = fit_to_entries(stern);
  if (again.log_evidence <= fit.fitted.log_evidence) return;
  fit.fitted = std::move(again);
  fit.setting->errors.mistaken = hardly_ever;
}

}  // namespace

Expected<FitHandle> fit_colony(const History& history, const Forcing& forcing, const Tables& tables,
                               const Options& options) {
  const auto fit_to_ask = check_request(history, forcing, options);
  if (!fit_to_ask) return fit_to_ask.problem();
  auto fit = std::make_unique<ColonyFit>();
  fit->colony = history.colony;
  fit->timeline = lay_out(history, options.today);
  fit->behind.past = forcing.past;
  auto setting = make_setting(history, fit->behind, fit->timeline, tables, options);
  if (!setting) return setting.problem();
  fit->setting.emplace(*std::move(setting));
  fit->fitted = fit_to_entries(*fit->setting);
  hear_what_agrees(*fit);
  fit->setting->left_out = fit->fitted.left_out;
  if (!options.explain) fit->fitted.before_newest = {};  // half of the memory, and nobody will ask
  return fit;
}

Witness witness_of(const ColonyFit& fit, const SiteId& site) {
  return {fit.colony, site, fit.timeline.entries.size(), shared_of_all(fit.fitted), fit.fitted.weights};
}

void hear(ColonyFit& fit, Neighbours neighbours) {
  if (neighbours.silent()) return;
  if (settle(fit.fitted, *fit.setting, neighbours) == Settled::not_at_all) {
    fit.remarks.push_back(
        {"no member goes with what the keeper's other colonies show: it was left out", {}, {}});
    return;
  }
  fit.neighbours = std::move(neighbours);
}

}  // namespace beegarth::belief
