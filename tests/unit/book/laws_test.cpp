// Laws that hold of every book, tried with books drawn at random.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

#include "book/book.hpp"
#include "book/state.hpp"
#include "desk.hpp"
#include "random_entries.hpp"

namespace beegarth::book {
namespace {

using entries::Entry;

std::vector<std::string> as_json(std::span<const Entry> entries) {
  std::vector<std::string> all;
  for (const Entry& entry : entries) all.push_back(entry_json(entry));
  return all;
}

RC_GTEST_PROP(Laws, every_payload_reads_back_to_the_same_canonical_text, ()) {
  const entries::Payload payload = random_payload();
  const std::string text = payload_json(payload);
  const auto read = payload_from_json(entries::kind_name(payload), text, "");
  RC_ASSERT(read.has_value());
  RC_ASSERT(payload_json(*read) == text);
}

RC_GTEST_PROP(Laws, a_payload_with_one_byte_changed_is_refused_or_still_a_valid_payload, ()) {
  const entries::Payload payload = random_payload();
  std::string text = payload_json(payload);
  text[*rc::gen::inRange<std::size_t>(0, text.size())] = static_cast<char>(*rc::gen::inRange(0, 256));
  const auto read = payload_from_json(entries::kind_name(payload), text, "");
  if (read) RC_ASSERT(entries::validate(*read).has_value());
  if (!read) RC_ASSERT(!read.problem().what.empty());
}

// Random drafts, some correcting or taking back earlier entries, on two books that swap lines at the end.
struct Told {
  Folder folder;
  Desk desk;
  std::vector<Book> books;

