// honey-moisture: per cent of water from a refractometer and its temperature.
#include "duty/honey_water.hpp"
#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema({{"refractive_index", number_schema("as read", 1.3, 1.6)},
                        {"temperature_C", number_schema("of honey and prism", 5, 45)}},
                       {"refractive_index", "temperature_C"});
}

Json output_schema() {
  return object_schema({{"moisture_pct", number_schema("water by weight", 10, 30)}}, {"moisture_pct"});
}

Json example() {
  return {{"refractive_index", 1.4915}, {"temperature_C", 22}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const double index = reader.number("refractive_index", 1.3, 1.6);
  const double temperature = reader.number("temperature_C", 5, 45);
  if (auto fault = reader.done()) return *std::move(fault);
  const auto moisture = duty::honey_moisture_pct(index, temperature, tables["honey"]);
  if (!moisture) return at_field(moisture.problem());
  return Json{{"moisture_pct", *moisture}};
}

}  // namespace

Calc honey_moisture_calc() {
  return {"honey-moisture", "water in honey from the refractive index and its temperature",
          input_schema,     output_schema,
          example,          run};
}

}  // namespace beegarth::garth
