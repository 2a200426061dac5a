// mite-growth: how fast mites multiply while there is brood.
#include "colony/mite_growth.hpp"

#include <cmath>
#include <numbers>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr int most_days = 730;

Json nullable(Json schema) {
  return {{"oneOf", {std::move(schema), {{"type", "null"}}}}};
}

Json input_schema() {
  return object_schema(
      {{"invasion_per_day",
        number_schema("share of mites on bees that enter cells in a day, as a rate", 0.0001, 5)},
       {"phoretic_loss_per_day", number_schema("rate at which mites on bees die", 0, 2)},
       {"capped_days", number_schema("days under cappings", 1, 30)},
       {"emerging_per_entering",
        number_schema("mites that emerge for each that entered, the mother included", 0, 10)},
       {"immigration_per_day", number_schema("mites carried in; 0 where absent", 0, 10000)},
       {"start_mites", number_schema("the whole population at the start; with days", 0, 1e7)},
       {"days",
        {{"type", "integer"}, {"minimum", 0}, {"maximum", most_days}, {"description", "with start_mites"}}}},
      {"invasion_per_day", "phoretic_loss_per_day", "capped_days", "emerging_per_entering"});
}

Json output_schema() {
  return object_schema({{"growth_per_day", number_schema("below 0 where they dwindle", -10, 50)},
                        {"doubling_days", nullable(number_schema("null where they do not grow", 0, 1e12))},
                        {"share_on_adults", number_schema("of all mites, in steady growth", 0, 1)},
                        {"mites_after_days", number_schema("in steady growth from the start", 0, 1e300)}},
                       {"growth_per_day", "doubling_days", "share_on_adults"});
}

Json example() {
  return {{"invasion_per_day", 0.161}, {"phoretic_loss_per_day", 0.006},
          {"capped_days", 12},         {"emerging_per_entering", 1.502},
          {"start_mites", 200},        {"days", 76}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const colony::MiteModel model{.invasion_per_day = reader.number("invasion_per_day", 0.0001, 5),
                                .phoretic_loss_per_day = reader.number("phoretic_loss_per_day", 0, 2),
                                .capped_days = reader.number("capped_days", 1, 30),
                                .emerging_per_entering = reader.number("emerging_per_entering", 0, 10)};
  const auto immigration = reader.maybe_number("immigration_per_day", 0, 10000);
  const auto start = reader.maybe_number("start_mites", 0, 1e7);
  const auto days = reader.maybe_whole("days", 0, most_days);
  if (auto fault = reader.done()) return *std::move(fault);
  if (start.has_value() != days.has_value()) {
    return bad_input("a forecast needs both a start and days", start ? "$.days" : "$.start_mites",
                     "give both, or neither");
  }
  const double growth = colony::mite_growth_per_day(model);
  constexpr double still = 1e-9;  // slower than this is no growth
  Json out{{"growth_per_day", growth},
           {"doubling_days", growth > still ? Json(std::numbers::ln2 / growth) : Json(nullptr)},
           {"share_on_adults", colony::share_on_adults(model, growth)}};
  if (start) {
    const double mites = colony::mites_after(*start, growth, immigration.value_or(0), *days);
    if (!std::isfinite(mites)) {
      return bad_input("the mites outgrow every number in so many days", "$.days", "ask for fewer days");
    }
    out["mites_after_days"] = mites;
  }
  return out;
}

}  // namespace

Calc mite_growth_calc() {
  return {"mite-growth", "how fast mites multiply while there is brood",
          input_schema,  output_schema,
          example,       run};
}

}  // namespace beegarth::garth
