// The mapping files that come with the program.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace beegarth::garth {

struct ShippedMap {
  std::string path;   // "maps/example.toml"
  std::string form;   // of the files that it reads: csv, geojson, calendar
  std::string about;  // in its own words
  std::string_view toml;
};

std::vector<ShippedMap> shipped_maps();  // by path; the one to begin with first

}  // namespace beegarth::garth
