// Dates, numbers and odds as they are said in reasons.
#pragma once

#include <string>

#include "base/date.hpp"

namespace beegarth::work {

std::string day_text(Date date);                      // "Thu 5 June"
std::string number_text(double value, int decimals);  // "3.2", never "-0.0"
std::string percent_text(double odds);                // "38 %"
std::string days_text(int days);                      // "1 day", "8 days"

}  // namespace beegarth::work
