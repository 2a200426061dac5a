// A first mapping file from a keeper's own CSV.
#include "garth/imports/draft_map.hpp"

#include <iostream>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"
#include "garth/files.hpp"

namespace beegarth::cli {

int draft_map_command(const Call& call) {
  constexpr std::size_t largest_file = std::size_t{64} << 20;
  const auto bytes = garth::read_file(call.subject, largest_file);
  if (!bytes) return report(bytes.problem());
  const auto map = garth::draft_map(*bytes, call.subject, call.kind);
  if (!map) return report(map.problem());
  if (call.json)
    std::cout << nlohmann::json{{"map", *map}}.dump(2) << '\n';
  else
    std::cout << *map;
  return 0;
}

}  // namespace beegarth::cli
