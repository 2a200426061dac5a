#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

const SiteId bank("bank"), yard("yard");
const PatchId slope("slope"), hedge("hedge");

struct FoundNest : testing::Test {
  FoundNest() {
    for (const auto& patch : {slope, hedge})
      book.must(day_of(3, 1), entries::Patch{.patch = patch, .site = bank, .name = patch.text()});
    book.must(day_of(4, 1), nest);
  }
  entries::Cut cut(std::optional<PatchId> patch, const SiteId& site = bank) const {
    return {.site = site, .patch = std::move(patch), .what = "grass"};
  }
  entries::Nest nest{.site = bank, .patch = slope, .of = entries::NestOf::mining_bee, .place = "halfway up"};
  ToldBook book;
  Date after = day_of(5, 1);
};

TEST_F(FoundNest, locks_its_patch_against_cutting_digging_and_covering) {
  using entries::PlantDeed;
  const auto care = [](PlantDeed deed) {
    return entries::PlantCare{.site = bank, .patch = slope, .plant = "thyme", .deed = deed};
  };
  const std::vector<entries::Payload> refused = {
      cut(slope),
      entries::Planted{.site = bank, .patch = slope, .plant = "thyme"},
      care(PlantDeed::gaps_filled),
      care(PlantDeed::weeded),
      care(PlantDeed::cut_back),
      care(PlantDeed::mulched)};
  for (const auto& deed : refused)
    EXPECT_THAT(book.say(after, deed),
                HasSubstr("a nest (mining bee, halfway up) was found there on 2026-04-01"))
        << book::payload_json(deed);
  EXPECT_THAT(book.say(after, care(PlantDeed::watered)), IsEmpty());
  EXPECT_THAT(book.say(after, care(PlantDeed::guarded)), IsEmpty());
}

TEST_F(FoundNest, leaves_other_patches_and_sites_and_days_before_it_alone) {
  EXPECT_THAT(book.say(after, cut(hedge)), IsEmpty());
  EXPECT_THAT(book.say(after, cut({}, yard)), IsEmpty());
  EXPECT_THAT(book.say(day_of(3, 20), cut(slope)), IsEmpty());
  EXPECT_THAT(book.say(after, cut({})), HasSubstr("was found there")) << "of no patch: it may be that one";
}

TEST_F(FoundNest, unlocks_when_it_is_gone) {
  nest.gone = true;
  book.must(after, nest);
  EXPECT_THAT(book.say(after, cut(slope)), IsEmpty());
}

TEST_F(FoundNest, of_no_patch_locks_its_site) {
  book.must(day_of(4, 2),
            entries::Nest{.site = yard, .of = entries::NestOf::bumblebee, .place = "by the gate"});
  EXPECT_THAT(book.say(after, cut({}, yard)), HasSubstr("the site 'yard'"));
}

}  // namespace
}  // namespace beegarth::garth
