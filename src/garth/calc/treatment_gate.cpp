// treatment-gate: what weather, brood and boxes say against a class of treatment. Never a dose.
#include "duty/treatment_gate.hpp"

#include <algorithm>

#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

constexpr std::array<std::string_view, 3> verdicts{"ok", "warn", "refuse"};

Json input_schema() {
  return object_schema(
      {{"kind", choice_schema("class, not a product", duty::treatment_keys)},
       {"country", country_schema()},
       {"day_max_C", number_schema("highest of the days that it works, as forecast", -40, 60)},
       {"day_mean_C", number_schema("mean of those days", -40, 60)},
       {"brood", flag_schema("capped brood is there")},
       {"supers_on", flag_schema("boxes with honey for people are on")}},
      {"kind"});
}

Json output_schema() {
  const Json reason = object_schema(
      {{"verdict", choice_schema("", verdicts)}, {"words", text_schema("")}, {"source", text_schema("")}},
      {"verdict", "words", "source"});
  const Json texts{{"type", "array"}, {"items", text_schema("")}};
  return object_schema(
      {{"verdict", choice_schema("the gravest of the reasons; ok is no permission", verdicts)},
       {"reasons", {{"type", "array"}, {"items", reason}}},
       {"not_told", texts},
       {"first", text_schema("before anything else")},
       {"cautions", texts}},
      {"verdict", "reasons", "not_told", "first", "cautions"});
}

Json example() {
  return {{"kind", "thymol"}, {"day_max_C", 22}, {"day_mean_C", 16.5}, {"supers_on", false}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const std::string kind = reader.choice_of("kind", duty::treatment_keys);
  const auto country = reader.maybe_choice_of("country", countries);
  duty::GateQuestion question;
  const auto& keys = duty::treatment_keys;
  question.kind = static_cast<duty::TreatmentClass>(std::find(keys.begin(), keys.end(), kind) - keys.begin());
  question.day_max_C = reader.maybe_number("day_max_C", -40, 60);
  question.day_mean_C = reader.maybe_number("day_mean_C", -40, 60);
  question.brood = reader.maybe_flag("brood");
  question.supers_on = reader.maybe_flag("supers_on");
  if (auto fault = reader.done()) return *std::move(fault);
  if (question.day_max_C && question.day_mean_C && *question.day_mean_C > *question.day_max_C)
    return bad_input("the mean is above the highest", "$.day_mean_C", "mend one of the two");
  auto answer = duty::treatment_gate(question, tables["work"], tables["colony"]);
  if (!answer) return answer.problem();
  if (country) {
    auto authorised = duty::authorised_in(question.kind, duty_table(tables, *country));
    if (!authorised) return authorised.problem();
    answer->verdict = std::max(answer->verdict, authorised->verdict);
    answer->reasons.push_back(*std::move(authorised));
  }
  Json reasons = Json::array();
  for (const duty::GateReason& reason : answer->reasons)
    reasons.push_back({{"verdict", verdicts[static_cast<std::size_t>(reason.verdict)]},
                       {"words", reason.words},
                       {"source", reason.source}});
  return Json{{"verdict", verdicts[static_cast<std::size_t>(answer->verdict)]},
              {"reasons", std::move(reasons)},
              {"not_told", answer->not_told},
              {"first", answer->first},
              {"cautions", answer->cautions}};
}

}  // namespace

Calc treatment_gate_calc() {
  return {"treatment-gate", "what weather, brood and boxes say against a class of treatment; never a dose",
          input_schema,     output_schema,
          example,          run};
}

}  // namespace beegarth::garth
