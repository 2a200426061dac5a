#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "book/book.hpp"
#include "entries/fields.hpp"

namespace beegarth::book {
namespace {

struct Refused {
  const char* kind;
  std::string json;
  const char* said;  // part of the problem
};

// What may be entered can be read again: no reader is narrower than the limits of the fields.
struct AtHighest : entries::FieldsPassedBy {
  using FieldsPassedBy::count;
  void count(const char*, int& value, entries::Limits limits) { value = static_cast<int>(limits.high); }
  void count(const char*, entries::Count& value, entries::Limits limits) {
    value = static_cast<int>(limits.high);
  }
};
TEST(PayloadJson, every_count_at_its_highest_reads_back) {
  for (std::size_t i = 0; i < entries::kind_count; ++i) {
    auto payload = *entries::empty_payload(entries::kind_name_at(i));
    AtHighest fill;
    entries::visit_fields_of(fill, payload);
    const auto read = payload_from_json(entries::kind_name_at(i), payload_json(payload), "");
    if (!read) {
      EXPECT_EQ(read.problem().what.find("whole number"), std::string::npos) << one_line(read.problem());
      continue;  // other fields are empty, which is not what this asks about
    }
    EXPECT_EQ(payload_json(*read), payload_json(payload));
  }
}

TEST(PayloadJson, what_was_not_said_is_left_out_and_names_are_sorted) {
  EXPECT_EQ(payload_json(entries::Inspection{.colony = ColonyId("alder-5"), .seams = 7.5, .eggs = true}),
            R"({"colony":"alder-5","eggs":true,"look":"full","seams":7.5})");
}

TEST(PayloadJson, reading_gives_back_what_was_written) {
  const entries::Inspection said{.colony = ColonyId("alder-5"),
                                 .look = entries::Look::quick,
                                 .charged_cells = 3,
                                 .pollen = entries::Level::some,
                                 .signs = {"chalk_brood"},
                                 .remark = "calm \"ü\" \n day"};
  const std::string text = payload_json(said);
  const auto read = payload_from_json("inspection", text, "");
  ASSERT_TRUE(read) << one_line(read.problem());
  EXPECT_EQ(payload_json(*read), text);
  EXPECT_EQ(std::get<entries::Inspection>(*read).remark, said.remark);
}

TEST(PayloadJson, null_means_not_said) {
  const auto read = payload_from_json("inspection", R"({"colony":"a","look":"full","seams":null})", "");
  ASSERT_TRUE(read);
  EXPECT_FALSE(std::get<entries::Inspection>(*read).seams);
}

TEST(PayloadJson, a_whole_number_may_be_written_with_a_point) {
  const auto read =
      payload_from_json("mite_count", R"({"colony":"a","method":"board","mites":3.0,"days":7})", "");
  ASSERT_TRUE(read);
  EXPECT_EQ(std::get<entries::MiteCount>(*read).mites, 3);
}

TEST(PayloadJson, what_is_wrong_is_refused_and_named) {
  const std::vector<Refused> cases = {
      {"inspection", R"({"colony":"a","look":"full","beees":9})", "has no field 'beees'"},
      {"inspection", R"({"look":"full"})", "colony is missing"},
      {"inspection", R"({"colony":null,"look":"full"})", "colony is missing"},
      {"inspection", R"({"colony":"a"})", "look is missing"},
      {"inspection", R"({"colony":7,"look":"full"})", "colony is not text"},
      {"inspection", R"({"colony":"a","look":"full","seams":"7"})", "seams is not a number"},
      {"inspection", R"({"colony":"a","look":"full","seams":-1})", "seams is -1"},
      {"inspection", R"({"colony":"a","look":"full","eggs":1})", "eggs is neither true nor false"},
      {"inspection", R"({"colony":"a","look":"long"})", "use one of: full, quick, outside"},
      {"inspection", R"({"colony":"a","look":"full","signs":"chalk_brood"})", "signs is not a list"},
      {"inspection", R"({"colony":"a","look":"full","signs":[1]})", "signs holds something"},
      {"inspection", R"({"colony":"a","look":"full","charged_cells":2.5})",
       "charged_cells is not a whole number"},
      {"inspection", R"({"colony":"a","look":"full","charged_cells":1e30})",
       "charged_cells is out of range; give 0 to 300"},
      {"inspection", R"({"colony":"a","colony":"b","look":"full"})", "says 'colony' twice"},
      {"inspection", R"({"colony":"a","look":"full","seams":1e999})", "out of range"},
      {"inspection", R"({"colony":"a","look":"full","seams":NaN})", "is not JSON at byte"},
      {"inspection", R"({"colony":"a","look":"full")", "is not JSON at byte"},
      {"inspection", "{\"colony\":\"\xc3\x28\",\"look\":\"full\"}", "is not UTF-8 at byte 12"},
      {"inspection", R"({"colony":"\ud800","look":"full"})", "is not JSON at byte"},
      {"inspection", R"([])", "not a JSON object"},
      {"inspection", "", "is not JSON at byte"},
      {"inspection", std::string(100000, '['), "nested too deeply"},
      {"mite_count", R"({"colony":"a","method":"board","days":7})", "mites is missing"},
      {"mite_count", R"({"colony":"a","method":"board","mites":3})", "a board count has no days"},
      {"working_hours", R"({"date":"2026-02-30","start_hour":9,"end_hour":12})", "date is no date"},
      {"note", R"({"text":"a\u0000b"})", "zero byte"},
      {"unheard_of", "{}", "there is no kind 'unheard_of'"},
  };
  for (const Refused& sample : cases) {
    const auto read = payload_from_json(sample.kind, sample.json, "line 4");
    ASSERT_FALSE(read) << sample.json.substr(0, 100);
    EXPECT_NE(one_line(read.problem()).find(sample.said), std::string::npos)
        << one_line(read.problem()) << " for " << sample.json.substr(0, 100);
    EXPECT_EQ(read.problem().where, "line 4");
    EXPECT_EQ(read.problem().kind, ProblemKind::bad_input);
  }
}

TEST(EntryJson, an_entry_is_one_object_with_sorted_names) {
  const entries::Entry entry{EntryId("019e6a2f-0000-7000-8000-000000000000"),
                             *Date::from_ymd(2026, 5, 28),
                             14.5,
                             {1779976800250, 2},
                             "ann",
                             "d-1",
                             std::nullopt,
                             entries::Note{.text = "rain"}};
  EXPECT_EQ(
      entry_json(entry),
      R"({"device":"d-1","happened":"2026-05-28","happened_hour":14.5,"id":"019e6a2f-0000-7000-8000-000000000000",)"
      R"("kind":"note","payload":{"text":"rain"},"who":"ann","written":{"counter":2,"utc":"2026-05-28T14:00:00.250Z"}})");
}

TEST(Schema, every_kind_has_one_and_it_names_the_fields_that_the_json_has) {
  for (std::size_t i = 0; i < entries::kind_count; ++i) {
    const auto kind = entries::kind_name_at(i);
    const auto schema = nlohmann::json::parse(schema_json(kind));
    EXPECT_EQ(schema.at("title"), kind);
    EXPECT_EQ(schema.at("additionalProperties"), false);
    const auto written = nlohmann::json::parse(payload_json(*entries::empty_payload(kind)));
    for (const auto& [name, value] : written.items())
      EXPECT_TRUE(schema.at("properties").contains(name)) << kind << "." << name;
    for (const auto& name : schema.at("required"))
      EXPECT_TRUE(written.contains(name.get<std::string>())) << kind << "." << name;
  }
  EXPECT_EQ(schema_json("unheard_of"), "");
}

TEST(Schema, it_tells_limits_units_and_choices) {
  const auto schema = nlohmann::json::parse(schema_json("feed"));
  EXPECT_EQ(schema["properties"]["kg"],
            (nlohmann::json{{"type", "number"}, {"minimum", 0.05}, {"maximum", 40}, {"description", "kg"}}));
  EXPECT_EQ(schema["properties"]["form"]["enum"], (nlohmann::json{"syrup", "fondant", "comb", "pollen"}));
  EXPECT_EQ(schema["required"], (nlohmann::json{"colony", "kg", "form"}));
}

}  // namespace
}  // namespace beegarth::book
