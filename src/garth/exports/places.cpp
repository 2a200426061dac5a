#include "garth/exports/places.hpp"

#include <cmath>
#include <numbers>

#include "entries/fields.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

// Metres in a degree of latitude on a sphere of 6,371,009 m, the mean radius of the Earth (IUGG).
constexpr double metres_per_degree = 6371009 * std::numbers::pi / 180;

double rounded(double degrees) {
  return std::round(degrees * 1e7) / 1e7;  // a centimetre
}

json point(const entries::Site& site, double east_m, double north_m) {
  const double latitude = site.latitude_deg + north_m / metres_per_degree;
  const double shrink = std::max(1e-6, std::cos(site.latitude_deg * std::numbers::pi / 180));
  double longitude = site.longitude_deg + east_m / (metres_per_degree * shrink);
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

}  // namespace

json places_geojson(const Session& session) {
  json features = json::array();
  for (const auto& [id, site] : session.state.sites) {
    int colonies = 0;
    for (const auto& [key, colony] : session.state.colonies) {
      const auto hive = session.state.hives.find(colony.hive);
      if (!colony.ended && hive != session.state.hives.end() && hive->second.site == id) ++colonies;
    }
    features.push_back(feature("site-" + id.text(), point(site, 0, 0),
                               {{"kind", "site"}, {"name", site.name}, {"colonies", colonies}}));
  }
  std::map<ObjectId, entries::GroundObject> objects;
  for (const auto& entry : session.standing) {
    if (const auto* object = std::get_if<entries::GroundObject>(&entry.payload))
      objects[object->object] = *object;
  }
  for (const auto& [id, object] : objects) {
    const auto site = session.state.sites.find(object.site);
    if (site == session.state.sites.end() || !object.east_m || !object.north_m) continue;
    json properties{
        {"kind", entries::word_for(object.what)}, {"name", object.name}, {"site", object.site.text()}};
    if (object.height_m) properties["height_m"] = *object.height_m;
    if (object.width_m) properties["width_m"] = *object.width_m;
    if (object.length_m) properties["length_m"] = *object.length_m;
    features.push_back(feature("object-" + id.text(), point(site->second, *object.east_m, *object.north_m),
                               std::move(properties)));
  }
  return {{"type", "FeatureCollection"}, {"features", std::move(features)}};
}

}  // namespace beegarth::garth