  Told() {
    books.push_back(new_book(folder.file("one.garth"), desk));
    books.push_back(new_book(folder.file("two.garth"), desk));
    const int lines = *rc::gen::inRange(0, 12);
    for (int i = 0; i < lines; ++i) append(books[static_cast<std::size_t>(*rc::gen::inRange(0, 2))]);
  }
  void append(Book& book) {
    desk.now_ms += *rc::gen::inRange(-5000, 5000);
    const auto known = book.entries();
    if (!known) RC_FAIL(one_line(known.problem()));
    const auto there = *known;
    std::vector<Draft> drafts;
    const int count = *rc::gen::inRange(1, 4);
    for (int i = 0; i < count; ++i) {
      Draft draft{Date::from_day_number(*rc::gen::inRange(20000, 20010)), {}, random_payload(), {}};
      if (*rc::gen::arbitrary<bool>()) draft.happened_hour = Filler::within({0, 24, "h"});
      if (!there.empty()) {
        const EntryId& target = there[*rc::gen::inRange<std::size_t>(0, there.size())].id;
        const int link = *rc::gen::inRange(0, 4);
        if (link == 1) draft.supersedes = target;
        if (link == 2) draft.payload = entries::Removed{.entry = target};
      }
      drafts.push_back(std::move(draft));
    }
    const auto kept = book.append(drafts);
    if (!kept) RC_FAIL(one_line(kept.problem()));
    RC_ASSERT(kept->size() == drafts.size());
  }
};

RC_GTEST_PROP(Laws, books_that_swap_lines_are_equal_sound_and_round_trip, ()) {
  Told told;
  Book& one = told.books[0];
  Book& two = told.books[1];
  const auto to_one = one.import_lines(*two.export_lines(), "two", false);
  RC_ASSERT(to_one.has_value());
  const auto to_two = two.import_lines(*one.export_lines(), "one", false);
  RC_ASSERT(to_two.has_value());
  RC_ASSERT(*one.export_lines() == *two.export_lines());
  RC_ASSERT(*one.head() == *two.head());
  const auto ones = one.entries(), twos = two.entries();
  if (!ones) RC_FAIL(one_line(ones.problem()));
  if (!twos) RC_FAIL(one_line(twos.problem()));
  RC_ASSERT(as_json(*ones) == as_json(*twos));
  RC_ASSERT(one.verify()->faults.empty());

  Book third = new_book(told.folder.file("three.garth"), told.desk);
  RC_ASSERT(third.import_lines(*one.export_lines(), "one", false).has_value());
  RC_ASSERT(*third.export_lines() == *one.export_lines());
}

RC_GTEST_PROP(Laws, what_stands_is_part_of_the_book_and_ever_the_same, ()) {
  Told told;
  const auto said = *told.books[0].entries();
  const std::vector<Entry> all(said.begin(), said.end());
  const Date last = Date::from_day_number(20010);
  const auto standing = standing_entries(all, last);

  std::vector<Entry> shuffled = all;
  std::reverse(shuffled.begin(), shuffled.end());
  RC_ASSERT(as_json(standing_entries(shuffled, last)) == as_json(standing));

  std::set<std::string> superseded;
  std::set<std::string> there;
  for (const Entry& entry : all) {
    there.insert(entry.id.text());
    if (entry.supersedes) superseded.insert(entry.supersedes->text());
  }
  std::set<std::string> standing_ids;
  for (const Entry& entry : standing) {
    RC_ASSERT(there.count(entry.id.text()) == 1);
    RC_ASSERT(superseded.count(entry.id.text()) == 0);
    RC_ASSERT(standing_ids.insert(entry.id.text()).second);
  }
  // Entries that nothing touches stand.
  std::set<std::string> touched = superseded;
  for (const Entry& entry : all) {
    if (const auto* removed = std::get_if<entries::Removed>(&entry.payload))
      touched.insert(removed->entry.text());
  }
  for (const Entry& entry : all) {
    const bool plain = !entry.supersedes && !std::holds_alternative<entries::Removed>(entry.payload);
    if (plain && touched.count(entry.id.text()) == 0) RC_ASSERT(standing_ids.count(entry.id.text()) == 1);
  }
  // An earlier day shows exactly the entries that had happened by then.
  const Date earlier = Date::from_day_number(20004);
  std::vector<Entry> until;
  for (const Entry& entry : standing) {
    if (entry.happened <= earlier) until.push_back(entry);
  }
  RC_ASSERT(as_json(standing_entries(all, earlier)) == as_json(until));
  // What was known at an instant does not depend on what was written later.
  if (!all.empty()) {
    const entries::Written instant = all[*rc::gen::inRange<std::size_t>(0, all.size())].written;
    std::vector<Entry> known;
    std::copy_if(all.begin(), all.end(), std::back_inserter(known),
                 [&](const Entry& entry) { return entry.written <= instant; });
    RC_ASSERT(as_json(standing_entries(all, last, instant)) == as_json(standing_entries(known, last)));
  }
}

// ---- what there is, from the few entries that say it ----

entries::Payload something_that_says_what_there_is() {
  const std::string n = std::to_string(*rc::gen::inRange(0, 3)), m = std::to_string(*rc::gen::inRange(0, 3));
  const ColonyId colony("c" + n);
  const int year = *rc::gen::inRange(2020, 2026);
  switch (*rc::gen::inRange(0, 12)) {
    case 0:
      return entries::Site{
          .site = SiteId("s" + n), .name = "Field " + m, .latitude_deg = 51, .longitude_deg = 0};
    case 1:
      return entries::SiteClosed{.site = SiteId("s" + n)};
    case 2:
      return entries::Hive{
          .hive = HiveId("h" + n), .name = "Hive " + m, .site = SiteId("s" + m), .type = "own"};
    case 3:
      return entries::ColonyBegan{
          .colony = colony, .name = "Stock " + m, .hive = HiveId("h" + m), .queen_year = year};
    case 4:
      return entries::ColonyMoved{.colony = colony, .hive = HiveId("h" + m)};
    case 5:
      return entries::ColonyEnded{.colony = colony, .cause = "starved"};
    case 6:
      return entries::Split{.colony = colony,
                            .into = ColonyId("c" + m),
                            .name = "Split",
                            .hive = HiveId("h" + m),
                            .queen_goes = true};
    case 7:
      return entries::Unite{.colony = colony, .from = ColonyId("c" + m)};
    case 8:
      return entries::Queen{.colony = colony, .event = entries::QueenEvent::clipped, .year = year};
    case 9:
      return entries::Setting{.name = "n" + n, .value = m};
    case 10:
      return entries::Weight{.colony = colony, .kg = 30};
    default:
      return entries::Note{.text = "nothing", .colony = colony, .site = {}};
  }
}

std::vector<std::string> told_of(const State& state) {
  std::vector<std::string> told;
  const auto say = [&](const std::string& key, const entries::Payload& payload) {
    told.push_back(key + payload_json(payload));
  };
  for (const auto& [id, site] : state.sites) say(id.text(), site);
  for (const auto& [id, hive] : state.hives) say(id.text(), hive);
  for (const auto& [id, colony] : state.colonies) {
    say(id.text() + colony.began_on.iso() + colony.hive.text() + colony.began_entry.text(), colony.began);
    if (colony.ended) say(colony.ended_on->iso(), *colony.ended);
  }
  for (const auto& [name, value] : state.settings) told.push_back(name + value);
  return told;
}

RC_GTEST_PROP(Laws, what_there_is_can_be_told_without_reading_every_entry, ()) {
  Folder folder;
  Desk desk;
  Book book = new_book(folder.file("a.garth"), desk);
  std::vector<EntryId> there;
  for (int i = *rc::gen::inRange(0, 40); i > 0; --i) {
    Draft draft{
        Date::from_day_number(*rc::gen::inRange(20000, 20010)), {}, something_that_says_what_there_is(), {}};
    const int link = there.empty() ? 0 : *rc::gen::inRange(0, 5);
    if (link == 1) draft.supersedes = there[*rc::gen::inRange<std::size_t>(0, there.size())];
    if (link == 2)
      draft.payload = entries::Removed{.entry = there[*rc::gen::inRange<std::size_t>(0, there.size())]};
    const auto kept = book.append({draft});
    if (kept) there.push_back(kept->front().id);
  }
  const Date date = Date::from_day_number(*rc::gen::inRange(19999, 20011));
  const auto some = *book.entries_of(outline_kinds());
  RC_ASSERT(told_of(outline_of(standing_entries(some, date), date)) ==
            told_of(state_of(standing_entries(*book.entries(), date), date)));
}

}  // namespace
}  // namespace beegarth::book
