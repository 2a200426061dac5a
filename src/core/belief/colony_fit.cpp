#include "belief/colony_fit.hpp"

#include <cmath>
#include <map>

#include "belief/kin.hpp"
#include "belief/moves.hpp"
#include "belief/settle.hpp"
#include "belief/smc.hpp"

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
// fitted again with a wider crowd, once, of which as many as were asked for are drawn by their weights.
constexpr int wider_crowd = 4;
bool is_narrow(const Setting& setting, const Fitted& fitted) {
  constexpr int widest = 4096;
  return setting.members * wider_crowd <= widest &&
         effective_families(fitted.weights, fitted.members.family) < few_families;
}

void draw(Members& members, const Setting& setting, std::span<const double> weights, Stream& luck) {
  become(members, setting, systematic_ancestors(weights, luck.uniform(), setting.members));
  // Families are counted by numbers below that of the members.
  std::map<int, int> number;
  for (int& family : members.family)
    family = number.emplace(family, static_cast<int>(number.size())).first->second;
}

Fitted drawn_from_wider(const Setting& setting, const Setting& wider) {
  Fitted fitted = fit_to_entries(wider);
  Stream luck({.seed = setting.seed, .colony = setting.colony, .day = -1, .purpose = Purpose::resample});
  const auto n = static_cast<std::size_t>(setting.members);
  draw(fitted.members, setting, fitted.weights, luck);
  fitted.weights.assign(n, 1.0 / setting.members);
  if (BeforeNewest& before = fitted.before_newest; !before.log_weights.empty()) {
    draw(before.members, setting, normalised(before.log_weights), luck);
    before.log_weights.assign(n, -std::log(setting.members));
  }
  return fitted;
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
    const auto wide = make_setting(history, fit->behind, fit->timeline, tables, wider);
    if (!wide) return wide.problem();
    fit->fitted = drawn_from_wider(*fit->setting, *wide);
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
