#include "work/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <optional>

namespace beegarth::work {

namespace {

// A thing with an amount that can be added up: a number at the front ("1 super"), or one of kg further on.
// Other numbers describe the thing ("measure for 300 bees").
struct Amount {
  std::string before, after;
  double value = 0;
  int decimals = 0;
  int times = 1;
};

std::optional<Amount> amount_in(const std::string& item) {
  const std::size_t first = item.find_first_of("0123456789");
  if (first == std::string::npos) return std::nullopt;
  const std::size_t end = std::min(item.find_first_not_of("0123456789.", first), item.size());
  const bool kg = item.compare(end, 3, " kg") == 0;
  if (first != 0 && !kg) return std::nullopt;
  const std::string number = item.substr(first, end - first);
  const std::size_t point = number.find('.');
  return Amount{item.substr(0, first), item.substr(end), std::strtod(number.c_str(), nullptr),
                point == std::string::npos ? 0 : static_cast<int>(number.size() - point - 1)};
}

// The things that are brought one to a hive.
std::string of_several(std::string after) {
  for (const char* one : {" super", " feeder", " count board"}) {
    const std::string word = one;
    const bool whole = after.size() == word.size() || after[std::min(word.size(), after.size() - 1)] == ',';
    if (after.rfind(word, 0) == 0 && whole) return after.insert(word.size(), "s");
  }
  return after;
}

std::string text_of(const Amount& amount) {
  const bool kg = amount.after.rfind(" kg", 0) == 0;
  return amount.before + number_text(amount.value, amount.decimals) +
         (amount.value > 1 ? of_several(amount.after) : amount.after) +
         (kg && amount.times > 1 ? " in all" : "");
}

}  // namespace

std::string day_and_month_text(Date date) {
  static constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                                     "July",    "August",   "September", "October", "November", "December"};
  return std::to_string(date.day()) + " " + months.at(static_cast<std::size_t>(date.month() - 1));
}

std::string day_text(Date date) {
  static constexpr std::array days{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  return std::string(days.at(static_cast<std::size_t>(date.weekday() - 1))) + " " + day_and_month_text(date);
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

std::string counted(double count, const std::string& one) {
  const std::string number = number_text(count, 0);
  return number + " " + one + (number == "1" ? "" : "s");
}

std::vector<std::string> packed(const std::vector<std::string>& items) {
  struct Line {
    std::string text;
    std::optional<Amount> amount;
  };
  std::vector<Line> lines;
  for (const std::string& item : items) {
    const std::size_t in_case = item.find(", in case ");
    if (in_case != std::string::npos &&
        std::find(items.begin(), items.end(), item.substr(0, in_case)) != items.end())
      continue;
    const auto amount = amount_in(item);
    const auto same = std::find_if(lines.begin(), lines.end(), [&](const Line& line) {
      if (!amount || !line.amount) return line.text == item;
      return line.amount->before == amount->before && line.amount->after == amount->after;
    });
    if (same == lines.end()) {
      lines.push_back({item, amount});
    } else if (amount) {
      same->amount->value += amount->value;
      same->amount->decimals = std::max(same->amount->decimals, amount->decimals);
      ++same->amount->times;
    }
  }
  std::vector<std::string> list;
  list.reserve(lines.size());
  for (const Line& line : lines)
    list.push_back(line.amount && line.amount->times > 1 ? text_of(*line.amount) : line.text);
  return list;
}

std::string in_short(const std::string& what) {
  return what.substr(0, std::min({what.find(" ("), what.find(':'), what.find(';'), what.size()}));
}

}  // namespace beegarth::work
