// What the book says of each colony and site, in the form in which the needs ask for it.
#pragma once

#include <vector>

#include "garth/session.hpp"
#include "garth/weather.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

work::ColonyStatus status_of(const Session& session, const ColonyId& id, const book::ColonyState& colony);
work::SiteStatus status_of(const Session& session, const SiteId& id, const SiteWeather& weather, int days);

}  // namespace beegarth::garth
