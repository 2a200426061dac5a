// The calendar of queens and brood: from one thing known to have happened to the days on which others follow.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"

namespace beegarth::colony {

enum class QueenEvent {
  egg_laid,
  larva_grafted,
  queen_lost,
  swarm_left,
  queen_caged,
  queen_released,
  cell_sealed,
  virgin_emerged,
};

struct QueenQuestion {
  QueenEvent event = QueenEvent::egg_laid;
  Date date;
  std::optional<double> brood_age_days;  // since the egg was laid; for a graft or a lost queen
  std::optional<Date> released;          // for a caged queen
};

struct DateRange {
  std::string_view what;
  Date earliest, likely, latest;  // earliest rounded down to a day, latest up
};

// Those that apply, in order of date. Windows without capped brood are half-open: [start, end).
Expected<std::vector<DateRange>> queen_dates(const QueenQuestion& question);

}  // namespace beegarth::colony
