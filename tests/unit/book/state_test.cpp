#include "book/state.hpp"

#include "desk.hpp"

namespace beegarth::book {
namespace {

using entries::Entry;

EntryId id_number(int number) {
  char text[40];
  std::snprintf(text, sizeof text, "019e6a2f-0000-7000-8000-%012d", number);
  return EntryId(text);
}

// A journal told line by line; every line is written one minute after the last.
struct Journal {
  std::vector<Entry> all;

  EntryId say(Date happened, entries::Payload payload, std::optional<EntryId> supersedes = std::nullopt) {
    const int number = static_cast<int>(all.size()) + 1;
    all.push_back({id_number(number),
                   happened,
                   {},
                   {60'000LL * number, 0},
                   "ann",
                   "d-1",
                   std::move(supersedes),
                   std::move(payload)});
    return all.back().id;
  }
  std::vector<Entry> standing(Date as_of) const { return standing_entries(all, as_of); }
  State state(Date as_of) const { return state_of(standing(as_of), as_of); }
};

const Date may = *Date::from_ymd(2026, 5, 1);

entries::Note noted(const std::string& text) {
  return {.text = text};
}
std::vector<std::string> texts(const std::vector<Entry>& entries) {
  std::vector<std::string> all;
  for (const Entry& entry : entries) all.push_back(std::get<entries::Note>(entry.payload).text);
  return all;
}
using Texts = std::vector<std::string>;

// ---- what stands ----
TEST(Standing, nothing_that_happened_after_the_day) {
  Journal journal;
  journal.say(may, noted("a"));
  journal.say(may + 1, noted("b"));
  EXPECT_EQ(texts(journal.standing(may)), Texts({"a"}));
  EXPECT_EQ(texts(journal.standing(may + 1)), Texts({"a", "b"}));
  EXPECT_TRUE(journal.standing(may - 1).empty());
}
TEST(Standing, a_correction_stands_in_the_place_of_what_it_corrects) {
  Journal journal;
  const EntryId wrong = journal.say(may, noted("a"));
  journal.say(may, noted("b"));
  journal.say(may, noted("a, better"), wrong);
  EXPECT_EQ(texts(journal.standing(may)), Texts({"a, better", "b"}));
}
TEST(Standing, a_correction_of_a_correction) {
  Journal journal;
  EntryId last = journal.say(may, noted("1"));
  last = journal.say(may, noted("2"), last);
  last = journal.say(may, noted("3"), last);
  EXPECT_EQ(texts(journal.standing(may)), Texts({"3"}));
}
TEST(Standing, two_corrections_of_one_entry_are_both_shown) {
  Journal journal;
  const EntryId first = journal.say(may, noted("a"));
  journal.say(may, noted("from the phone"), first);
  journal.say(may, noted("from the laptop"), first);
  EXPECT_EQ(texts(journal.standing(may)), Texts({"from the phone", "from the laptop"}));
}
TEST(Standing, a_date_that_was_corrected_is_wrong_for_every_day) {
  Journal journal;
  const EntryId wrong = journal.say(may, noted("a"));
  journal.say(may + 10, noted("a"), wrong);
  EXPECT_TRUE(journal.standing(may + 5).empty());
  EXPECT_EQ(journal.standing(may + 10).size(), 1U);
}
TEST(Standing, a_removed_entry_is_gone_for_every_day) {
  Journal journal;
  const EntryId wrong = journal.say(may, noted("a"));
  journal.say(may + 20, entries::Removed{.entry = wrong});
  EXPECT_TRUE(journal.standing(may).empty());
  EXPECT_TRUE(journal.standing(may + 30).empty());
}
TEST(Standing, removing_a_correction_does_not_bring_the_error_back) {
  Journal journal;
  const EntryId wrong = journal.say(may, noted("a"));
  const EntryId better = journal.say(may, noted("b"), wrong);
  journal.say(may, entries::Removed{.entry = better});
  EXPECT_TRUE(journal.standing(may).empty());
}
TEST(Standing, removing_the_first_removes_its_corrections_too_but_not_later_ones) {
  Journal journal;
  const EntryId first = journal.say(may, noted("a"));
  const EntryId second = journal.say(may, noted("b"), first);
  journal.say(may, entries::Removed{.entry = first});
  EXPECT_TRUE(journal.standing(may).empty());
  journal.say(may, noted("c"), second);
  EXPECT_EQ(texts(journal.standing(may)), Texts({"c"}));
}
TEST(Standing, a_removal_that_is_removed_does_nothing) {
  Journal journal;
  const EntryId said = journal.say(may, noted("a"));
  const EntryId removal = journal.say(may, entries::Removed{.entry = said});
  const EntryId again = journal.say(may, entries::Removed{.entry = removal});
  EXPECT_EQ(texts(journal.standing(may)), Texts({"a"}));
  journal.say(may, entries::Removed{.entry = again});
  EXPECT_TRUE(journal.standing(may).empty());
}
TEST(Standing, a_removal_that_is_corrected_removes_the_other_one_instead) {
  Journal journal;
  const EntryId one = journal.say(may, noted("a"));
  const EntryId two = journal.say(may, noted("b"));
  const EntryId removal = journal.say(may, entries::Removed{.entry = one});
  journal.say(may, entries::Removed{.entry = two}, removal);
  EXPECT_EQ(texts(journal.standing(may)), Texts({"a"}));
}
TEST(Standing, as_it_was_known_on_a_day) {
  Journal journal;
  const EntryId first = journal.say(may, noted("a"));
  journal.say(may, noted("b"), first);
  EXPECT_EQ(texts(standing_entries(journal.all, may, entries::Written{60'000, 0})), Texts({"a"}));
  EXPECT_EQ(texts(standing_entries(journal.all, may, entries::Written{120'000, 0})), Texts({"b"}));
  EXPECT_TRUE(standing_entries(journal.all, may, entries::Written{59'999, 9}).empty());
}
TEST(Standing, links_that_go_in_a_circle_do_not_hang) {
  Journal journal;
  journal.say(may, noted("a"), id_number(2));
  journal.say(may, noted("b"), id_number(1));
  journal.say(may, noted("c"), id_number(3));
  EXPECT_EQ(texts(journal.standing(may)), Texts({"b", "c"}));
}

// ---- the state ----
class InMay : public testing::Test {
 protected:
  void SetUp() override {
    journal.say(may, entries::Site{.site = SiteId("bank"), .name = "Canal bank"});
    for (const char* hive : {"h1", "h2"}) {
      journal.say(may,
                  entries::Hive{.hive = HiveId(hive), .name = hive, .site = SiteId("bank"), .type = "deep"});
    }
    began = journal.say(
        may, entries::ColonyBegan{
                 .colony = ColonyId("alder"), .name = "Alder", .hive = HiveId("h1"), .queen_year = 2025});
  }
  Journal journal;
  EntryId began;
};

TEST_F(InMay, a_colony_lives_where_it_began_until_it_is_moved) {
  journal.say(may + 9, entries::ColonyMoved{.colony = ColonyId("alder"), .hive = HiveId("h2")});
  EXPECT_EQ(journal.state(may + 8).colonies.at(ColonyId("alder")).hive.text(), "h1");
  const State state = journal.state(may + 9);
  const ColonyState& alder = state.colonies.at(ColonyId("alder"));
  EXPECT_EQ(alder.hive.text(), "h2");
  EXPECT_EQ(alder.began_on, may);
  EXPECT_EQ(alder.began_entry, began);
  EXPECT_EQ(alder.history.size(), 2U);
}
TEST_F(InMay, a_colony_that_ended_is_still_told_of) {
  journal.say(may + 3, entries::ColonyEnded{.colony = ColonyId("alder"), .how = entries::Ending::sold});
  const State state = journal.state(may + 5);
  const ColonyState& alder = state.colonies.at(ColonyId("alder"));
  ASSERT_TRUE(alder.ended);
  EXPECT_EQ(alder.ended->how, entries::Ending::sold);
  EXPECT_EQ(alder.ended_on, may + 3);
  EXPECT_FALSE(journal.state(may + 2).colonies.at(ColonyId("alder")).ended);
}
TEST_F(InMay, a_split_begins_the_new_colony_and_the_old_queen_takes_her_year_along) {
  journal.say(may + 2, entries::Queen{.colony = ColonyId("alder"), .event = entries::QueenEvent::clipped});
  const EntryId split = journal.say(may + 4, entries::Split{.colony = ColonyId("alder"),
                                                            .into = ColonyId("birch"),
                                                            .name = "Birch",
                                                            .hive = HiveId("h2"),
                                                            .queen_goes = true});
  const State state = journal.state(may + 4);
  const ColonyState& birch = state.colonies.at(ColonyId("birch"));
  EXPECT_EQ(birch.began.how, entries::Beginning::split);
  EXPECT_EQ(birch.began.name, "Birch");
  EXPECT_EQ(birch.began.queen_year, 2025);
  EXPECT_EQ(birch.began.queen_clipped, true);
  EXPECT_EQ(birch.hive.text(), "h2");
  EXPECT_EQ(birch.began_on, may + 4);
  EXPECT_EQ(birch.began_entry, split);
  EXPECT_EQ(birch.history.size(), 1U);
  EXPECT_EQ(state.colonies.at(ColonyId("alder")).history.back().id, split);
}
TEST_F(InMay, uniting_ends_one_colony_and_both_remember_it) {
  journal.say(may, entries::ColonyBegan{.colony = ColonyId("birch"), .name = "Birch", .hive = HiveId("h2")});
  const EntryId unite =
      journal.say(may + 7, entries::Unite{.colony = ColonyId("alder"), .from = ColonyId("birch")});
  const State state = journal.state(may + 7);
  EXPECT_FALSE(state.colonies.at(ColonyId("alder")).ended);
  ASSERT_TRUE(state.colonies.at(ColonyId("birch")).ended);
  EXPECT_EQ(state.colonies.at(ColonyId("birch")).ended->how, entries::Ending::united);
  EXPECT_EQ(state.colonies.at(ColonyId("alder")).history.back().id, unite);
  EXPECT_EQ(state.colonies.at(ColonyId("birch")).history.back().id, unite);
}
TEST_F(InMay, saying_a_key_again_renames) {
  journal.say(may + 1, entries::Site{.site = SiteId("bank"), .name = "Old canal"});
  journal.say(
      may + 1,
      entries::Hive{
          .hive = HiveId("h1"), .name = "One", .site = SiteId("bank"), .type = "deep", .brood_combs = 9});
  journal.say(may + 1, entries::ColonyBegan{
                           .colony = ColonyId("alder"), .name = "Alder the elder", .hive = HiveId("h1")});
  const State state = journal.state(may + 1);
  EXPECT_EQ(state.sites.at(SiteId("bank")).name, "Old canal");
  EXPECT_EQ(state.hives.at(HiveId("h1")).brood_combs, 9);
  const ColonyState& alder = state.colonies.at(ColonyId("alder"));
  EXPECT_EQ(alder.began.name, "Alder the elder");
  EXPECT_EQ(alder.began_on, may);
  EXPECT_EQ(alder.began.queen_year, 2025);
}
TEST_F(InMay, a_key_that_begins_again_after_its_end_is_a_new_colony) {
  journal.say(may + 1, entries::ColonyEnded{.colony = ColonyId("alder")});
  journal.say(may + 5, entries::ColonyBegan{.colony = ColonyId("alder"),
                                            .name = "Alder",
                                            .hive = HiveId("h2"),
                                            .how = entries::Beginning::swarm});
  const State state = journal.state(may + 5);
  const ColonyState& alder = state.colonies.at(ColonyId("alder"));
  EXPECT_FALSE(alder.ended);
  EXPECT_EQ(alder.began_on, may + 5);
  EXPECT_EQ(alder.hive.text(), "h2");
}
TEST_F(InMay, a_closed_site_is_gone_until_it_is_said_again) {
  journal.say(may + 1, entries::SiteClosed{.site = SiteId("bank")});
  EXPECT_TRUE(journal.state(may + 1).sites.empty());
  journal.say(may + 2, entries::Site{.site = SiteId("bank"), .name = "Canal bank"});
  EXPECT_EQ(journal.state(may + 2).sites.size(), 1U);
}
TEST_F(InMay, what_was_seen_before_the_beginning_belongs_to_the_colony_too) {
  journal.say(may - 2, entries::Inspection{.colony = ColonyId("alder"), .seams = 4});
  EXPECT_EQ(journal.state(may).colonies.at(ColonyId("alder")).history.size(), 2U);
  EXPECT_TRUE(journal.state(may - 2).colonies.empty());
}
TEST_F(InMay, a_removed_beginning_means_no_colony) {
  journal.say(may + 1, entries::Removed{.entry = began});
  EXPECT_TRUE(journal.state(may).colonies.empty());
}
TEST_F(InMay, travel_counts_both_ways_and_the_last_word_stands) {
  journal.say(may, entries::Travel{.from = "home", .to = "bank", .minutes = 20});
  journal.say(may, entries::Travel{.from = "bank", .to = "home", .minutes = 25});
  const State state = journal.state(may);
  EXPECT_EQ(state.travel.at({"home", "bank"}).minutes, 25);
  EXPECT_EQ(state.travel.at({"bank", "home"}).minutes, 25);
}
TEST_F(InMay, of_what_is_said_again_the_last_word_stands) {
  for (const double value : {1.0, 2.0}) {
    journal.say(may, entries::Normals{.site = SiteId("bank"), .month = 5, .rain_mm = value});
    journal.say(may, entries::Forage{.site = SiteId("bank"), .month = 5, .nectar_kg_per_day = value});
    journal.say(may, entries::WorkingHours{.weekday = 6, .start_hour = value, .end_hour = 16});
    journal.say(may, entries::Kit{.what = "super", .count = static_cast<int>(value)});
    journal.say(may, entries::Setting{.name = "country", .value = std::to_string(value)});
    journal.say(may, entries::TableOverride{
                         .table = "colony", .row = "lay", .value = value, .unit = "1", .source = "own"});
  }
  journal.say(may, entries::WorkingHours{.date = may, .start_hour = 3, .end_hour = 16});
  const State state = journal.state(may);
  ASSERT_EQ(state.normals.size(), 1U);
  EXPECT_EQ(state.normals[0].rain_mm, 2);
  ASSERT_EQ(state.forage.size(), 1U);
  EXPECT_EQ(state.forage[0].nectar_kg_per_day, 2);
  ASSERT_EQ(state.hours.size(), 2U);
  EXPECT_EQ(state.hours[0].start_hour, 2);
  EXPECT_EQ(state.kit.at("super").count, 2);
  EXPECT_EQ(state.settings.at("country"), std::to_string(2.0));
  ASSERT_EQ(state.overrides.size(), 1U);
  EXPECT_EQ(state.overrides[0].value, 2);
}
TEST_F(InMay, weather_and_answers_are_all_kept_in_date_order) {
  journal.say(may + 2, entries::Weather{.site = SiteId("bank"), .rain_mm = 3, .forecast = true});
  journal.say(may + 1, entries::Weather{.site = SiteId("bank"), .rain_mm = 1});
  journal.say(may + 1, entries::NeedAnswered{.need = "feed:alder"});
  const State state = journal.state(may + 3);
  ASSERT_EQ(state.weather.size(), 2U);
  EXPECT_EQ(state.weather[0].happened, may + 1);
  EXPECT_EQ(state.answers.size(), 1U);
  EXPECT_EQ(state.first_date, may);
}
TEST(State, an_empty_book_has_no_first_date) {
  EXPECT_FALSE(state_of({}, may).first_date);
}

TEST_F(InMay, colonies_and_sites_are_found_by_key_or_name_in_any_case) {
  const State state = journal.state(may);
  EXPECT_EQ(find_colony(state, "ALDER"), ColonyId("alder"));
  EXPECT_EQ(find_site(state, "canal BANK"), SiteId("bank"));
  EXPECT_FALSE(find_colony(state, "ald"));
  EXPECT_FALSE(find_site(state, ""));
}
TEST_F(InMay, of_two_colonies_with_one_name_the_living_one_is_meant_and_of_two_living_ones_neither) {
  journal.say(may, entries::ColonyBegan{.colony = ColonyId("k2"), .name = "alder", .hive = HiveId("h2")});
  journal.say(may, entries::ColonyBegan{.colony = ColonyId("k3"), .name = "Östlich", .hive = HiveId("h2")});
  journal.say(may, entries::ColonyBegan{.colony = ColonyId("k4"), .name = "östlich", .hive = HiveId("h2")});
  EXPECT_EQ(find_colony(journal.state(may), "alder"), ColonyId("alder")) << "a key goes before a name";
  EXPECT_FALSE(find_colony(journal.state(may), "ÖSTLICH"));
  journal.say(may + 1, entries::ColonyEnded{.colony = ColonyId("k3")});
  EXPECT_EQ(find_colony(journal.state(may + 1), "ÖSTLICH"), ColonyId("k4"));
}

}  // namespace
}  // namespace beegarth::book
