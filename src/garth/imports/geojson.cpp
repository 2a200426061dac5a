#include "garth/imports/geojson.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "base/utf8.hpp"
#include "garth/exports/places.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

constexpr std::size_t most_features = 100'000;
constexpr int deepest_json = 64;

// On which line each member of the outermost "features" begins; nlohmann/json keeps no places. The text is
// sound JSON already.
std::vector<std::size_t> feature_lines(std::string_view text) {
  std::vector<std::size_t> lines;
  std::size_t line = 1;
  int depth = 0;
  bool in_features = false, in_text = false;
  std::string last_text;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\n') ++line;
    if (in_text) {
      if (c == '\\' && i + 1 < text.size()) {
        last_text += text[++i];
      } else if (c == '"') {
        in_text = false;
      } else {
        last_text += c;
      }
      continue;
    }
    if (c == '"') {
      in_text = true;
      last_text.clear();
    }
    if (c == '[' && depth == 1 && last_text == "features") in_features = true;
    if (c == '{' && depth == 2 && in_features) lines.push_back(line);
    if (c == '[' || c == '{') ++depth;
    if (c == ']' || c == '}') --depth;
    if (depth == 1 && c == ']') in_features = false;
  }
  return lines;
}

// Deeper than anything that GeoJSON knows would only run the parser's stack down.
bool too_deep(std::string_view text) {
  int depth = 0;
  bool in_text = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (in_text) {
      if (text[i] == '\\')
        ++i;
      else if (text[i] == '"')
        in_text = false;
      continue;
    }
    if (text[i] == '"') in_text = true;
    if (text[i] == '[' || text[i] == '{') ++depth;
    if (text[i] == ']' || text[i] == '}') --depth;
    if (depth > deepest_json) return true;
  }
  return false;
}

class GeoReader {
 public:
  GeoReader(std::string file, std::vector<std::size_t> lines)
      : file_(std::move(file)), lines_(std::move(lines)) {}

  Expected<std::vector<GeoFeature>> read(const json& root) {
    if (!root.is_object() || !root.contains("type") || !root["type"].is_string())
      return refuse("that is no GeoJSON: it has no type", "give a FeatureCollection (RFC 7946)");
    if (root.contains("crs") && !is_wgs84(root["crs"]))
      return refuse("the file is in another reference system than WGS 84",
                    "export it as longitude and latitude (RFC 7946 knows WGS 84 alone)");
    const std::string type = root["type"].get<std::string>();
    if (type != "FeatureCollection") {
      take(type == "Feature" ? root : json{{"type", "Feature"}, {"geometry", root}, {"properties", nullptr}});
    } else if (!root.contains("features") || !root["features"].is_array()) {
      return refuse("the FeatureCollection has no features", "give a list, empty or not");
    } else {
      for (const json& one : root["features"]) take(one);
    }
    if (problem_) return *problem_;
    return std::move(features_);
  }

 private:
  // The old form of 2008 named it, in one of these ways.
  static bool is_wgs84(const json& crs) {
    if (crs.is_null()) return true;
    const std::string said = crs.dump();
    return said.find("CRS84") != std::string::npos || said.find("EPSG::4326") != std::string::npos ||
           said.find("EPSG:4326") != std::string::npos;
  }
  Problem refuse(const std::string& what, const std::string& remedy) const {
    const std::size_t line = features_.size() < lines_.size() ? lines_[features_.size()] : 1;
    return bad_input(what, file_ + ":" + std::to_string(line), remedy);
  }
  void fail(const std::string& what, const std::string& remedy) {
    if (!problem_) problem_ = refuse(what, remedy);
  }

