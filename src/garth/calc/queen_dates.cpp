// queen-dates: from one thing known of a queen or her brood to the days on which others follow.
#include "colony/queen_dates.hpp"

#include <array>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr std::array<std::string_view, 8> events{"egg_laid",    "larva_grafted", "queen_lost",
                                                 "swarm_left",  "queen_caged",   "queen_released",
                                                 "cell_sealed", "virgin_emerged"};

Json input_schema() {
  return object_schema({{"event", {{"enum", events}}},
                        {"date", date_schema("on which it happened")},
                        {"brood_age_days", number_schema("days since the egg was laid; for a graft (4 where "
                                                         "absent) or a lost queen (0 to 4.5 where absent)",
                                                         0, 5.5)},
                        {"released_date", date_schema("for a caged queen")}},
                       {"event", "date"});
}

Json output_schema() {
  const Json row = object_schema({{"what", {{"type", "string"}}},
                                  {"earliest", date_schema("rounded down to a day")},
                                  {"likely", date_schema("")},
                                  {"latest", date_schema("rounded up to a day")}},
                                 {"what", "earliest", "likely", "latest"});
  return object_schema({{"dates", array_schema(row, 20)}}, {"dates"});
}

Json example() {
  return {{"event", "queen_caged"}, {"date", "2026-07-01"}, {"released_date", "2026-07-26"}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const std::string event = reader.choice(
      "event", {events[0], events[1], events[2], events[3], events[4], events[5], events[6], events[7]});
  colony::QueenQuestion question;
  question.date = reader.date("date");
  question.brood_age_days = reader.maybe_number("brood_age_days", 0, 5.5);
  question.released = reader.maybe_date("released_date");
  if (auto fault = reader.done()) return *std::move(fault);
  for (std::size_t i = 0; i < events.size(); ++i) {
    if (events[i] == event) question.event = static_cast<colony::QueenEvent>(i);
  }
  const auto dates = colony::queen_dates(question);
  if (!dates) return dates.problem();
  Json rows = Json::array();
  for (const colony::DateRange& range : *dates) {
    rows.push_back({{"what", range.what},
                    {"earliest", range.earliest.iso()},
                    {"likely", range.likely.iso()},
                    {"latest", range.latest.iso()}});
  }
  return Json{{"dates", std::move(rows)}};
}

}  // namespace

Calc queen_dates_calc() {
  return {"queen-dates", "the calendar of queens and brood after something that happened",
          input_schema,  output_schema,
          example,       run};
}

}  // namespace beegarth::garth
