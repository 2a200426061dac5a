// A plan in the forms that other things read: lines to be mended by hand, a calendar, a way on a map, and
// what to pack.
#pragma once

#include <string>

#include "book/state.hpp"
#include "garth/plan/plan.hpp"

namespace beegarth::garth {

// One job a line: "2026-06-03 split/cobble  # Cobble: part it ...". Mended by hand it is a week of the
// keeper's own (own_week.hpp).
std::string plan_lines(const work::Plan& plan, const PlanNames& names);

// Day by day what to take along, things of one kind added up, and for which site.
std::string packing_list(const work::Plan& plan, const PlanNames& names);

// The visits as an iCalendar file (RFC 5545), in local time without a zone; what is done at home is not in
// it.
std::string plan_calendar(const PlanAnswer& answer, Date stamped);

// GPX 1.1: every site that is visited as a waypoint, every day as a route in the order of its stops. Sites
// stand where the book says (WGS 84, degrees).
std::string plan_gpx(const PlanAnswer& answer, const book::State& state);

}  // namespace beegarth::garth