  void take(const json& one) {
    if (problem_) return;
    if (features_.size() == most_features) return fail("more than 100,000 features", "give them in parts");
    if (!one.is_object() || one.value("type", json()) != "Feature")
      return fail("a member of the features is no Feature", "see RFC 7946, 3.2");
    GeoFeature feature;
    feature.line = features_.size() < lines_.size() ? lines_[features_.size()] : 1;
    if (const auto id = one.find("id"); id != one.end()) {
      if (!id->is_string() && !id->is_number()) return fail("an id is a text or a number", "correct it");
      feature.id = id->is_string() ? id->get<std::string>() : id->dump();
    }
    const auto properties = one.find("properties");
    if (properties != one.end() && !properties->is_null() && !properties->is_object())
      return fail("the properties are no object", "see RFC 7946, 3.2");
    if (properties != one.end() && properties->is_object() && properties->contains("name")) {
      const json& name = (*properties)["name"];
      if (name.is_structured()) return fail("the name is no text", "give one name, as text");
    }
    feature.properties =
        properties != one.end() && properties->is_object() ? *properties : json(json::object());
    const auto geometry = one.find("geometry");
    if (geometry != one.end() && !geometry->is_null()) {
      check_geometry(*geometry);
      if (problem_) return;
      feature.geometry = (*geometry)["type"].get<std::string>();
      if (feature.geometry == "Point") feature.point = point_of((*geometry)["coordinates"]);
    }
    features_.push_back(std::move(feature));
  }

  void check_geometry(const json& geometry) {
    static const std::map<std::string, int> lists_around = {{"Point", 0},      {"MultiPoint", 1},
                                                            {"LineString", 1}, {"MultiLineString", 2},
                                                            {"Polygon", 2},    {"MultiPolygon", 3}};
    if (!geometry.is_object() || !geometry.contains("type") || !geometry["type"].is_string())
      return fail("a geometry has no type", "see RFC 7946, 3.1");
    const std::string type = geometry["type"].get<std::string>();
    if (type == "GeometryCollection") {
      if (!geometry.contains("geometries") || !geometry["geometries"].is_array())
        return fail("a GeometryCollection has no geometries", "see RFC 7946, 3.1.8");
      for (const json& one : geometry["geometries"]) check_geometry(one);
      return;
    }
    const auto known = lists_around.find(type);
    if (known == lists_around.end())
      return fail("there is no geometry '" + type.substr(0, 40) + "'", "see RFC 7946, 3.1");
    if (!geometry.contains("coordinates")) return fail("a geometry has no coordinates", "see RFC 7946, 3.1");
    check_positions(geometry["coordinates"], known->second);
  }
  void check_positions(const json& coordinates, int lists) {
    if (!coordinates.is_array()) return fail("coordinates are a list", "see RFC 7946, 3.1.1");
    if (lists > 0) {
      for (const json& one : coordinates) check_positions(one, lists - 1);
      return;
    }
    const bool numbers = std::all_of(coordinates.begin(), coordinates.end(), [](const json& one) {
      return one.is_number() && std::isfinite(one.get<double>());
    });
    if (coordinates.size() < 2 || !numbers)
      return fail("a position is no list of at least two numbers", "give longitude, latitude, elevation");
    if (std::abs(coordinates[0].get<double>()) > 180 || std::abs(coordinates[1].get<double>()) > 90)
      return fail("the position " + coordinates.dump().substr(0, 60) + " is not on the globe",
                  "give degrees, longitude first, then latitude");
  }
  static GeoPoint point_of(const json& at) {
    GeoPoint point{at[0].get<double>(), at[1].get<double>(), std::nullopt};
    if (at.size() > 2) point.elevation_m = at[2].get<double>();
    return point;
  }

  std::string file_;
  std::vector<std::size_t> lines_;
  std::vector<GeoFeature> features_;
  std::optional<Problem> problem_;
};

std::string cell_of(const json& value) {
  if (value.is_null()) return {};
  if (value.is_string()) return value.get<std::string>();
  if (value.is_boolean()) return value.get<bool>() ? "yes" : "no";
  return value.dump();
}

// What our own export put before a key.
std::string key_of(const GeoFeature& feature) {
  for (const std::string_view before : {"site-", "object-", "patch-"}) {
    if (feature.id.starts_with(before)) return feature.id.substr(before.size());
  }
  return feature.id;
}

std::string number_cell(double value) {
  return json(value).dump();
}

