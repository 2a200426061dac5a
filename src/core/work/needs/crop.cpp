// The harvest in its order: ripe boxes are cleared of bees and taken, their combs extracted while they are
// warm, and the wet combs go back at dusk or are put away. Once dry they are stored (combs.cpp).
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

constexpr const char* never_for_people =
    "What was on the hive during feeding or a treatment, or until its withdrawal is over, is never for "
    "people: "
    "leave it to the bees.";

bool for_people_now(const ColonyStatus& colony, Date today) {
  if (colony.treatment_in_hive) return false;
  if (colony.last_feed && colony.last_feed->date >= colony.supers_on->date)
    return false;  // fed with the boxes on
  if (!colony.last_treatment) return true;
  return today >= colony.last_treatment->date +
                      static_cast<int>(colony.last_treatment->value + colony.treatment_withdrawal_days);
}

// After so long it was done and not entered.
bool still_asked_for(const Asking& asking, const LotWaiting& lot) {
  return asking.input.today - lot.since.date <= asking.minutes("lot_waits_days");
}

facts::Need of_lot(const Asking& asking, const LotWaiting& lot, const std::string& kind,
                   const std::string& what) {
  facts::Need need = asking.need(kind, what + " (" + lot.name + ")");
  need.key = kind + "/" + lot.lot.text();
  need.why.push_back(because("since " + day_text(lot.since.date), {lot.since.entry}));
  return need;
}

}  // namespace

Needs ripe_boxes(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  if (!colony.super_share || !colony.supers_on || colony.super_share->value < asking.fact("ripe_share"))
    return {};
  if (today - colony.super_share->date > asking.minutes("ripe_sight_days") || !for_people_now(colony, today))
    return {};
  const bool by_the_comb = colony.dwelling.form == facts::HiveForm::horizontal;
  facts::Need need = asking.need(
      "take-crop",
      by_the_comb
          ? "take the ripe combs one by one: brush the bees off into the hive, each comb at once into "
            "a closed box"
          : "put the clearer board under the ripe boxes; take them off on the second or third day, early, "
            "before bees fly");
  need.minutes = asking.minutes("take_crop_minutes");
  need.temperature_min_C = 14;
  need.loss = loss_when_late(asking, colony.super_share->date, 30, asking.fact("ripe_left_kg"));
  need.why.push_back(because(
      "seen " + percent_text(colony.super_share->value) + " full on " + day_text(colony.super_share->date),
      {colony.super_share->entry}, {asking.source("ripe_share"), asking.source("ripe_left_kg")}));
  need.take = by_the_comb ? std::vector<std::string>{"closed box for combs", "soft brush or feather", "water"}
                          : std::vector<std::string>{"clearer board", "cloths or boards to cover boxes",
                                                     "tape for cracks"};
  need.write_down = "harvested ";
  need.cautions = {
      "Only comb that is capped for three quarters and more, and does not drip when it is shaken.",
      never_for_people,
      by_the_comb ? "Cover everything: dripping comb sets off robbing."
                  : "Close every crack above the board: boxes without bees are robbed within an hour.",
      "A full box can weigh over 20 kg: get help, or move combs one by one."};
  return {need};
}

Needs combs_to_extract(const Asking& asking) {
  if (asking.site.site != asking.input.sites.front().site) return {};
  Needs needs;
  for (const LotWaiting& lot : asking.input.to_extract) {
    if (!still_asked_for(asking, lot)) continue;
    facts::Need need =
        of_lot(asking, lot, "extract", "extract the combs that were taken, while they are warm");
    need.at_home = true;
    need.minutes = asking.minutes("extract_minutes");
    need.clock = facts::Clock::any;
    need.loss = loss_when_late(asking, lot.since.date + asking.minutes("extract_within_days"), 14,
                               asking.fact("extract_late_kg"));
    need.why.push_back(
        because("honey off the hive draws water from the air, sets in the comb, and moth gets in", {},
                {asking.source("extract_within_days"), asking.source("extract_late_kg")}));
    need.take = {"refractometer"};
    need.cautions = {
        "A clean, dry, closed room; nothing that was near medicines; bees out before light is on.",
        "Measure the water at a known temperature and enter it with the lot."};
    needs.push_back(std::move(need));
  }
  return needs;
}

Needs wet_combs(const Asking& asking) {
  Needs needs;
  for (const LotWaiting& lot : asking.input.wet_combs) {
    if (!lot.sites.contains(asking.site.site) || !still_asked_for(asking, lot)) continue;
    facts::Need need =
        of_lot(asking, lot, "wet-combs",
               "give the wet combs back at dusk, each to the hive that it came from, above the "
               "board; or store them wet, tightly closed");
    need.minutes = asking.minutes("wet_combs_minutes");
    need.clock = facts::Clock::dusk;
    need.loss = loss_when_late(asking, lot.since.date, 14, asking.fact("wet_combs_kg"));
    need.why.push_back(
        because("extracted, and not said where the wet combs are", {}, {asking.source("wet_combs_kg")}));
    need.cautions = {"In daylight wet comb sets off robbing.",
                     "Combs go to no other hive than their own: disease goes with them."};
    if (asking.site_suspect)
      need.held =
          "a colony at this site is suspect: the wet combs are kept closed until the inspector has answered";
    needs.push_back(std::move(need));
  }
  return needs;
}

}  // namespace beegarth::work
