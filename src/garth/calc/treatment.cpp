// treatment: what kills in a row add up to, and what a treatment did beyond what would have died anyway.
#include "colony/treatment.hpp"

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_kills = 20;

Json input_schema() {
  const Json kill = object_schema({{"share_on_adults", number_schema("of the mites, when it is done", 0, 1)},
                                   {"efficacy_on_adults", number_schema("share killed", 0, 1)},
                                   {"efficacy_under_cappings", number_schema("share killed", 0, 1)}},
                                  {"share_on_adults", "efficacy_on_adults", "efficacy_under_cappings"});
  return object_schema(
      {{"kills", array_schema(kill, most_kills)},
       {"treated_pct", number_schema("mortality of mites in treated colonies; with control_pct", 0, 100)},
       {"control_pct", number_schema("mortality of mites in untreated colonies, below 100", 0, 99.99)}},
      {});
}

Json output_schema() {
  return object_schema(
      {{"total_efficacy_pct", number_schema("of all mites, over all kills", 0, 100)},
       {"corrected_efficacy_pct", number_schema("below 0 where fewer died than untreated", -1e7, 100)}},
      {});
}

Json example() {
  return {{"kills",
           {{{"share_on_adults", 1}, {"efficacy_on_adults", 0.7}, {"efficacy_under_cappings", 0}},
            {{"share_on_adults", 1}, {"efficacy_on_adults", 0.7}, {"efficacy_under_cappings", 0}}}}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const bool has_kills = reader.has("kills");
  const std::vector<Json> rows = has_kills ? reader.list("kills", most_kills) : std::vector<Json>{};
  const auto treated = reader.maybe_number("treated_pct", 0, 100);
  const auto control = reader.maybe_number("control_pct", 0, 99.99);
  if (auto fault = reader.done()) return *std::move(fault);
  if (treated.has_value() != control.has_value()) {
    return bad_input("the correction needs both mortalities", treated ? "$.control_pct" : "$.treated_pct",
                     "give both");
  }
  if (!has_kills && !treated) {
    return bad_input("there is nothing to work out", "$", "give kills, or treated_pct and control_pct");
  }
  std::vector<colony::MiteKill> kills;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    Reader row(rows[i], reader.path_of("kills", i));
    kills.push_back({.share_on_adults = row.number("share_on_adults", 0, 1),
                     .efficacy_on_adults = row.number("efficacy_on_adults", 0, 1),
                     .efficacy_under_cappings = row.number("efficacy_under_cappings", 0, 1)});
    if (auto fault = row.done()) return *std::move(fault);
  }
  Json out = Json::object();
  if (has_kills) out["total_efficacy_pct"] = 100 * colony::total_efficacy(kills);
  if (treated) out["corrected_efficacy_pct"] = colony::abbott_pct(*treated, *control);
  return out;
}

}  // namespace

Calc treatment_calc() {
  return {"treatment",  "what treatments add up to, and what one did beyond natural death",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
