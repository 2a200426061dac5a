// Treating against varroa, by the odds that winter bees are reared under too many mites.
#include <algorithm>

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

}  // namespace

Needs treat(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  const int month = asking.month(today);
  const auto odds = asking.odds_by(facts::EventKind::winter_mites, today + 400);
  if (!odds || odds->value < asking.fact("treat_odds_to_act") || treated_lately(asking)) return {};
  if (month < 7 || month > 10) return {};  // earlier the crop is on; later the broodless window, winter_work
  facts::Need need =
      asking.need("treat", "treat against varroa with an authorised kind; count again afterwards");
  const bool supers = colony.supers_on && colony.supers_on->value > 0;
  if (supers)
    need.what =
        "take the crop off, then treat against varroa with an authorised kind; count again afterwards";
  need.minutes = asking.minutes("treat_minutes") + (supers ? 15 : 0);
  need.temperature_min_C = 10;
  const double price = asking.fact("colony_lost_kg") * odds->value;
  const double saved = asking.fact("treat_saved");
  for (std::size_t day = 0; day < need.loss.by_day.size(); ++day)
    need.loss.by_day[day] = price * (1 - saved * benefit_left(asking, today + static_cast<int>(day)));
  need.loss.never = price;
  const int crop_off = static_cast<int>(asking.fact("treat_first_day"));
  const int to_crop_off = asking.site.latitude_deg >= 0 ? crop_off - today.day_of_year() : 0;
  need.best = today + std::clamp(to_crop_off, 0, asking.input.days - 1);
  need.why.push_back(
      because("the odds that winter bees are reared under too many mites are the alarm; board counts of old "
              "leaflets (33 a day in August) are shown beside it and come later",
              {},
              {asking.source("treat_odds_to_act"),
               "A Practical Manual of Beekeeping: 6, 10, 16, 33 a day May to August"}));
  if (colony.last_mite_count)
    need.why.push_back(because(
        "last count " + number_text(colony.last_mite_count->value, 1) +
            (colony.last_mite_method == "board" ? " mites a day on the board" : " mites per 100 bees") +
            ", " + day_text(colony.last_mite_count->date),
        {colony.last_mite_count->entry}, {}));
  need.why.push_back(
      because("day maxima that suit: formic acid 10 to 29.5 C, from 33 C in the first three days it "
              "endangers queen and "
              "brood; thymol best at 20 to 25 C, weak below a mean of 15 C, never above 30 C; strips weeks "
              "long; the label decides",
              {},
              {"trade: treatment windows by class (supplier article on formic acid in heat; encyclopedia on "
               "thymol)"}));
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
