// A key that no rule makes answers nothing, and is refused. That every need made can be answered is checked
// wherever needs are made (quiet_colony.hpp).
#include "work/need_keys.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace beegarth::work {
namespace {

using testing::HasSubstr;

TEST(NeedKeys, as_the_plan_writes_them_are_sound) {
  for (const char* key : {"feed/alder", "stocks/all/2027-4", "stocks-over/withy/2026-12",
                          "mouse-guard/alder/2026", "after/alder/2026-06-05"})
    EXPECT_TRUE(sound_need_key(key)) << key;
}

TEST(NeedKeys, that_answer_nothing_are_refused_with_what_is_meant) {
  const auto why_not = [](const char* key) {
    const Outcome sound = sound_need_key(key);
    return sound ? std::string(key) + " was taken" : sound.problem().remedy;
  };
  for (const char* key : {"", "alder", "fed/alder", "stock/all/2027-4", "/alder"})
    EXPECT_THAT(why_not(key), HasSubstr("copy the key from the plan")) << key;
  for (const char* key : {"stocks/n/8", "stocks/n", "stocks//2027-4", "stocks/n/2027-13", "stocks/n/2027-04"})
    EXPECT_THAT(why_not(key), HasSubstr("a month like 2027-4")) << key;
  for (const char* key : {"feed/", "feed/alder/2026"})
    EXPECT_THAT(why_not(key), HasSubstr("colony or site")) << key;
  EXPECT_THAT(why_not("mouse-guard/alder"), HasSubstr("the year"));
  EXPECT_THAT(why_not("after/alder/2026-13-05"), HasSubstr("a day like 2027-04-30"));
}

}  // namespace
}  // namespace beegarth::work
