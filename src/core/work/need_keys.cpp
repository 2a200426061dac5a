#include "work/need_keys.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "base/date.hpp"

namespace beegarth::work {

namespace {

enum class After { place, place_and_year, place_and_month, place_and_day };

struct Shape {
  std::string_view kind;
  After after = After::place;
};

constexpr auto shapes = std::to_array<Shape>({
    {"after", After::place_and_day},
    {"agreement-ends", After::place_and_year},
    {"await-answer"},
    {"bait-box"},
    {"build"},
    {"check-queen"},
    {"comb-of-eggs"},
    {"count-after"},
    {"count-mites"},
    {"cut-flowers", After::place_and_year},
    {"cut-grass"},
    {"dead-out"},
    {"dearth"},
    {"empty-hives"},
    {"extract"},
    {"feed"},
    {"fill-gaps"},
    {"first-look"},
    {"flood"},
    {"guard-plants"},
    {"heft"},
    {"insurance-ends", After::place_and_year},
    {"leave-shut"},
    {"look-cells"},
    {"look-eggs"},
    {"measure-lot"},
    {"mouse-guard", After::place_and_year},
    {"quarantine"},
    {"renew-combs"},
    {"report"},
    {"room"},
    {"split"},
    {"stocks", After::place_and_month},
    {"stocks-over", After::place_and_month},
    {"stored-combs"},
    {"stores-aside", After::place_and_year},
    {"strap"},
    {"strips-out"},
    {"suspect"},
    {"take-crop"},
    {"tell-inspector"},
    {"thin-cells"},
    {"treat"},
    {"watch"},
    {"water-plants"},
    {"weed-plants"},
    {"wet-combs"},
    {"winter-treatment", After::place_and_year},
});

std::vector<std::string_view> parts_of(std::string_view key) {
  std::vector<std::string_view> parts;
  for (std::size_t from = 0; from <= key.size();) {
    const std::size_t slash = std::min(key.find('/', from), key.size());
    parts.push_back(key.substr(from, slash - from));
    from = slash + 1;
  }
  return parts;
}

bool is_digits(std::string_view text, std::size_t least, std::size_t most) {
  return text.size() >= least && text.size() <= most &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}
bool is_year(std::string_view text) {
  return is_digits(text, 4, 4);
}
bool is_year_and_month(std::string_view text) {
  const std::size_t dash = text.find('-');
  if (dash == std::string_view::npos || !is_year(text.substr(0, dash))) return false;
  const std::string_view month = text.substr(dash + 1);
  return is_digits(month, 1, 2) && month.front() != '0' && (month.size() == 1 || month <= "12");
}

bool is_day(std::string_view text) {
  return static_cast<bool>(Date::parse(text));
}

bool fits(const Shape& shape, const std::vector<std::string_view>& parts) {
  if (parts.size() < 2 || parts[1].empty()) return false;
  if (shape.after == After::place) return parts.size() == 2;
  if (parts.size() != 3) return false;
  if (shape.after == After::place_and_day) return is_day(parts[2]);
  return shape.after == After::place_and_year ? is_year(parts[2]) : is_year_and_month(parts[2]);
}

const char* example_of(After after) {
  if (after == After::place) return "/ and the colony or site";
  if (after == After::place_and_day) return "/, the colony or site, / and a day like 2027-04-30";
  return after == After::place_and_year ? "/, the colony or site, / and the year"
                                        : "/, the site, / and a month like 2027-4";
}

}  // namespace

Outcome sound_need_key(std::string_view key) {
  const auto parts = parts_of(key);
  const auto* const shape =
      std::find_if(shapes.begin(), shapes.end(), [&](const Shape& one) { return one.kind == parts.front(); });
  const std::string said(key);
  if (shape == shapes.end())
    return bad_input("'" + said + "' is the key of no need", "need",
                     "copy the key from the plan, like feed/alder");
  if (!fits(*shape, parts))
    return bad_input(
        "'" + said + "' is the key of no need", "need",
        "such a key is " + std::string(shape->kind) + example_of(shape->after) + ", as the plan writes it");
  return Done{};
}

}  // namespace beegarth::work
