// Sites and what stands on them as GeoJSON (RFC 7946).
#pragma once

#include <nlohmann/json.hpp>

#include "garth/session.hpp"

namespace beegarth::garth {

// A FeatureCollection of points, longitude before latitude, WGS 84. Objects entered by metres east and north
// of their site's point are placed on the sphere, good to a metre within a kilometre.
// What has no place yet (patches, objects of unknown distance) is unlocated. What imports/geojson reads back.
nlohmann::json places_geojson(const Session& session);

struct Metres {
  double east = 0;
  double north = 0;
};
// From a site's point to another, on the same sphere.
Metres metres_from(double latitude_deg, double longitude_deg, double to_latitude_deg,
                   double to_longitude_deg);

}  // namespace beegarth::garth
