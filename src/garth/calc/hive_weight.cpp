// hive-weight: a hive weighed by halves, and the stores that are in it.
#include "duty/hive_weight.hpp"

#include "duty/feeding.hpp"
#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

constexpr std::array<std::string_view, 3> methods{"rails", "two_sides", "one_side"};
constexpr std::array<std::string_view, 2> units{"kg", "lb"};

Json input_schema() {
  return object_schema(
      {{"method",
        choice_schema("rails: a hook beyond each of two pivots; two_sides: each about the other edge",
                      methods)},
       {"unit", choice_schema("of first, second, whole; kg where absent", units)},
       {"first", number_schema("reading; on rails the left hook", 0, 1000)},
       {"second", number_schema("reading of the other side", 0, 1000)},
       {"pivots_apart_mm", number_schema("rails", 1, 10000)},
       {"hooks_apart_mm", number_schema("rails", 1, 20000)},
       {"hook_to_pivot_mm", number_schema("rails: left hook to the pivot next to it", 0, 10000)},
       {"pivot_to_scale_mm", number_schema("one_side, where the levers are known", 1, 10000)},
       {"pivot_to_weight_mm", number_schema("one_side: to the middle of the weight", 1, 10000)},
       {"whole",
        number_schema("one_side: the true weight where known, to see what doubling makes of it", 0.1, 1000)},
       {"tare_kg", number_schema("of hive and frames without bees, comb, stores", 0, 300)},
       {"bees", number_schema("with tare_kg: how many", 0, 120000)}},
      {"method", "first"});
}

Json output_schema() {
  const Json maybe{{"type", {"number", "null"}}};
  return object_schema(
      {{"weight_kg", number_schema("", 0, 1e6)},
       {"low_kg", number_schema("one_side: where that side carries more than its share", 0, 1e6)},
       {"high_kg", number_schema("one_side: where it carries less", 0, 1e6)},
       {"whole_kg", maybe},
       {"share_of_whole_pct", maybe},
       {"doubled_is_off_pct", maybe},
       {"stores_kg", maybe}},
      {"weight_kg", "low_kg", "high_kg", "whole_kg", "share_of_whole_pct", "doubled_is_off_pct",
       "stores_kg"});
}

Json example() {
  return {{"method", "rails"},      {"first", 15},           {"second", 20},
          {"pivots_apart_mm", 300}, {"hooks_apart_mm", 900}, {"hook_to_pivot_mm", 300}};
}

struct Question {
  std::string method;
  double first = 0;  // kg
  std::optional<double> second, whole;
  std::optional<double> pivots, hooks, outside, to_scale, to_weight, tare, bees;
};

Question read(Reader& reader) {
  Question q;
  q.method = reader.choice_of("method", methods);
  const double unit = reader.maybe_choice_of("unit", units) == "lb" ? duty::kg_per_lb : 1;
  const auto in_kg = [&](std::optional<double> value) {
    return value ? std::optional(*value * unit) : value;
  };
  q.first = reader.number("first", 0, 1000) * unit;
  q.second = in_kg(reader.maybe_number("second", 0, 1000));
  q.whole = in_kg(reader.maybe_number("whole", 0.1, 1000));
  q.pivots = reader.maybe_number("pivots_apart_mm", 1, 10000);
  q.hooks = reader.maybe_number("hooks_apart_mm", 1, 20000);
  q.outside = reader.maybe_number("hook_to_pivot_mm", 0, 10000);
  q.to_scale = reader.maybe_number("pivot_to_scale_mm", 1, 10000);
  q.to_weight = reader.maybe_number("pivot_to_weight_mm", 1, 10000);
  q.tare = reader.maybe_number("tare_kg", 0, 300);
  q.bees = reader.maybe_number("bees", 0, 120000);
  return q;
}

// Each method needs its own fields and no others: one that is not used would be believed to have counted.
std::optional<Problem> fault_between(const Question& q) {
  const bool rails = q.method == "rails", one = q.method == "one_side";
  const auto wanted = [&](const char* field, bool given, bool needed,
                          bool allowed) -> std::optional<Problem> {
    const std::string path = std::string("$.") + field;
    if (needed && !given) return bad_input("the field is missing", path, "give it for " + q.method);
    if (given && !allowed) return bad_input("it has no use for " + q.method, path, "leave it out");
    return std::nullopt;
  };
  for (const auto& fault :
       {wanted("second", q.second.has_value(), !one, !one),
        wanted("pivots_apart_mm", q.pivots.has_value(), rails, rails),
        wanted("hooks_apart_mm", q.hooks.has_value(), rails, rails),
        wanted("hook_to_pivot_mm", q.outside.has_value(), rails, rails),
        wanted("pivot_to_scale_mm", q.to_scale.has_value(), q.to_weight.has_value(), one),
        wanted("pivot_to_weight_mm", q.to_weight.has_value(), q.to_scale.has_value(), one),
        wanted("whole", q.whole.has_value(), false, one),
        wanted("bees", q.bees.has_value(), q.tare.has_value(), q.tare.has_value())}) {
    if (fault) return fault;
  }
  return std::nullopt;
}

Expected<duty::OneSide> weigh(const Question& q, const FactTable& feeding) {
  if (q.method == "one_side") return duty::weight_of_one_side(q.first, q.to_scale, q.to_weight, feeding);
  if (q.method == "two_sides") {
    const double sum = duty::weight_of_two_sides_kg(q.first, *q.second);
    return duty::OneSide{sum, sum, sum};
  }
  const auto weight = duty::weight_on_rails_kg(q.first, *q.second, {*q.pivots, *q.hooks, *q.outside});
  if (!weight) return weight.problem();
  return duty::OneSide{*weight, *weight, *weight};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const Question q = read(reader);
  if (auto fault = reader.done()) return *std::move(fault);
  if (auto fault = fault_between(q)) return *std::move(fault);
  const auto weight = weigh(q, tables["feeding"]);
  if (!weight) return at_field(weight.problem());
  Json out{{"weight_kg", weight->weight_kg},
           {"low_kg", weight->low_kg},
           {"high_kg", weight->high_kg},
           {"whole_kg", nullptr},
           {"share_of_whole_pct", nullptr},
           {"doubled_is_off_pct", nullptr},
           {"stores_kg", nullptr}};
  if (q.whole) {
    out["whole_kg"] = *q.whole;
    out["share_of_whole_pct"] = 100 * q.first / *q.whole;
    out["doubled_is_off_pct"] = 100 * (2 * q.first / *q.whole - 1);
  }
  if (!q.tare) return out;
  const auto comb = tables["feeding"].value("comb_and_pollen_kg");
  const auto bee = tables["observation"].value("live_bee_kg");
  if (!comb) return comb.problem();
  if (!bee) return bee.problem();
  const double rest = weight->weight_kg - *q.tare - *q.bees * *bee - *comb;
  if (rest < 0)
    return bad_input("hive, bees and comb weigh more than what was weighed", "$.tare_kg", "mend one of them");
  out["stores_kg"] = rest;
  return out;
}

}  // namespace

Calc hive_weight_calc() {
  return {"hive-weight", "a hive weighed by halves: on rails, from two sides, from one",
          input_schema,  output_schema,
          example,       run};
}

}  // namespace beegarth::garth
