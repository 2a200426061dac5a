// What was seen, look by look, of everything that a forecast can be held against.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "garth/session.hpp"

namespace beegarth::garth {

enum class Scored { bees, capped_cells, mites_per_100_bees, infested_share, stores_kg, weight_kg, alive };
inline constexpr std::array<std::string_view, 7> scored_names{
    "bees", "capped_cells", "mites_per_100_bees", "infested_share", "stores_kg", "weight_kg", "alive"};
inline constexpr std::array<Scored, 7> all_scored{
    Scored::bees,           Scored::capped_cells, Scored::mites_per_100_bees,
    Scored::infested_share, Scored::stores_kg,    Scored::weight_kg,
    Scored::alive};
inline std::string_view name_of(Scored what) {
  return scored_names.at(static_cast<std::size_t>(what));
}

// What was seen of one colony on one day.
struct SeenThen {
  Date date;
  bool alive = true;
  std::optional<double> bees;  // 0 where it was found dead
  std::optional<double> capped_cells;
  std::optional<double> mites_per_100_bees;
  std::optional<double> infested_share;
  std::optional<double> stores_kg;  // said, weighed by themselves, or counted in combs while no super was on
  std::optional<double> weight_kg;  // of the whole hive
  bool by_seams = false;            // bees were counted by seams
  int examined = 0;                 // bees, in a wash or a sugar roll
  bool rolled = false;              // a sugar roll
  int mites = 0;                    // found on them
  int opened = 0;                   // capped cells
};
std::optional<double> value_of(const SeenThen& then, Scored what);

struct SeenColony {
  ColonyId colony;
  SiteId site;  // where it stands today, or stood last
  bool south = false;
  std::vector<SeenThen> looks;  // ascending, one a day
};
std::vector<SeenColony> seen_in(const Session& session);

}  // namespace beegarth::garth
