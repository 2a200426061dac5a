#include "garth/plan/quarantined.hpp"

#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

const ColonyId swarm("swarm");

std::optional<Date> planned_until(const ToldBook& book, Date today) {
  const Tables tables = *Tables::built_in();
  work::NeedsInput input{.today = today};
  input.colonies.push_back({.colony = swarm, .name = "Swarm", .site = SiteId("bank")});
  EXPECT_TRUE(take_quarantines(book.standing(today), tables["work"], input));
  const auto& until = input.colonies.front().quarantine_until;
  return until ? std::optional(until->date) : std::nullopt;
}

TEST(Quarantined, a_swarm_is_planned_for_as_kept_apart_until_it_was_looked_through) {
  ToldBook book;
  book.must(
      day_of(5, 1),
      entries::ColonyBegan{.colony = swarm, .name = "Swarm", .hive = h3, .how = entries::Beginning::swarm});
  EXPECT_EQ(planned_until(book, day_of(5, 10)), day_of(6, 12));
  EXPECT_EQ(planned_until(book, day_of(6, 20)), day_of(6, 20)) << "the look is overdue";
  book.must(day_of(6, 21), entries::Inspection{.colony = swarm, .capped_brood = true});
  EXPECT_EQ(planned_until(book, day_of(6, 22)), std::nullopt);
}

}  // namespace
}  // namespace beegarth::garth
