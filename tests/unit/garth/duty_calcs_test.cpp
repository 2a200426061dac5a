#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

const Tables& tables() {
  static const Tables built_in = *Tables::built_in();
  return built_in;
}

constexpr std::array<std::string_view, 9> names{"honey-moisture", "honey-check",     "honey-label",
                                                "notifiable",     "medicine-record", "treatment-gate",
                                                "syrup",          "stores-sugar",    "hive-weight"};

TEST(DutyCalcs, answer_their_own_examples_with_the_fields_of_their_schema) {
  for (const std::string_view name : names) {
    const auto calcs = all_calcs();
    const auto calc = std::find_if(calcs.begin(), calcs.end(), [&](const Calc& c) { return c.name == name; });
    ASSERT_NE(calc, calcs.end()) << name;
    const auto output = run_calc(name, calc->example().dump(), tables());
    ASSERT_TRUE(output) << one_line(output.problem());
    const Json schema = calc->output_schema();
    for (const auto& field : schema["required"])
      EXPECT_TRUE(output->contains(field.get<std::string>())) << name << " " << field;
    for (const auto& item : output->items())
      EXPECT_TRUE(schema["properties"].contains(item.key())) << name << " " << item.key();
    const Json input_schema = calc->input_schema(), example = calc->example();
    for (const auto& item : example.items())
      EXPECT_TRUE(input_schema["properties"].contains(item.key())) << name << " " << item.key();
  }
}

TEST(DutyCalcs, name_the_path_of_what_is_wrong) {
  struct Case {
    std::string_view name, input, where;
  };
  for (const Case& c : std::vector<Case>{
           {"honey-moisture", R"({"refractive_index": 1.49})", "$.temperature_C"},
           {"honey-moisture", R"({"refractive_index": 1.333, "temperature_C": 20})", "$.refractive_index"},
           {"honey-moisture", R"({"refractive_index": 1.49, "temperature_C": 20, "brix": 80})", "$.brix"},
           {"honey-check", R"({"country": "atlantis", "moisture_pct": 18})", "$.country"},
           {"honey-check", R"({"country": "wales", "plant": "clover"})", "$.plant"},
           {"honey-check", R"({"country": "wales", "jarred_on": "2026-08-20"})", "$.moisture_pct"},
           {"honey-check", R"({"country": "wales", "moisture_pct": 18, "jarred_on": "2999-01-01"})",
            "$.jarred_on"},
           {"honey-check", R"({"country": "wales", "fermenting": 1})", "$.fermenting"},
           {"honey-label", R"({"country": "wales", "net_weight_g": 0})", "$.net_weight_g"},
           {"honey-label", R"({"country": "wales", "net_weight_g": 454, "best_before": "soon"})",
            "$.best_before"},
           {"honey-label", "{\"country\": \"wales\", \"net_weight_g\": 454, \"lot\": \"a\\u0007\"}", "$.lot"},
           {"notifiable", R"({"country": "wales"})", "$"},
           {"notifiable", R"({"country": "wales", "signs": ["hornet", "cold"]})", "$.signs[1]"},
           {"notifiable", R"({"country": "wales", "signs": "hornet"})", "$.signs"},
           {"notifiable", R"({"country": "wales", "subject": "varroa", "hives_at_place": 1.5})",
            "$.hives_at_place"},
           {"notifiable",
            R"({"country": "wales", "subject": "varroa", "earlier_reports": [{"subject": "x"}]})",
            "$.earlier_reports[0].subject"},
           {"medicine-record", R"({"country": "wales", "record": "gift"})", "$.record"},
           {"medicine-record", R"({"country": "wales", "record": "giving", "date": "2026-02-30"})", "$.date"},
           {"medicine-record", R"({"country": "wales", "record": "giving", "date": "2026-08-14",
             "ended": "2026-08-13"})",
            "$.ended"},
           {"medicine-record", R"({"country": "wales", "record": "giving", "date": "2998-08-14"})", "$.date"},
           {"medicine-record", R"({"country": "wales", "record": "giving", "colonies": ["a", ""]})",
            "$.colonies[1]"},
           {"treatment-gate", R"({"kind": "garlic"})", "$.kind"},
           {"treatment-gate", R"({"kind": "thymol", "day_max_C": 10, "day_mean_C": 12})", "$.day_mean_C"},
           {"syrup", R"({"sugar_kg": 1})", "$"},
           {"syrup", R"({"sugar_kg": 1, "sugar_lb": 1, "water_L": 1})", "$.sugar_lb"},
           {"syrup", R"({"sugar_kg": 1, "water_kg": 1, "water_us_pints": 1})", "$.water_us_pints"},
           {"syrup", R"({"sugar_kg": 0, "water_kg": 1})", "$.sugar_kg"},
           {"stores-sugar", R"({"stores_kg": -1})", "$.stores_kg"},
           {"hive-weight", R"({"method": "two_sides", "first": 3})", "$.second"},
           {"hive-weight", R"({"method": "one_side", "first": 3, "second": 4})", "$.second"},
           {"hive-weight", R"({"method": "rails", "first": 3, "second": 4, "pivots_apart_mm": 300,
             "hooks_apart_mm": 400, "hook_to_pivot_mm": 300})",
            "$.hooks_apart_mm"},
           {"hive-weight", R"({"method": "two_sides", "first": 3, "second": 4, "tare_kg": 10, "bees": 0})",
            "$.tare_kg"}}) {
    const auto output = run_calc(c.name, c.input, tables());
    ASSERT_FALSE(output) << c.name << " " << c.input;
    EXPECT_EQ(output.problem().kind, ProblemKind::bad_input);
    EXPECT_EQ(output.problem().where, c.where) << c.input;
  }
}

TEST(DutyCalcs, an_empty_list_or_a_blank_text_is_nothing_said) {
  const auto none =
      run_calc("notifiable", R"({"country": "wales", "subject": "varroa", "earlier_reports": []})", tables());
  ASSERT_TRUE(none);
  EXPECT_EQ((*none)["reports_due"], 1);
  const auto blank =
      run_calc("honey-label", R"({"country": "wales", "net_weight_g": 454, "name": "  "})", tables());
  ASSERT_TRUE(blank);
  EXPECT_EQ((*blank)["missing"][0], "name");
}

}  // namespace
}  // namespace beegarth::garth
