// Sites, the land they lie on, and the hives and stands at them.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

struct Site {
  SiteId site;
  std::string name;
  double latitude_deg = 0;
  double longitude_deg = 0;
  Number elevation_m;
  Number utc_offset_h;  // standard time of the place
  Text grid_reference;  // printed on the sheet
  Text access;          // gate, key, where to park
  Flag neighbours;      // people live or walk close by
  Flag floods;
  Flag frost_hollow;
  Text country;  // whose rules hold here, like "england"
  Text remark;
};
struct SiteClosed {
  SiteId site;
  Text reason;
};
struct Travel {  // both ways alike; "home" is where the keeper starts
  std::string from;
  std::string to;
  double minutes = 0;
  Number km;
};
enum class HiveForm { upright, horizontal };
enum class CombsHang { frames, bars, fixed };
struct Hive {
  HiveId hive;
  std::string name;
  SiteId site;
  Text stand;
  Count place;  // order in which it is reached at the site, 1 first
  HiveForm form = HiveForm::upright;
  std::string type;
  int brood_combs = 11;
  Count super_combs;
  Count undrawn_combs;
  Count brood_combs_max;
  Count super_combs_max;
  Number worker_cells_per_comb;
  Number honey_kg_per_comb;
  Number bees_per_seam;
  Number conductance_W_K;
  Flag mesh_floor;
  Flag sheltered;
  Flag can_board;
  Flag can_heft;
  Flag can_super;
  Flag can_see_seams;
  Flag two_colonies;
  std::optional<CombsHang> combs_hang;  // in frames, from bars, or built onto the hive itself
  Number comb_length_mm;                // of the top bar or bar
  Number comb_depth_mm;
};

enum class Tenure { owned, rented, lent, shared };
struct Land {  // what was agreed about a site
  SiteId site;
  std::optional<Tenure> tenure;
  Text owner;
  Text gate;  // lock, key, stock that must stay in
  Number rent_per_year;
  Text currency;
  std::optional<Date> agreed_until;
  Text insurance;
  std::optional<Date> insured_until;
  Text remark;
};
enum class GroundThing { tree, hedge, fence, wall, building, water, path, gate, bank, wood, ditch, other };
struct GroundObject {
  ObjectId object;
  SiteId site;
  std::string name;
  GroundThing what = GroundThing::other;
  Number east_m;  // from the site's own point
  Number north_m;
  Number length_m;
  Number width_m;
  Number height_m;
  Count planted_year;
  Text remark;
};
struct Stand {
  std::string stand;
  SiteId site;
  Count places;
  Number height_cm;
  Number facing_deg;  // azimuth the entrances look to
  Text remark;
};

}  // namespace beegarth::entries
