// The plan in other forms, and a week of the keeper's own held beside it. Nothing is written.
#include <array>

#include "garth/calc/calc.hpp"
#include "http/queries.hpp"
#include "http/replies.hpp"
#include "http/roads.hpp"

namespace beegarth::http {
namespace {

constexpr const char* shape_of_a_week =
    R"(send {"days": 14, "jobs": [{"date": "2026-06-03", "need": "look-cells/cobble"}]})";
constexpr std::size_t most_jobs = 500;
constexpr int most_days = 28;

Expected<work::OwnJob> job_in(const Json& job, std::size_t number) {
  const std::string where = "jobs[" + std::to_string(number) + "]";
  if (!job.is_object() || job.size() != 2 || !job.contains("date") || !job["date"].is_string() ||
      !job.contains("need") || !job["need"].is_string())
    return bad_input("a job is a day and the key of a need", where, shape_of_a_week);
  const auto date = Date::parse(job["date"].get<std::string>());
  if (!date) return bad_input(date.problem().what, where + ".date", date.problem().remedy);
  return work::OwnJob{job["need"].get<std::string>(), *date};
}

Reply own_week(const Ask& ask, const Api& api) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return problem_reply(body.problem());
  if (!body->is_object() || body->size() != 2 || !body->contains("days") ||
      !(*body)["days"].is_number_integer() || !body->contains("jobs") || !(*body)["jobs"].is_array())
    return problem_reply(bad_input("a week of your own is days and jobs", "body", shape_of_a_week));
  const auto days = (*body)["days"].get<std::int64_t>();
  if (days < 1 || days > most_days)
    return problem_reply(bad_input("days is not a whole number from 1 to 28", "days", shape_of_a_week));
  const Json& list = (*body)["jobs"];
  if (list.size() > most_jobs)
    return problem_reply(bad_input("there are more than 500 jobs", "jobs", shape_of_a_week));
  std::vector<work::OwnJob> own;
  for (std::size_t i = 0; i < list.size(); ++i) {
    auto job = job_in(list[i], i);
    if (!job) return problem_reply(job.problem());
    own.push_back(*std::move(job));
  }
  return json_reply(api.own_week(own, static_cast<int>(days)), 400);
}

Reply plan_form(const Ask& ask, const Api& api, garth::PlanForm form, const char* type,
                const std::string& name) {
  const Expected<int> days = days_asked(ask);
  if (!days) return problem_reply(days.problem());
  return named_file(bytes_reply(api.plan_as(form, *days), type), "attachment; filename=\"" + name + "\"");
}

constexpr std::array roads_of_the_week{
    Road{"/api/plan.ics", "GET",
         [](const Ask& ask, const std::string&, const Api& api) {
           return plan_form(ask, api, garth::PlanForm::calendar, "text/calendar; charset=utf-8",
                            "visits.ics");
         },
         "days"},
    Road{"/api/plan.gpx", "GET",
         [](const Ask& ask, const std::string&, const Api& api) {
           return plan_form(ask, api, garth::PlanForm::gpx, "application/gpx+xml", "visits.gpx");
         },
         "days"},
    Road{"/api/packing.txt", "GET",
         [](const Ask& ask, const std::string&, const Api& api) {
           return plan_form(ask, api, garth::PlanForm::packing, "text/plain; charset=utf-8", "packing.txt");
         },
         "days"},
    Road{"/api/own-week", "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return own_week(ask, api); }},
};

}  // namespace

std::span<const Road> week_roads() {
  return roads_of_the_week;
}

}  // namespace beegarth::http
