// honey-label: what the label of a jar must say, what is missing, and how tall its figures are.
#include "duty/label.hpp"
#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

constexpr std::array<std::string_view, 4> honey_kinds{"blossom", "heather", "honeydew", "bakers"};

Json input_schema() {
  return object_schema(
      {{"country", country_schema()},
       {"net_weight_g", number_schema("of honey in the jar", 1, 50000)},
       {"name", text_schema("of the food, as printed")},
       {"address", text_schema("name and address, as printed")},
       {"origin", text_schema("country of origin, as printed")},
       {"best_before", text_schema("as printed: May 2027, 14 May 2027, 2027-05-14")},
       {"lot", text_schema("lot mark, as printed")},
       {"figure_height_mm", number_schema("of the figures of the net weight, as printed", 0.1, 200)},
       {"named_plant_share_pct",
        number_schema("where a plant is named: how much of the honey is of it", 0, 100)},
       {"infant_caution", flag_schema("that it is not for infants is printed")},
       {"kind", choice_schema("of the honey in the jar; the name is held against it", honey_kinds)},
       {"cooking_only", flag_schema("the words intended for cooking only are printed")}},
      {"country", "net_weight_g"});
}

Json output_schema() {
  const Json texts{{"type", "array"}, {"items", text_schema("")}};
  const Json fact = object_schema({{"fact", text_schema("")},
                                   {"asked", {{"enum", {"advised", "required"}}}},
                                   {"given", flag_schema("")},
                                   {"words", text_schema("what is meant")},
                                   {"source", text_schema("")}},
                                  {"fact", "asked", "given", "words", "source"});
  return object_schema({{"complete", flag_schema("nothing required is missing or wrong")},
                        {"figure_height_min_mm", number_schema("of the net weight", 0, 200)},
                        {"figure_source", text_schema("")},
                        {"lot_needed", flag_schema("")},
                        {"facts", {{"type", "array"}, {"items", fact}}},
                        {"missing", texts},
                        {"advised", texts},
                        {"faults", texts}},
                       {"complete", "figure_height_min_mm", "figure_source", "lot_needed", "facts", "missing",
                        "advised", "faults"});
}

Json example() {
  return {{"country", "england"},
          {"net_weight_g", 454},
          {"name", "Honey"},
          {"origin", "Produce of England"},
          {"best_before", "May 2028"}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const std::string country = reader.choice_of("country", countries);
  duty::Label label;
  label.net_weight_g = reader.number("net_weight_g", 1, 50000);
  label.name = reader.maybe_text("name");
  label.address = reader.maybe_text("address");
  label.origin = reader.maybe_text("origin");
  label.best_before = reader.maybe_text("best_before");
  label.lot = reader.maybe_text("lot");
  label.figure_height_mm = reader.maybe_number("figure_height_mm", 0.1, 200);
  label.named_plant_share_pct = reader.maybe_number("named_plant_share_pct", 0, 100);
  label.infant_caution = reader.flag("infant_caution");
  const auto kind = reader.maybe_choice_of("kind", honey_kinds);
  label.bakers = kind == "bakers";
  if (kind == "blossom") label.source = duty::HoneySource::blossom;
  if (kind == "honeydew") label.source = duty::HoneySource::honeydew;
  label.says_cooking_only = reader.flag("cooking_only");
  if (auto fault = reader.done()) return *std::move(fault);
  const auto answer = duty::judge_label(label, duty_table(tables, country), tables["honey"]);
  if (!answer) return at_field(answer.problem());
  Json facts = Json::array();
  for (const duty::LabelFact& fact : answer->facts)
    facts.push_back({{"fact", fact.fact},
                     {"asked", asked_words[static_cast<std::size_t>(fact.asked)]},
                     {"given", fact.given},
                     {"words", fact.words},
                     {"source", fact.source}});
  return Json{{"complete", answer->complete},
              {"figure_height_min_mm", answer->figure_height_min_mm},
              {"figure_source", answer->figure_source},
              {"lot_needed", answer->lot_needed},
              {"facts", std::move(facts)},
              {"missing", answer->missing},
              {"advised", answer->advised},
              {"faults", answer->faults}};
}

}  // namespace

Calc honey_label_calc() {
  return {"honey-label", "what a label must say, what is missing, how tall its figures are",
          input_schema,  output_schema,
          example,       run};
}

}  // namespace beegarth::garth
