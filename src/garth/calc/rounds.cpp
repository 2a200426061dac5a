// rounds: which places to see on which of several days, in which order, within their times of opening.
#include <algorithm>
#include <cmath>

#include "garth/calc/calc.hpp"
#include "work/rounds/orienteering.hpp"

namespace beegarth::garth {
namespace {

namespace rounds = work::rounds;

constexpr double farthest = 250000;  // of a coordinate, so that no way is longer than the longest time
constexpr int most_windows = 100;
constexpr int usual_effort = 100;

Json point_schema(const char* description) {
  Json schema = object_schema(
      {{"x", number_schema("", -farthest, farthest)}, {"y", number_schema("", -farthest, farthest)}},
      {"x", "y"});
  schema["description"] = description;
  return schema;
}

Json whole_schema(const char* description, int low, int high) {
  return {{"type", "integer"}, {"description", description}, {"minimum", low}, {"maximum", high}};
}

Json time_schema(const char* description) {
  return number_schema(description, -rounds::longest_time, rounds::longest_time);
}

Json place_schema() {
  const Json window =
      object_schema({{"day", whole_schema("0 is the first; absent: every day", 0, rounds::most_days - 1)},
                     {"open", time_schema("work begins then at the earliest")},
                     {"close", time_schema("and then at the latest")}},
                    {"open", "close"});
  Json windows = array_schema(window, most_windows);
  windows["description"] = "absent: open the whole time of every day";
  return object_schema(
      {{"x", number_schema("may be absent where travel_matrix is given", -farthest, farthest)},
       {"y", number_schema("", -farthest, farthest)},
       {"windows", windows},
       {"service", number_schema("how long the work there takes", 0, rounds::longest_time)},
       {"score", number_schema("what it is worth", 0, rounds::highest_score)},
       {"uses",
        {{"type", "object"},
         {"description", "how much of each of the limits, by its name"},
         {"additionalProperties", number_schema("", 0, rounds::most_use)}}}},
      {"service", "score"});
}

Json input_schema() {
  const Json length = number_schema("", 0, rounds::longest_time);
  const Json row = array_schema(length, rounds::most_places + 2);
  Json matrix = array_schema(row, rounds::most_places + 2);
  matrix["description"] =
      "time from row to column: the places in their order, then start, then end; absent: as the crow flies, "
      "one "
      "of x and y a unit of time";
  const Json limit = object_schema({{"name", text_schema("")},
                                    {"most", number_schema("", 0, rounds::most_use)},
                                    {"each_day", flag_schema("absent means no: in the whole plan")}},
                                   {"name", "most"});
  return object_schema(
      {{"days", whole_schema("", 1, rounds::most_days)},
       {"places", array_schema(place_schema(), rounds::most_places)},
       {"travel_matrix", matrix},
       {"start", point_schema("where each day begins; may be absent where travel_matrix is given")},
       {"end", point_schema("where each day ends; absent: at the start")},
       {"begin", time_schema("when each day begins; absent means 0")},
       {"limit",
        {{"description", "how long a day may be: one number, or one for each day"},
         {"oneOf", {length, array_schema(length, rounds::most_days)}}}},
       {"limits", array_schema(limit, rounds::most_limits)},
       {"effort", whole_schema("how much work is put into it; absent means 100", 1, rounds::most_effort)},
       {"seed", whole_schema("absent means 1", 0, 1000000)}},
      {"days", "places", "limit"});
}

Json output_schema() {
  const Json days = [](Json of_a_day) {
    return Json{{"type", "array"}, {"items", std::move(of_a_day)}};
  }(Json{{"type", "array"}, {"items", {{"type", "number"}}}});
  Json routes = days, starts = days;
  routes["description"] = "of each day the places, by their number in the input, in the order of seeing them";
  starts["description"] = "when the work at each of them begins";
  const Json score = number_schema("", 0, rounds::highest_score * rounds::most_places);
  Json bound = score;
  bound["description"] = "no plan is worth more";
  return object_schema({{"routes", routes},
                        {"starts", starts},
                        {"back",
                         {{"type", "array"},
                          {"items", {{"type", "number"}}},
                          {"description", "when the end of each day is reached"}}},
                        {"score", score},
                        {"bound", bound},
                        {"proven_optimal", flag_schema("")}},
                       {"routes", "starts", "back", "score", "proven_optimal"});
}

Json example() {
  const auto place = [](double x, double y, double service, double score, Json windows) {
    Json one{{"x", x}, {"y", y}, {"service", service}, {"score", score}};
    if (!windows.empty()) one["windows"] = std::move(windows);
    return one;
  };
  const Json afternoon{{{"open", 120}, {"close", 240}}};
  return {
      {"days", 2},
      {"start", {{"x", 0}, {"y", 0}}},
      {"limit", {240, 180}},
      {"places",
       {place(20, 10, 45, 8, Json::array()), place(25, 5, 30, 5, {{{"day", 0}, {"open", 0}, {"close", 120}}}),
        place(-30, 15, 60, 9, afternoon), place(-10, 35, 40, 6, Json::array()),
        place(5, -40, 50, 7, {{{"day", 1}, {"open", 30}, {"close", 90}}}),
        place(40, 40, 30, 3, Json::array())}}};
}

struct Point {
  double x = 0, y = 0;
};

Point read_point(Reader& whole, const char* field) {
  Reader reader(whole.part(field), whole.path_of(field));
  const Point point{reader.number("x", -farthest, farthest), reader.number("y", -farthest, farthest)};
  if (auto fault = reader.done()) whole.fail(*std::move(fault));
  return point;
}

rounds::OpenTime read_window(const Json& json, const std::string& path, int days, Reader& whole) {
  Reader reader(json, path);
  rounds::OpenTime window;
  window.day = reader.maybe_whole("day", 0, days - 1);
  window.open = reader.number("open", -rounds::longest_time, rounds::longest_time);
  window.close = reader.number("close", -rounds::longest_time, rounds::longest_time);
  if (window.close < window.open)
    reader.fail(bad_input("it closes before it opens", path, "give a close not before open"));
  if (auto fault = reader.done()) whole.fail(*std::move(fault));
  return window;
}

using Names = std::vector<std::string>;

void read_limits(Reader& whole, rounds::Question& question, Names& names) {
  const std::vector<Json> list = whole.maybe_list("limits", rounds::most_limits);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader reader(list[i], whole.path_of("limits", i));
    std::string name = reader.text("name");
    rounds::Limit limit{reader.number("most", 0, rounds::most_use), reader.flag("each_day")};
    if (std::find(names.begin(), names.end(), name) != names.end())
      reader.fail(bad_input("two limits have this name", reader.path_of("name"), "give each its own"));
    if (auto fault = reader.done()) whole.fail(*std::move(fault));
    names.push_back(std::move(name));
    question.limits.push_back(limit);
  }
}

std::vector<double> read_uses(Reader& place, const Names& names) {
  std::vector<double> uses(names.size(), 0.0);
  if (!place.has("uses")) return uses;
  Reader reader(place.part("uses"), place.path_of("uses"));
  for (std::size_t i = 0; i < names.size(); ++i)
    uses[i] = reader.number_or(names[i].c_str(), 0, rounds::most_use, 0);
  if (auto fault = reader.done()) {
    if (fault->what == "there is no such field") fault->remedy = "give the name of one of limits";
    place.fail(*std::move(fault));
  }
  return uses;
}

void read_places(Reader& whole, bool with_points, const Names& names, rounds::Question& question,
                 std::vector<Point>& points) {
  const std::vector<Json> list = whole.list("places", rounds::most_places);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader reader(list[i], whole.path_of("places", i));
    rounds::Place place;
    const auto coordinate = [&](const char* field) {
      return with_points ? reader.number(field, -farthest, farthest)
                         : reader.number_or(field, -farthest, farthest, 0);
    };
    points.push_back({coordinate("x"), coordinate("y")});
    const std::vector<Json> windows = reader.maybe_list("windows", most_windows);
    if (reader.has("windows") && windows.empty())
      reader.fail(bad_input("a place that is never open", reader.path_of("windows"),
                            "leave the place out, or the field where it is always open"));
    for (std::size_t w = 0; w < windows.size(); ++w)
      place.windows.push_back(read_window(windows[w], reader.path_of("windows", w), question.days, reader));
    place.service = reader.number("service", 0, rounds::longest_time);
    place.score = reader.number("score", 0, rounds::highest_score);
    place.uses = read_uses(reader, names);
    if (auto fault = reader.done()) return whole.fail(*std::move(fault));
    question.places.push_back(std::move(place));
  }
}

