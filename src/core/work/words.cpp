#include "work/words.hpp"

#include <array>
#include <cmath>

namespace beegarth::work {

std::string day_text(Date date) {
  static constexpr std::array days{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  static constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                                     "July",    "August",   "September", "October", "November", "December"};
  return std::string(days.at(static_cast<std::size_t>(date.weekday() - 1))) + " " +
         std::to_string(date.day()) + " " + months.at(static_cast<std::size_t>(date.month() - 1));
}

std::string number_text(double value, int decimals) {
  const long long scale = decimals <= 0 ? 1 : decimals == 1 ? 10 : decimals == 2 ? 100 : 1000;
  const long long whole = std::llround(std::abs(value) * static_cast<double>(scale));
  std::string text = std::to_string(whole / scale);
  if (scale > 1) {
    std::string fraction = std::to_string(whole % scale);
    while (fraction.size() < static_cast<std::size_t>(decimals)) fraction.insert(0, 1, '0');
    text += "." + fraction;
  }
  return value < 0 && whole != 0 ? "-" + text : text;
}

std::string percent_text(double odds) {
  if (odds > 0 && odds < 0.005) return "under 1 %";
  if (odds < 1 && odds > 0.995) return "over 99 %";
  return number_text(odds * 100, 0) + " %";
}

std::string days_text(int days) {
  return days == 1 ? "1 day" : std::to_string(days) + " days";
}

}  // namespace beegarth::work
