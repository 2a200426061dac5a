#include "garth/beliefs/skill_leads.hpp"

namespace beegarth::garth {
namespace {

int northern_month(Date date, bool south) {
  return south ? (date.month() + 5) % 12 + 1 : date.month();
}

// 1 February after an autumn look; 1 August in the south.
Date winter_over(Date autumn, bool south) {
  return Date::from_ymd(south ? autumn.year() : autumn.year() + 1, south ? 8 : 2, 1).value();
}

}  // namespace

std::optional<Lead> lead_between(const SeenColony& seen, std::size_t origin, std::size_t then) {
  const Date from = seen.looks[origin].date;
  const int days = seen.looks[then].date - from;
  if (days > farthest_days) return std::nullopt;
  const int month = northern_month(from, seen.south);
  if (month >= 9 && month <= 11) {
    const Date over = winter_over(from, seen.south);
    const bool first = seen.looks[then].date >= over && seen.looks[then - 1].date < over;
    if (first) return Lead::autumn_to_spring;
  }
  for (const LeadDays& lead : lead_days) {
    if (days >= lead.first && days <= lead.last) return lead.lead;
  }
  return std::nullopt;
}

}  // namespace beegarth::garth
