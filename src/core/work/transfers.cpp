#include "work/transfers.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "work/words.hpp"

namespace beegarth::work {

namespace {

using facts::HiveForm;

std::vector<std::string> needs_of_way(std::string_view way, const CombHome& from, const CombHome& to) {
  const bool same_plan = std::fabs(from.bar_mm - to.bar_mm) <= 2;
  if (way == "shaken")
    return {"a full set of frames or bars with foundation or starters",
            "an excluder under the box for a week, or a queen caged", "feed, unless there is a flow"};
  if (way == "cut_and_tied")
    return {"frames without foundation, bands or string",
            "a table, a long knife, water, a box with a lid for cut stores"};
  if (way == "grown_down" || way == "grown_across") {
    std::vector<std::string> needs{way == "grown_down"
                                       ? "a box of the new pattern with drawn comb or starters, below"
                                       : "the new combs beside the old ones, no gap between",
                                   "an excluder, once she lays in the new combs"};
    if (!same_plan || way == "grown_across") needs.emplace_back("an adaptor between the two patterns");
    return needs;
  }
  if (way == "bars_among_frames") return {"frames on both sides of each bar, to keep the comb straight"};
  return {"the new hive on the old stand"};
}

std::vector<std::string> cautions_of_way(std::string_view way) {
  std::vector<std::string> cautions{
      "Only a stock that was looked through for disease; nothing moves to or from a suspect hive."};
  if (way == "shaken" || way == "cut_and_tied")
    cautions.emplace_back("Find the queen first; a stock without one is not helped by a new hive.");
  if (way == "cut_and_tied")
    cautions.emplace_back(
        "Honey that runs sets off robbing: close cut stores at once, finish towards dusk, narrow the "
        "entrance.");
  if (way == "shaken")
    cautions.emplace_back("Brood left behind goes to another healthy stock the same hour, or it chills.");
  if (way == "bars_among_frames")
    cautions.emplace_back("New comb is kept upright and out of the sun, or it breaks off.");
  return cautions;
}

bool in_months(int month, double first, double last) {
  return month >= first && month <= last;
}

class Teller {
 public:
  Teller(const TransferQuestion& question, const FactTable& table) : question_(question), table_(table) {}

  TransferWayTold tell(std::string_view way) {
    TransferWayTold told{.way = way, .against = misfits_of_transfer(way, question_.from, question_.to)};
    const double first = range(way, "first_month", told).value, last = range(way, "last_month", told).value;
    const int month = northern_month(question_.date, question_.latitude_deg);
    if (!in_months(month, first, last)) told.against.emplace_back("not at this time of the year");
    const double seams = range(way, "seams_min", told).value;
    if (question_.seams && *question_.seams < seams)
      told.against.push_back("the stock has " + number_text(*question_.seams, 1) +
                             " seams of bees; it takes about " + number_text(seams, 0));
    told.brood_kept = range(way, "brood_kept", told);
    if (question_.brood_cells) {
      const double cells = *question_.brood_cells;
      told.brood_lost_cells = Range{cells * (1 - told.brood_kept.high), cells * (1 - told.brood_kept.value),
                                    cells * (1 - told.brood_kept.low)};
    }
    told.setback_days = range(way, "setback_days", told);
    told.days = range(way, "days", told).value;
    told.minutes = range(way, "minutes", told).value;
    told.needs = needs_of_way(way, question_.from, question_.to);
    told.cautions = cautions_of_way(way);
    return told;
  }
  const std::optional<Problem>& fault() const { return fault_; }

 private:
  Range range(std::string_view way, const char* what, TransferWayTold& told) {
    const std::string key = std::string(way) + "_" + what;
    const FactRow* row = table_.find(key);
    if (row == nullptr) {
      if (!fault_)
        fault_ = bad_input("table " + table_.name() + " has no row " + key, {}, "add it with its source");
      return {};
    }
    told.sources.push_back("tables/transfers " + key + ": " + row->source);
    return {row->low.value_or(row->value), row->value, row->high.value_or(row->value)};
  }

  const TransferQuestion& question_;
  const FactTable& table_;
  std::optional<Problem> fault_;
};

}  // namespace

std::vector<std::string> misfits_of_transfer(std::string_view way, const CombHome& from, const CombHome& to) {
  constexpr double same_mm = 2;  // wood moves about so much
  std::vector<std::string> against;
  const auto unless = [&](bool fits, std::string why) {
    if (!fits) against.push_back(std::move(why));
  };
  const bool same_bar = std::fabs(from.bar_mm - to.bar_mm) <= same_mm;
  const auto mm = [](double value) { return number_text(value, 0) + " mm"; };
  if (way == "combs_lifted_over" || way == "bars_among_frames") {
    unless(from.movable, "the combs cannot be lifted out of the old hive");
    unless(same_bar, "the bars are " + mm(from.bar_mm) + " and " + mm(to.bar_mm) + " long");
    unless(from.depth_mm <= to.depth_mm + same_mm,
           "the combs are " + mm(from.depth_mm - to.depth_mm) + " too deep for the new hive");
  }
  if (way == "combs_lifted_over") unless(from.frames == to.frames, "one has frames and the other bars");
  if (way == "bars_among_frames")
    unless(!from.frames && to.frames, "it is for combs on bars into a hive of frames");
  if (way == "grown_down") {
    unless(from.form == HiveForm::upright && to.form == HiveForm::upright,
           "both must stand upright, one on the other");
    unless(to.stackable, "nothing can be stood on the new hive");
  }
  if (way == "grown_across")
    unless(from.form == HiveForm::horizontal || to.form == HiveForm::horizontal,
           "it is for hives whose combs stand in one long row");
  if (way == "cut_and_tied") unless(to.frames, "comb is tied into frames, and the new hive has none");
  return against;
}

Expected<std::vector<TransferWayTold>> ways_of_transfer(const TransferQuestion& question,
                                                        const FactTable& table) {
  Teller teller(question, table);
  std::vector<TransferWayTold> ways;
  ways.reserve(std::size(transfer_ways));
  for (const std::string_view way : transfer_ways) ways.push_back(teller.tell(way));
  if (teller.fault()) return *teller.fault();
  std::stable_sort(ways.begin(), ways.end(), [](const TransferWayTold& a, const TransferWayTold& b) {
    const auto worth = [](const TransferWayTold& way) {
      return std::tuple(!way.against.empty(), way.setback_days.value, -way.brood_kept.value, way.days);
    };
    return worth(a) < worth(b);
  });
  return ways;
}

}  // namespace beegarth::work
