// What is done at home: builds that were begun, and the water of honey that was extracted.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

Needs builds_begun(const Asking& asking) {
  if (asking.site.site != asking.input.sites.front().site) return {};
  Needs needs;
  for (const BuildBegun& build : asking.input.builds) {
    if (asking.input.today - build.last.date > asking.minutes("build_waits_days")) continue;
    facts::Need need = asking.need("build", "go on with " + build.build + ": last done was " + build.step);
    need.key = "build/" + build.build;
    need.at_home = true;
    need.clock = facts::Clock::any;
    need.minutes = asking.minutes("build_minutes");
    need.loss = loss_when_late(asking, build.last.date + 7, 60, asking.fact("build_kg"));
    std::string since = "begun and not finished; last worked on " + day_text(build.last.date);
    if (build.hours > 0) since += ", " + number_text(build.hours, 1) + " hours so far";
    need.why.push_back(because(since, {build.last.entry}, {asking.source("build_kg")}));
    need.cautions = {
        "A wet day's work. Eyes, ears and lungs: goggles, hearing protection, a mask against dust of board "
        "and foam.",
        "No bees live in it before roof, floor and entrance are done and paint and glue have dried."};
    needs.push_back(std::move(need));
  }
  return needs;
}

Needs lots_to_measure(const Asking& asking) {
  if (asking.site.site != asking.input.sites.front().site) return {};
  Needs needs;
  for (const LotWaiting& lot : asking.input.to_measure) {
    if (asking.input.today - lot.since.date > asking.minutes("lot_waits_days")) continue;
    facts::Need need = asking.need("measure-lot",
                                   "measure the water of the honey, set its best-before date and print "
                                   "its labels (" +
                                       lot.name + ")");
    need.key = "measure-lot/" + lot.lot.text();
    need.at_home = true;
    need.clock = facts::Clock::any;
    need.minutes = asking.minutes("measure_minutes");
    need.loss = loss_when_late(asking, lot.since.date, 21, asking.fact("measure_kg"));
    need.why.push_back(because("extracted on " + day_text(lot.since.date) + ", and no water was written down",
                               {lot.since.entry}, {asking.source("measure_kg")}));
    need.cautions = {
        "Read the refractometer at a known temperature; calc honey-check tells the limits of the law.",
        "Honey is not for infants under one year."};
    needs.push_back(std::move(need));
  }
  return needs;
}

}  // namespace beegarth::work
