#include "garth/plan/plan_forms.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

#include "garth/exports/calendar.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"
#include "work/words.hpp"

namespace beegarth::garth {
namespace {

std::string told(const facts::Need& need, const PlanNames& names) {
  return (need.colony ? names.of(*need.colony) + ": " : "") + human_dates(need.what, need.earliest.year());
}

std::string joined(const std::vector<std::string>& parts, const char* between) {
  return fmt::format("{}", fmt::join(parts, between));
}

// What a calendar entry holds besides its time: the jobs in their order, the load, and what to mind.
std::string described(const work::Visit& visit, const PlanNames& names) {
  std::string out;
  int number = 0;
  for (const auto& job : visit.jobs) out += fmt::format("{}. {}\n", ++number, told(job.need, names));
  const auto take = load_of(visit);
  if (!take.empty()) out += "Take: " + joined(take, "; ") + "\n";
  std::set<std::string> said;
  for (const auto& job : visit.jobs)
    for (const auto& caution : job.need.cautions)
      if (said.insert(caution).second) out += caution + "\n";
  if (visit.if_lost) out += "If the day is lost: " + human_dates(*visit.if_lost, visit.date.year()) + "\n";
  return out;
}

// XML 1.0, 2.4; control characters have no place in it at all.
std::string xml_text(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t')
      out += c;
  }
  return out;
}

std::string point(const char* element, const entries::Site& site, const std::string& name,
                  const std::string& description) {
  std::string out = fmt::format("<{} lat=\"{:.6f}\" lon=\"{:.6f}\"><name>{}</name>", element,
                                site.latitude_deg, site.longitude_deg, xml_text(name));
  if (!description.empty()) out += "<desc>" + xml_text(description) + "</desc>";
  return out + fmt::format("</{}>\n", element);
}

}  // namespace

std::string plan_lines(const work::Plan& plan, const PlanNames& names) {
  std::string out = "# day, the key of a job; what stands behind # is for reading only\n";
  for (const auto& visit : plan.visits)
    for (const auto& job : visit.jobs)
      out += fmt::format("{} {}  # {}\n", visit.date.iso(), job.need.key, told(job.need, names));
  for (const auto& one : plan.undone)
    out += fmt::format("# left undone: {}  # {}\n", one.need.key, told(one.need, names));
  return out;
}

std::string packing_list(const work::Plan& plan, const PlanNames& names) {
  std::map<Date, std::vector<const work::Visit*>> by_day;
  for (const auto& visit : plan.visits) by_day[visit.date].push_back(&visit);
  std::string out;
  for (const auto& [date, visits] : by_day) {
    std::vector<std::string> sites, all;
    for (const work::Visit* visit : visits) {
      sites.push_back(names.of(visit->site));
      for (const auto& job : visit->jobs) all.insert(all.end(), job.need.take.begin(), job.need.take.end());
    }
    out += fmt::format("{}{}  {}\n", out.empty() ? "" : "\n", work::day_text(date), joined(sites, ", "));
    const auto load = work::packed(all);
    for (const std::string& thing : load) out += "  [ ] " + thing + "\n";
    if (load.empty()) out += "  nothing\n";
  }
  return out.empty() ? "no visit, nothing to pack\n" : out;
}

std::string plan_calendar(const PlanAnswer& answer, Date stamped) {
  std::vector<CalendarDay> days;
  for (const auto& visit : answer.plan.visits) {
    const std::size_t jobs = visit.jobs.size();
    CalendarDay day{
        .uid = "visit-" + visit.date.iso() + "-" + visit.site.text(),
        .date = visit.date,
        .summary = answer.names.of(visit.site) + fmt::format(": {} {}", jobs, jobs == 1 ? "job" : "jobs"),
        .description = described(visit, answer.names),
        .start_hour = visit.start_hour,
        .end_hour = visit.end_hour};
    for (const auto& site : answer.sites)
      if (site.site == visit.site)
        day.location = site.name + (site.grid_reference.empty() ? "" : ", " + site.grid_reference);
    days.push_back(std::move(day));
  }
  return calendar_text(days, stamped);
}

std::string plan_gpx(const PlanAnswer& answer, const book::State& state) {
  std::string out =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"beegarth\" "
      "xmlns=\"http://www.topografix.com/GPX/1/1\">\n";
  std::set<SiteId> visited;
  std::map<Date, std::vector<const work::Visit*>> by_day;
  for (const auto& visit : answer.plan.visits) {
    if (!state.sites.contains(visit.site)) continue;
    visited.insert(visit.site);
    by_day[visit.date].push_back(&visit);
  }
  for (const auto& site : answer.sites)
    if (visited.contains(site.site)) out += point("wpt", state.sites.at(site.site), site.name, site.access);
  for (const auto& [date, visits] : by_day) {
    out += "<rte><name>" + xml_text(work::day_text(date)) + "</name>\n";
    for (const work::Visit* visit : visits) {
      std::vector<std::string> jobs;
      for (const auto& job : visit->jobs) jobs.push_back(told(job.need, answer.names));
      out += point("rtept", state.sites.at(visit->site), answer.names.of(visit->site), joined(jobs, "; "));
    }
    out += "</rte>\n";
  }
  return out + "</gpx>\n";
}

}  // namespace beegarth::garth