std::vector<double> numbers(const std::vector<Json>& list, const std::string& path, Reader& whole) {
  std::vector<double> values;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string where = path + "[" + std::to_string(i) + "]";
    if (!list[i].is_number()) {
      whole.fail(bad_input("not a number", where, "give a number"));
      return values;
    }
    values.push_back(list[i].get<double>());
    if (!(values.back() >= 0 && values.back() <= rounds::longest_time)) {
      whole.fail(bad_input("the number is out of range", where, "give 0 to 1000000"));
      return values;
    }
  }
  return values;
}

void read_matrix(Reader& whole, rounds::Question& question) {
  const std::vector<Json> rows = whole.list("travel_matrix", rounds::most_places + 2);
  const std::size_t size = question.places.size() + 2;
  const std::string remedy = "give " + std::to_string(size) + " rows of " + std::to_string(size) +
                             ": the places, then start and end";
  if (rows.size() != size && !question.places.empty())
    whole.fail(bad_input("the matrix has " + std::to_string(rows.size()) + " rows",
                         whole.path_of("travel_matrix"), remedy));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string path = whole.path_of("travel_matrix", i);
    if (!rows[i].is_array() || rows[i].size() != size)
      return whole.fail(bad_input("not a row of " + std::to_string(size) + " numbers", path, remedy));
    question.travel.push_back(numbers({rows[i].begin(), rows[i].end()}, path, whole));
  }
}

