// What has to be reported to the authority, and not at once: the pests of which a country wants to know where
// they are.
#include "work/needs/kinds.hpp"

namespace beegarth::work {

Needs reports_owed(const Asking& asking) {
  if (asking.site.reports.empty()) return {};
  std::string things;
  for (const DueReport& report : asking.site.reports) things += (things.empty() ? "" : ", ") + report.what;
  facts::Need need =
      asking.need("report", "report from " + asking.site.name + " to " + asking.site.authority + ": " +
                                things + "; enter it (reported) when it is done");
  need.at_home = true;
  need.minutes = asking.minutes("notify_minutes");
  need.clock = facts::Clock::any;
  need.loss = loss_when_late(asking, asking.input.today, 60, asking.fact("report_late_kg"));
  for (const DueReport& report : asking.site.reports)
    need.why.push_back(because(report.what + ": " + report.why, report.entries, {report.law, report.source}));
  need.why.push_back(because("a duty, whatever it weighs", {}, {asking.source("report_late_kg")}));
  return {need};
}

}  // namespace beegarth::work
