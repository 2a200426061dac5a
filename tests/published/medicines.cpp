// Medicines: the record that the law asks for, how long it is kept, and the days on which a class may be
// given.
#include <gtest/gtest.h>

#include "calc_answers.hpp"

namespace beegarth {
namespace {

using garth::Json;

// An invented keeper's record.
Json giving() {
  return {{"country", "england"}, {"record", "giving"},    {"product", "Thymol strip (invented)"},
          {"batch", "B7"},        {"date", "2026-08-14"},  {"amount", "two strips"},
          {"withdrawal_days", 0}, {"colonies", {"c-wren"}}};
}

Json record(const Json& changes) {
  Json input = giving();
  input.merge_patch(changes);
  return testing::answer("medicine-record", input);
}

// Veterinary Medicines Regulations 2013, as a club's page and a reference page quote them: five years from
// the giving or the disposal, even if the colony is dead or sold.
TEST(MedicineRecord, is_kept_five_years_even_if_the_colony_died) {
  const Json out = record({{"colony_ended", "2027-02-11"}});
  EXPECT_EQ(out["keep_until"], "2031-08-14");
  EXPECT_EQ(out["complete"], true);
  EXPECT_EQ(record({{"ended", "2026-10-02"}})["keep_until"], "2031-10-02");
  // Arithmetic: the fifth year after a leap day has none, and a day longer is safe.
  EXPECT_EQ(record({{"date", "2028-02-29"}})["keep_until"], "2033-03-01");
}

// The same: what a purchase, a giving and a disposal must say.
TEST(MedicineRecord, names_what_the_law_asks_for_and_is_not_there) {
  struct Case {
    const char* record;
    Json missing;
  };
  for (const Case& c : {Case{"purchase", {"product", "batch", "date", "amount", "supplier", "proof"}},
                        {"giving", {"product", "date", "amount", "withdrawal", "colonies"}},
                        {"disposal", {"date", "amount", "how_and_where"}}}) {
    const Json out = testing::answer("medicine-record", {{"country", "wales"}, {"record", c.record}});
    EXPECT_EQ(out["missing"], c.missing) << c.record;
    EXPECT_EQ(out["complete"], false);
    EXPECT_TRUE(out["keep_until"].is_null());
  }
}

// Arithmetic on the label's own withdrawal; trade: honey is not from boxes that were on during treatment.
TEST(MedicineRecord, honey_waits_for_the_withdrawal) {
  const auto honey = [](const Json& changes) { return record(changes)["honey"]["may_be_offered"]; };
  EXPECT_EQ(record({{"withdrawal_days", 28}, {"ended", "2026-10-02"}})["withdrawal_end"], "2026-10-30");
  EXPECT_EQ(honey({{"withdrawal_days", 28}, {"honey_taken", "2026-09-11"}}), false);
  EXPECT_EQ(honey({{"withdrawal_days", 28}, {"honey_taken", "2026-09-12"}}), true);
  EXPECT_EQ(honey({{"withdrawal_days", 28}, {"honey_taken", "2026-08-13"}}), true);
  EXPECT_EQ(honey({{"honey_taken", "2026-08-14"}}), true);
  EXPECT_EQ(honey({{"honey_taken", "2026-09-20"}, {"supers_on", true}}), false);
  EXPECT_EQ(honey({{"honey_taken", "2026-09-20"}, {"withdrawal_days", nullptr}}), false);
}

std::string gate(const Json& input) {
  return testing::answer("treatment-gate", input)["verdict"];
}

// Encyclopedia on thymol: best at day maxima of 20 to 25 C, weak below a mean of 15, not above 30; supers
// off.
TEST(TreatmentGate, thymol) {
  EXPECT_EQ(gate({{"kind", "thymol"}, {"day_max_C", 32}}), "refuse");
  EXPECT_EQ(gate({{"kind", "thymol"}, {"day_mean_C", 13}}), "warn");
  EXPECT_EQ(gate({{"kind", "thymol"}, {"day_max_C", 22}}), "ok");
  EXPECT_EQ(gate({{"kind", "thymol"}, {"day_max_C", 22}, {"day_mean_C", 16}, {"supers_on", true}}), "refuse");
}

// Supplier article on formic acid in hot weather: day maxima of 10 to 29.5 C; from 33 C it endangers queen
// and brood. One of the few classes that some labels allow with supers on.
TEST(TreatmentGate, formic_acid) {
  for (const double within : {12.0, 20.0, 29.5})
    EXPECT_EQ(gate({{"kind", "formic"}, {"day_max_C", within}}), "ok") << within;
  for (const double outside : {9.9, 29.6, 33.0})
    EXPECT_EQ(gate({{"kind", "formic"}, {"day_max_C", outside}}), "refuse") << outside;
  EXPECT_EQ(gate({{"kind", "formic"}, {"day_max_C", 20}, {"supers_on", true}}), "warn");
}

// A regulator's notice on amitraz: not in a flow and no supers. Official leaflet on managing varroa:
// resistance to pyrethroids is tested. From memory: oxalic kinds without brood, above 3 to 5 C, supers off.
TEST(TreatmentGate, strips_and_oxalic_acid) {
  EXPECT_EQ(gate({{"kind", "amitraz"}, {"supers_on", true}}), "refuse");
  EXPECT_EQ(gate({{"kind", "amitraz"}, {"supers_on", false}}), "ok");
  EXPECT_EQ(gate({{"kind", "pyrethroid"}, {"supers_on", true}}), "refuse");
  EXPECT_EQ(gate({{"kind", "pyrethroid"}}), "warn");
  for (const char* kind : {"oxalic_trickle", "oxalic_vapour"}) {
    EXPECT_EQ(gate({{"kind", kind}, {"day_max_C", 7}, {"brood", false}}), "ok");
    EXPECT_EQ(gate({{"kind", kind}, {"day_max_C", 7}, {"brood", true}}), "warn");
    EXPECT_EQ(gate({{"kind", kind}, {"day_max_C", 1}, {"brood", false}}), "refuse");
    EXPECT_EQ(gate({{"kind", kind}, {"day_max_C", 7}, {"supers_on", true}}), "refuse");
  }
}

TEST(TreatmentGate, never_names_a_dose_and_always_the_label) {
  for (const char* kind : {"thymol", "formic", "amitraz", "pyrethroid", "oxalic_trickle", "oxalic_vapour"}) {
    const Json out = testing::answer("treatment-gate", {{"kind", kind}, {"day_max_C", 22}});
    EXPECT_NE(out["first"].get<std::string>().find("read the label first"), std::string::npos);
    const std::string all = out.dump();
    for (const char* dose : {" ml", " mL", " gram", " g ", "strips per", "drops"})
      EXPECT_EQ(all.find(dose), std::string::npos) << kind << dose;
  }
}

}  // namespace
}  // namespace beegarth
