#include "duty/best_before.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string_view>
#include <vector>

#include "base/date.hpp"

namespace beegarth::duty {
namespace {

constexpr std::array<std::string_view, 12> month_names{"january",   "february", "march",    "april",
                                                       "may",       "june",     "july",     "august",
                                                       "september", "october",  "november", "december"};

// Words and numbers in lower case, what stands between them left out.
std::vector<std::string> parts_of(const std::string& text) {
  std::vector<std::string> parts;
  bool going_on = false;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte) == 0 || byte > 127) {
      going_on = false;
      continue;
    }
    if (!going_on ||
        (std::isdigit(byte) != 0) != (std::isdigit(static_cast<unsigned char>(parts.back().back())) != 0))
      parts.emplace_back();
    parts.back() += static_cast<char>(std::tolower(byte));
    going_on = true;
  }
  return parts;
}

std::optional<int> month_named(const std::string& word) {
  for (std::size_t i = 0; i < month_names.size(); ++i) {
    const bool short_form = word.size() == 3 || (word == "sept" && i == 8);
    if (word == month_names[i] || (short_form && month_names[i].substr(0, word.size()) == word))
      return static_cast<int>(i) + 1;
  }
  return std::nullopt;
}

bool is_filler(const std::string& word) {
  constexpr std::array<std::string_view, 9> filler{"best", "before", "end", "of", "the",
                                                   "th",   "st",     "nd",  "rd"};
  return std::find(filler.begin(), filler.end(), word) != filler.end();
}

struct Found {
  std::optional<int> month;
  std::vector<int> numbers;  // in the order written
  std::vector<std::size_t> digits;
  bool nonsense = false;
};

Found find_in(const std::string& text) {
  Found found;
  for (const std::string& part : parts_of(text)) {
    if (std::isdigit(static_cast<unsigned char>(part[0])) != 0) {
      if (part.size() > 4) return found.nonsense = true, found;
      found.numbers.push_back(std::stoi(part));
      found.digits.push_back(part.size());
    } else if (const auto month = month_named(part); month && !found.month) {
      found.month = month;
    } else if (!is_filler(part)) {
      found.nonsense = true;
    }
  }
  return found;
}

// The year has four digits and stands first or last; what is left is a day, a month, or both in the order of
// the year: year-month-day, day/month/year.
std::optional<BestBefore> put_together(const Found& found) {
  if (found.nonsense || found.numbers.empty()) return std::nullopt;
  const bool year_first = found.digits.front() == 4;
  if (!year_first && found.digits.back() != 4) return std::nullopt;
  BestBefore date;
  date.month = found.month;
  std::vector<int> rest = found.numbers;
  date.year = year_first ? rest.front() : rest.back();
  rest.erase(year_first ? rest.begin() : rest.end() - 1);
  if (rest.size() == 2 && !date.month) {
    date.month = year_first ? rest[0] : rest[1];
    date.day = year_first ? rest[1] : rest[0];
  } else if (rest.size() == 1) {
    (date.month ? date.day : date.month) = rest[0];
  } else if (!rest.empty()) {
    return std::nullopt;
  }
  const bool exists = Date::from_ymd(date.year, date.month.value_or(1), date.day.value_or(1)).has_value();
  return exists ? std::optional(date) : std::nullopt;
}

}  // namespace

Expected<BestBefore> read_best_before(const std::string& text) {
  if (const auto date = put_together(find_in(text))) return *date;
  return bad_input("not a best-before date", "best_before", "write it like \"May 2027\" or \"14 May 2027\"");
}

}  // namespace beegarth::duty
