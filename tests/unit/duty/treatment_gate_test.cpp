#include "duty/treatment_gate.hpp"

#include <gtest/gtest.h>

#include "overridden.hpp"

namespace beegarth::duty {
namespace {

GateAnswer gate(const GateQuestion& question) {
  const auto answer = treatment_gate(question, testing::rows_of("work"), testing::rows_of("colony"));
  if (answer) return *answer;
  ADD_FAILURE() << one_line(answer.problem());
  return {};
}

TEST(TreatmentGate, the_gravest_reason_decides_and_every_reason_has_a_source) {
  const GateAnswer answer = gate(
      {.kind = TreatmentClass::thymol, .day_max_C = 31, .day_mean_C = 14, .brood = true, .supers_on = false});
  EXPECT_EQ(answer.verdict, GateVerdict::refuse);
  EXPECT_EQ(answer.reasons.size(), 2U);
  for (const GateReason& reason : answer.reasons) EXPECT_FALSE(reason.source.empty());
}

TEST(TreatmentGate, thymol_at_its_limits) {
  const auto at = [](double day_max_C) {
    return gate({.kind = TreatmentClass::thymol, .day_max_C = day_max_C}).verdict;
  };
  EXPECT_EQ(at(19.9), GateVerdict::warn);
  EXPECT_EQ(at(20), GateVerdict::ok);
  EXPECT_EQ(at(25), GateVerdict::ok);
  EXPECT_EQ(at(25.1), GateVerdict::warn);
  EXPECT_EQ(at(30), GateVerdict::warn);
  EXPECT_EQ(at(30.1), GateVerdict::refuse);
  EXPECT_EQ(gate({.kind = TreatmentClass::thymol, .day_max_C = 22, .day_mean_C = 15}).verdict,
            GateVerdict::ok);
  EXPECT_EQ(gate({.kind = TreatmentClass::thymol, .day_max_C = 22, .day_mean_C = 14.9}).verdict,
            GateVerdict::warn);
}

// The label's window begins at 10 C, the colony's reckoning at 12: between them the gate warns (decision 7).
TEST(TreatmentGate, where_window_and_reckoning_differ_it_warns) {
  EXPECT_EQ(gate({.kind = TreatmentClass::formic, .day_max_C = 11}).verdict, GateVerdict::warn);
  EXPECT_EQ(gate({.kind = TreatmentClass::formic, .day_max_C = 12}).verdict, GateVerdict::ok);
}

TEST(TreatmentGate, oxalic_acid_between_what_labels_ask_for) {
  const auto at = [](double day_max_C) {
    return gate({.kind = TreatmentClass::oxalic_trickle, .day_max_C = day_max_C, .brood = false}).verdict;
  };
  EXPECT_EQ(at(2.9), GateVerdict::refuse);
  EXPECT_EQ(at(4), GateVerdict::warn);
  EXPECT_EQ(at(5), GateVerdict::ok);
}

TEST(TreatmentGate, says_what_it_was_not_told) {
  using List = std::vector<std::string>;
  EXPECT_EQ(gate({.kind = TreatmentClass::thymol}).not_told, (List{"day_max_C", "day_mean_C", "supers_on"}));
  EXPECT_EQ(gate({.kind = TreatmentClass::oxalic_vapour}).not_told,
            (List{"day_max_C", "brood", "supers_on"}));
  EXPECT_EQ(gate({.kind = TreatmentClass::amitraz, .supers_on = false}).not_told, List{});
}

TEST(TreatmentGate, follows_the_keepers_own_row) {
  const auto answer = treatment_gate({.kind = TreatmentClass::thymol, .day_max_C = 32},
                                     overridden("work", "thymol_highest_C", 35), testing::rows_of("colony"));
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->verdict, GateVerdict::warn);
  EXPECT_FALSE(treatment_gate({.kind = TreatmentClass::thymol}, without("work", "thymol_highest_C"),
                              testing::rows_of("colony")));
}

TEST(AuthorisedIn, says_what_the_countrys_table_says) {
  EXPECT_EQ(authorised_in(TreatmentClass::thymol, testing::rows_of("duty_england"))->verdict,
            GateVerdict::ok);
  EXPECT_EQ(authorised_in(TreatmentClass::thymol, testing::rows_of("duty_general"))->verdict,
            GateVerdict::warn);
  const auto none = authorised_in(TreatmentClass::formic, overridden("duty_england", "authorised_formic", 0));
  EXPECT_EQ(none->verdict, GateVerdict::refuse);
  EXPECT_FALSE(authorised_in(TreatmentClass::formic, without("duty_england", "authorised_formic")));
}

}  // namespace
}  // namespace beegarth::duty
