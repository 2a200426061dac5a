// two-shares: did more of one group of colonies die than of the other?
#include "colony/groups.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema({{"bad_dead", {{"type", "integer"}, {"minimum", 0}, {"maximum", 1000000}}},
                        {"bad_alive", {{"type", "integer"}, {"minimum", 0}, {"maximum", 1000000}}},
                        {"good_dead", {{"type", "integer"}, {"minimum", 0}, {"maximum", 1000000}}},
                        {"good_alive", {{"type", "integer"}, {"minimum", 0}, {"maximum", 1000000}}}},
                       {"bad_dead", "bad_alive", "good_dead", "good_alive"});
}

Json output_schema() {
  return object_schema(
      {{"odds_ratio", number_schema("of the first group over the second", 0, 1e12)},
       {"low95", number_schema("Woolf's interval", 0, 1e12)},
       {"high95", number_schema("Woolf's interval", 0, 1e12)},
       {"chi_squared", number_schema("Pearson, without Yates' correction", 0, 1e12)},
       {"p", number_schema("of chi squared, one degree of freedom", 0, 1)},
       {"share_bad", number_schema("that died", 0, 1)},
       {"share_good", number_schema("that died", 0, 1)},
       {"share_all", number_schema("that died", 0, 1)}},
      {"odds_ratio", "low95", "high95", "chi_squared", "p", "share_bad", "share_good", "share_all"});
}

Json example() {
  return {{"bad_dead", 77}, {"bad_alive", 122}, {"good_dead", 34}, {"good_alive", 175}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const colony::Counted bad{reader.whole("bad_dead", 0, 1000000), reader.whole("bad_alive", 0, 1000000)};
  const colony::Counted good{reader.whole("good_dead", 0, 1000000), reader.whole("good_alive", 0, 1000000)};
  if (auto fault = reader.done()) return *std::move(fault);
  const auto two = colony::compare_shares(bad, good);
  if (!two) return two.problem();
  return Json{{"odds_ratio", two->odds_ratio},
              {"low95", two->low95},
              {"high95", two->high95},
              {"chi_squared", two->chi_squared},
              {"p", two->p},
              {"share_bad", two->share_bad},
              {"share_good", two->share_good},
              {"share_all", two->share_all}};
}

}  // namespace

Calc two_shares_calc() {
  return {"two-shares", "did more of one group of colonies die than of another: odds ratio with its interval",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
