// What a keeper would write of what is there: drawn from the very model that observation.hpp judges by, slips
// included.
#pragma once

#include "base/random.hpp"
#include "belief/observation.hpp"

namespace beegarth::belief {

// One keeper before one colony; every call is another draw from `luck`.
class Writer {
 public:
  // All must outlive it.
  Writer(const Visible& there, const ObserverTraits& ways, const ObservationErrors& errors, Stream& luck)
      : there_(there), ways_(ways), errors_(errors), luck_(luck) {}

  double seams(double grain);  // 1: whole seams, 0.5: halves
  double bees();               // said outright
  double brood_combs(double grain);
  double capped_cells();
  double drone_cells();  // capped
  entries::Level pollen(entries::Look look = entries::Look::full);
  double stores_kg();
  double super_share();
  // `seen` as sight_odds says it of this look.
  bool says(double SightOdds::*seen, entries::Look look = entries::Look::full);
  // `fallen` over the days of the board. Said outright, never as "at least".
  int mites(const entries::MiteCount& count, double fallen = 0);
  double weighed(double whole_kg);  // with its tare

 private:
  double by_eye(double impression, double fine);
  double impression(double expected, double sd, double floor);
  bool mistaken();

  const Visible& there_;
  const ObserverTraits& ways_;
  const ObservationErrors& errors_;
  Stream& luck_;
};

}  // namespace beegarth::belief
