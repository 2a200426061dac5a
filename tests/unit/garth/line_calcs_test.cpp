#include <gtest/gtest.h>

#include <algorithm>

#include "calc_answers.hpp"

namespace beegarth::garth {
namespace {

// The JSON path in the problem, or "taken".
std::string refused_at(std::string_view calc, const Json& input) {
  const auto out = run_calc(calc, input.dump(), testing::shipped_tables());
  return out ? "taken" : out.problem().where;
}

Json with(Json input, const char* pointer, const Json& value) {
  input[Json::json_pointer(pointer)] = value;
  return input;
}

Json example(std::string_view name) {
  const auto calcs = all_calcs();
  return std::find_if(calcs.begin(), calcs.end(), [&](const Calc& calc) { return calc.name == name; })
      ->example();
}

Json fields(const Json& object) {
  Json names = Json::array();
  for (const auto& item : object.items()) names.push_back(item.key());
  return names;
}

// Every object of the answer has the fields that the schema asks for, and no other.
void expect_fits(const Json& answer, const Json& schema, const std::string& where) {
  if (answer.is_object()) {
    for (const auto& field : schema["required"])
      EXPECT_TRUE(answer.contains(field.get<std::string>())) << where << field;
    for (const auto& item : answer.items()) {
      ASSERT_TRUE(schema["properties"].contains(item.key())) << where << "." << item.key();
      expect_fits(item.value(), schema["properties"][item.key()], where + "." + item.key());
    }
  }
  if (answer.is_array())
    for (const auto& part : answer) expect_fits(part, schema["items"], where + "[]");
}

TEST(LineCalcs, AnswerTheirOwnExamplesAsTheirSchemasSay) {
  for (const char* name : {"kinship", "line-scores", "matings"}) {
    const auto calcs = all_calcs();
    const auto calc = std::find_if(calcs.begin(), calcs.end(), [&](const Calc& c) { return c.name == name; });
    expect_fits(testing::answer(name, calc->example()), calc->output_schema(), name);
    expect_fits(calc->example(), calc->input_schema(), name);
  }
}

TEST(KinshipCalc, SaysFractionsAndDecimals) {
  const Json out = testing::answer("kinship", example("kinship"));
  EXPECT_EQ(out["pairs"][0]["relationship"], (Json{{"fraction", "3/4"}, {"decimal", 0.75}}));
  EXPECT_EQ(out["queens"][3]["inbreeding"]["fraction"], "3/8");
  EXPECT_EQ(out["planned"][0]["daughters_inbreeding"]["fraction"], "1/2");
  EXPECT_EQ(fields(out), (Json{"colonies", "pairs", "planned", "queens"}));
}

TEST(KinshipCalc, SharesAreReadExactly) {
  const auto workers = [](const Json& mating) {
    const Json queen{{"id", "Anna"}, {"mating", mating}};
    return testing::answer(
        "kinship", {{"queens", Json::array({queen})}})["colonies"][0]["workers_relationship"]["fraction"];
  };
  const Json one{{"drones", 1}};
  EXPECT_EQ(workers(Json::array({one, one, one})), "5/12");  // 1/4 + 1/6
  EXPECT_EQ(workers(Json::array({with(one, "/share", "1/3"), with(one, "/share", "2/3")})), "19/36");
  EXPECT_EQ(workers(Json::array({with(one, "/share", 0.1), with(one, "/share", 0.9)})), "33/50");
  EXPECT_EQ(workers(Json::array({with(one, "/share", "0.1"), with(one, "/share", "0.9")})), "33/50");
  EXPECT_EQ(workers(Json::array({{{"drones", 3}}, {{"drones", 1}}})), "3/8");  // four drones alike
  EXPECT_EQ(workers(Json::array({Json::object(), {{"drones", 1}}})), "3/8");   // many and one, half each
}

TEST(KinshipCalc, NamesThePlaceOfAFault) {
  const Json good = example("kinship");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/1/mother", "Zoe")), "$.queens[1].mother");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/mother", "Anna")), "$.queens[0]");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/mating/0/share", "1/3")), "$.queens[0].mating");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/mating/0/share", "a third")),
            "$.queens[0].mating[0].share");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/mating/0/share", -0.5)),
            "$.queens[0].mating[0].share");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/mating/0/share", true)),
            "$.queens[0].mating[0].share");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/mating/0/drones", 0)),
            "$.queens[0].mating[0].drones");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/mating/0/sire", "x")), "$.queens[0].mating[0].sire");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/living", "yes")), "$.queens[0].living");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/born", "2026-02-30")), "$.queens[0].born");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens/0/id", 7)), "$.queens[0].id");
  EXPECT_EQ(refused_at("kinship", with(good, "/queens", 7)), "$.queens");
  EXPECT_EQ(refused_at("kinship", with(good, "/pairs/0/1", "Zoe")), "$.pairs[0][1]");
  EXPECT_EQ(refused_at("kinship", with(good, "/pairs/0", "Zoe")), "$.pairs[0]");
  EXPECT_EQ(refused_at("kinship", with(good, "/planned/0/queen", "Zoe")), "$.planned[0].queen");
  EXPECT_EQ(refused_at("kinship", with(good, "/planned/0/mating/0/dam", "Zoe")),
            "$.planned[0].mating[0].dam");
  EXPECT_EQ(refused_at("kinship", with(good, "/planned/0", {{"queen", "Bess"}})), "$.planned[0].mating");
}

