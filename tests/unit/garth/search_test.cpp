// Finding entries, and the line of corrections of one. The book is invented.
#include "garth/search.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

#include "book/json_entry.hpp"
#include "garth/kind_groups.hpp"
#include "unit/book/desk.hpp"
#include "unit/garth/told_book.hpp"

namespace beegarth::garth {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

class Search : public ::testing::Test {
 protected:
  Search() {
    told.must(day_of(5, 1),
              entries::Inspection{.colony = alder, .seams = 6, .remark = "very calm, Ödland side"});
    look = told.last();
    told.must(day_of(5, 9), entries::Weight{.colony = birch, .kg = 31});
    told.must(day_of(5, 20), entries::Feed{.colony = alder, .kg = 2, .form = entries::FeedForm::syrup});
    feed = told.last();
    told.must(day_of(5, 21), entries::Weather{.site = SiteId("bank"), .temperature_max_C = 18});
  }
  Expected<FoundEntries> ask(const EntrySearch& search) const {
    const auto standing = told.standing(day_of(6, 5));
    return search_entries(in_a_book(), book::state_of(standing, day_of(6, 5)), search);
  }
  // What was told so far, in a file.
  book::Book in_a_book() const {
    std::string lines;
    book::Link link{.previous = std::string(64, '0')};
    for (const entries::Entry& entry : told.all()) {
      link = {entry, link.sequence + 1, link.sequence == 0 ? link.previous : link.hash, {}};
      link.hash = book::hash_of(link);
      lines += book::line_of(link) + "\n";
    }
    static int books = 0;
    book::Desk desk;
    book::Book book = book::new_book(folder.file(std::to_string(++books) + ".garth"), desk);
    if (const auto count = book.import_lines(lines, "told", false); !count)
      throw std::runtime_error(one_line(count.problem()));
    return book;
  }
  // The kinds found, newest first.
  std::vector<std::string> kinds(EntrySearch search) const {
    search.from = day_of(5, 1);
    std::vector<std::string> list;
    const auto answer = ask(search);
    for (const auto& one : answer->entries) list.emplace_back(entries::kind_name(one.entry.payload));
    return list;
  }
  FoundEntry found(const EntryId& id) const {
    const auto answer = ask({});
    for (const auto& one : answer->entries)
      if (one.entry.id == id) return one;
    throw std::runtime_error("not found");
  }

