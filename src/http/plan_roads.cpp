#include <algorithm>
#include <array>
#include <utility>

#include "garth/calc/calc.hpp"
#include "http/queries.hpp"
#include "http/replies.hpp"
#include "http/roads.hpp"

namespace beegarth::http {
namespace {

constexpr std::array<std::string_view, 4> answers{"done", "skipped", "put_off", "rained_off"};

Reply plan(const Ask& ask, const Api& api) {
  const Expected<int> days = days_asked(ask);
  return days ? json_reply(api.plan(*days)) : problem_reply(days.problem());
}

Reply sheet(const Ask& ask, const Api& api) {
  const auto date_text = ask.query.find("date");
  const auto site = ask.query.find("site");
  if (date_text == ask.query.end() || site == ask.query.end())
    return problem_reply(bad_input("the sheet needs a date and a site", ask.path,
                                   "ask for /api/sheet?date=2026-06-05&site=KEY"));
  const Expected<Date> date = Date::parse(date_text->second);
  if (!date) return problem_reply(date.problem());
  Expected<std::string> bytes = api.sheet(*date, site->second);
  if (!bytes) return problem_reply(bytes.problem());
  return {200, "application/pdf", std::move(*bytes), {}};
}

Reply note(const Ask& ask, const Api& api) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return problem_reply(body.problem());
  if (!body->is_object() || body->size() != 2 || !body->contains("line") || !(*body)["line"].is_string() ||
      !body->contains("keep") || !(*body)["keep"].is_boolean())
    return problem_reply(bad_input("a note is a line and whether to keep it", "body",
                                   R"(send {"line": "...", "keep": false})"));
  const auto line = (*body)["line"].get<std::string>();
  if (line.empty() || line.size() > 2000)
    return problem_reply(bad_input("a line has 1 to 2000 characters", "body.line", "split it in two"));
  return json_reply(api.note(line, (*body)["keep"].get<bool>()));
}

Reply answer(const std::string& need, const Ask& ask, const Api& api) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return problem_reply(body.problem());
  const bool has_until = body->is_object() && body->contains("until");
  const bool shaped = body->is_object() && body->size() == (has_until ? 2U : 1U) &&
                      body->contains("answer") && (*body)["answer"].is_string();
  const std::string word = shaped ? (*body)["answer"].get<std::string>() : std::string{};
  if (std::find(answers.begin(), answers.end(), word) == answers.end())
    return problem_reply(
        bad_input("that is no answer to a need", "body.answer", "send done, skipped, put_off or rained_off"));
  std::optional<Date> until;
  if (has_until) {
    const Json& said = (*body)["until"];
    const Expected<Date> day = Date::parse(said.is_string() ? said.get<std::string>() : std::string{});
    if (!day) return problem_reply(bad_input(day.problem().what, "body.until", day.problem().remedy));
    if (word != "put_off")
      return problem_reply(bad_input("only what is put off has a day", "body.until", "leave it out"));
    until = *day;
  }
  return json_reply(api.answer(need, word, until), 404);
}

Reply transfer_ways(const Ask& ask, const std::string& colony, const Api& api) {
  const auto into = ask.query.find("into");
  if (into == ask.query.end() || into->second.empty())
    return problem_reply(bad_input("the hive is missing", "into", "name the one it shall live in"));
  const auto told = api.transfer_ways(colony, into->second);
  const bool no_colony = !told && told.problem().where.empty();
  return json_reply(told, no_colony ? 404 : 400);
}

constexpr std::array roads_of_the_plan{
    Road{"/api/book", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.book()); }},
    Road{"/api/plan", "GET",
         [](const Ask& ask, const std::string&, const Api& api) { return plan(ask, api); }, "days"},
    Road{"/api/colonies", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.colonies()); }},
    Road{"/api/doubts", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.doubts()); }},
    Road{"/api/colonies/*/transfer-ways", "GET",
         [](const Ask& ask, const std::string& key, const Api& api) { return transfer_ways(ask, key, api); },
         "into"},
    Road{
        "/api/colonies/*", "GET",
        [](const Ask&, const std::string& key, const Api& api) { return json_reply(api.outlook(key), 404); }},
    Road{"/api/sheet", "GET",
         [](const Ask& ask, const std::string&, const Api& api) { return sheet(ask, api); }, "date site"},
    Road{"/api/calc", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.calcs()); }},
    Road{"/api/notes", "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return note(ask, api); }},
    Road{"/api/needs/*", "POST",
         [](const Ask& ask, const std::string& key, const Api& api) { return answer(key, ask, api); }},
    Road{"/api/calc/*", "POST",
         [](const Ask& ask, const std::string& key, const Api& api) {
           return json_reply(api.calc(key, ask.body));
         }},
};

}  // namespace

std::span<const Road> plan_roads() {
  return roads_of_the_plan;
}

}  // namespace beegarth::http
