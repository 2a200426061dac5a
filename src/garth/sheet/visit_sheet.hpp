// One visit of the plan as a printed sheet.
#pragma once

#include <string>

#include "garth/plan/plan.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

struct SheetWish {
  int days = 14;
  std::string date;  // empty: the first visit that fits
  std::string site;  // key or name; empty: any
  std::string paper = "A4";
};

struct VisitSheet {
  std::string pdf;
  SiteId site;
  std::string site_name;
  Date date;
};

Expected<VisitSheet> visit_sheet(const Session& session, const SheetWish& wish);
Expected<VisitSheet> sheet_of(const Session& session, const PlanAnswer& answer, const SheetWish& wish);

}  // namespace beegarth::garth
