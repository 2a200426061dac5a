// stores-sugar: dry sugar for missing stores.
#include "duty/feeding.hpp"
#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema(
      {{"stores_kg", number_schema("missing: ripe stores", 0, 200)},
       {"moisture_pct", number_schema("water in ripe stores; the table's where absent", 10, 30)},
       {"loss_pct",
        number_schema("of the sugar, into ripening and daily use; the table's where absent", 0, 60)},
       {"syrup_pct", number_schema("to know the weight of syrup of that strength", 20, 80)}},
      {"stores_kg"});
}

Json output_schema() {
  return object_schema({{"sugar_before_losses_kg", number_schema("in the stores themselves", 0, 1e6)},
                        {"sugar_kg", number_schema("to be given", 0, 1e6)},
                        {"sugar_low_kg", number_schema("where less is lost", 0, 1e6)},
                        {"sugar_high_kg", number_schema("where more is lost", 0, 1e6)},
                        {"syrup_kg", {{"type", {"number", "null"}}}},
                        {"moisture_pct", number_schema("reckoned with", 0, 100)},
                        {"loss_pct", number_schema("reckoned with", 0, 100)}},
                       {"sugar_before_losses_kg", "sugar_kg", "sugar_low_kg", "sugar_high_kg", "syrup_kg",
                        "moisture_pct", "loss_pct"});
}

Json example() {
  return {{"stores_kg", 8}, {"moisture_pct", 20}, {"loss_pct", 15}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const double stores = reader.number("stores_kg", 0, 200);
  const auto moisture = reader.maybe_number("moisture_pct", 10, 30);
  const auto loss = reader.maybe_number("loss_pct", 0, 60);
  const auto strength = reader.maybe_number("syrup_pct", 20, 80);
  if (auto fault = reader.done()) return *std::move(fault);
  const auto sugar = duty::sugar_for_stores(stores, moisture, loss, tables["feeding"]);
  if (!sugar) return sugar.problem();
  return Json{{"sugar_before_losses_kg", sugar->before_losses_kg},
              {"sugar_kg", sugar->sugar_kg},
              {"sugar_low_kg", sugar->low_kg},
              {"sugar_high_kg", sugar->high_kg},
              {"syrup_kg", strength ? Json(sugar->sugar_kg * 100 / *strength) : Json()},
              {"moisture_pct", sugar->moisture_pct},
              {"loss_pct", sugar->loss_pct}};
}

}  // namespace

Calc stores_sugar_calc() {
  return {"stores-sugar", "dry sugar for missing stores, with what is lost on the way",
          input_schema,   output_schema,
          example,        run};
}

}  // namespace beegarth::garth
