#include "belief/colony_fit.hpp"

#include "belief/kin.hpp"
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

// Where only a few of the first members had anything in common with what was seen, odds are told by chance:
// asked again with a wider crowd, once.
constexpr int wider_crowd = 4;
bool is_narrow(const Setting& setting, const Fitted& fitted) {
  constexpr int widest = 4096;
  return setting.members * wider_crowd <= widest &&
         effective_families(fitted.weights, fitted.members.family) < few_families;
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
  if (is_narrow(*fit->setting, fit->fitted)) {
    Options wider = options;
    wider.members *= wider_crowd;
    auto again = make_setting(history, fit->behind, fit->timeline, tables, wider);
    if (!again) return again.problem();
    fit->setting.emplace(*std::move(again));
    fit->fitted = fit_to_entries(*fit->setting);
  }
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
