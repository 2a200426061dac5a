// GeoJSON (RFC 7946): features as rows that an import map can read.
#pragma once

#include <array>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "book/state.hpp"
#include "garth/imports/table_rows.hpp"

namespace beegarth::garth {

struct GeoPoint {
  double longitude_deg = 0;
  double latitude_deg = 0;
  std::optional<double> elevation_m;
};

struct GeoFeature {
  std::size_t line = 0;
  std::string id;
  std::string geometry;           // "Point", "Polygon", ...; empty: unlocated
  std::optional<GeoPoint> point;  // of a Point
  nlohmann::json properties;      // an object
};

// A FeatureCollection, a Feature or a geometry alone. Every position is checked; one outside the globe,
// another reference system than WGS 84, or a form that RFC 7946 does not know is refused with its line.
Expected<std::vector<GeoFeature>> read_geojson(std::string_view bytes, const std::string& file);

// Columns: id, key (of what our own export wrote), geometry, longitude, latitude, elevation_m, day (=
// `today`), east_m and north_m from the point of its site, and every property under its own name.
Expected<ListedRows> feature_rows(std::string_view bytes, const std::string& file, const book::State& state,
                                  Date today);

}  // namespace beegarth::garth