TEST(LineScoresCalc, NamesThePlaceOfAFault) {
  const Json good = example("line-scores");
  EXPECT_EQ(refused_at("line-scores", with(good, "/scores/1/queen", "Zoe")), "$.scores[1].queen");
  EXPECT_EQ(refused_at("line-scores", with(good, "/scores/1/year", 2026.5)), "$.scores[1].year");
  EXPECT_EQ(refused_at("line-scores", with(good, "/scores/1/score", "4")), "$.scores[1].score");
  EXPECT_EQ(refused_at("line-scores", with(good, "/queens_share", 1)), "$.queens_share");
  EXPECT_EQ(refused_at("line-scores", with(good, "/weights/0", {{"trait", "honey"}, {"weight", 1}})),
            "$.weights[0].trait");
}

TEST(LineScoresCalc, AddsTraitsInTheirOwnSpreads) {
  Json input = example("line-scores");
  for (Json score : std::vector<Json>(input["scores"].begin(), input["scores"].end())) {
    score["trait"] = "honey";
    score["score"] = 1000 * score["score"].get<double>();
    input["scores"].push_back(score);
  }
  input["weights"] =
      Json::array({{{"trait", "calmness"}, {"weight", 1}}, {{"trait", "honey"}, {"weight", -1}}});
  const Json answer = testing::answer("line-scores", input);
  for (const auto& row : answer["together"]) EXPECT_NEAR(row["score"], 0, 1e-12);
}

TEST(LineScoresCalc, AGivenShareHasNoRange) {
  Json input = example("line-scores");
  input["queens_share"] = 0.2;
  const Json queen = testing::answer("line-scores", input)["traits"][0]["queens"][1];
  EXPECT_EQ(queen["at_low_share"], queen["estimate"]);
  EXPECT_EQ(queen["at_high_share"], queen["estimate"]);
}

TEST(MatingsCalc, NamesThePlaceOfAFault) {
  const Json good = example("matings");
  EXPECT_EQ(refused_at("matings", with(good, "/virgins/1", "Zoe")), "$.virgins[1]");
  EXPECT_EQ(refused_at("matings", with(good, "/virgins/1", "Anna")), "$.virgins[1]");
  EXPECT_EQ(refused_at("matings", with(good, "/virgins/1", "Dora")), "$.virgins[1]");  // has daughters
  EXPECT_EQ(refused_at("matings", with(good, "/queens/2/living", false)), "$.virgins[0]");
  EXPECT_EQ(refused_at("matings", with(good, "/drones/1/name", "sons of Bess")), "$.drones[1].name");
  EXPECT_EQ(refused_at("matings", with(good, "/drones/1/mating/0/dam", "Zoe")), "$.drones[1].mating[0].dam");
  EXPECT_EQ(refused_at("matings", with(good, "/scores/1", {{"queen", "Bess"}, {"score", 1}})),
            "$.scores[1].queen");
  EXPECT_EQ(refused_at("matings", with(good, "/inbreeding_limit", 2)), "$.inbreeding_limit");
  EXPECT_EQ(refused_at("matings", with(good, "/keep", 1)), "$.keep");
}

TEST(MatingsCalc, HasNoChoiceWhereNoneIsAllowed) {
  const Json out = testing::answer(
      "matings", with(example("matings"), "/drones", Json::array({example("matings")["drones"][1]})));
  EXPECT_TRUE(out["choice"].is_null());
  EXPECT_NE(out["reasons"][0].get<std::string>().find("line Edda cannot be kept"), std::string::npos);
}

}  // namespace
}  // namespace beegarth::garth
