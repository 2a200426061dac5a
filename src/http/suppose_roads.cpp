// Ways of acting for one colony, held side by side. Nothing is written.
#include <array>

#include "garth/beliefs/ways_said.hpp"
#include "garth/calc/calc.hpp"
#include "http/replies.hpp"
#include "http/roads.hpp"

namespace beegarth::http {
namespace {

constexpr const char* shape =
    R"(send {"ways": ["2026-08-10: treated with thymol for 28 days"], "until": "2027-04-01"})";

Expected<garth::Supposing> supposing_in(const Ask& ask) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return body.problem();
  const bool has_until = body->is_object() && body->contains("until");
  if (!body->is_object() || body->size() != (has_until ? 2U : 1U) || !body->contains("ways") ||
      !(*body)["ways"].is_array())
    return bad_input("a supposition is a list of ways", "body", shape);
  garth::Supposing supposing;
  for (const Json& way : (*body)["ways"]) {
    if (!way.is_string()) return bad_input("a way is no text", "ways", shape);
    supposing.ways.push_back(way.get<std::string>());
  }
  if (supposing.ways.empty() || supposing.ways.size() > garth::most_ways)
    return bad_input("there are no ways, or more than " + std::to_string(garth::most_ways), "ways", shape);
  if (!has_until) return supposing;
  const Json& until = (*body)["until"];
  const auto day = Date::parse(until.is_string() ? until.get<std::string>() : std::string{});
  if (!day) return bad_input(day.problem().what, "until", day.problem().remedy);
  supposing.until = *day;
  return supposing;
}

Reply suppose(const Ask& ask, const std::string& colony, const Api& api) {
  const auto supposing = supposing_in(ask);
  if (!supposing) return problem_reply(supposing.problem());
  const auto told = api.suppose(colony, *supposing);
  const bool no_colony = !told && told.problem().where.empty();
  return json_reply(told, no_colony ? 404 : 400);
}

constexpr std::array roads{
    Road{"/api/colonies/*/suppositions", "POST",
         [](const Ask& ask, const std::string& key, const Api& api) { return suppose(ask, key, api); }},
};

}  // namespace

std::span<const Road> suppose_roads() {
  return roads;
}

}  // namespace beegarth::http
