// medicine-record: is it complete, how long is it kept, and may honey be offered.
#include "duty/medicine_record.hpp"

#include <algorithm>

#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_colonies = 10000;
constexpr std::array<std::string_view, 3> kinds{"purchase", "giving", "disposal"};

Json input_schema() {
  return object_schema(
      {{"country", country_schema()},
       {"record", choice_schema("of what", kinds)},
       {"product", text_schema("as on its label")},
       {"batch", text_schema("as on its label")},
       {"date", date_schema("bought, first given, or disposed of")},
       {"ended", date_schema("giving: the day on which it came off the hive; date where absent")},
       {"amount", text_schema("as you write it; nothing is worked out from it")},
       {"supplier", text_schema("purchase: name and address")},
       {"proof_kept", flag_schema("purchase: the receipt is kept")},
       {"withdrawal_days",
        {{"type", "integer"}, {"minimum", 0}, {"maximum", 1000}, {"description", "giving: by the label"}}},
       {"colonies", {{"type", "array"}, {"items", text_schema("id")}, {"maxItems", most_colonies}}},
       {"how_and_where", text_schema("disposal")},
       {"supers_on", flag_schema("giving: boxes for people were on the hive")},
       {"honey_taken", date_schema("giving: honey of that colony")},
       {"colony_ended", date_schema("died or sold: changes nothing of how long the record is kept")}},
      {"country", "record"});
}

Json output_schema() {
  const Json texts{{"type", "array"}, {"items", text_schema("field of the input")}};
  const Json date{{"type", {"string", "null"}}};
  const Json fact = object_schema({{"fact", text_schema("")},
                                   {"asked", {{"enum", {"advised", "required"}}}},
                                   {"given", flag_schema("")},
                                   {"source", text_schema("")}},
                                  {"fact", "asked", "given", "source"});
  const Json honey =
      object_schema({{"may_be_offered", {{"type", {"boolean", "null"}}}}, {"why", text_schema("")}},
                    {"may_be_offered", "why"});
  return object_schema(
      {{"complete", flag_schema("nothing required is missing")},
       {"missing", texts},
       {"advised", texts},
       {"facts", {{"type", "array"}, {"items", fact}}},
       {"keep_until", date},
       {"withdrawal_end", date},
       {"honey", {{"oneOf", {honey, {{"type", "null"}}}}}},
       {"law", text_schema("")}},
      {"complete", "missing", "advised", "facts", "keep_until", "withdrawal_end", "honey", "law"});
}

Json example() {
  return {{"country", "england"},
          {"record", "giving"},
          {"product", "thymol trays (invented)"},
          {"batch", "B7"},
          {"date", "2026-08-14"},
          {"ended", "2026-09-25"},
          {"amount", "one tray, then one more, as the label says"},
          {"withdrawal_days", 0},
          {"colonies", {"wren", "thrush"}}};
}

Json date_or_null(const std::optional<Date>& date) {
  return date ? Json(date->iso()) : Json();
}

Json told(const duty::RecordAnswer& answer, duty::RecordKind kind) {
  Json facts = Json::array();
  for (const duty::RecordFact& fact : answer.facts)
    facts.push_back({{"fact", fact.fact},
                     {"asked", asked_words[static_cast<std::size_t>(fact.asked)]},
                     {"given", fact.given},
                     {"source", fact.source}});
  Json honey;
  if (kind == duty::RecordKind::giving)
    honey = {{"may_be_offered", answer.honey_may_be_offered ? Json(*answer.honey_may_be_offered) : Json()},
             {"why", answer.honey_why}};
  return {{"complete", answer.missing.empty()},
          {"missing", answer.missing},
          {"advised", answer.advised},
          {"facts", std::move(facts)},
          {"keep_until", date_or_null(answer.keep_until)},
          {"withdrawal_end", date_or_null(answer.withdrawal_end)},
          {"honey", std::move(honey)},
          {"law", answer.law}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const std::string country = reader.choice_of("country", countries);
  const std::string kind = reader.choice_of("record", kinds);
  duty::MedicineRecord record;
  record.kind = static_cast<duty::RecordKind>(std::find(kinds.begin(), kinds.end(), kind) - kinds.begin());
  record.product = reader.maybe_text("product");
  record.batch = reader.maybe_text("batch");
  record.date = reader.maybe_date("date");
  record.ended = reader.maybe_date("ended");
  record.amount = reader.maybe_text("amount");
  record.supplier = reader.maybe_text("supplier");
  record.proof_kept = reader.flag("proof_kept");
  record.withdrawal_days = reader.maybe_whole("withdrawal_days", 0, 1000);
  record.colonies = reader.maybe_texts("colonies", most_colonies);
  record.how_and_where = reader.maybe_text("how_and_where");
  record.supers_on = reader.flag("supers_on");
  record.honey_taken = reader.maybe_date("honey_taken");
  const auto colony_ended = reader.maybe_date("colony_ended");
  if (colony_ended && record.date && *colony_ended < *record.date)
    reader.fail(
        bad_input("the colony ended before it was treated", "$.colony_ended", "mend one of the dates"));
  if (auto fault = reader.done()) return *std::move(fault);
  const auto answer = duty::judge_record(record, duty_table(tables, country));
  if (!answer) return at_field(answer.problem());
  return told(*answer, record.kind);
}

}  // namespace

Calc medicine_record_calc() {
  return {"medicine-record", "is a medicine record complete, how long is it kept, may honey be offered",
          input_schema,      output_schema,
          example,           run};
}

}  // namespace beegarth::garth
