// honey-check: what was measured of a honey against the law's limits; will it ferment, how long will it keep.
#include <algorithm>

#include "duty/honey_limits.hpp"
#include "duty/honey_water.hpp"
#include "duty/years.hpp"
#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

constexpr std::array<std::string_view, 3> sources{"blossom", "honeydew", "blend"};
constexpr std::array<std::string_view, 6> plants{
    "other", "calluna", "false_acacia_or_like", "lavender_or_borage", "chestnut", "lime_or_like"};
constexpr std::array<std::string_view, 3> fermentations{"unlikely", "possible", "likely"};

Json input_schema() {
  return object_schema({{"country", country_schema()},
                        {"source", choice_schema("blossom where absent", sources)},
                        {"plant", choice_schema("that it is mainly of; other where absent", plants)},
                        {"bakers", flag_schema("sold for cooking only")},
                        {"pressed", flag_schema("pressed and not spun")},
                        {"tropical", flag_schema("from the tropics")},
                        {"moisture_pct", number_schema("water by weight", 10, 40)},
                        {"fructose_and_glucose_pct", number_schema("g in 100 g", 0, 100)},
                        {"sucrose_pct", number_schema("g in 100 g", 0, 100)},
                        {"insoluble_pct", number_schema("g in 100 g", 0, 100)},
                        {"conductivity_mS_cm", number_schema("electrical", 0, 10)},
                        {"hmf_mg_kg", number_schema("hydroxymethylfurfural", 0, 10000)},
                        {"diastase_schade", number_schema("Schade scale", 0, 200)},
                        {"free_acid_meq_kg", number_schema("milliequivalents in 1000 g", 0, 1000)},
                        {"fermenting", flag_schema("it works or smells of it")},
                        {"overheated", flag_schema("hot enough to harm its enzymes")},
                        {"jarred_on", date_schema("for the best-before date; with moisture_pct")}},
                       {"country"});
}

Json output_schema() {
  const Json check = object_schema({{"what", text_schema("field of the input")},
                                    {"value", {{"type", {"number", "null"}}}},
                                    {"limit", {{"type", {"number", "null"}}}},
                                    {"rule", {{"enum", {"at_most", "at_least", "must_not_be"}}}},
                                    {"passes", flag_schema("")},
                                    {"source", text_schema("")}},
                                   {"what", "rule", "passes", "source"});
  const Json density = object_schema(
      {{"low", number_schema("", 1, 2)}, {"mid", number_schema("", 1, 2)}, {"high", number_schema("", 1, 2)}},
      {"low", "mid", "high"});
  return object_schema(
      {{"verdict", {{"enum", {"pass", "fail", "not_judged"}}}},
       {"checks", {{"type", "array"}, {"items", check}}},
       {"not_measured", {{"type", "array"}, {"items", text_schema("field of the input")}}},
       {"would_pass_as_bakers", flag_schema("were it sold for cooking only")},
       {"law", text_schema("")},
       {"fermentation", {{"type", {"object", "null"}}}},
       {"density_kg_L", {{"oneOf", {density, {{"type", "null"}}}}}},
       {"best_before_suggested", {{"type", {"string", "null"}}, {"description", "a date; yours to choose"}}}},
      {"verdict", "checks", "not_measured", "would_pass_as_bakers", "law", "fermentation", "density_kg_L",
       "best_before_suggested"});
}

Json example() {
  return {{"country", "england"}, {"moisture_pct", 18.4}, {"fermenting", false}, {"jarred_on", "2026-08-20"}};
}

duty::HoneyKind read_kind(Reader& reader) {
  const std::string source = reader.maybe_choice_of("source", sources).value_or("blossom");
  const std::string plant = reader.maybe_choice_of("plant", plants).value_or("other");
  duty::HoneyKind kind;
  kind.source =
      static_cast<duty::HoneySource>(std::find(sources.begin(), sources.end(), source) - sources.begin());
  kind.plant = static_cast<duty::HoneyPlant>(std::find(plants.begin(), plants.end(), plant) - plants.begin());
  kind.bakers = reader.flag("bakers");
  kind.pressed = reader.flag("pressed");
  kind.tropical = reader.flag("tropical");
  return kind;
}

