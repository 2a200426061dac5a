#include "garth/plan_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "garth/plan_json.hpp"

namespace beegarth::garth {

namespace {

constexpr std::size_t columns = 100;

// Columns that UTF-8 text takes on the screen: one for each code point.
std::size_t width(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

// `head` starts the first line; the lines after it are indented by as many columns.
std::string paragraph(const std::string& head, std::string_view text) {
  std::string out = head;
  const std::string indent(width(head), ' ');
  std::size_t column = width(head);
  bool fresh = true;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    at = end + 1;
    if (word.empty()) continue;
    if (!fresh && column + 1 + width(word) > columns) {
      out += "\n" + indent;
      column = indent.size();
      fresh = true;
    }
    if (!fresh) {
      out += ' ';
      ++column;
    }
    out += word;
    column += width(word);
    fresh = false;
  }
  return out + "\n";
}

std::string percent(double odds) {
  if (odds > 0 && odds < 0.005) return "under 1 %";
  if (odds < 1 && odds > 0.995) return "over 99 %";
  return fmt::format("{:.0f} %", odds * 100);
}

std::string join(const std::vector<std::string>& parts, const char* between) {
  return fmt::format("{}", fmt::join(parts, between));
}

std::vector<std::string> in_order_once(const std::vector<work::PlannedJob>& jobs,
                                       std::vector<std::string> facts::Need::*list) {
  std::vector<std::string> out;
  std::set<std::string> seen;
  for (const auto& job : jobs)
    for (const auto& item : job.need.*list)
      if (seen.insert(item).second) out.push_back(item);
  return out;
}

std::string job_text(const facts::Need& need, int number, const PlanNames& names) {
  const std::string who = need.colony ? names.of(*need.colony) + ": " : "";
  const std::string length = need.minutes > 0 ? fmt::format("\u00a0\u00a0[{}\u00a0min]", need.minutes) : "";
  std::string out = paragraph(fmt::format("  {:>2}  ", number), who + need.what + length);
  if (!need.odds.empty()) {
    std::vector<std::string> odds;
    for (const auto& one : need.odds)
      odds.push_back(fmt::format("{} by {}: {}", one.event, short_date(one.by), odds_text(one.odds)));
    out += paragraph("        odds  ", join(odds, "; "));
  }
  std::vector<std::string> why;
  for (const auto& reason : need.why) why.push_back(reason.text);
  if (!why.empty()) out += paragraph("        why   ", join(why, "; "));
  if (need.last_in_round)
    out += paragraph("        order ", "last of the round: no other colony after it today");
  return out;
}

std::string visit_text(const work::Visit& visit, const PlanNames& names) {
  std::string out = fmt::format("{}  {}  {}\u2013{}\n", short_date(visit.date), names.of(visit.site),
                                clock_text(visit.start_hour), clock_text(visit.end_hour));
  std::vector<std::string> day;
  if (!visit.weather.empty()) day.push_back(visit.weather);
  day.push_back("fit for opening " + percent(visit.opening_odds));
  day.push_back(fmt::format("{:.0f} min on the way", visit.travel_minutes));
  out += paragraph("  ", join(day, ", "));
  const auto take = in_order_once(visit.jobs, &facts::Need::take);
  if (!take.empty()) out += paragraph("  Take  ", join(take, "; "));
  int number = 0;
  for (const auto& job : visit.jobs) out += job_text(job.need, ++number, names);
  for (const auto& caution : in_order_once(visit.jobs, &facts::Need::cautions))
    out += paragraph("  Care  ", caution);
  if (visit.if_lost) out += paragraph("  Lost  ", "if the day is lost: " + *visit.if_lost);
  return out;
}

std::string undone_text(const std::vector<work::Undone>& undone, const PlanNames& names) {
  std::string out = "Left undone\n";
  for (const auto& one : undone) {
    const std::string who = one.need.colony ? names.of(*one.need.colony) : names.of(one.need.site);
    out += paragraph("  -  ", fmt::format("{}: {} \u2013 {}; {}", who, one.need.what, one.because, one.text));
  }
  return out;
}

}  // namespace

std::string short_date(Date date) {
  static constexpr std::array days{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  static constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                                     "July",    "August",   "September", "October", "November", "December"};
  return fmt::format("{} {} {}", days.at(static_cast<std::size_t>(date.weekday() - 1)), date.day(),
                     months.at(static_cast<std::size_t>(date.month() - 1)));
}

std::string odds_text(const facts::Odds& odds) {
  return fmt::format("{} ({:.0f}\u2013{:.0f})", percent(odds.value), odds.low * 100, odds.high * 100);
}

std::string plan_text(const work::Plan& plan, const PlanNames& names) {
  std::string out = fmt::format("From {} to {}: {}\n", short_date(plan.from), short_date(plan.to),
                                plan.visits.empty()       ? "no visit"
                                : plan.visits.size() == 1 ? "1 visit"
                                                          : fmt::format("{} visits", plan.visits.size()));
  for (const auto& visit : plan.visits) out += "\n" + visit_text(visit, names);
  if (!plan.undone.empty()) out += "\n" + undone_text(plan.undone, names);
  if (!plan.remarks.empty()) {
    out += "\nTo know\n";
    for (const auto& remark : plan.remarks) out += paragraph("  -  ", remark);
  }
  const double gap = plan.expected_loss - plan.bound;
  out += fmt::format("\nExpected loss and effort {:.1f}; {}.\n", plan.expected_loss,
                     plan.proven_optimal ? "no better plan exists under these odds"
                                         : fmt::format("a better plan could save {:.1f} at most", gap));
  return out;
}

}  // namespace beegarth::garth