// The points of the sites, of the file and of the book.
std::map<std::string, GeoPoint> sites_of(const std::vector<GeoFeature>& features, const book::State& state) {
  std::map<std::string, GeoPoint> sites;
  for (const auto& [id, site] : state.sites)
    sites[id.text()] = {site.longitude_deg, site.latitude_deg, site.elevation_m};
  for (const GeoFeature& feature : features) {
    if (feature.point && feature.properties.value("kind", json()) == "site")
      sites.try_emplace(key_of(feature), *feature.point);
  }
  return sites;
}

// Columns that a map for places asks after, whether the file has them or not.
constexpr auto always =
    std::to_array<const char*>({"kind", "name", "site", "country", "utc_offset_h", "height_m", "width_m",
                                "length_m", "planted_year", "what", "area_m2", "left_wild", "remark"});

std::vector<std::string> columns_of(const std::vector<GeoFeature>& features) {
  std::vector<std::string> columns = {"id",          "key", "geometry", "longitude", "latitude",
                                      "elevation_m", "day", "east_m",   "north_m"};
  columns.insert(columns.end(), always.begin(), always.end());
  std::set<std::string> known(columns.begin(), columns.end());
  for (const GeoFeature& feature : features) {
    for (const auto& [name, value] : feature.properties.items()) {
      if (known.insert(name).second) columns.push_back(name);
    }
  }
  return columns;
}

Problem no_json(std::string_view bytes, const std::string& file, std::size_t byte) {
  const auto seen = bytes.substr(0, byte);
  return bad_input("that is no JSON",
                   file + ":" + std::to_string(1 + std::count(seen.begin(), seen.end(), '\n')),
                   "give GeoJSON (RFC 7946), whole");
}

}  // namespace

Expected<std::vector<GeoFeature>> read_geojson(std::string_view bytes, const std::string& file) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  if (!is_utf8(bytes)) return bad_input("the file is not UTF-8", file, "save it as UTF-8");
  if (too_deep(bytes)) return bad_input("lists within lists without an end", file, "give GeoJSON (RFC 7946)");
  try {
    const json root = json::parse(bytes);  // before its lines are looked for: they want sound JSON
    return GeoReader(file, feature_lines(bytes)).read(root);
  } catch (const json::parse_error& error) {
    return no_json(bytes, file, error.byte);
  } catch (const json::out_of_range&) {  // a number beyond what a double holds
    return bad_input("a number is too large", file, "give degrees");
  }
}

Expected<ListedRows> feature_rows(std::string_view bytes, const std::string& file, const book::State& state,
                                  Date today) {
  const auto features = read_geojson(bytes, file);
  if (!features) return features.problem();
  const auto columns = columns_of(*features);
  const std::size_t made_up = columns_of({}).size();
  const auto sites = sites_of(*features, state);
  std::vector<ListedRow> rows;
  for (const GeoFeature& feature : *features) {
    std::map<std::string, std::string> cells;
    for (const auto& [name, value] : feature.properties.items()) cells[name] = cell_of(value);
    cells["id"] = feature.id;
    cells["key"] = key_of(feature);
    cells["geometry"] = feature.geometry;
    cells["day"] = today.iso();
    if (feature.point) {
      cells["longitude"] = number_cell(feature.point->longitude_deg);
      cells["latitude"] = number_cell(feature.point->latitude_deg);
      if (feature.point->elevation_m) cells["elevation_m"] = number_cell(*feature.point->elevation_m);
      const auto site = sites.find(cells["site"]);
      const bool said = !cells["east_m"].empty() && !cells["north_m"].empty();
      if (site != sites.end() && !said) {
        const auto [east, north] = metres_from(site->second.latitude_deg, site->second.longitude_deg,
                                               feature.point->latitude_deg, feature.point->longitude_deg);
        cells["east_m"] = number_cell(std::round(east * 1000) / 1000);  // a millimetre
        cells["north_m"] = number_cell(std::round(north * 1000) / 1000);
      }
    }
    ListedRow row{feature.line, {}, std::nullopt};
    for (const std::string& column : columns) row.cells.push_back(cells[column]);
    rows.push_back(std::move(row));
  }
  return ListedRows(file, columns, made_up, std::move(rows));
}

}  // namespace beegarth::garth
