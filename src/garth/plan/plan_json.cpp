#include "garth/plan/plan_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "work/words.hpp"

namespace beegarth::garth {

namespace {

using Json = nlohmann::json;

double decimals(double value, double scale) {
  return std::isfinite(value) ? std::round(value * scale) / scale : 0;
}
double odds_number(double value) {
  return decimals(std::clamp(value, 0.0, 1.0), 1e4);
}
double minutes_number(double value) {
  return decimals(value, 10);
}
double money_number(double value) {
  return decimals(value, 1e3);
}

Json odds_json(const std::vector<facts::EventOdds>& odds) {
  Json list = Json::array();
  for (const auto& one : odds)
    list.push_back({{"event", one.event},
                    {"by", one.by.iso()},
                    {"value", odds_number(one.odds.value)},
                    {"low", odds_number(one.odds.low)},
                    {"high", odds_number(one.odds.high)}});
  return list;
}

// What a job and something left undone have in common.
Json need_json(const facts::Need& need, const PlanNames& names) {
  Json object{{"key", need.key},
              {"what", need.what},
              {"why", reasons_json(need.why)},
              {"odds", odds_json(need.odds)},
              {"cautions", need.cautions},
              {"take", need.take},
              {"minutes", need.minutes},
              {"people", need.people},
              {"earliest", need.earliest.iso()},
              {"best", need.best.iso()},
              {"latest", need.latest.iso()}};
  if (need.colony) {
    object["colony"] = need.colony->text();
    object["colony_name"] = names.of(*need.colony);
  }
  if (need.colony && !need.write_down.empty())
    object["write_down"] = names.of(*need.colony) + ": " + need.write_down;
  if (need.last_in_round) object["last_in_round"] = true;
  return object;
}

}  // namespace

bool opens_a_hive(const work::Visit& visit) {
  return std::any_of(visit.jobs.begin(), visit.jobs.end(), [](const work::PlannedJob& job) {
    return job.need.clock == facts::Clock::opening && job.need.minutes > 0;
  });
}

std::vector<std::string> load_of(const work::Visit& visit) {
  std::vector<std::string> all;
  for (const auto& job : visit.jobs) all.insert(all.end(), job.need.take.begin(), job.need.take.end());
  return work::packed(all);
}

namespace {

Json visit_json(const work::Visit& visit, const PlanNames& names) {
  Json jobs = Json::array();
  for (const auto& job : visit.jobs) jobs.push_back(need_json(job.need, names));
  Json object{{"date", visit.date.iso()},
              {"start", clock_text(visit.start_hour)},
              {"end", clock_text(visit.end_hour)},
              {"site", visit.site.text()},
              {"site_name", names.of(visit.site)},
              {"travel_minutes", minutes_number(visit.travel_minutes)},
              {"opening_odds", odds_number(visit.opening_odds)},
              {"opens_a_hive", opens_a_hive(visit)},
              {"take", load_of(visit)},
              {"jobs", jobs}};
  if (!visit.weather.empty()) object["weather"] = visit.weather;
  if (visit.fallback) object["fallback"] = visit.fallback->iso();
  if (visit.if_lost) object["if_lost"] = *visit.if_lost;
  return object;
}

Json undone_json(const work::Undone& undone, const PlanNames& names) {
  Json object = need_json(undone.need, names);
  object["site"] = undone.need.site.text();
  object["site_name"] = names.of(undone.need.site);
  object["because"] = undone.because;
  object["cost"] = {{"value", money_number(undone.cost)}, {"unit", undone.unit}, {"text", undone.text}};
  return object;
}

}  // namespace

std::string clock_text(double local_hour) {
  const int minutes = std::clamp(static_cast<int>(std::lround(local_hour * 60)), 0, 24 * 60 - 1);
  return fmt::format("{:02d}:{:02d}", minutes / 60, minutes % 60);
}

nlohmann::json reasons_json(const std::vector<facts::Reason>& reasons) {
  Json list = Json::array();
  for (const auto& reason : reasons) {
    Json entries = Json::array();
    for (const auto& entry : reason.entries) entries.push_back(entry.text());
    list.push_back({{"text", reason.text}, {"entries", entries}, {"sources", reason.sources}});
  }
  return list;
}

nlohmann::json plan_json(const work::Plan& plan, const PlanNames& names) {
  Json visits = Json::array();
  for (const auto& visit : plan.visits) visits.push_back(visit_json(visit, names));
  Json at_home = Json::array();
  for (const auto& job : plan.at_home) at_home.push_back(need_json(job.need, names));
  Json undone = Json::array();
  for (const auto& one : plan.undone) undone.push_back(undone_json(one, names));
  return {{"from", plan.from.iso()},
          {"to", plan.to.iso()},
          {"at_home", at_home},
          {"visits", visits},
          {"undone", undone},
          {"expected_loss", money_number(plan.expected_loss)},
          {"bound", money_number(plan.bound)},
          {"proven_optimal", plan.proven_optimal},
          {"remarks", plan.remarks}};
}

}  // namespace beegarth::garth
