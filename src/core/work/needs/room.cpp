// Room: boxes on an upright hive, bars and the follower in a horizontal one.
#include <algorithm>
#include <cmath>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

struct Addition {
  std::string what;
  std::string write_down;
  std::vector<std::string> take;
  std::vector<std::string> cautions;
  bool for_people = false;  // comb that honey may be taken from
};

// The day from which comb for people may go on again.
std::optional<Date> treatment_over(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  if (!colony.last_treatment) return std::nullopt;
  const double days = std::max(colony.last_treatment->value, 1.0) + colony.treatment_withdrawal_days;
  return colony.last_treatment->date + static_cast<int>(std::ceil(days));
}

Addition in_a_long_hive(const Asking& asking, const facts::Dwelling& hive) {
  const int left = hive.brood_combs_max + hive.super_combs_max - hive.brood_combs - hive.super_combs;
  if (left <= 0)
    return {
        "take out ripe combs from the far side so that the follower can move: the hive is full to the end",
        "removed ",
        {"clean box with a lid for the combs"},
        {"Take only what is capped and was never on during feeding or treatment."}};
  const int combs = std::min(left, 3);
  Addition way{"move the follower and give " + std::to_string(combs) + (combs == 1 ? " bar" : " bars") +
                   " beside the nest, one at a time between straight combs",
               "added " + std::to_string(combs) + " brood combs of foundation",
               {std::to_string(combs) + " bars or frames with starter"},
               {"New comb tears when warm or tilted: lift it upright and slowly.",
                "Comb is kept straight from the first: one that is crooked makes the next ones crooked."}};
  if (asking.kit("bar") + asking.kit("frame") == 0)
    way.cautions.push_back("No spare bars or frames stand among your kit.");
  return way;
}

std::optional<Addition> in_boxes(const Asking& asking, const facts::Dwelling& hive) {
  const std::vector<std::string> lifting{
      "A full box can weigh over 20 kg: get help, or move combs one by one."};
  if (hive.brood_combs_max <= static_cast<int>(asking.fact("nucleus_combs")))
    return Addition{"move the nucleus into a full hive, combs in the same order",
                    "",
                    {"full hive with floor, roof and combs to fill it"},
                    lifting};
  if (hive.can_super && hive.super_combs < hive.super_combs_max) {
    Addition way{"one super on", "super on", {"1 super"}, lifting, true};
    if (asking.kit("super") == 0)
      way.cautions.push_back("No super stands ready among your kit: make one up before you go.");
    return way;
  }
  if (hive.brood_combs < hive.brood_combs_max)
    return Addition{
        "more combs or another body for the brood", "added ", {"body or combs for the brood"}, lifting};
  return Addition{"take off ripe combs, or move it into a larger hive; no more room can be put on this one",
                  "removed ",
                  {"clean box with a lid for the combs"},
                  {"Take only what is capped and was never on during feeding or treatment."}};
}

}  // namespace

Needs room(const Asking& asking) {
  const Date today = asking.input.today;
  const int month = asking.month(today);
  if (month < 4 || month > 8 || queen_awaited(asking)) return {};  // no queen lays: the nest does not grow
  const auto odds = asking.odds_by(facts::EventKind::out_of_room, asking.last_day());
  if (!odds || odds->value < asking.fact("room_odds_to_act")) return {};
  const facts::Dwelling& hive = asking.colony->dwelling;
  const auto way = hive.form == facts::HiveForm::horizontal ? std::optional(in_a_long_hive(asking, hive))
                                                            : in_boxes(asking, hive);
  if (!way) return {};
  facts::Need need = asking.need("room", way->what);
  need.minutes = asking.minutes("room_minutes");
  need.loss = loss_from_odds(asking, facts::EventKind::out_of_room, asking.fact("room_short_kg"),
                             asking.fact("room_saved"));
  need.take = way->take;
  need.write_down = way->write_down;
  need.cautions = way->cautions;
  need.clashes = {"treat/" + asking.colony->colony.text()};
  need.why.push_back(because("the queen may run out of empty cells; room is given before it is needed", {},
                             {asking.source("room_odds_to_act")}));
  asking.tell_odds(need, facts::EventKind::out_of_room, "out of room", today + 3, asking.last_day());
  if (mite_alarm(asking))
    need.cautions.push_back("Treat first: no comb for people goes on before the treatment is over.");
  const auto over = treatment_over(asking);
  if (!over || *over <= today) return {need};
  if (!way->for_people) {
    need.cautions.push_back("A treatment is on: this comb is never for people.");
    return {need};
  }
  need.what += ", when the treatment and its withdrawal are over on " + day_text(*over);
  need.earliest = *over;
  need.best = std::max(need.best, *over);
  need.latest = std::max(need.latest, *over);
  need.why.push_back(because("no comb for people goes on while a treatment is on or its withdrawal runs",
                             {asking.colony->last_treatment->entry},
                             {"the label of the product; house rule on medicines"}));
  return {need};
}

}  // namespace beegarth::work
