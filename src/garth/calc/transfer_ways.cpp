// transfer-ways: moving a colony into a hive of another pattern, way by way.
#include "garth/plan/transfer_ways.hpp"

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"
#include "work/transfers.hpp"

namespace beegarth::garth {
namespace {

constexpr std::array<std::string_view, 2> forms{"upright", "horizontal"};

Json home_schema(const char* description) {
  Json schema = object_schema({{"form", choice_schema("boxes stacked, or combs in one long row", forms)},
                               {"frames", flag_schema("absent means yes; no: bars or wild comb")},
                               {"movable", flag_schema("absent means yes: combs can be lifted out")},
                               {"bar_mm", number_schema("length of top bar or bar", 50, 2000)},
                               {"depth_mm", number_schema("of comb below it", 50, 1000)},
                               {"stackable", flag_schema("absent means yes where it is upright")}},
                              {"form", "bar_mm", "depth_mm"});
  schema["description"] = description;
  return schema;
}

Json input_schema() {
  return object_schema({{"from", home_schema("the hive it lives in")},
                        {"to", home_schema("the hive it shall live in")},
                        {"date", date_schema("")},
                        {"latitude_deg", number_schema("absent means 52", -66, 66)},
                        {"seams", number_schema("of bees", 0, 60)},
                        {"brood_cells", number_schema("of all ages", 0, 100000)}},
                       {"from", "to", "date"});
}

Json range_schema(const char* description, double most) {
  Json schema = object_schema({{"low", number_schema("", 0, most)},
                               {"value", number_schema("", 0, most)},
                               {"high", number_schema("", 0, most)}},
                              {"low", "value", "high"});
  schema["description"] = description;
  return schema;
}

Json output_schema() {
  const Json texts{{"type", "array"}, {"items", text_schema("")}};
  const Json way = object_schema({{"way", choice_schema("", work::transfer_ways)},
                                  {"possible", flag_schema("nothing speaks against it")},
                                  {"against", texts},
                                  {"brood_kept", range_schema("share", 1)},
                                  {"brood_lost_cells", range_schema("", 100000)},
                                  {"setback_days", range_schema("", 400)},
                                  {"days", number_schema("from the first visit to the last", 0, 400)},
                                  {"minutes", number_schema("of work at the hives", 0, 2000)},
                                  {"needs", texts},
                                  {"cautions", texts},
                                  {"sources", texts}},
                                 {"way", "possible", "against", "brood_kept", "setback_days", "days",
                                  "minutes", "needs", "cautions", "sources"});
  return object_schema({{"ways", {{"type", "array"}, {"items", way}}}}, {"ways"});
}

Json example() {
  return {{"from", {{"form", "horizontal"}, {"frames", false}, {"bar_mm", 432}, {"depth_mm", 200}}},
          {"to", {{"form", "upright"}, {"bar_mm", 432}, {"depth_mm", 216}}},
          {"date", "2026-05-10"},
          {"seams", 7},
          {"brood_cells", 18000}};
}

work::CombHome read_home(Reader& whole, const char* field) {
  work::CombHome home;
  Reader reader(whole.part(field), whole.path_of(field));
  home.form = reader.choice_of("form", forms) == "horizontal" ? facts::HiveForm::horizontal
                                                              : facts::HiveForm::upright;
  home.frames = reader.yes_or("frames", true);
  home.movable = reader.yes_or("movable", true);
  home.bar_mm = reader.number("bar_mm", 50, 2000);
  home.depth_mm = reader.number("depth_mm", 50, 1000);
  home.stackable = reader.yes_or("stackable", home.form == facts::HiveForm::upright);
  if (auto fault = reader.done()) whole.fail(*std::move(fault));
  return home;
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  work::TransferQuestion question;
  question.from = read_home(reader, "from");
  question.to = read_home(reader, "to");
  question.date = reader.date("date");
  question.latitude_deg = reader.number_or("latitude_deg", -66, 66, 52);
  question.seams = reader.maybe_number("seams", 0, 60);
  question.brood_cells = reader.maybe_number("brood_cells", 0, 100000);
  if (auto fault = reader.done()) return *std::move(fault);
  const auto ways = work::ways_of_transfer(question, tables["transfers"]);
  if (!ways) return ways.problem();
  return Json{{"ways", transfer_ways_json(*ways)}};
}

}  // namespace

Calc transfer_ways_calc() {
  return {"transfer-ways",
          "moving a colony into a hive of another pattern: which ways there are, what each costs and needs",
          input_schema,
          output_schema,
          example,
          run};
}

}  // namespace beegarth::garth
