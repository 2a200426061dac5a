// mite-sample: mites per 100 bees from a wash or roll, with the interval that one sample leaves.
#include "colony/mite_counts.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema(
      {{"mites", {{"type", "integer"}, {"minimum", 0}, {"maximum", 100000}, {"description", "counted"}}},
       {"bees", {{"type", "integer"}, {"minimum", 1}, {"maximum", 100000}, {"description", "examined"}}}},
      {"mites", "bees"});
}

Json output_schema() {
  return object_schema({{"per_100_bees", number_schema("as counted", 0, 1e9)},
                        {"low95", number_schema("exact Poisson, of this sample only", 0, 1e9)},
                        {"high95", number_schema("exact Poisson, of this sample only", 0, 1e9)}},
                       {"per_100_bees", "low95", "high95"});
}

Json example() {
  return {{"mites", 9}, {"bees", 300}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const int mites = reader.whole("mites", 0, 100000);
  const int bees = reader.whole("bees", 1, 100000);
  if (auto fault = reader.done()) return *std::move(fault);
  const colony::Interval rate = colony::poisson_interval(mites, 100.0 / bees);
  return Json{{"per_100_bees", rate.mid}, {"low95", rate.low}, {"high95", rate.high}};
}

}  // namespace

Calc mite_sample_calc() {
  return {"mite-sample", "mites per 100 bees from a wash or roll, with the exact interval of the sample",
          input_schema,  output_schema,
          example,       run};
}

}  // namespace beegarth::garth
