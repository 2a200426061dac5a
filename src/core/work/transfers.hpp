// The ways of moving a colony into a hive of another pattern: which of them there are between these two, what
// each keeps, costs and needs. tables/transfers.toml; no trial that compares them was found.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "facts/dwelling.hpp"

namespace beegarth::work {

inline constexpr std::string_view transfer_ways[] = {
    "shaken", "cut_and_tied", "grown_down", "grown_across", "bars_among_frames", "combs_lifted_over"};

// One of the two hives, as far as combs go over.
struct CombHome {
  facts::HiveForm form = facts::HiveForm::upright;
  bool frames = true;      // false: bars or wild comb
  bool movable = true;     // combs can be lifted out
  double bar_mm = 0;       // length of top bar or bar
  double depth_mm = 0;     // of comb below it
  bool stackable = false;  // another box can stand above or below it
};

// What stands between the two hives for one of the ways, whatever the season; empty: nothing.
std::vector<std::string> misfits_of_transfer(std::string_view way, const CombHome& from, const CombHome& to);

struct TransferQuestion {
  CombHome from, to;
  Date date;
  double latitude_deg = 52;
  std::optional<double> seams;        // of bees
  std::optional<double> brood_cells;  // all ages
};

struct Range {
  double low = 0, value = 0, high = 0;
};

struct TransferWayTold {
  std::string_view way;
  std::vector<std::string> against;  // why it cannot be done or not now; empty: it can
  Range brood_kept;                  // share
  std::optional<Range> brood_lost_cells;
  Range setback_days;
  double days = 0;  // from the first visit to the last
  double minutes = 0;
  std::vector<std::string> needs;
  std::vector<std::string> cautions;
  std::vector<std::string> sources;
};

// All six, those that can be done first, of these the one that sets back least first. Problem bad_input where
// a row is missing.
Expected<std::vector<TransferWayTold>> ways_of_transfer(const TransferQuestion& question,
                                                        const FactTable& table);

}  // namespace beegarth::work
