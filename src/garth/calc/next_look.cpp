// next-look: how long a stock in the swarm season may be left after a look.
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"
#include "work/look_interval.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema({{"date", date_schema("of the look")},
                        {"queen_clipped", flag_schema("a wing of the queen is clipped")},
                        {"main_flow_over", flag_schema("the main flow of nectar is over")},
                        {"oldest_larva_days",
                         number_schema("age of the oldest larva in an open queen cell, in days since the egg "
                                       "hatched; 0 for eggs in cells; absent where there is no such cell",
                                       0, 5)}},
                       {"date"});
}

Json output_schema() {
  return object_schema({{"days", number_schema("from that look to the next, at most", 0, 60)},
                        {"next_look", date_schema("on which the next look is done at the latest")}},
                       {"days", "next_look"});
}

Json example() {
  return {{"date", "2026-05-20"}, {"oldest_larva_days", 1}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const Date date = reader.date("date");
  const work::LookFound found{.queen_clipped = reader.flag("queen_clipped"),
                              .main_flow_over = reader.flag("main_flow_over"),
                              .oldest_larva_days = reader.maybe_number("oldest_larva_days", 0, 5)};
  if (auto fault = reader.done()) return *std::move(fault);
  const auto rule = work::look_rule(tables["work"]);
  if (!rule) return rule.problem();
  const double days = work::days_to_next_look(found, *rule);
  return Json{{"days", days}, {"next_look", (date + static_cast<int>(days)).iso()}};
}

}  // namespace

Calc next_look_calc() {
  return {"next-look",  "how long a stock in the swarm season may be left after a look",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
