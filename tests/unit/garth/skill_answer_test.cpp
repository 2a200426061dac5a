// From cases to groups, text and JSON; and the JSON is as its schema says.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "garth/beliefs/skill.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;
using testing::HasSubstr;

// As far as skill_schema goes: type, properties, required, additionalProperties, items, enum, minimum,
// maximum.
std::string fault(const json& value, const json& schema, const std::string& at = "$") {
  const std::string type = schema.value("type", "");
  const bool right = type.empty()        ? true
                     : type == "object"  ? value.is_object()
                     : type == "array"   ? value.is_array()
                     : type == "string"  ? value.is_string()
                     : type == "boolean" ? value.is_boolean()
                     : type == "integer" ? value.is_number_integer()
                                         : value.is_number();
  if (!right) return at + " is no " + type;
  if (schema.contains("enum") &&
      std::find(schema["enum"].begin(), schema["enum"].end(), value) == schema["enum"].end())
    return at + " is none of the choices";
  if (schema.contains("minimum") && value < schema["minimum"]) return at + " is too small";
  if (schema.contains("maximum") && value > schema["maximum"]) return at + " is too large";
  if (type == "object") {
    for (const auto& name : schema.value("required", json::array())) {
      if (!value.contains(name)) return at + "." + name.get<std::string>() + " is missing";
    }
    for (const auto& [name, part] : value.items()) {
      if (!schema["properties"].contains(name)) return at + "." + name + " is not in the schema";
      if (auto inner = fault(part, schema["properties"][name], at + "." + name); !inner.empty()) return inner;
    }
  }
  if (type == "array") {
    for (const auto& part : value) {
      if (auto inner = fault(part, schema["items"], at + "[]"); !inner.empty()) return inner;
    }
  }
  return {};
}

// Two colonies, a week ahead: 10 000 bees forecast, with 9 000 and 12 000 seen; one of two alive.
Skill invented() {
  Skill skill{.today = Date::parse("2026-06-30").value(), .sites = 1};
  for (const int c : {0, 1}) {
    SkillCase one{.colony = "c" + std::to_string(c),
                  .site = "s",
                  .what = Scored::bees,
                  .lead = Lead::one_week,
                  .from = Date::parse("2026-06-01").value(),
                  .on = Date::parse("2026-06-08").value(),
                  .seen = c == 0 ? 9000.0 : 12000.0,
                  .middle = 10000,
                  .ours = c == 0 ? 1000.0 : 2000.0};
    one.bands = {{{c == 0, 0.5}, {c == 0, 0.8}, {true, 0.95}}};
    one.others[static_cast<std::size_t>(Rival::last_value)] = 2500;
    one.odds = 0.25;
    one.happened = c == 1;
    skill.cases.push_back(one);
    one.what = Scored::alive;
    one.seen = one.middle = c;
    one.ours = 0.25;
    one.odds = 0.5;
    skill.cases.push_back(one);
  }
  skill.groups = skill_groups(skill.cases, 1);
  return skill;
}

TEST(SkillGroups, are_means_over_their_cases) {
  const Skill skill = invented();
  ASSERT_EQ(skill.groups.size(), 2U);
  const SkillGroup& bees = skill.groups[0];
  EXPECT_DOUBLE_EQ(bees.seen, 10500);
  EXPECT_DOUBLE_EQ(bees.score.mean, 1500);
  EXPECT_DOUBLE_EQ(bees.bands[0].inside.mean, 0.5);
  EXPECT_DOUBLE_EQ(bees.bands[2].inside.mean, 1);
  EXPECT_DOUBLE_EQ(bees.against[static_cast<std::size_t>(Rival::last_value)].other, 2500);
  EXPECT_EQ(bees.against[static_cast<std::size_t>(Rival::climatology)].cases, 0);
  EXPECT_DOUBLE_EQ(bees.brier.mean, (0.0625 + 0.5625) / 2);  // odds 0.25, happened once of twice
  EXPECT_DOUBLE_EQ(bees.odds.brier, bees.brier.mean);
}

TEST(SkillText, says_what_is_not_enough_and_how_odds_were_kept) {
  const std::string text = skill_text(invented());
  EXPECT_THAT(text, HasSubstr("One site only"));
  EXPECT_THAT(text, HasSubstr("bees, one week ahead (4 to 9 days)"));
  EXPECT_THAT(text, HasSubstr("against the time of year"));
  EXPECT_THAT(text, HasSubstr("not enough in the book"));
  EXPECT_THAT(text, HasSubstr("odds 20-40  %:    2 cases, mean odds  25 %, happened  50 %"));
}

TEST(SkillJson, is_as_its_schema_says) {
  const json answer = skill_json(invented());
  EXPECT_EQ(fault(answer, skill_schema()), "");
  json wrong = answer;
  wrong["groups"][0]["surprise"] = 1;
  EXPECT_NE(fault(wrong, skill_schema()), "") << "the check finds nothing";
  wrong = answer;
  wrong["cases"][0].erase("score");
  EXPECT_NE(fault(wrong, skill_schema()), "");
}

}  // namespace
}  // namespace beegarth::garth
