// Sites and what stands on them as GeoJSON (RFC 7946).
#pragma once

#include <nlohmann/json.hpp>

#include "garth/session.hpp"

namespace beegarth::garth {

// A FeatureCollection of points, longitude before latitude, WGS 84. Objects entered by metres east and north
// of their site's point are placed on the sphere, good to a metre within a kilometre.
nlohmann::json places_geojson(const Session& session);

}  // namespace beegarth::garth
