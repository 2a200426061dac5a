#include "duty/years.hpp"

#include <cmath>

namespace beegarth::duty {

std::optional<Date> years_after(Date date, double years) {
  const int months = static_cast<int>(std::ceil(years * 12 - 1e-9));
  const int counted = date.month() - 1 + months;
  const int year = date.year() + counted / 12, month = counted % 12 + 1;
  if (const auto same = Date::from_ymd(year, month, date.day())) return same;
  return Date::from_ymd(month == 12 ? year + 1 : year, month == 12 ? 1 : month + 1, 1);
}

}  // namespace beegarth::duty
