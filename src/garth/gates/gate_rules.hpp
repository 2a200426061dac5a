// The figures that the gates judge by, each a row of tables/work.toml.
#pragma once

#include "base/fact_table.hpp"
#include "garth/ledgers/honey.hpp"
#include "garth/ledgers/quarantines.hpp"

namespace beegarth::garth {

struct GateRules {
  HoneyRules honey;
  QuarantineRules quarantine;
  int unite_look_days = 0;      // a look through the brood before two stocks are united is no older
  int comb_look_back_days = 0;  // combs that left a colony so long before its sign are held with it
  static Expected<GateRules> from(const FactTable& work);
};

}  // namespace beegarth::garth
