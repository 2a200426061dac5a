// count-plan: how well so many samples tell the mean of an apiary.
#include "colony/mite_counts.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema(
      {{"mites", number_schema("mean count in a sample", 0.01, 1000)},
       {"k", number_schema("size of the negative binomial; about 1 to 2 between colonies, from memory", 0.05,
                           1000)},
       {"colonies", {{"type", "integer"}, {"minimum", 1}, {"maximum", 10000}}}},
      {"mites", "k", "colonies"});
}

Json output_schema() {
  return object_schema(
      {{"error_share", number_schema("standard error of the mean, as a share of it", 0, 1e6)}},
      {"error_share"});
}

Json example() {
  return {{"mites", 9}, {"k", 1}, {"colonies", 8}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const double mites = reader.number("mites", 0.01, 1000);
  const double k = reader.number("k", 0.05, 1000);
  const int colonies = reader.whole("colonies", 1, 10000);
  if (auto fault = reader.done()) return *std::move(fault);
  return Json{{"error_share", colony::apiary_count_error(mites, k, colonies)}};
}

}  // namespace

Calc count_plan_calc() {
  return {"count-plan", "how well samples of so many colonies tell the mean count of mites of an apiary",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
