#include "book/clock.hpp"

#include "desk.hpp"

namespace beegarth::book {
namespace {

using entries::Written;

TEST(Clock, follows_the_wall_clock_when_that_goes_on) {
  EXPECT_EQ(tick({1000, 5}, 2000), (Written{2000, 0}));
}

TEST(Clock, never_runs_back_when_the_wall_clock_does) {
  EXPECT_EQ(tick({5000, 0}, 1000), (Written{5000, 1}));
  EXPECT_EQ(tick({5000, 7}, -1), (Written{5000, 8}));
}

TEST(Clock, a_full_counter_borrows_the_next_millisecond) {
  EXPECT_EQ(tick({5000, 4095}, 5000), (Written{5001, 0}));
}

TEST(Clock, a_clock_set_to_a_far_century_leaves_room_for_later_entries) {
  const Written far = tick({0, 0}, std::numeric_limits<std::int64_t>::max());
  EXPECT_LT(far.utc_ms, 4'102'444'800'001);
  EXPECT_GT(tick(far, 0), far);
}

TEST(Ids, sort_in_the_order_in_which_they_were_made_within_one_millisecond) {
  Desk desk;
  const auto surroundings = desk.surroundings();
  Written written{desk.now_ms, 0};
  std::string last;
  for (int i = 0; i < 10000; ++i) {
    const std::string id = new_entry_id(written, surroundings).text();
    ASSERT_LT(last, id);
    last = id;
    written = tick(written, desk.now_ms);
  }
}

TEST(Book, entries_written_under_a_clock_that_jumps_back_stay_in_order) {
  Folder folder;
  Desk desk;
  Book book = new_book(folder.file("a.garth"), desk);
  std::vector<entries::Entry> kept;
  for (const std::int64_t jump : {0LL, 86'400'000LL, -400LL * 86'400'000LL, 5LL}) {
    desk.now_ms += jump;
    kept.push_back(book.append({note("jump")})->front());
  }
  for (std::size_t i = 1; i < kept.size(); ++i) {
    EXPECT_GT(kept[i].written, kept[i - 1].written);
    EXPECT_GT(kept[i].id, kept[i - 1].id);
  }
  EXPECT_TRUE(book.verify()->faults.empty());
}

TEST(Book, what_is_written_on_one_device_comes_after_what_any_other_device_wrote) {
  Folder folder;
  Desk desk;
  const std::string path = folder.file("a.garth");
  new_book(path, desk);
  std::vector<entries::Entry> kept;
  for (const auto& [device, jump] : {std::pair{"barn", 0LL},
                                     {"zinc", 86'400'000LL},
                                     {"attic", -900'000LL},
                                     {"middle", -86'400'000LL},
                                     {"barn", 5LL}}) {
    desk.now_ms += jump;
    auto book = Book::open(path, {.device = device}, desk.surroundings());
    kept.push_back(book->append({note(device)})->front());
  }
  for (std::size_t i = 1; i < kept.size(); ++i) EXPECT_GT(kept[i].written, kept[i - 1].written);
}

}  // namespace
}  // namespace beegarth::book
