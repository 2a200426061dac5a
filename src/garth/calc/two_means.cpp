// two-means: did one group of colonies bring more than the other?
#include "colony/groups.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema({{"first_n", {{"type", "integer"}, {"minimum", 2}, {"maximum", 1000000}}},
                        {"first_mean", number_schema("", -1e9, 1e9)},
                        {"first_sd", number_schema("", 0, 1e9)},
                        {"second_n", {{"type", "integer"}, {"minimum", 2}, {"maximum", 1000000}}},
                        {"second_mean", number_schema("", -1e9, 1e9)},
                        {"second_sd", number_schema("", 0, 1e9)}},
                       {"first_n", "first_mean", "first_sd", "second_n", "second_mean", "second_sd"});
}

Json output_schema() {
  return object_schema({{"difference", number_schema("second less first", -1e10, 1e10)},
                        {"low95", number_schema("", -1e12, 1e12)},
                        {"high95", number_schema("", -1e12, 1e12)},
                        {"t", number_schema("Welch", -1e9, 1e9)},
                        {"df", number_schema("degrees of freedom, Welch", 0, 1e9)},
                        {"p", number_schema("two-sided", 0, 1)}},
                       {"difference", "low95", "high95", "t", "df", "p"});
}

Json example() {
  return {{"first_n", 5},  {"first_mean", 25.2},  {"first_sd", 16.0},
          {"second_n", 5}, {"second_mean", 48.8}, {"second_sd", 14.8}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  colony::Group first, second;
  first.n = reader.whole("first_n", 2, 1000000);
  first.mean = reader.number("first_mean", -1e9, 1e9);
  first.sd = reader.number("first_sd", 0, 1e9);
  second.n = reader.whole("second_n", 2, 1000000);
  second.mean = reader.number("second_mean", -1e9, 1e9);
  second.sd = reader.number("second_sd", 0, 1e9);
  if (auto fault = reader.done()) return *std::move(fault);
  const auto two = colony::compare_means(first, second);
  if (!two) return two.problem();
  return Json{{"difference", two->difference},
              {"low95", two->low95},
              {"high95", two->high95},
              {"t", two->t},
              {"df", two->df},
              {"p", two->p}};
}

}  // namespace

Calc two_means_calc() {
  return {"two-means",
          "did one group of colonies bring more than another: difference of means with its interval",
          input_schema,
          output_schema,
          example,
          run};
}

}  // namespace beegarth::garth
