// Treating against varroa: by the odds that winter bees are reared under too many mites; at once, and out of
// season, where they are high and the counts show many mites too.
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

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

using facts::Deed;

void cautions_of_treating(facts::Need& need, const Asking& asking) {
  need.cautions.push_back(
      "Only a kind authorised in your country; read the label first and keep to it. No dose is worked out "
      "here.");
  need.cautions.push_back(
      asking.will(Deed::organic_acids)
          ? "Acids and vapour burn skin, eyes and lungs: goggles, acid gloves, the mask the label asks for, "
            "upwind; carry acid upright and boxed in the car."
          : "Gloves, goggles and whatever else the label asks for.");
  need.cautions.push_back(
      "Write down product, batch, amount, date and withdrawal, and keep the record as your law asks.");
}

// The ways of getting mites down, which share of them each takes, and who refuses it.
struct Class {
  const char* words;
  const char* saved;  // row
  std::optional<Deed> asks;
};
constexpr std::array<Class, 4> classes{{{"thymol", "saved_by_thymol", std::nullopt},
                                        {"formic acid", "saved_by_acids", Deed::organic_acids},
                                        {"strips", "saved_by_strips", Deed::synthetic_strips},
                                        {"a brood break", "saved_by_brood_break", std::nullopt}}};

// The most that can be saved where these are refused.
double best_saved(const Asking& asking, const std::set<Deed>& refused) {
  double best = 0;
  for (const Class& one : classes)
    if (!one.asks || !refused.contains(*one.asks)) best = std::max(best, asking.fact(one.saved));
  return best;
}

// What the keeper's rules leave of the usual share.
double share_saved(const Asking& asking) {
  return asking.fact("treat_saved") - best_saved(asking, {}) + best_saved(asking, asking.input.refused);
}

// What each of the classes would spare beside what the other rules leave.
std::vector<facts::AskedDeed> classes_asked(const Asking& asking, double price) {
  std::vector<facts::AskedDeed> asked;
  for (const Class& one : classes) {
    if (!one.asks) continue;
    std::set<Deed> with = asking.input.refused, without = with;
    with.erase(*one.asks);
    without.insert(*one.asks);
    asked.push_back({*one.asks, false, price * (best_saved(asking, with) - best_saved(asking, without)),
                     Asking::row(one.saved)});
  }
  return asked;
}

// Empty where nothing is refused: then any authorised kind will do.
std::string classes_left(const Asking& asking) {
  if (asking.will(Deed::organic_acids) && asking.will(Deed::synthetic_strips)) return "";
  std::vector<Way> ways;
  ways.reserve(classes.size());
  for (const Class& one : classes)
    ways.push_back({one.words, one.asks ? std::vector<Deed>{*one.asks} : std::vector<Deed>{}});
  return "; by your own rules " + asking.ways_left(ways) + " are left";
}

// Once the alarm is up every day costs: the mites double in `alarm_days`.
double benefit_left_after_alarm(const Asking& asking, int days) {
  return std::clamp(1 - days / asking.fact("alarm_days"), 0.0, 1.0);
}

std::string what_to_do(const Asking& asking, bool alarm, bool supers) {
  const std::string left = classes_left(asking);
  if (!alarm)
    return (supers ? "take the crop off, then treat against varroa with an authorised kind"
                   : "treat against varroa with an authorised kind") +
           left + "; count again afterwards";
  return std::string(supers ? "take the honey supers off, then treat" : "treat") +
         " against varroa now: an authorised kind that suits the brood and the warmth, label read first" +
         (left.empty() ? ", or a brood break if you prefer" : left) + "; count again afterwards";
}

void reasons_of_season(facts::Need& need, const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  need.why.push_back(because(
      "the odds that winter bees are reared under too many mites are the alarm; the board counts of old "
      "leaflets (" +
          number_text(asking.fact("board_limit_august"), 0) +
          " a day in August) come later and are superseded by it",
      {}, {asking.source("treat_odds_to_act"), asking.source("board_limit_august")}));
  if (const auto old = above_old_limits(asking)) need.why.push_back(*old);
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
  std::vector<std::string> sources{asking.source("thymol_best_low_C")};
  std::string text = "day maxima that suit: ";
  if (asking.will(Deed::organic_acids)) {
    text += "formic acid " + degrees("formic_day_max_low_C") + " to " + degrees("formic_day_max_high_C") +
            " C, from " + degrees("formic_danger_C") + " C in the first " + degrees("formic_danger_days") +
            " days it endangers queen and brood; ";
    sources.insert(sources.begin(), asking.source("formic_day_max_low_C"));
  }
  text += "thymol best at " + degrees("thymol_best_low_C") + " to " + degrees("thymol_best_high_C") +
          " C, weak below a mean of " + degrees("thymol_weak_mean_C") + " C, never above " +
          degrees("thymol_highest_C") + " C";
  if (asking.will(Deed::synthetic_strips)) text += "; strips weeks long";
  return because(text + "; the label decides", {}, std::move(sources));
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
  facts::Need need = asking.need("treat", what_to_do(asking, alarm.has_value(), supers));
  need.minutes = asking.minutes("treat_minutes") + (supers ? 15 : 0);
  need.temperature_min_C = 10;
  const double price = asking.fact("colony_lost_kg") * (alarm ? alarm->odds : odds->value);
  const double saved = share_saved(asking);
  for (std::size_t day = 0; day < need.loss.by_day.size(); ++day) {
    const int days = static_cast<int>(day);
    const double left = alarm ? benefit_left_after_alarm(asking, days) : benefit_left(asking, today + days);
    need.loss.by_day[day] = price * (1 - saved * left);
  }
  need.loss.never = price;
  need.asks = classes_asked(asking, price);
  const int crop_off = static_cast<int>(asking.fact("treat_first_day"));
  const int to_crop_off = asking.site.latitude_deg >= 0 && !alarm ? crop_off - today.day_of_year() : 0;
  need.best = today + std::clamp(to_crop_off, 0, asking.input.days - 1);
  if (alarm)
    need.why.push_back(alarm->why);
  else
    reasons_of_season(need, asking);
  need.why.push_back(warmth_that_suits(asking));
  asking.tell_odds(need, facts::EventKind::winter_mites, "winter bees reared under too many mites",
                   today + 400, today + 400);
  need.take = {"treatment, with its label",
               asking.will(Deed::organic_acids) ? "goggles and acid gloves" : "goggles and gloves",
               "medicine record"};
  cautions_of_treating(need, asking);
  if (supers)
    need.cautions.push_back("Supers off before: comb on the hive during treatment is never for people.");
  need.clashes = {"room/" + colony.colony.text()};
  return {need};
}

}  // namespace beegarth::work
