// How far ahead a forecast looks, in groups that say which days they hold.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "garth/beliefs/skill_seen.hpp"

namespace beegarth::garth {

enum class Lead { one_week, two_weeks, four_weeks, longer, autumn_to_spring };
inline constexpr int farthest_days = 300;

struct LeadDays {
  Lead lead;
  std::string_view name;
  int first, last;  // days
  std::string_view words;
};
// Autumn to spring: from a look of September to November to the first look from 1 February on; in the south
// half a year later. Such a case is in no other group. The borders of the others are the geometric means of
// one, two, four and eight weeks.
inline constexpr std::array<LeadDays, 5> lead_days{{
    {Lead::one_week, "one week", 4, 9, "one week ahead (4 to 9 days)"},
    {Lead::two_weeks, "two weeks", 10, 19, "two weeks ahead (10 to 19 days)"},
    {Lead::four_weeks, "four weeks", 20, 39, "four weeks ahead (20 to 39 days)"},
    {Lead::longer, "longer", 40, farthest_days, "longer (40 to 300 days)"},
    {Lead::autumn_to_spring, "autumn to spring", 63, farthest_days, "autumn to spring (63 to 300 days)"},
}};

// Of the forecast made at look `origin` for look `then`; none where it is too near or too far.
std::optional<Lead> lead_between(const SeenColony& seen, std::size_t origin, std::size_t then);

}  // namespace beegarth::garth