void as_the_crow_flies(const std::vector<Point>& points, rounds::Question& question) {
  for (const Point& from : points) {
    auto& row = question.travel.emplace_back();
    for (const Point& to : points) row.push_back(std::hypot(from.x - to.x, from.y - to.y));
  }
}

void read_length(const Json& input, Reader& whole, rounds::Question& question) {
  const auto days = static_cast<std::size_t>(question.days);
  if (!whole.has("limit") || !input["limit"].is_array()) {
    question.length.assign(days, whole.number("limit", 0, rounds::longest_time));
    return;
  }
  const std::vector<Json> list = whole.list("limit", rounds::most_days);
  question.length = numbers(list, whole.path_of("limit"), whole);
  if (list.size() != days)
    whole.fail(
        bad_input("the list is for " + std::to_string(list.size()) + " of " + std::to_string(days) + " days",
                  whole.path_of("limit"), "give one number, or one for each day"));
}

Expected<Json> run(const Json& input, const Tables& /*tables*/) {
  Reader reader(input);
  rounds::Question question;
  question.days = reader.whole("days", 1, rounds::most_days);
  const bool matrix = reader.has("travel_matrix");
  Names names;
  std::vector<Point> points;
  read_limits(reader, question, names);
  read_places(reader, !matrix, names, question, points);
  if (!matrix || reader.has("start")) points.push_back(read_point(reader, "start"));
  if (reader.has("end"))
    points.push_back(read_point(reader, "end"));
  else if (!matrix)
    points.push_back(points.back());
  if (matrix)
    read_matrix(reader, question);
  else
    as_the_crow_flies(points, question);
  question.begin = reader.number_or("begin", -rounds::longest_time, rounds::longest_time, 0);
  read_length(input, reader, question);
  question.effort = reader.maybe_whole("effort", 1, rounds::most_effort).value_or(usual_effort);
  question.seed = static_cast<std::uint64_t>(reader.maybe_whole("seed", 0, 1000000).value_or(1));
  if (auto fault = reader.done()) return *std::move(fault);
  const auto answer = rounds::best_rounds(question);
  if (!answer) {
    Problem problem = answer.problem();
    problem.where = "$." + problem.where;
    return problem;
  }
  Json out{{"routes", answer->routes},
           {"starts", answer->starts},
           {"back", answer->back},
           {"score", answer->score},
           {"proven_optimal", answer->proven_optimal}};
  if (answer->bound) out["bound"] = *answer->bound;
  return out;
}

}  // namespace

Calc rounds_calc() {
  return {"rounds",
          "which places to see on which of several days, in which order, within their times of opening",
          input_schema,
          output_schema,
          example,
          run};
}

}  // namespace beegarth::garth
