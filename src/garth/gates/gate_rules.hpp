// What the gates judge by: figures, rows of tables/work.toml and tables/observation.toml, and what is
// notifiable where.
#pragma once

#include "garth/ledgers/hive_figures.hpp"
#include "garth/ledgers/honey.hpp"
#include "garth/ledgers/notifiable.hpp"
#include "garth/ledgers/quarantines.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {

struct GateRules {
  HoneyRules honey;
  QuarantineRules quarantine;
  int unite_look_days = 0;      // a look through the brood before two stocks are united is no older
  int comb_look_back_days = 0;  // combs that left a colony so long before its sign are held with it
  Notifiable notifiable;
  FigureRules figures;
  static Expected<GateRules> from(const Tables& tables);
};

}  // namespace beegarth::garth
