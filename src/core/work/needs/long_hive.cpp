// A hive in one long row before winter: the stores together on one side of the nest, the comb straight.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

Needs stores_aside(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  const int month = asking.month(today);
  if (colony.dwelling.form != facts::HiveForm::horizontal || month < 8 || month > 10) return {};
  facts::Need need = asking.need("stores-aside",
                                 "see that the stores stand together on one side of the nest, no empty comb "
                                 "among them; follower up to the last "
                                 "comb, what is empty taken out");
  need.key += "/" + std::to_string(today.year());
  need.minutes = asking.minutes("look_minutes");
  need.temperature_min_C = 15;
  const int to_september = month == 8 ? *Date::from_ymd(today.year(), today.month(), 28) - today : 0;
  need.best = today + std::clamp(to_september, 0, asking.input.days - 1);
  const Date due = today + std::max(0, to_september);
  need.loss =
      loss_when_late(asking, due, 42, asking.fact("stores_apart_odds") * asking.fact("colony_lost_kg"));
  need.why.push_back(
      because("in winter the cluster goes one way along the combs: with stores on both sides it can starve "
              "beside honey",
              {}, {asking.source("stores_apart_odds"), "common practice in horizontal hives"}));
  need.take = {"smoker and fuel", "hive tool", "box with a lid for the combs"};
  need.cautions.push_back(
      "Lift new comb upright, slowly and cool: it tears. Put crooked comb right while it is soft, or move it "
      "to the "
      "edge.");
  if (asking.dearth(today) || month >= 8)
    need.cautions.push_back("Robbing: one comb open at a time, entrance narrow, nothing sweet left outside.");
  return {need};
}

}  // namespace beegarth::work
