// A best-before date as it stands on a label: how exact is it?
#pragma once

#include <optional>
#include <string>

#include "base/expected.hpp"

namespace beegarth::duty {

struct BestBefore {
  int year = 0;
  std::optional<int> month, day;
  bool has_day() const { return day.has_value(); }
};

// "14 May 2027", "May 14 2027", "14/05/2027", "14.5.2027", "2027-05-14", "May 2027", "end of May 2027",
// "05/2027", "2027-05", "2027", with "best before" and "end" in front or not. A day that the calendar has not
// is refused.
Expected<BestBefore> read_best_before(const std::string& text);

}  // namespace beegarth::duty
