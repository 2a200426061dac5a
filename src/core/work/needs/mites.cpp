// Counting mites: each month of the season, and after a treatment.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

// A board needs no opening; where none fits, bees are examined instead.
void by_board_or_bees(facts::Need& need, const Asking& asking) {
  if (asking.colony->dwelling.can_board) {
    need.what = "count board in; collect it after three to seven days and count";
    need.minutes = asking.minutes("board_minutes");
    need.clock = facts::Clock::daylight;
    need.temperature_min_C = 5;
    need.take = {"1 count board, oiled or sticky"};
    need.write_down = "board ";
    return;
  }
  need.what = "count mites on about 300 bees by wash or sugar roll (no board is known to fit this hive)";
  need.minutes = asking.minutes("wash_minutes");
  need.write_down = "wash ";
  need.take = {"jar with mesh lid", "measure for 300 bees", "white tray", "smoker and fuel"};
  need.cautions.push_back("Make sure that the queen is not among the bees you take.");
}

// What a count can change: the width of the odds of mite-damaged winter bees, priced; a tenth of it is
// reckoned to be saved by knowing in time (own reckoning). Half a colony's odds where nothing is worked out.
double worth_of_a_count(const Asking& asking) {
  const auto odds = asking.odds_by(facts::EventKind::winter_mites, asking.last_day() + 400);
  const double width = odds ? odds->high - odds->low : 0.5;
  return 0.1 * asking.fact("colony_lost_kg") * std::clamp(width, 0.1, 1.0);
}

Date end_of_treatment(const Sighting& treatment) {
  return treatment.date + std::max(1, static_cast<int>(treatment.value));
}

}  // namespace

Needs mite_count(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  if (!asking.opening_season(today) || queen_missed(asking)) return {};
  if (colony.last_treatment && end_of_treatment(*colony.last_treatment) >= today) return {};
  if (!count_after_treatment(asking).empty() || !watch_mites(asking).empty() || !treat(asking).empty())
    return {};  // a count follows the treatment
  const int interval = static_cast<int>(asking.fact("count_interval_days"));
  const Date due = colony.last_mite_count ? colony.last_mite_count->date + interval : today;
  if (due > asking.last_day()) return {};
  facts::Need need = asking.need("count-mites", "");
  need.earliest = std::max(today, due - 5);
  need.best = std::max(today, due);
  by_board_or_bees(need, asking);
  need.loss = loss_when_late(asking, due, interval, worth_of_a_count(asking));
  if (colony.last_mite_count)
    need.why.push_back(because("last count on " + day_text(colony.last_mite_count->date) + ", " +
                                   days_text(today - colony.last_mite_count->date) + " ago",
                               {colony.last_mite_count->entry}, {asking.source("count_interval_days")}));
  else
    need.why.push_back(because("never counted in this book", {}, {asking.source("count_interval_days")}));
  asking.tell_odds(need, facts::EventKind::winter_mites, "winter bees reared under too many mites",
                   asking.last_day() + 400, asking.last_day() + 400);
  return {need};
}

Needs watch_mites(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  const auto odds = asking.odds_by(facts::EventKind::winter_mites, asking.last_day() + 400);
  const auto old = above_old_limits(asking);
  const bool likely = odds && odds->value >= asking.fact("watch_odds_to_act");
  if ((!likely && !old) || !asking.opening_season(today) || queen_missed(asking)) return {};
  if (!treat(asking).empty() || !count_after_treatment(asking).empty()) return {};
  if (colony.last_treatment && end_of_treatment(*colony.last_treatment) >= today) return {};
  const int within = static_cast<int>(asking.fact("watch_days"));
  const Date again = colony.last_mite_count ? colony.last_mite_count->date + within : today;
  if (again > today && (!old || again > asking.last_day())) return {};
  facts::Need need = asking.need("watch", "");
  by_board_or_bees(need, asking);
  need.what += "; this one is to be watched";
  need.earliest = need.best = std::max(today, again);
  need.latest = std::min(asking.last_day(), need.earliest + within);
  need.loss = loss_when_late(asking, need.earliest, within, worth_of_a_count(asking));
  need.why.push_back(because(
      (odds ? "the odds of mite-damaged winter bees are " + percent_text(odds->value)
            : std::string("no odds of mite-damaged winter bees are worked out")) +
          " and " +
          (colony.last_mite_count ? "the last count is of " + day_text(colony.last_mite_count->date)
                                  : std::string("it was never counted in this book")),
      colony.last_mite_count ? std::vector<EntryId>{colony.last_mite_count->entry} : std::vector<EntryId>{},
      {asking.source("watch_odds_to_act"), asking.source("watch_days")}));
  if (old) need.why.push_back(*old);
  asking.tell_odds(need, facts::EventKind::winter_mites, "winter bees reared under too many mites",
                   asking.last_day() + 400, asking.last_day() + 400);
  return {need};
}

Needs count_after_treatment(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  if (!colony.last_treatment) return {};
  const Date ended = end_of_treatment(*colony.last_treatment);
  const Date due = ended + static_cast<int>(asking.fact("count_after_days"));
  const Date today = asking.input.today;
  constexpr int too_old_days = 60;
  if (due > asking.last_day() || today - due > too_old_days) return {};
  if (colony.last_mite_count && colony.last_mite_count->date > ended) return {};
  facts::Need need = asking.need("count-after", "");
  need.earliest = std::max(today, ended + 3);
  need.best = std::max(need.earliest, due);
  by_board_or_bees(need, asking);
  if (!asking.colony->dwelling.can_board && !asking.opening_season(need.best)) return {};
  need.what += ": did the treatment work?";
  need.loss =
      loss_when_late(asking, due, 21, 0.5 * asking.fact("treatment_fails") * asking.fact("colony_lost_kg"));
  need.why.push_back(because(
      "treated from " + day_text(colony.last_treatment->date) +
          (colony.last_treatment_kind.empty() ? "" : " (" + colony.last_treatment_kind + ")") +
          "; a count after belongs to every treatment",
      {colony.last_treatment->entry}, {asking.source("count_after_days"), asking.source("treatment_fails")}));
  return {need};
}

}  // namespace beegarth::work
