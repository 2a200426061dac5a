// The limits of old leaflets, by count and month, as they stand beside the odds: a heavy case cannot wait for
// the crop to be off, but it is the odds that say which is one.
#include <algorithm>
#include <array>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

struct Limit {
  const char* row;
  const char* words;  // after the number
};

Limit of_bees(int month) {
  return month < 8 ? Limit{"bees_limit_spring", " per 100 bees until July"}
                   : Limit{"bees_limit_autumn", " per 100 bees from August"};
}

// The month's own limit where the manual gives one, unless the limit for any time is lower.
Limit of_board(const Asking& asking, int month) {
  constexpr std::array<Limit, 4> by_month{{{"board_limit_may", " a day in May"},
                                           {"board_limit_june", " a day in June"},
                                           {"board_limit_july", " a day in July"},
                                           {"board_limit_august", " a day in August"}}};
  const Limit any{"board_limit_any_time", " a day at any time"};
  if (month < 5 || month > 8) return any;
  const Limit of_month = by_month.at(static_cast<std::size_t>(month - 5));
  return asking.fact(of_month.row) < asking.fact(any.row) ? of_month : any;
}

std::optional<Limit> limit_of(const Asking& asking, const MiteSighting& seen) {
  const int month = asking.month(seen.count.date);
  if (seen.method == "board") return of_board(asking, month);
  if (seen.method == "wash" || seen.method == "sugar_roll") return of_bees(month);
  return std::nullopt;  // brood cells: no classic limit is known to us
}

// The newest count of each method within a month, newest first; nothing from before the end of a treatment.
std::vector<MiteSighting> counts_of_late(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  std::vector<MiteSighting> late;
  for (auto seen = colony.mite_counts.rbegin(); seen != colony.mite_counts.rend(); ++seen) {
    if (asking.input.today - seen->count.date > static_cast<int>(asking.fact("count_interval_days"))) break;
    if (colony.last_treatment &&
        seen->count.date <= colony.last_treatment->date + static_cast<int>(colony.last_treatment->value))
      break;
    late.push_back(*seen);
  }
  return late;
}

std::string told(const Asking& asking, const MiteSighting& seen, const Limit& limit) {
  return number_text(seen.count.value, 1) +
         (seen.method == "board" ? " mites a day on the board on " : " mites per 100 bees on ") +
         day_text(seen.count.date) + " (old limit " + number_text(asking.fact(limit.row), 0) + limit.words +
         ")";
}

// A colony that dies or ends queenless before autumn rears no winter bees, and their odds say nothing of it.
bool far_above_old_limits(const Asking& asking) {
  const auto late = counts_of_late(asking);
  return std::any_of(late.begin(), late.end(), [&](const MiteSighting& seen) {
    const auto limit = limit_of(asking, seen);
    return limit && seen.count.value >= asking.fact("alarm_times_limit") * asking.fact(limit->row);
  });
}

}  // namespace

std::optional<facts::Reason> above_old_limits(const Asking& asking) {
  if (!asking.opening_season(asking.input.today)) return std::nullopt;
  facts::Reason why;
  std::vector<std::string> methods;
  for (const MiteSighting& seen : counts_of_late(asking)) {
    const auto limit = limit_of(asking, seen);
    if (!limit) continue;
    why.entries.push_back(seen.count.entry);
    // Only the newest of a method decides; the older ones are cited.
    if (std::find(methods.begin(), methods.end(), seen.method) != methods.end()) continue;
    methods.push_back(seen.method);
    if (seen.count.value <= asking.fact(limit->row)) continue;
    why.text += (why.text.empty() ? "" : ", ") + told(asking, seen, *limit);
    why.sources.push_back(asking.source(limit->row));
  }
  if (why.text.empty()) return std::nullopt;
  const auto& wings = asking.colony->crippled_wings;
  if (wings && asking.input.today - wings->date <= static_cast<int>(asking.fact("count_interval_days"))) {
    why.text += ", crippled wings on " + day_text(wings->date);
    why.entries.push_back(wings->entry);
  }
  why.text += ": above the limits of old leaflets, which the odds have taken the place of";
  const auto mites = asking.median_of("mites", asking.input.today);
  if (mites && *mites > asking.fact("mites_ceiling"))
    why.text += "; about " + number_text(*mites / 100, 0) + "00 mites are believed to be in it, " +
                number_text(asking.fact("mites_ceiling"), 0) + " the usual ceiling";
  why.sources.push_back(asking.source("mites_ceiling"));
  why.sources.push_back(asking.source("alarm_days"));
  return why;
}

std::optional<MiteAlarm> mite_alarm(const Asking& asking) {
  const Date end = asking.input.today + 400;
  const auto odds = asking.odds_by(facts::EventKind::winter_mites, end);
  const bool far_above = far_above_old_limits(asking);
  const char* row = far_above ? "treat_odds_to_act" : "treat_now_odds";
  if (!odds) return std::nullopt;
  const auto death = far_above ? asking.odds_by(facts::EventKind::death, end) : std::nullopt;
  const bool dies_first = death && death->value > odds->value;
  const double harm = dies_first ? death->value : odds->value;
  if (harm < asking.fact(row)) return std::nullopt;
  auto why = above_old_limits(asking);
  if (!why) return std::nullopt;
  const std::string what = dies_first ? "the odds that the colony dies are "
                                      : "the odds that winter bees are reared under too many mites are ";
  why->text = what + percent_text(harm) + ", and the counts are high: " + why->text;
  why->sources.push_back(asking.source(row));
  if (far_above) why->sources.push_back(asking.source("alarm_times_limit"));
  return MiteAlarm{harm, *std::move(why)};
}

}  // namespace beegarth::work
