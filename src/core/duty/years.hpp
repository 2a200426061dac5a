// So many years on: how long a record is kept, how long honey keeps.
#pragma once

#include <optional>

#include "base/date.hpp"

namespace beegarth::duty {

// The same day so many years on; 1 March where the year has no 29 February, so that no day is lost. Parts of
// a year count as whole months, rounded up. Nothing where the calendar ends before.
std::optional<Date> years_after(Date date, double years);

}  // namespace beegarth::duty
