// What is told to the authority: which things, how often, and whether anything may leave.
#include <gtest/gtest.h>

#include "calc_answers.hpp"

namespace beegarth {
namespace {

using garth::Json;

Json told(Json input, const char* country = "england") {
  input["country"] = country;
  return testing::answer("notifiable", input);
}

// SI 2021/420, as quoted on a forum; WSI 2021/351 art 2; letter on the Scottish amendment: varroa is reported
// once for a place, from 21 April 2021.
TEST(Notification, varroa_is_one_report_for_a_place_and_not_one_for_a_hive) {
  for (const char* country : {"england", "wales", "scotland"}) {
    const Json out = told({{"subject", "varroa"}, {"hives_at_place", 6}}, country);
    ASSERT_EQ(out["reports"].size(), 1U);
    EXPECT_EQ(out["reports"][0]["reports_due"], 1) << country;
    EXPECT_EQ(out["reports_due"], 1);
    EXPECT_EQ(out["movement_stops"], false);
    const Json again = told({{"subject", "varroa"},
                             {"hives_at_place", 6},
                             {"earlier_reports", {{{"subject", "varroa"}, {"date", "2022-05-03"}}}}},
                            country);
    EXPECT_EQ(again["reports_due"], 0);
    EXPECT_EQ(told({{"subject", "varroa"}, {"date", "2021-04-20"}}, country)["reports_due"], 0);
    EXPECT_EQ(told({{"subject", "varroa"}, {"date", "2021-04-21"}}, country)["reports_due"], 1);
  }
}

// SI 2006/342 arts 1-2 and explanatory note (England), SI 2006/1710 (W.172) arts 1-4, SSI 2007/506: suspicion
// is notified at once and nothing leaves.
TEST(Notification, the_four_of_the_orders_are_notified_at_once_and_stop_all_movement) {
  for (const char* country : {"england", "wales", "scotland"}) {
    for (const char* subject :
         {"american_foulbrood", "european_foulbrood", "small_hive_beetle", "tropilaelaps"}) {
      const Json out = told({{"subject", subject}, {"hives_at_place", 6}}, country);
      EXPECT_EQ(out["reports_due"], 1) << subject;
      EXPECT_EQ(out["reports"][0]["duty"], "notify_at_once");
      EXPECT_EQ(out["movement_stops"], true);
      // Told before is not told now: a suspicion that comes again is notified again.
      const Json again = told({{"subject", subject}, {"earlier_reports", {{{"subject", subject}}}}}, country);
      EXPECT_EQ(again["reports_due"], 1) << subject;
    }
  }
}

// From memory: a sighting of the yellow-legged hornet is reported each time; it is not in the Orders on bees.
TEST(Notification, a_hornet_is_reported_and_stops_nothing) {
  const Json out = told({{"signs", {"hornet"}}});
  ASSERT_EQ(out["reports"].size(), 1U);
  EXPECT_EQ(out["reports"][0]["subject"], "yellow_legged_hornet");
  EXPECT_EQ(out["reports"][0]["duty"], "report");
  EXPECT_EQ(out["movement_stops"], false);
}

// Common practice: handbooks of bee diseases.
TEST(Notification, a_sign_stands_for_what_it_may_be) {
  struct Case {
    const char* sign;
    std::vector<std::string> subjects;
    bool stops;
  };
  for (const Case& c : {Case{"ropy_larva", {"american_foulbrood"}, true},
                        {"sunken_cappings", {"american_foulbrood"}, true},
                        {"discoloured_larvae", {"american_foulbrood", "european_foulbrood"}, true},
                        {"foulbrood_suspected", {"american_foulbrood", "european_foulbrood"}, true},
                        {"hive_beetle", {"small_hive_beetle"}, true},
                        {"other_brood_mite", {"tropilaelaps"}, true},
                        {"mite_on_brood", {"varroa"}, false},
                        {"chalk_brood", {}, false}}) {
    const Json out = told({{"signs", {c.sign}}});
    std::vector<std::string> subjects;
    for (const auto& report : out["reports"]) subjects.push_back(report["subject"]);
    EXPECT_EQ(subjects, c.subjects) << c.sign;
    EXPECT_EQ(out["movement_stops"], c.stops) << c.sign;
  }
}

TEST(Notification, elsewhere_the_careful_side_and_the_authority_are_named) {
  const Json out = told({{"subject", "american_foulbrood"}}, "elsewhere");
  EXPECT_EQ(out["movement_stops"], true);
  EXPECT_NE(out["reports"][0]["law"].get<std::string>().find("ask your authority"), std::string::npos);
}

}  // namespace
}  // namespace beegarth
