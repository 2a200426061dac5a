// What can be said in the book: one struct per kind of entry. Optional means "not said", which is never
// "none". The fields' names, units and limits are told once, in fields.hpp, and everything else follows from
// there.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/date.hpp"
#include "base/units.hpp"

namespace beegarth::entries {

using Text = std::optional<std::string>;
using Number = std::optional<double>;
using Count = std::optional<int>;
using Flag = std::optional<bool>;

// ---- places ----
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
};

// ---- colonies ----
enum class Beginning { overwintered, swarm, split, bought, unknown };
struct ColonyBegan {
  ColonyId colony;
  std::string name;
  HiveId hive;
  Beginning how = Beginning::unknown;
  Number bees;  // estimate
  Number stores_kg;
  Count queen_year;  // hatched
  Flag queen_clipped;
  Text remark;
};
struct ColonyMoved {
  ColonyId colony;
  HiveId hive;
};
enum class Ending { died, sold, united, given_away, absconded };
struct ColonyEnded {
  ColonyId colony;
  Ending how = Ending::died;
  Text cause;
};
enum class QueenEvent {
  marked,
  clipped,
  introduced,
  cell_given,
  virgin_emerged,
  laying,
  lost,
  removed,
  caged,
  released
};
struct Queen {
  ColonyId colony;
  QueenEvent event = QueenEvent::marked;
  Count year;
  Text remark;
};

// ---- looking ----
enum class Look { full, quick, outside };  // every comb; under the roof; from the entrance
enum class Level { none, little, some, plenty };
struct Inspection {
  ColonyId colony;
  Look look = Look::full;
  Number seams;         // spaces between combs full of bees
  Number bees;          // estimate of all adult bees
  Number brood_combs;   // combs with brood
  Number capped_cells;  // estimate, worker
  Number drone_cells;   // estimate, capped
  Flag eggs;
  Flag open_brood;
  Flag capped_brood;
  Flag queen;  // seen
  Count cups_with_egg;
  Count charged_cells;  // open queen cells with larva
  Count sealed_cells;
  Number store_combs;  // in full combs
  Number stores_kg;    // estimate
  std::optional<Level> pollen;
  Number super_share;  // 0..1, how full the supers are
  Flag drones;
  Flag calm;
  Flag looked_because_wrong;
  std::vector<std::string> signs;  // of ill health, from signs_of_health
  Text remark;
};
enum class MiteMethod { board, sugar_roll, wash, brood };
struct MiteCount {
  ColonyId colony;
  MiteMethod method = MiteMethod::board;
  int mites = 0;       // brood: cells infested
  Number days;         // board: days it lay
  Number board_share;  // board: share counted, 0..1
  Count bees;          // roll, wash: bees examined
  Count cells;         // brood: capped cells opened
};
enum class Weighed { whole_hive, stores };
struct Weight {
  ColonyId colony;
  double kg = 0;
  Weighed what = Weighed::whole_hive;
};

// ---- doing ----
enum class FeedForm { syrup, fondant, comb, pollen };
struct Feed {
  ColonyId colony;
  double kg = 0;     // as given
  Number sugar_pct;  // by weight
  FeedForm form = FeedForm::syrup;
};
enum class TreatmentKind {
  oxalic_trickle,
  oxalic_vapour,
  formic,
  thymol,
  amitraz,
  pyrethroid,
  hop_acids,
  drone_comb_removed,
  brood_removed,
  other
};
struct Treatment {
  ColonyId colony;
  TreatmentKind kind = TreatmentKind::other;
  Number days;  // how long it stays on, by the label
  Text product;
  Text batch;
  Text amount;             // as the keeper writes it; beegarth never works out a dose
  Number withdrawal_days;  // by the label
  Text remark;
};
struct Room {  // combs put on or, negative, taken off
  ColonyId colony;
  Count brood_combs;
  Count super_combs;
  Count undrawn;  // of those put on, how many still want drawing
};
struct Swarmed {
  ColonyId colony;
  Text remark;
};
struct Split {
  ColonyId colony;
  ColonyId into;
  std::string name;
  HiveId hive;
  double bees_share = 0.4;  // of adults to the new one
  double brood_share = 0.4;
  bool queen_goes = false;
};
struct Unite {
  ColonyId colony;  // that goes on
  ColonyId from;    // that ends in it
};
struct Harvest {
  ColonyId colony;
  double kg = 0;
  Count combs;
};
struct NeedAnswered {
  std::string need;  // its key
  enum class Answer { done, skipped, put_off, rained_off } answer = Answer::done;
  std::optional<Date> until;
  Text remark;
};

// ---- weather, forage, time ----
struct Weather {
  SiteId site;  // "all" for every site of the book
  Number temperature_min_C;
  Number temperature_max_C;
  Number rain_mm;
  Number wind_m_s;
  Number gust_m_s;
  Number sun_hours;
  bool forecast = false;
  bool invented = false;
};
struct Normals {  // one month of a site's normals; site "all" for every site
  SiteId site;
  int month = 1;
  double temperature_min_C = 0;
  double temperature_max_C = 0;
  double rain_mm = 0;
  double rain_days = 0;
  Number wind_m_s;
};
struct Forage {  // the keeper's own reckoning, month by month
  SiteId site;
  int month = 1;
  double nectar_kg_per_day =
      0;  // honey equivalent a strong stock (10,000 foragers) brings home on a good day
  Level pollen = Level::some;
};
struct WorkingHours {
  Count weekday;             // 1 Monday .. 7 Sunday, or
  std::optional<Date> date;  // one day
  double start_hour = 10;    // local
  double end_hour = 16;      // equal: no time that day
};

// ---- the rest ----
struct Kit {
  std::string what;
  int count = 0;  // owned and ready now
  Text where;
};
struct Setting {
  std::string name;
  std::string value;
};
struct Note {
  std::string text;
  std::optional<ColonyId> colony;
  std::optional<SiteId> site;
};
struct TableOverride {  // one row of a reference table, for this book
  std::string table;
  std::string row;
  double value = 0;
  Number low;
  Number high;
  std::string unit;
  std::string source;
};
struct Removed {  // takes back an earlier entry; both stay in the book
  EntryId entry;
  Text reason;
};
struct Cleared {  // the bee inspector has cleared a suspect colony: the only thing that lifts the suspicion
  ColonyId colony;
  std::string by;
  Text remark;
};

using Payload =
    std::variant<Site, SiteClosed, Travel, Hive, ColonyBegan, ColonyMoved, ColonyEnded, Queen, Inspection,
                 MiteCount, Weight, Feed, Treatment, Room, Swarmed, Split, Unite, Harvest, NeedAnswered,
                 Weather, Normals, Forage, WorkingHours, Kit, Setting, Note, TableOverride, Removed, Cleared>;

}  // namespace beegarth::entries
