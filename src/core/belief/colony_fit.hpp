// One colony fitted to its entries, with all that an outlook, a forecast or a supposition goes on from.
// Fitted once, then perhaps told what its neighbours show (shared.hpp), then asked.
#pragma once

#include <memory>
#include <optional>
#include <span>

#include "belief/belief.hpp"
#include "belief/filter.hpp"
#include "belief/forecast.hpp"
#include "belief/shared.hpp"
#include "belief/suppose.hpp"

namespace beegarth::belief {

struct ColonyFit {
  ColonyId colony;
  Timeline timeline;
  Forcing behind;                      // the days that have been; no futures
  std::optional<Setting> setting;      // refers to the two above, so that a fit stays where it is
  Fitted fitted;                       // beside the neighbours, once these have been heard
  Neighbours neighbours;               // say nothing until they have been heard
  std::vector<facts::Reason> remarks;  // about the neighbours

  ColonyFit() = default;
  ColonyFit(const ColonyFit&) = delete;
  ColonyFit& operator=(const ColonyFit&) = delete;
  ~ColonyFit() = default;
};
using FitHandle = std::unique_ptr<ColonyFit>;

Expected<FitHandle> fit_colony(const History& history, const Forcing& forcing, const Tables& tables,
                               const Options& options);

// What one colony shows of what it shares with others; `site` as the keeper's, empty: no other stands there.
Witness witness_of(const ColonyFit& fit, const SiteId& site);
// Lets the neighbours' word in.
void hear(ColonyFit& fit, Neighbours neighbours);

// Each as the function of the same name without "of" does it for a colony by itself; forcing and options as
// given to fit_colony, except that the horizon may be another one.
Expected<facts::Outlook> outlook_of(const ColonyFit& fit, const Forcing& forcing, const Tables& tables,
                                    const Options& options);
Expected<Forecast> forecast_of(const ColonyFit& fit, const Forcing& forcing, const Options& options,
                               std::span<const LookToCome> looks);
Expected<Supposed> supposed_of(const ColonyFit& fit, const Forcing& forcing, const Tables& tables,
                               const Options& options, std::span<const Way> ways);

}  // namespace beegarth::belief
