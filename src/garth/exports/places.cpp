#include "garth/exports/places.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "entries/fields.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

// Metres in a degree of latitude on a sphere of 6,371,009 m, the mean radius of the Earth (IUGG).
constexpr double metres_per_degree = 6371009 * std::numbers::pi / 180;

double rounded(double degrees) {
  return std::round(degrees * 1e7) / 1e7;  // a centimetre
}

// How much shorter a degree of longitude is than one of latitude.
double shrink_at(double latitude_deg) {
  return std::max(1e-6, std::cos(latitude_deg * std::numbers::pi / 180));
}

json point(const entries::Site& site, double east_m, double north_m) {
  const double latitude = site.latitude_deg + north_m / metres_per_degree;
  double longitude = site.longitude_deg + east_m / (metres_per_degree * shrink_at(site.latitude_deg));
  if (longitude > 180) longitude -= 360;
  if (longitude < -180) longitude += 360;
  json coordinates = {rounded(longitude), rounded(std::clamp(latitude, -90.0, 90.0))};
  if (site.elevation_m) coordinates.push_back(*site.elevation_m);
  return {{"type", "Point"}, {"coordinates", std::move(coordinates)}};
}

json feature(const std::string& id, json geometry, json properties) {
  return {{"type", "Feature"},
          {"id", id},
          {"geometry", std::move(geometry)},
          {"properties", std::move(properties)}};
}

template <class T>
void add(json& properties, const char* name, const std::optional<T>& value) {
  if (value) properties[name] = *value;
}

json site_feature(const Session& session, const entries::Site& site) {
  int colonies = 0;
  for (const auto& [key, colony] : session.state.colonies) {
    const auto hive = session.state.hives.find(colony.hive);
    if (!colony.ended && hive != session.state.hives.end() && hive->second.site == site.site) ++colonies;
  }
  json properties{{"kind", "site"}, {"name", site.name}, {"colonies", colonies}};
  add(properties, "country", site.country);
  add(properties, "utc_offset_h", site.utc_offset_h);
  return feature("site-" + site.site.text(), point(site, 0, 0), std::move(properties));
}

json object_feature(const entries::GroundObject& object, const entries::Site& site) {
  json properties{
      {"kind", entries::word_for(object.what)}, {"name", object.name}, {"site", object.site.text()}};
  const auto numbers = {std::pair{"height_m", object.height_m}, std::pair{"width_m", object.width_m},
                        std::pair{"length_m", object.length_m}, std::pair{"east_m", object.east_m},
                        std::pair{"north_m", object.north_m}};
  for (const auto& [name, value] : numbers) add(properties, name, value);
  add(properties, "planted_year", object.planted_year);
  add(properties, "remark", object.remark);
  const bool placed = object.east_m && object.north_m;
  return feature("object-" + object.object.text(),
                 placed ? point(site, *object.east_m, *object.north_m) : json(nullptr),
                 std::move(properties));
}

// Where a patch lies comes with the site plan: unlocated until then (RFC 7946, 3.2).
json patch_feature(const entries::Patch& patch) {
  json properties{{"kind", "patch"}, {"name", patch.name}, {"site", patch.site.text()}};
  add(properties, "what", patch.what);
  add(properties, "area_m2", patch.area_m2);
  add(properties, "left_wild", patch.left_wild);
  add(properties, "remark", patch.remark);
  return feature("patch-" + patch.patch.text(), nullptr, std::move(properties));
}

}  // namespace

json places_geojson(const Session& session) {
  json features = json::array();
  for (const auto& [id, site] : session.state.sites) features.push_back(site_feature(session, site));
  std::map<ObjectId, entries::GroundObject> objects;
  std::map<PatchId, entries::Patch> patches;
  for (const auto& entry : session.standing) {
    if (const auto* object = std::get_if<entries::GroundObject>(&entry.payload))
      objects[object->object] = *object;
    if (const auto* patch = std::get_if<entries::Patch>(&entry.payload)) patches[patch->patch] = *patch;
  }
  for (const auto& [id, object] : objects) {
    const auto site = session.state.sites.find(object.site);
    if (site != session.state.sites.end()) features.push_back(object_feature(object, site->second));
  }
  for (const auto& [id, patch] : patches) {
    if (session.state.sites.contains(patch.site)) features.push_back(patch_feature(patch));
  }
  return {{"type", "FeatureCollection"}, {"features", std::move(features)}};
}

Metres metres_from(double latitude_deg, double longitude_deg, double to_latitude_deg,
                   double to_longitude_deg) {
  double degrees_east = to_longitude_deg - longitude_deg;
  if (degrees_east > 180) degrees_east -= 360;
  if (degrees_east < -180) degrees_east += 360;
  return {degrees_east * metres_per_degree * shrink_at(latitude_deg),
          (to_latitude_deg - latitude_deg) * metres_per_degree};
}

}  // namespace beegarth::garth
