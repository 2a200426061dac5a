#include "garth/imports/shipped_maps.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "garth/embedded.hpp"
#include "garth/tables/parse_toml.hpp"

namespace beegarth::garth {
namespace {

constexpr std::string_view to_begin_with = "maps/example.toml";
constexpr auto not_of_csv =
    std::to_array<std::pair<std::string_view, std::string_view>>({{"maps/calendar.toml", "calendar"},
                                                                  {"maps/own_points.toml", "geojson"},
                                                                  {"maps/places.toml", "geojson"}});

std::string form_of(std::string_view path) {
  for (const auto& [name, form] : not_of_csv)
    if (name == path) return std::string(form);
  return "csv";
}

std::string about_of(std::string_view toml, std::string_view path) {
  const auto table = parse_toml(toml, std::string(path));
  return table ? (*table)["about"].value_or(std::string()) : std::string();
}

}  // namespace

std::vector<ShippedMap> shipped_maps() {
  std::vector<ShippedMap> maps;
  for (const EmbeddedFile& file : embedded_files()) {
    if (!file.path.starts_with("maps/")) continue;
    maps.push_back({std::string(file.path), form_of(file.path), about_of(file.bytes, file.path), file.bytes});
  }
  std::stable_partition(maps.begin(), maps.end(),
                        [](const ShippedMap& map) { return map.path == to_begin_with; });
  return maps;
}

}  // namespace beegarth::garth
