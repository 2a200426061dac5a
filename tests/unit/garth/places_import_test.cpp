#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "garth/exports/places.hpp"
#include "garth/imports/geojson.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;

const Date today = *Date::from_ymd(2026, 6, 5);

// The first row's cells under these names.
std::vector<std::string> cells(const std::string& text, const std::vector<std::string>& names) {
  auto rows = feature_rows(text, "p.geojson", {}, today);
  EXPECT_TRUE(rows) << (rows ? "" : one_line(rows.problem()));
  std::vector<std::string> row, wanted;
  if (!rows || !*rows->next(row)) return {};
  for (const auto& name : names) {
    const auto at = std::find(rows->header().begin(), rows->header().end(), name);
    wanted.push_back(at == rows->header().end() ? "(no such column)"
                                                : row[static_cast<std::size_t>(at - rows->header().begin())]);
  }
  return wanted;
}

TEST(PlacesImport, a_point_becomes_cells_with_its_properties_under_their_own_names) {
  EXPECT_THAT(
      cells(R"({"type": "Feature", "id": 7, "geometry": {"type": "Point", "coordinates": [-1.5, 52.25, 84]},
                        "properties": {"name": "Mill", "shady": true, "trees": 3, "nothing": null}})",
            {"name", "longitude", "latitude", "elevation_m", "day", "key", "shady", "trees", "nothing"}),
      testing::ElementsAre("Mill", "-1.5", "52.25", "84.0", "2026-06-05", "7", "yes", "3", ""));
}

// One degree of latitude is 111,195 m on a sphere of 6,371,009 m (arithmetic); at 60 degrees north one of
// longitude is half of that.
TEST(PlacesImport, metres_from_a_site_are_those_that_the_export_would_place) {
  const Metres metres = metres_from(60, 10, 60.001, 10.001);
  EXPECT_NEAR(metres.north, 111.195, 0.001);
  EXPECT_NEAR(metres.east, 55.5975, 0.0005);
  EXPECT_NEAR(metres_from(0, 179.9995, 0, -179.9995).east, 111.195, 0.001);  // across the date line
}

TEST(PlacesImport, an_object_without_metres_gets_them_from_the_point_of_its_site) {
  const std::string file = R"({"type": "FeatureCollection", "features": [
    {"type": "Feature", "id": "object-oak", "geometry": {"type": "Point", "coordinates": [10.001, 60.001]},
     "properties": {"kind": "tree", "name": "Oak", "site": "yard"}},
    {"type": "Feature", "id": "site-yard", "geometry": {"type": "Point", "coordinates": [10, 60]},
     "properties": {"kind": "site", "name": "Yard"}}]})";
  EXPECT_THAT(cells(file, {"key", "east_m", "north_m"}), testing::ElementsAre("oak", "55.598", "111.195"));
}

TEST(PlacesImport, another_reference_system_is_refused) {
  const auto file = [](const std::string& name) {
    return R"({"type": "FeatureCollection", "crs": {"type": "name", "properties": {"name": ")" + name +
           R"("}}, "features": []})";
  };
  EXPECT_FALSE(read_geojson(file("urn:ogc:def:crs:EPSG::27700"), "p"));
  EXPECT_TRUE(read_geojson(file("urn:ogc:def:crs:OGC:1.3:CRS84"), "p"));
}

TEST(PlacesImport, what_is_broken_is_refused_with_its_line) {
  const std::vector<std::pair<std::string, std::string>> cases = {
      {"", "p.geojson:1: that is no JSON"},
      {"{\"type\":\n\n\"Point\"", "p.geojson:3: that is no JSON"},
      {"{\"type\": \"Point\", \"coordinates\": [1e999, 0]}", "p.geojson"},
      {std::string(100'000, '['), "lists within lists"},
      {"{\"type\": \"Feature\", \"geometry\": null, \"properties\": {\"name\": {\"en\": \"Bank\"}}}",
       "the name is no text"},
      {"\xff", "not UTF-8"},
      {"{\"ty\\", "p.geojson:1: that is no JSON"},  // found by the fuzzer: a backslash at the very end
      {"{\"type\": \"FeatureCollection\", \"features\": [\n{\"type\": \"Feature\", \"geometry\": null},\n7]}",
       "p.geojson:"}};
  for (const auto& [text, what] : cases) {
    const auto features = read_geojson(text, "p.geojson");
    ASSERT_FALSE(features) << text.substr(0, 60);
    EXPECT_THAT(one_line(features.problem()), HasSubstr(what));
  }
}

}  // namespace
}  // namespace beegarth::garth
