// Dates, numbers and odds as they are said in reasons.
#pragma once

#include <string>
#include <vector>

#include "base/date.hpp"

namespace beegarth::work {

std::string day_and_month_text(Date date);                  // "5 June"
std::string day_text(Date date);                            // "Thu 5 June"
std::string number_text(double value, int decimals);        // "3.2", never "-0.0"
std::string percent_text(double odds);                      // "38 %"
std::string days_text(int days);                            // "1 day", "8 days"
std::string counted(double count, const std::string& one);  // "1 queen cell", "3 queen cells"
std::string in_short(const std::string& what);  // what one does, without how: up to the first stop

// A list of things to take: what is named alike is named once, in the order first named. Amounts are added
// up: "1 feeder" twice is "2 feeders"; "syrup for 1.0 kg of sugar" and "... 1.5 kg ..." are "... 2.5 kg ...
// in all". What is named with ", in case ..." is left out where the thing itself is on the list.
std::vector<std::string> packed(const std::vector<std::string>& items);

}  // namespace beegarth::work