  book::Folder folder;
  ToldBook told;
  EntryId look, feed;
};

TEST_F(Search, finds_everything_newest_first) {
  EXPECT_THAT(kinds({}), ElementsAre("weather", "feed", "weight", "inspection"));
}

TEST_F(Search, finds_words_in_remarks_names_and_what_is_read_back_capitals_or_not) {
  EXPECT_THAT(kinds({.text = "CALM"}), ElementsAre("inspection"));
  EXPECT_THAT(kinds({.text = "ödland"}), ElementsAre("inspection"));
  EXPECT_THAT(kinds({.text = "Birch"}), ElementsAre("weight"));
  EXPECT_THAT(kinds({.text = "6 seams"}), ElementsAre("inspection"));
  EXPECT_THAT(kinds({.text = "  calm   alder "}), ElementsAre("inspection")) << "each word, in any order";
  EXPECT_THAT(kinds({.text = "calm birch"}), IsEmpty());
}

TEST_F(Search, keeps_to_a_kind_a_group_or_all_but_the_weather) {
  EXPECT_THAT(kinds({.kind = "feed"}), ElementsAre("feed"));
  EXPECT_THAT(kinds({.kind = "seen"}), ElementsAre("weight", "inspection"));
  EXPECT_THAT(kinds({.kind = "notebook"}), ElementsAre("feed", "weight", "inspection"));
}

TEST_F(Search, a_site_takes_in_its_hives_and_their_colonies) {
  EXPECT_THAT(kinds({.about = "alder"}), ElementsAre("feed", "inspection"));
  EXPECT_THAT(kinds({.about = "Alder"}), ElementsAre("feed", "inspection"));
  EXPECT_THAT(kinds({.about = "bank"}), ElementsAre("weather", "feed", "weight", "inspection"));
  EXPECT_THAT(kinds({.about = "yard"}), IsEmpty());
}

TEST_F(Search, keeps_to_a_span_of_days_both_included) {
  const auto some = ask({.from = day_of(5, 9), .to = day_of(5, 20)});
  ASSERT_TRUE(some);
  EXPECT_EQ(some->entries.size(), 2U);
}

TEST_F(Search, page_by_page_every_entry_comes_once) {
  const std::size_t all = ask({})->entries.size();
  std::vector<EntryId> seen;
  EntrySearch search{.limit = 3};
  for (bool more = true; more;) {
    const auto page = ask(search);
    ASSERT_TRUE(page);
    EXPECT_EQ(page->count, all);
    EXPECT_LE(page->entries.size(), 3U);
    for (const auto& one : page->entries) {
      EXPECT_THAT(seen, Not(Contains(one.entry.id)));
      seen.push_back(one.entry.id);
    }
    more = page->more;
    search.after = seen.back().text();
  }
  EXPECT_EQ(seen.size(), all);
}

TEST_F(Search, says_what_there_is_not) {
  EXPECT_EQ(ask({.kind = "honeycomb"}).problem().where, "kind");
  EXPECT_EQ(ask({.about = "nobody"}).problem().where, "about");
  EXPECT_EQ(ask({.after = "nothing"}).problem().where, "after");
  EXPECT_EQ(ask({.from = day_of(5, 2), .to = day_of(5, 1)}).problem().where, "from");
}

TEST_F(Search, a_corrected_entry_is_found_and_names_what_corrects_it) {
  ASSERT_EQ(told.say(day_of(5, 1), entries::Inspection{.colony = alder, .seams = 7}, look), "");
  const EntryId correction = told.last();
  EXPECT_FALSE(found(look).fate.counts);
  EXPECT_THAT(found(look).fate.corrected_by, ElementsAre(correction));
  EXPECT_TRUE(found(correction).fate.counts);
  const auto state = book::state_of(told.standing(day_of(6, 5)), day_of(6, 5));
  EXPECT_EQ(found_json(found(look), state)["superseded_by"], correction.text());
}

TEST_F(Search, an_entry_taken_back_is_found_and_names_the_removal) {
  ASSERT_EQ(told.say(day_of(6, 1), entries::Removed{.entry = feed, .reason = "other hive"}), "");
  const EntryId removal = told.last();
  EXPECT_FALSE(found(feed).fate.counts);
  EXPECT_EQ(found(feed).fate.removed_by, removal);
  EXPECT_TRUE(found(removal).fate.counts);
  ASSERT_EQ(told.say(day_of(6, 2), entries::Removed{.entry = removal}), "");
  EXPECT_TRUE(found(feed).fate.counts) << "the removal was itself taken back";
  EXPECT_FALSE(found(removal).fate.counts);
}

TEST_F(Search, a_line_tells_what_was_known_then_and_what_is_known_now) {
  ASSERT_EQ(told.say(day_of(5, 1), entries::Inspection{.colony = alder, .seams = 7}, look), "");
  const EntryId first = told.last();
  ASSERT_EQ(told.say(day_of(5, 1), entries::Inspection{.colony = alder, .seams = 8}, first), "");
  const EntryId second = told.last();
  for (const EntryId& id : {look, first, second}) {
    const auto line = line_of_entry(in_a_book(), id);
    ASSERT_TRUE(line);
    ASSERT_EQ(line->entries.size(), 3U);
    EXPECT_EQ(line->entries.front().entry.id, look);
    EXPECT_THAT(line->known_then, ElementsAre(id)) << "when it was written it was the last word";
    EXPECT_THAT(line->known_now, ElementsAre(second));
  }
  ASSERT_EQ(told.say(day_of(6, 1), entries::Removed{.entry = second}), "");
  const auto line = line_of_entry(in_a_book(), look);
  EXPECT_EQ(line->entries.size(), 4U) << "the removal belongs to the line";
  EXPECT_THAT(line->known_now, IsEmpty());
  EXPECT_FALSE(line_of_entry(in_a_book(), EntryId("nothing")));
}

TEST(KindGroups, hold_each_kind_once_and_no_group_is_called_like_a_kind) {
  std::map<std::string, int> times;
  for (const KindGroup& group : kind_groups()) {
    EXPECT_FALSE(entries::empty_payload(group.name)) << group.name;
    for (const GroupedKind& one : group.kinds) ++times[std::string(one.kind)];
  }
  EXPECT_EQ(times.size(), entries::kind_count);
  for (std::size_t i = 0; i < entries::kind_count; ++i)
    EXPECT_EQ(times[std::string(entries::kind_name_at(i))], 1) << entries::kind_name_at(i);
}

TEST(KindGroups, name_the_key_that_a_kind_brings_in_by_a_field_that_it_has) {
  for (const KindGroup& group : kind_groups()) {
    for (const GroupedKind& one : group.kinds) {
      if (one.brings_in.empty()) continue;
      EXPECT_THAT(book::schema_json(one.kind), HasSubstr("\"" + std::string(one.brings_in) + "\":"))
          << one.kind;
    }
  }
}

}  // namespace
}  // namespace beegarth::garth
