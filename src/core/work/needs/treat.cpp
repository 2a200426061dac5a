// Treating against varroa: by the odds that winter bees are reared under too many mites, and at once where a
// count stands above the classic limit of its month.
#include <algorithm>
#include <cmath>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

// 1 while the whole benefit can still be had, 0 once the winter bees are reared; a straight line between.
double benefit_left(const Asking& asking, Date date) {
  const double first = asking.fact("treat_first_day"), last = asking.fact("treat_last_day");
  const int day = asking.site.latitude_deg >= 0 ? date.day_of_year() : (date.day_of_year() + 182) % 365;
  return std::clamp((last - day) / (last - first), 0.0, 1.0);
}

bool treated_lately(const Asking& asking) {
  const auto& treatment = asking.colony->last_treatment;
  // Its effect is not known before the count after; a second treatment waits for that count.
  return treatment && asking.input.today - (treatment->date + static_cast<int>(treatment->value)) <=
                          static_cast<int>(asking.fact("count_after_days")) + 7;
}

void cautions_of_treating(facts::Need& need) {
  need.cautions.push_back(
      "Only a kind authorised in your country; read the label first and keep to it. No dose is worked out "
      "here.");
  need.cautions.push_back(
      "Acids and vapour burn skin, eyes and lungs: goggles, acid gloves, the mask the label asks for, "
      "upwind; "
      "carry acid upright and boxed in the car.");
  need.cautions.push_back(
      "Write down product, batch, amount, date and withdrawal, and keep the record as your law asks.");
}

// Once the alarm is up every day costs: the mites double in `alarm_days`.
double benefit_left_after_alarm(const Asking& asking, int days) {
  return std::clamp(1 - days / asking.fact("alarm_days"), 0.0, 1.0);
}

std::string what_to_do(bool alarm, bool supers) {
  if (!alarm)
    return supers ? "take the crop off, then treat against varroa with an authorised kind; count again "
                    "afterwards"
                  : "treat against varroa with an authorised kind; count again afterwards";
  return std::string(supers ? "take the honey supers off, then treat" : "treat") +
         " against varroa now: an authorised kind that suits the brood and the warmth, label read first, or "
         "a "
         "brood break if you prefer; count again afterwards";
}

void reasons_of_season(facts::Need& need, const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  need.why.push_back(
      because("the odds that winter bees are reared under too many mites are the alarm; board counts of old "
              "leaflets (33 a day in August) are shown beside it and come later",
              {}, {asking.source("treat_odds_to_act"), asking.source("board_limit_august")}));
  if (colony.last_mite_count)
    need.why.push_back(because(
        "last count " + number_text(colony.last_mite_count->value, 1) +
            (colony.last_mite_method == "board" ? " mites a day on the board" : " mites per 100 bees") +
            ", " + day_text(colony.last_mite_count->date),
        {colony.last_mite_count->entry}, {}));
}

// The same rows as the gate of `duty/treatment_gate.hpp`.
facts::Reason warmth_that_suits(const Asking& asking) {
  const auto degrees = [&](const char* row) {
    const double value = asking.fact(row);
    return number_text(value, value == std::floor(value) ? 0 : 1);
  };
  return because("day maxima that suit: formic acid " + degrees("formic_day_max_low_C") + " to " +
                     degrees("formic_day_max_high_C") + " C, from " + degrees("formic_danger_C") +
                     " C in the first " + degrees("formic_danger_days") +
                     " days it endangers queen and brood; thymol best at " + degrees("thymol_best_low_C") +
                     " to " + degrees("thymol_best_high_C") + " C, weak below a mean of " +
                     degrees("thymol_weak_mean_C") + " C, never above " + degrees("thymol_highest_C") +
                     " C; strips weeks long; the label decides",
                 {}, {asking.source("formic_day_max_low_C"), asking.source("thymol_best_low_C")});
}

}  // namespace

Needs treat(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  const int month = asking.month(today);
  const auto odds = asking.odds_by(facts::EventKind::winter_mites, today + 400);
  // Earlier the crop is on; later comes the broodless window, winter_work.
  const bool season = month >= 7 && month <= 10 && odds && odds->value >= asking.fact("treat_odds_to_act");
  const auto alarm = mite_alarm(asking);
  if ((!season && !alarm) || treated_lately(asking)) return {};
  const bool supers = colony.supers_on && colony.supers_on->value > 0;
  facts::Need need = asking.need("treat", what_to_do(alarm.has_value(), supers));
  need.minutes = asking.minutes("treat_minutes") + (supers ? 15 : 0);
  need.temperature_min_C = 10;
  const double price = asking.fact("colony_lost_kg") *
                       std::max(odds ? odds->value : 0, alarm ? asking.fact("alarm_loss_odds") : 0);
  const double saved = asking.fact("treat_saved");
  for (std::size_t day = 0; day < need.loss.by_day.size(); ++day) {
    const int days = static_cast<int>(day);
    const double left = alarm ? benefit_left_after_alarm(asking, days) : benefit_left(asking, today + days);
    need.loss.by_day[day] = price * (1 - saved * left);
  }
  need.loss.never = price;
  const int crop_off = static_cast<int>(asking.fact("treat_first_day"));
  const int to_crop_off = asking.site.latitude_deg >= 0 && !alarm ? crop_off - today.day_of_year() : 0;
  need.best = today + std::clamp(to_crop_off, 0, asking.input.days - 1);
  if (alarm)
    need.why.push_back(*alarm);
  else
    reasons_of_season(need, asking);
  need.why.push_back(warmth_that_suits(asking));
  asking.tell_odds(need, facts::EventKind::winter_mites, "winter bees reared under too many mites",
                   today + 400, today + 400);
  need.take = {"treatment, with its label", "goggles and acid gloves", "medicine record"};
  cautions_of_treating(need);
  if (supers)
    need.cautions.push_back("Supers off before: comb on the hive during treatment is never for people.");
  need.clashes = {"room/" + colony.colony.text()};
  return {need};
}

}  // namespace beegarth::work