duty::Measured read_measured(Reader& reader) {
  duty::Measured m;
  m.moisture_pct = reader.maybe_number("moisture_pct", 10, 40);
  m.fructose_and_glucose_pct = reader.maybe_number("fructose_and_glucose_pct", 0, 100);
  m.sucrose_pct = reader.maybe_number("sucrose_pct", 0, 100);
  m.insoluble_pct = reader.maybe_number("insoluble_pct", 0, 100);
  m.conductivity_mS_cm = reader.maybe_number("conductivity_mS_cm", 0, 10);
  m.hmf_mg_kg = reader.maybe_number("hmf_mg_kg", 0, 10000);
  m.diastase_schade = reader.maybe_number("diastase_schade", 0, 200);
  m.free_acid_meq_kg = reader.maybe_number("free_acid_meq_kg", 0, 1000);
  m.fermenting = reader.maybe_flag("fermenting");
  m.overheated = reader.maybe_flag("overheated");
  return m;
}

Json told(const duty::CompositionAnswer& answer) {
  Json checks = Json::array();
  for (const duty::LimitCheck& check : answer.checks) {
    Json row{
        {"what", check.what}, {"passes", check.passes}, {"source", check.source}, {"rule", "must_not_be"}};
    row["value"] = check.value ? Json(*check.value) : Json();
    row["limit"] = check.limit ? Json(*check.limit) : Json();
    if (check.limit) row["rule"] = check.at_most ? "at_most" : "at_least";
    checks.push_back(std::move(row));
  }
  return {{"verdict", answer.checks.empty() ? "not_judged"
                      : answer.passes       ? "pass"
                                            : "fail"},
          {"checks", std::move(checks)},
          {"not_measured", answer.not_measured},
          {"would_pass_as_bakers", answer.passes_as_bakers},
          {"law", answer.law},
          {"fermentation", nullptr},
          {"density_kg_L", nullptr},
          {"best_before_suggested", nullptr}};
}

std::optional<Problem> add_what_water_means(Json& out, double moisture, std::optional<Date> jarred,
                                            const FactTable& honey) {
  const auto keeping = duty::honey_keeping(moisture, honey);
  if (!keeping) return keeping.problem();
  const auto density = duty::honey_density(moisture, honey);
  if (!density) return density.problem();
  out["fermentation"] = {{"odds", fermentations[static_cast<std::size_t>(keeping->fermentation)]},
                         {"words", keeping->words},
                         {"source", keeping->source}};
  if (*density)
    out["density_kg_L"] = {{"low", (*density)->low}, {"mid", (*density)->mid}, {"high", (*density)->high}};
  if (!jarred) return std::nullopt;
  const auto until = duty::years_after(*jarred, keeping->years);
  if (!until) return bad_input("it would keep beyond the calendar", "$.jarred_on", "give an everyday date");
  out["best_before_suggested"] = until->iso();
  return std::nullopt;
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const std::string country = reader.choice_of("country", countries);
  const duty::HoneyKind kind = read_kind(reader);
  const duty::Measured measured = read_measured(reader);
  const auto jarred = reader.maybe_date("jarred_on");
  if (auto fault = reader.done()) return *std::move(fault);
  if (jarred && !measured.moisture_pct)
    return bad_input("how long it keeps goes by its water", "$.moisture_pct",
                     "measure it, or leave jarred_on out");
  const auto answer = duty::judge_composition(kind, measured, duty_table(tables, country));
  if (!answer) return answer.problem();
  Json out = told(*answer);
  if (!measured.moisture_pct) return out;
  if (auto fault = add_what_water_means(out, *measured.moisture_pct, jarred, tables["honey"]))
    return *std::move(fault);
  return out;
}

}  // namespace

Calc honey_check_calc() {
  return {"honey-check", "a honey against the limits of the law; fermentation, density, how long it keeps",
          input_schema,  output_schema,
          example,       run};
}

}  // namespace beegarth::garth
