#include "garth/sheet/visit_sheet.hpp"

#include <algorithm>
#include <array>

#include "draw/draw.hpp"
#include "garth/plan/dwelling.hpp"
#include "garth/sheet/sheet.hpp"

namespace beegarth::garth {
namespace {

// What may change whether one goes at all; the rest that is done at home waits there.
bool is_first_of_all(const facts::Need& need) {
  constexpr std::array kinds{"tell-inspector/", "await-answer/", "after/"};
  return std::any_of(kinds.begin(), kinds.end(),
                     [&](const char* kind) { return need.key.rfind(kind, 0) == 0; });
}

SheetFacts facts_for(const Session& session, const PlanAnswer& answer, const SiteId& site,
                     const std::string& paper) {
  SheetFacts facts{.names = answer.names};
  for (const auto& s : answer.sites) {
    if (s.site == site) facts.site = s;
  }
  for (const auto& [id, colony] : session.state.colonies) {
    const auto hive = session.state.hives.find(colony.hive);
    if (!colony.ended && hive != session.state.hives.end())
      facts.dwellings.emplace(id, home_of(session.state, colony));
  }
  for (const auto& job : answer.plan.at_home)
    if (job.need.site == site && is_first_of_all(job.need))
      facts.calls_first.push_back((job.need.colony ? answer.names.of(*job.need.colony) + ": " : "") +
                                  job.need.what);
  const auto number = session.state.settings.find("emergency_number");
  if (number != session.state.settings.end()) facts.emergency_number = number->second;
  facts.paper = paper == "Letter" ? scene::Paper::letter : scene::Paper::a4;
  return facts;
}

}  // namespace

Expected<VisitSheet> sheet_of(const Session& session, const PlanAnswer& answer, const SheetWish& wish) {
  std::optional<SiteId> site;
  if (!wish.site.empty()) {
    const auto found = site_named(session.state, wish.site);
    if (!found) return found.problem();
    site = *found;
  }
  if (!wish.date.empty()) {
    const auto date = Date::parse(wish.date);
    if (!date) return bad_input(date.problem().what, "--date", date.problem().remedy);
  }
  const auto& visits = answer.plan.visits;
  const auto visit = std::find_if(visits.begin(), visits.end(), [&](const work::Visit& v) {
    return (!site || v.site == *site) && (wish.date.empty() || v.date.iso() == wish.date);
  });
  if (visit == visits.end()) {
    return bad_input(
        "the plan from " + answer.plan.from.iso() + " to " + answer.plan.to.iso() + " has no such visit",
        wish.site + (wish.date.empty() ? "" : " " + wish.date), "see beegarth plan");
  }
  const scene::Document document = sheet(*visit, facts_for(session, answer, visit->site, wish.paper));
  return VisitSheet{draw::to_pdf(document), visit->site, answer.names.of(visit->site), visit->date};
}

Expected<VisitSheet> visit_sheet(const Session& session, const SheetWish& wish) {
  const auto answer = plan_next_days(session, wish.days);
  if (!answer) return answer.problem();
  return sheet_of(session, *answer, wish);
}

}  // namespace beegarth::garth
