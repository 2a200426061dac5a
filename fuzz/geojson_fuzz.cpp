// Any bytes at all as GeoJSON: refused with a problem, or read as features whose points are on the globe.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "garth/imports/geojson.hpp"

namespace {

using namespace beegarth;

void must(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

// NOLINTNEXTLINE(readability-identifier-naming): libFuzzer's name
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto features = garth::read_geojson(text, "p.geojson");
  auto rows = garth::feature_rows(text, "p.geojson", {}, *Date::from_ymd(2026, 6, 5));
  must(features.has_value() == rows.has_value());
  if (!features) {
    must(!features.problem().what.empty() && features.problem().where.starts_with("p.geojson"));
    return 0;
  }
  for (const auto& feature : *features) {
    must(feature.line > 0 && feature.point.has_value() == (feature.geometry == "Point"));
    if (feature.point)
      must(std::abs(feature.point->longitude_deg) <= 180 && std::abs(feature.point->latitude_deg) <= 90);
  }
  std::vector<std::string> cells;
  for (std::size_t i = 0; i < features->size(); ++i) must(*rows->next(cells));
  must(!*rows->next(cells));
  return 0;
}
