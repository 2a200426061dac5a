// The plan in other forms, and a week of the keeper's own held beside it.
#include "garth/desk/desk.hpp"
#include "garth/plan/own_week.hpp"
#include "garth/plan/plan_forms.hpp"

namespace beegarth::garth {

Expected<std::string> Desk::plan_as(PlanForm form, int days) {
  const auto answer = planned(days);
  if (!answer) return answer.problem();
  switch (form) {
    case PlanForm::lines:
      return plan_lines((*answer)->plan, (*answer)->names);
    case PlanForm::packing:
      return packing_list((*answer)->plan, (*answer)->names);
    case PlanForm::calendar:
      return plan_calendar(**answer, session_.today);
    case PlanForm::gpx:
      break;
  }
  return plan_gpx(**answer, session_.state);
}

Expected<nlohmann::json> Desk::own_week(const std::vector<work::OwnJob>& own, int days) {
  const auto answer = planned(days);
  if (!answer) return answer.problem();
  const auto week = garth::own_week(**answer, own);
  if (!week) return week.problem();
  return own_week_json(*week, (*answer)->names);
}

}  // namespace beegarth::garth
