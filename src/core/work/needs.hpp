// From what is believed and what the calendar says to what wants doing. One file per kind of need beside this
// one.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/fact_table.hpp"
#include "base/units.hpp"
#include "facts/deed.hpp"
#include "facts/dwelling.hpp"
#include "facts/need.hpp"
#include "facts/outlook.hpp"

namespace beegarth::work {

// An entry worth citing, with its date.
struct Sighting {
  Date date;
  EntryId entry;
  double value = 0;
};

// A mite count: per day on the board, or per 100 bees or cells; method is the book's word for it.
struct MiteSighting {
  Sighting count;
  std::string method;
};

// What the book says of a colony that the needs ask for. Absent: never said.
struct ColonyStatus {
  ColonyId colony;
  std::string name;
  SiteId site;
  int place = 0;
  facts::Dwelling dwelling;
  std::optional<Sighting> last_full_look;
  std::optional<Sighting> last_any_look;
  std::optional<Sighting> last_mite_count;  // value: mites per 100 bees, or per day on the board
  std::string last_mite_method;
  std::vector<MiteSighting> mite_counts;       // every count, oldest first
  std::optional<Sighting> crippled_wings;      // last look that saw them
  std::optional<Sighting> last_charged_cells;  // value: number, from the last look, only if any
  std::optional<Sighting> last_sealed_cells;
  std::optional<Sighting> cells_since;  // the first of the looks in a row that found charged or sealed cells
  std::optional<Sighting> last_cups_with_egg;
  std::optional<Sighting> eggs_seen;              // last date eggs were seen
  std::optional<Sighting> no_eggs_seen;           // last look that found none, if later than eggs_seen
  std::optional<Sighting> no_eggs_first;          // first of the looks in a row that found none
  std::optional<Sighting> queen_lost_or_swarmed;  // 0 lost, 1 swarmed, 2 split without queen, 3 introduced
  std::optional<Sighting> last_treatment;         // value: days on
  std::string last_treatment_kind;
  double treatment_withdrawal_days = 0;
  std::optional<Sighting> treatment_in_hive;  // strips, pads, trays not taken out: value: days by the label
  std::optional<Sighting> quarantine_until;   // date: its last day
  std::optional<Sighting> last_feed;
  std::optional<Sighting> last_stores;  // value: kg, as seen or weighed
  std::optional<Sighting> supers_on;    // value: number of super combs on
  std::optional<Sighting> super_share;  // value: how full they were seen; nothing taken or put on since
  bool queen_clipped = false;
  bool suspect = false;  // signs that may be a notifiable disease
  struct Sign {
    std::string words;
    Sighting seen;
  };
  std::vector<Sign> signs;  // those that make it suspect
  struct Told {             // the authority was told
    Sighting on;
    std::string by, to, reference;  // in the keeper's words; empty where not said
  };
  std::optional<Told> told_authority;
  struct BroodCombs {  // a batch of comb on this colony
    std::string name;
    int count = 0;
    int drawn_year = 0;
    EntryId entry;
  };
  std::vector<BroodCombs> brood_combs;  // whose year was said
};

// Something planted at a site, and the last time that each thing was done for it.
struct Planting {
  std::string plant;
  std::string where;  // the patch's name; empty where none was said
  int count = 1;
  Date planted;
  EntryId entry;
  std::optional<Date> watered, guarded, weeded, gaps_filled;
  std::optional<Sighting> nest;  // found in its patch and not gone
  std::string nest_of;
  std::string nest_at;  // in the finder's words
};

// A nest that was found and is not gone.
struct NestFound {
  Sighting seen;
  std::string of, at;  // in the finder's words
};

// Flowers of a patch that are over and not cut since.
struct FlowersOver {
  std::string plant;
  std::string where;  // the patch's name; empty where none was said
  Sighting over;
  std::optional<NestFound> nest;  // in its patch, or at its site where no patch was said
};

// A build that was begun and is not finished.
struct BuildBegun {
  std::string build, step;  // the last one done
  Sighting last;
  double hours = 0;  // in all
};

// Something that could not wait: "blown_over", "robbing", ... as in the book.
struct Happening {
  std::string what;
  Sighting seen;
  std::optional<ColonyId> colony;  // absent: the whole site
};

// When something agreed about the land runs out.
struct LandTerm {
  Sighting until;    // its last day
  std::string with;  // whom it is agreed with, or what is insured where
};

// How many stocks are wanted by a month.
struct StockAim {
  int month = 1;
  int colonies = 0;
  EntryId entry;
};

// A report that is owed to the authority, and not at once.
struct DueReport {
  std::string what;  // "varroa"
  std::string why, law, source;
  std::vector<EntryId> entries;  // in which it was seen
};

struct SiteStatus {
  SiteId site;
  std::string name;
  std::string authority = "the bee inspector";  // whom a suspicion or a pest is told here, in general words
  std::string law;                              // by which a suspicion is told at once
  std::vector<DueReport> reports;
  bool neighbours = false;
  bool floods = false;
  bool swarm_season = false;            // drones about, by month and latitude
  std::vector<double> nectar_by_month;  // twelve, from the keeper's own reckoning; empty where never said
  double rain_next_days_mm = 0;         // median over the plan
  facts::Odds gust{0, 0, 0};            // odds of a gust above 20 m/s within the plan
  double latitude_deg = 52;
  std::vector<Planting> plantings;
  std::vector<FlowersOver> flowers_over;
  std::optional<Sighting> grass_cut;  // the last time, where no patch was said
  std::vector<NestFound> nests;
  std::vector<StockAim> aims;            // for this site
  std::vector<std::string> empty_hives;  // that stand here, by name
  std::vector<Happening> happenings;     // oldest first
  std::optional<LandTerm> agreement, insurance;
  std::vector<double> day_max_C, day_mean_C;  // medians of the days of the plan; empty where none are known
};

// Honey of a lot that waits for its next step.
struct LotWaiting {
  LotId lot;
  std::string name;
  Sighting since;
  std::set<SiteId> sites;  // where the hives stand that it was taken from
};

struct NeedsInput {
  Date today;
  int days = 14;
  std::vector<SiteStatus> sites;
  std::vector<ColonyStatus> colonies;
  std::vector<facts::Outlook> outlooks;          // one per colony, same order not assumed
  std::set<std::string> answered;                // keys done, skipped, or put off past the plan
  std::map<std::string, int> kit;                // what is owned and ready
  std::map<std::string, std::string> kit_where;  // where it stands, in the keeper's words
  std::vector<StockAim> aims;                    // for all sites together
  std::vector<Sighting> stored_combs;            // batches in store; value: number of combs
  std::vector<LotWaiting> to_extract;            // taken off and not extracted yet
  std::vector<LotWaiting> to_measure;            // extracted, and its water not said
  std::vector<BuildBegun> builds;
  std::vector<LotWaiting> wet_combs;        // extracted, and not said where the wet combs went
  std::set<facts::Deed> refused;            // by the keeper's own rules
  double price_per_hour = 2;                // of the keeper's time, in the unit of loss
  std::vector<std::string> at_a_dead_hive;  // what to do there, in this order
};

// tables/work.toml: minutes, thresholds, prices of what is lost.
std::vector<facts::Need> needs_from(const NeedsInput& input, const FactTable& table);

}  // namespace beegarth::work
