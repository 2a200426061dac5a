#include "garth/plan/plan_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>

#include "garth/plan/plan_json.hpp"
#include "work/words.hpp"

namespace beegarth::garth {

namespace {

constexpr std::size_t terminal_columns = 100;

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
    if (!fresh && column + 1 + width(word) > terminal_columns) {
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

std::string join(const std::vector<std::string>& parts, const char* between) {
  return fmt::format("{}", fmt::join(parts, between));
}

using Jobs = std::vector<const facts::Need*>;

// What one reads in the morning: the first reason of its own. What moved the odds is told apart from it.
const facts::Reason* first_reason(const facts::Need& need) {
  for (const auto& reason : need.why)
    if (!reason.moved && !reason.assumed) return &reason;
  return nullptr;
}

std::optional<std::string> moved_most(const facts::Need& need) {
  for (const auto& reason : need.why)
    if (reason.moved) return moved_by(*reason.moved, need.earliest.year());
  return std::nullopt;
}

// "charged queen cells 20 % (3 to 43 %) by Wed 3 June, 23 % (2 to 54 %) by Wed 10 June"; two odds at most.
std::string told_odds(const facts::Need& need) {
  constexpr std::size_t most = 2;
  std::string out;
  for (std::size_t i = 0; i < need.odds.size() && i < most; ++i) {
    const auto& one = need.odds[i];
    const bool again = i > 0 && need.odds[i - 1].event == one.event;
    out += (i == 0  ? ""
            : again ? ", "
                    : "; ") +
           (again ? "" : one.event + " ") + odds_text(one.odds) + " by " + work::day_text(one.by);
  }
  return out;
}

std::string job_text(const facts::Need& need, int number, const PlanNames& names) {
  const std::string who = need.colony ? names.of(*need.colony) + ": " : "";
  const std::string length = need.minutes > 0 ? fmt::format("\u00a0\u00a0[{}\u00a0min]", need.minutes) : "";
  std::string out = paragraph(fmt::format("  {:>2}  ", number),
                              who + human_dates(need.what, need.earliest.year()) + length);
  std::vector<std::string> why;
  if (const auto* reason = first_reason(need)) why.push_back(human_dates(reason->text, need.earliest.year()));
  std::string odds = told_odds(need);
  if (const auto entry = moved_most(need))
    odds += (odds.empty() ? "moved most by the " : ", moved most by the ") + *entry;
  if (!odds.empty()) why.push_back(odds);
  if (!why.empty()) out += paragraph("      ", join(why, "; "));
  if (need.last_in_round) out += paragraph("      ", "last of the round: no other colony after it today");
  return out;
}

// A colony is opened once: its jobs stand together where the first of them stands. What waits for dusk, and
// what is last of the round, stays behind the others.
Jobs in_order_of_colonies(const work::Visit& visit) {
  const auto turn = [](const facts::Need& need) {
    return need.last_in_round ? 2 : need.clock == facts::Clock::dusk ? 1 : 0;
  };
  Jobs jobs;
  for (const int now : {0, 1, 2}) {
    std::vector<std::optional<ColonyId>> met;
    for (const auto& job : visit.jobs)
      if (turn(job.need) == now && std::find(met.begin(), met.end(), job.need.colony) == met.end())
        met.push_back(job.need.colony);
    for (const auto& colony : met)
      for (const auto& job : visit.jobs)
        if (turn(job.need) == now && job.need.colony == colony) jobs.push_back(&job.need);
  }
  return jobs;
}

// In how many visits each caution stands.
std::map<std::string, int> visits_of_cautions(const work::Plan& plan) {
  std::map<std::string, int> visits;
  for (const auto& visit : plan.visits) {
    std::set<std::string> here;
    for (const auto& job : visit.jobs) here.insert(job.need.cautions.begin(), job.need.cautions.end());
    for (const auto& caution : here) ++visits[caution];
  }
  return visits;
}

// "Thrush: " where a caution of the visit is of that colony alone.
std::string only_colony(const work::Visit& visit, const std::string& caution, const PlanNames& names) {
  std::set<std::optional<ColonyId>> whose;
  for (const auto& job : visit.jobs)
    if (std::find(job.need.cautions.begin(), job.need.cautions.end(), caution) != job.need.cautions.end())
      whose.insert(job.need.colony);
  return whose.size() == 1 && *whose.begin() ? names.of(**whose.begin()) + ": " : "";
}

std::string visit_text(const work::Visit& visit, const PlanNames& names) {
  std::string out = fmt::format("{}  {}  {}\u2013{}\n", work::day_text(visit.date), names.of(visit.site),
                                clock_text(visit.start_hour), clock_text(visit.end_hour));
  std::vector<std::string> day;
  if (!visit.weather.empty()) day.push_back(visit.weather);
  if (opens_a_hive(visit)) day.push_back("fit for opening " + work::percent_text(visit.opening_odds));
  day.push_back(fmt::format("{:.0f} min on the way", visit.travel_minutes));
  out += paragraph("  ", join(day, ", "));
  const auto take = load_of(visit);
  if (!take.empty()) out += paragraph("  Take  ", join(take, "; "));
  int number = 0;
  for (const facts::Need* need : in_order_of_colonies(visit)) out += job_text(*need, ++number, names);
  if (visit.if_lost)
    out += paragraph("  Lost  ", "if the day is lost: " + human_dates(*visit.if_lost, visit.date.year()));
  return out;
}

std::string at_home_text(const work::Plan& plan, const PlanNames& names) {
  if (plan.at_home.empty()) return "";
  const bool a_call = plan.at_home.front().need.key.rfind("tell-inspector/", 0) == 0;
  std::string out = a_call ? "\nFirst of all, from home\n" : "\nAt home, when it suits\n";
  int number = 0;
  for (const auto& job : plan.at_home) {
    out += job_text(job.need, ++number, names);
    for (const auto& caution : job.need.cautions) out += paragraph("      ", caution);
  }
  return out;
}

// Every caution once: those of one visit with its site, those of several first.
std::string cautions_text(const work::Plan& plan, const PlanNames& names) {
  const auto visits = visits_of_cautions(plan);
  std::set<std::string> told;
  std::vector<std::string> everywhere;
  std::string out;
  for (const auto& visit : plan.visits) {
    std::vector<std::string> here;
    std::string last;
    for (const auto& job : visit.jobs)
      for (const auto& caution : job.need.cautions) {
        if (!told.insert(caution).second) continue;
        if (visits.at(caution) > 1) {
          everywhere.push_back(caution);
        } else {
          const std::string whose = only_colony(visit, caution, names);
          here.push_back((whose == last ? "" : whose) + caution);
          last = whose;
        }
      }
    if (!here.empty())
      out += paragraph("  -  ", fmt::format("{}, {}: {}", work::day_text(visit.date), names.of(visit.site),
                                            join(here, " ")));
  }
  if (!everywhere.empty()) out = paragraph("  -  ", join(everywhere, " ")) + out;
  return out.empty() ? out : "\nCare\n" + out;
}

// One paragraph for each reason; in it what was left, dearest first as the plan gives it.
std::string undone_text(const std::vector<work::Undone>& undone, const PlanNames& names) {
  std::vector<std::string> reasons;
  for (const auto& one : undone)
    if (std::find(reasons.begin(), reasons.end(), one.because) == reasons.end())
      reasons.push_back(one.because);
  std::string out = "Left undone\n";
  for (const auto& because : reasons) {
    std::vector<std::string> jobs;
    for (const auto& one : undone) {
      if (one.because != because) continue;
      const std::string who = one.need.colony ? names.of(*one.need.colony) : names.of(one.need.site);
      jobs.push_back(fmt::format("{}: {} ({})", who, work::in_short(one.need.what), one.text));
    }
    out += paragraph(
        "  -  ", human_dates(because, undone.front().need.earliest.year()) + " \u2013 " + join(jobs, "; "));
  }
  return out;
}

}  // namespace

std::string human_dates(const std::string& text, int year) {
  static const std::regex iso("([0-9]{4})-([0-9]{2})-([0-9]{2})");
  std::string out;
  auto rest = text.cbegin();
  for (std::sregex_iterator at(text.begin(), text.end(), iso), end; at != end; ++at) {
    const auto date = Date::from_ymd(std::stoi((*at)[1]), std::stoi((*at)[2]), std::stoi((*at)[3]));
    out.append(rest, (*at)[0].first);
    out += date ? work::day_and_month_text(*date) +
                      (date->year() == year ? "" : " " + std::to_string(date->year()))
                : at->str();
    rest = (*at)[0].second;
  }
  return out.append(rest, text.cend());
}

std::string moved_by(const facts::Moved& moved, int year) {
  return (moved.what == "inspection" ? "look" : moved.what) + " of " +
         human_dates(moved.happened.iso(), year);
}

std::string odds_text(const facts::Odds& odds) {
  return fmt::format("{} ({:.0f} to {:.0f} %)", work::percent_text(odds.value), odds.low * 100,
                     odds.high * 100);
}

std::string plan_text(const work::Plan& plan, const PlanNames& names) {
  std::string out = fmt::format("From {} to {}: {}\n", work::day_text(plan.from), work::day_text(plan.to),
                                plan.visits.empty()       ? "no visit"
                                : plan.visits.size() == 1 ? "1 visit"
                                                          : fmt::format("{} visits", plan.visits.size()));
  out += at_home_text(plan, names);
  for (const auto& visit : plan.visits) out += "\n" + visit_text(visit, names);
  out += cautions_text(plan, names);
  if (!plan.undone.empty()) out += "\n" + undone_text(plan.undone, names);
  if (!plan.remarks.empty()) {
    out += "\nTo know\n";
    for (const auto& remark : plan.remarks) out += paragraph("  -  ", remark);
  }
  const double gap = plan.expected_loss - plan.bound;
  const std::string how_good = plan.proven_optimal
                                   ? "no plan of it is better under these odds, prices and hours"
                                   : fmt::format("a better plan could save {:.1f} kg at most", gap);
  out += "\n" + paragraph("", fmt::format("Expected loss and effort of what can be planned: {:.1f} kg honey "
                                          "equivalent; {}.",
                                          plan.expected_loss, how_good));
  return out;
}

}  // namespace beegarth::garth
