// GeoJSON by its standard. Source of the texts: RFC 7946, section 1.5 (the example of a FeatureCollection)
// and appendix A (one example of each geometry); the texts are quoted from memory.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "garth/imports/geojson.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;

const char* const collection = R"({
       "type": "FeatureCollection",
       "features": [{
           "type": "Feature",
           "geometry": {
               "type": "Point",
               "coordinates": [102.0, 0.5]
           },
           "properties": {
               "prop0": "value0"
           }
       }, {
           "type": "Feature",
           "geometry": {
               "type": "LineString",
               "coordinates": [
                   [102.0, 0.0],
                   [103.0, 1.0],
                   [104.0, 0.0],
                   [105.0, 1.0]
               ]
           },
           "properties": {
               "prop0": "value0",
               "prop1": 0.0
           }
       }, {
           "type": "Feature",
           "geometry": {
               "type": "Polygon",
               "coordinates": [
                   [
                       [100.0, 0.0],
                       [101.0, 0.0],
                       [101.0, 1.0],
                       [100.0, 1.0],
                       [100.0, 0.0]
                   ]
               ]
           },
           "properties": {
               "prop0": "value0",
               "prop1": {
                   "this": "that"
               }
           }
       }]
   })";

TEST(GeoJson, the_example_of_section_1_5_is_read_as_it_says) {
  const auto features = read_geojson(collection, "rfc7946.geojson");
  ASSERT_TRUE(features) << one_line(features.problem());
  ASSERT_EQ(features->size(), 3U);
  EXPECT_EQ((*features)[0].geometry, "Point");
  EXPECT_EQ((*features)[0].point->longitude_deg, 102.0);
  EXPECT_EQ((*features)[0].point->latitude_deg, 0.5);
  EXPECT_EQ((*features)[1].geometry, "LineString");
  EXPECT_EQ((*features)[1].properties["prop1"], 0.0);
  EXPECT_EQ((*features)[2].geometry, "Polygon");
  EXPECT_EQ((*features)[2].properties["prop1"]["this"], "that");
  // Lines of the text above, counted by hand.
  EXPECT_EQ((*features)[0].line, 3U);
  EXPECT_EQ((*features)[1].line, 12U);
  EXPECT_EQ((*features)[2].line, 27U);
}

struct Geometry {
  const char* type;
  const char* text;
};
const std::vector<Geometry> appendix_a = {
    {"Point", R"({"type": "Point", "coordinates": [100.0, 0.0]})"},
    {"LineString", R"({"type": "LineString", "coordinates": [[100.0, 0.0], [101.0, 1.0]]})"},
    {"Polygon",
     R"({"type": "Polygon", "coordinates": [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
        [[100.8, 0.8], [100.8, 0.2], [100.2, 0.2], [100.2, 0.8], [100.8, 0.8]]]})"},
    {"MultiPoint", R"({"type": "MultiPoint", "coordinates": [[100.0, 0.0], [101.0, 1.0]]})"},
    {"MultiLineString",
     R"({"type": "MultiLineString", "coordinates": [[[100.0, 0.0], [101.0, 1.0]], [[102.0, 2.0], [103.0, 3.0]]]})"},
    {"MultiPolygon",
     R"({"type": "MultiPolygon", "coordinates": [[[[102.0, 2.0], [103.0, 2.0], [103.0, 3.0], [102.0, 3.0],
        [102.0, 2.0]]], [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
        [[100.2, 0.2], [100.2, 0.8], [100.8, 0.8], [100.8, 0.2], [100.2, 0.2]]]]})"},
    {"GeometryCollection",
     R"({"type": "GeometryCollection", "geometries": [{"type": "Point", "coordinates": [100.0, 0.0]},
        {"type": "LineString", "coordinates": [[101.0, 0.0], [102.0, 1.0]]}]})"}};

TEST(GeoJson, every_geometry_of_appendix_a_is_known) {
  for (const Geometry& one : appendix_a) {
    const auto features = read_geojson(one.text, "a.geojson");
    ASSERT_TRUE(features) << one.type << ": " << one_line(features.problem());
    EXPECT_EQ(features->front().geometry, one.type);
    EXPECT_EQ(features->front().point.has_value(), std::string(one.type) == "Point");
  }
}

// What the standard's sections 3.1 to 3.2 and 4 rule out.
TEST(GeoJson, what_the_standard_rules_out_is_refused) {
  const std::vector<std::pair<const char*, const char*>> cases = {
      {R"({"type": "Point", "coordinates": [100.0]})", "at least two numbers"},                    // 3.1.1
      {R"({"type": "Point", "coordinates": ["100", "0"]})", "at least two numbers"},               // 3.1.1
      {R"({"type": "Point", "coordinates": [0.0, 100.0]})", "not on the globe"},                   // 4
      {R"({"type": "point", "coordinates": [0.0, 0.0]})", "no geometry 'point'"},                  // 1.4
      {R"({"type": "Feature", "geometry": null, "properties": []})", "properties are no object"},  // 3.2
      {R"({"type": "Feature", "geometry": null, "properties": null, "id": true})", "an id is"},    // 3.2
      {R"({"type": "FeatureCollection", "features": [{"type": "Point"}]})", "is no Feature"},      // 3.3
      {R"({"type": "FeatureCollection"})", "has no features"},                                     // 3.3
      {R"([1, 2])", "has no type"}};                                                               // 3
  for (const auto& [text, what] : cases) {
    const auto features = read_geojson(text, "wrong.geojson");
    ASSERT_FALSE(features) << text;
    EXPECT_THAT(one_line(features.problem()), HasSubstr(what));
    EXPECT_THAT(features.problem().where, HasSubstr("wrong.geojson:1"));
  }
  EXPECT_TRUE(
      read_geojson(R"({"type": "Feature", "geometry": null, "properties": null})", "f"));  // 3.2: unlocated
}

}  // namespace
}  // namespace beegarth::garth
