// syrup: how strong a recipe is, in whatever measures it was given.
#include "duty/feeding.hpp"
#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

struct Measure {
  const char* field;
  const char* words;
  double kg;  // of one of it; of water: litres of one of it
};
constexpr std::array<Measure, 2> of_sugar{
    {{"sugar_kg", "kilograms", 1}, {"sugar_lb", "pounds", duty::kg_per_lb}}};
constexpr std::array<Measure, 3> of_water{{{"water_L", "litres", 1},
                                           {"water_uk_pints", "imperial pints", duty::litres_per_uk_pint},
                                           {"water_us_pints", "US pints", duty::litres_per_us_pint}}};
constexpr double least = 0.001, most = 100000;

Json input_schema() {
  Json fields = Json::object();
  for (const Measure& m : of_sugar) fields[m.field] = number_schema(m.words, least, most);
  for (const Measure& m : of_water) fields[m.field] = number_schema(m.words, least, most);
  fields["water_kg"] = number_schema("kilograms", least, most);
  Json schema = object_schema(std::move(fields), {});
  schema["description"] = "one measure of sugar and one of water";
  return schema;
}

Json output_schema() {
  return object_schema(
      {{"sugar_pct", number_schema("of the syrup, by weight", 0, 100)},
       {"sugar_kg", number_schema("", 0, 1e9)},
       {"water_kg", number_schema("", 0, 1e9)},
       {"syrup_kg", number_schema("", 0, 1e9)},
       {"sugar_to_water", number_schema("by weight: 2 is two to one", 0, 1e9)},
       {"volume_L", {{"type", {"number", "null"}}, {"description", "at 20 C, from 50 to 66.7 %"}}},
       {"crystallises", flag_schema("stronger than what stays dissolved at 20 C")}},
      {"sugar_pct", "sugar_kg", "water_kg", "syrup_kg", "sugar_to_water", "volume_L", "crystallises"});
}

Json example() {
  return {{"sugar_lb", 2}, {"water_uk_pints", 1}};
}

// The one measure that was given; a fault where there is none or more than one.
template <std::size_t n>
std::optional<double> only_one(Reader& reader, const std::array<Measure, n>& measures,
                               std::optional<double> also, const char* what) {
  std::optional<double> found = also;
  for (const Measure& m : measures) {
    const auto given = reader.maybe_number(m.field, least, most);
    if (given && found)
      reader.fail(bad_input(std::string("there is more than one measure of ") + what, reader.path_of(m.field),
                            "keep one"));
    if (given) found = *given * m.kg;
  }
  if (!found) reader.fail(bad_input(std::string("there is no measure of ") + what, "$", "see --schema"));
  return found;
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const auto per_litre = tables["feeding"].value("water_kg_L");
  if (!per_litre) return per_litre.problem();
  const auto sugar = only_one(reader, of_sugar, std::nullopt, "sugar");
  const auto water_kg = reader.maybe_number("water_kg", least, most);
  const auto litres =
      only_one(reader, of_water, water_kg ? std::optional(*water_kg / *per_litre) : std::nullopt, "water");
  if (auto fault = reader.done()) return *std::move(fault);
  const double water = *litres * *per_litre;
  const auto syrup = duty::mix_syrup(*sugar, water, tables["feeding"]);
  if (!syrup) return syrup.problem();
  return Json{{"sugar_pct", syrup->sugar_pct},
              {"sugar_kg", *sugar},
              {"water_kg", water},
              {"syrup_kg", syrup->syrup_kg},
              {"sugar_to_water", *sugar / water},
              {"volume_L", syrup->volume_L ? Json(*syrup->volume_L) : Json()},
              {"crystallises", syrup->crystallises}};
}

}  // namespace

Calc syrup_calc() {
  return {
      "syrup",      "how strong a syrup is by its recipe: kilograms, pounds, litres, imperial or US pints",
      input_schema, output_schema,
      example,      run};
}

}  // namespace beegarth::garth
