// A filled sheet keyed in: the order of the printed sheet leads, an empty box says nothing, a wrong value
// names its row and box, and all is kept or none. Everything invented.
#include "garth/sheet/keyed_sheet.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <memory>
#include <set>
#include <sstream>

#include "../draw/pdf.hpp"
#include "draw/draw.hpp"
#include "garth/keep/keep.hpp"
#include "garth/sheet/sheet.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

Date june(int day) {
  return *Date::from_ymd(2026, 6, day);
}

facts::Need need(const char* kind, const char* colony, const char* what) {
  facts::Need one;
  one.key = std::string(kind) + "/" + colony;
  one.what = what;
  one.site = SiteId("bank");
  one.colony = ColonyId(colony);
  one.earliest = one.best = one.latest = june(4);
  return one;
}

// A book on disk with three colonies at one site: Alder, Birch and one that is called "2".
class KeyedSheet : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    const std::string path = (folder / "sheet.garth").string();
    {
      auto book = book::Book::open(path, {.create = true}, machine_surroundings());
      ASSERT_TRUE(book);
      std::vector<book::Draft> drafts{
          {.happened = june(1),
           .payload = entries::Site{
               .site = SiteId("bank"), .name = "Bank", .latitude_deg = 51, .longitude_deg = -1}}};
      int place = 0;
      for (const auto& [key, name] : {std::pair("alder", "Alder"), {"birch", "Birch"}, {"two", "2"}}) {
        drafts.push_back({.happened = june(1),
                          .payload = entries::Hive{.hive = HiveId(std::string("h-") + key),
                                                   .name = std::string("Hive ") + name,
                                                   .site = SiteId("bank"),
                                                   .place = ++place,
                                                   .type = "invented",
                                                   .mesh_floor = key != std::string("birch")}});
        drafts.push_back({.happened = june(1),
                          .payload = entries::ColonyBegan{.colony = ColonyId(key),
                                                          .name = name,
                                                          .hive = HiveId(std::string("h-") + key),
                                                          .how = entries::Beginning::overwintered}});
      }
      ASSERT_TRUE(book->append(drafts));
    }
    auto opened = open_session(path, {.today = june(5), .read_only = false});
    ASSERT_TRUE(opened);
    session = std::make_unique<Session>(*std::move(opened));
    before = session->book.entries()->size();
  }
  void TearDown() override {
    session.reset();
    std::filesystem::remove_all(folder);
  }

  // Birch first, then Alder twice with Birch between: as the plan has it, and not as the hives stand.
  PlanAnswer plan() const {
    PlanAnswer answer;
    answer.names = names_of(*session);
    answer.plan.from = june(4);
    work::Visit visit;
    visit.date = june(4);
    visit.site = SiteId("bank");
    visit.jobs = {{need("feed", "birch", "feed syrup")},
                  {need("count-mites", "birch", "wash a sample")},
                  {need("look-cells", "alder", "look for queen cells")},
                  {need("heft", "birch", "heft both sides")},
                  {need("count-mites", "alder", "count board in")}};
    answer.plan.visits = {visit};
    return answer;
  }
  SheetToKeyIn sheet() const {
    return sheet_to_key_in(plan(), session->state, SiteId("bank"), june(4), june(4));
  }

  Expected<KeyedIn> key(const std::string& lines, bool keep = false) {
    const auto boxes = boxes_in_lines(sheet(), lines);
    if (!boxes) return boxes.problem();
    return key_in(*session, sheet(), *boxes, keep);
  }
  // Where and what of the refusal; and that nothing was written.
  Problem refused(const std::string& lines) {
    const auto answer = key(lines, true);
    EXPECT_EQ(session->book.entries()->size(), before) << lines;
    if (answer) {
      ADD_FAILURE() << "was taken: " << lines;
      return {};
    }
    EXPECT_EQ(answer.problem().kind, ProblemKind::bad_input);
    EXPECT_FALSE(answer.problem().remedy.empty()) << answer.problem().what;
    return answer.problem();
  }
  template <class Kind>
  Kind only(const std::string& lines) {
    const auto answer = key(lines);
    if (!answer) ADD_FAILURE() << one_line(answer.problem());
    EXPECT_EQ(answer->entries.size(), 1U);
    return std::get<Kind>(answer->entries.at(0).payload);
  }

  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("beegarth-sheet-" + std::to_string(::getpid()));
  std::unique_ptr<Session> session;
  std::size_t before = 0;
};

std::vector<std::string> rows_of(const SheetToKeyIn& sheet) {
  std::vector<std::string> rows;
  for (const auto& frame : sheet.frames) rows.push_back(frame.row);
  return rows;
}

std::string one_spaced(const std::string& text) {
  std::istringstream words(text);
  std::string out;
  for (std::string word; words >> word;) out += (out.empty() ? "" : " ") + word;
  return out;
}

// ---- the order of the sheet ----
TEST_F(KeyedSheet, stands_in_the_order_of_the_printed_sheet_and_the_rest_of_the_site_behind_it) {
  EXPECT_THAT(rows_of(sheet()), ElementsAre("#1 Birch", "#3 Alder", "#4 Birch", "#5 Alder", "colony 2"));
  EXPECT_TRUE(sheet().planned);
}

// The printed page is read back from its PDF: each box of a frame is on it, in that order.
TEST_F(KeyedSheet, asks_for_the_boxes_that_are_printed) {
  const SheetToKeyIn keyed = sheet();
  SheetFacts facts{.site = {SiteId("bank"), "Bank", "", "", false}, .names = plan().names};
  for (const auto& [id, colony] : session->state.colonies) {
    facts.dwellings[id].can_board = id != ColonyId("birch");
    facts.dwellings[id].can_see_seams = true;
  }
  const std::string page =
      one_spaced(read_back(draw::to_pdf(garth::sheet(plan().plan.visits[0], facts)), "keyed"));
  for (const auto& frame : keyed.frames) {
    if (frame.jobs.empty()) continue;
    for (const auto& set : frame.printed)
      for (const auto& row : set.rows)
        for (const auto& box : row)
          EXPECT_NE(page.find(one_spaced(box.printed())), std::string::npos) << box.printed() << page;
  }
  EXPECT_LT(page.find("kg given"), page.find("wash / roll"));
  EXPECT_LT(page.find("wash / roll"), page.find("sealed cells"));
  EXPECT_LT(page.find("sealed cells"), page.find("left, kg"));
  EXPECT_LT(page.find("left, kg"), page.find("board in"));
}

TEST_F(KeyedSheet, has_no_two_boxes_of_one_name_in_a_frame) {
  facts::Dwelling hive;
  for (const bool board : {true, false}) {
    hive.can_board = board;
    std::set<std::string> names;
    auto sets = every_set(&hive);
    sets.push_back(closing_set());
    for (const auto& set : sets)
      for (const auto& row : set.rows)
        for (const auto& box : row) EXPECT_TRUE(names.insert(box.name).second) << box.name;
  }
}

TEST_F(KeyedSheet, offers_no_box_that_the_hive_cannot_take) {
  facts::Dwelling log;
  log.can_board = log.can_heft = log.can_super = log.can_see_seams = false;
  std::string all;
  for (const auto& set : every_set(&log))
    for (const auto& row : set.rows)
      for (const auto& box : row) all += box.printed() + ";";
  for (const char* box : {"seams", "board", "super combs", "left, kg"}) EXPECT_THAT(all, Not(HasSubstr(box)));
  EXPECT_THAT(all, HasSubstr("wash / roll"));
}

TEST_F(KeyedSheet, without_such_a_visit_shows_the_colonies_of_the_site) {
  const auto other = sheet_to_key_in(plan(), session->state, SiteId("bank"), june(3), june(3));
  EXPECT_FALSE(other.planned);
  EXPECT_THAT(rows_of(other), ElementsAre("Alder", "Birch", "colony 2"));
  EXPECT_NE(box_named(other.frames[0], "sealed cells"), nullptr);
}

TEST_F(KeyedSheet, of_a_day_to_come_is_refused) {
  const auto coming = sheet_to_key_in(*session, {.site = "Bank", .date = june(6), .printed = {}});
  ASSERT_FALSE(coming);
  EXPECT_THAT(coming.problem().what, HasSubstr("still to come"));
  const auto later = sheet_to_key_in(*session, {.site = "Bank", .date = june(4), .printed = june(5)});
  ASSERT_FALSE(later);
  EXPECT_EQ(later.problem().where, "printed");
}

// ---- rows ----
TEST_F(KeyedSheet, knows_a_row_by_number_name_or_key) {
  const SheetToKeyIn keyed = sheet();
  for (const char* row : {"#3", "3", "#3 Alder", "#3 alder"})
    EXPECT_EQ((*frame_named(keyed, row))->row, "#3 Alder") << row;
  EXPECT_EQ((*frame_named(keyed, "two"))->row, "colony 2");
  EXPECT_FALSE(frame_named(keyed, "Alder")) << "it stands there twice";
  EXPECT_FALSE(frame_named(keyed, "Elm"));
}

// A hive may be called by a number, and that number may be another's on the sheet.
TEST_F(KeyedSheet, does_not_take_a_number_for_a_name_or_a_name_for_a_number) {
  const auto both = frame_named(sheet(), "2");
  ASSERT_FALSE(both);
  EXPECT_THAT(both.problem().what, HasSubstr("the name of one and the number of another"));
  EXPECT_EQ((*frame_named(sheet(), "#2"))->row, "#1 Birch");
  EXPECT_EQ((*frame_named(sheet(), "colony 2"))->colony, ColonyId("two"));
}

// ---- boxes become entries ----
TEST_F(KeyedSheet, a_look_through_every_comb_is_a_full_one_and_eggs_alone_a_quick_one) {
  const auto look = only<entries::Inspection>(
      "#3/seams of bees: 8,5\n#3/brood combs: 6\n#3/eggs: yes\n#3/queen: no\n#3/cups with egg: 2\n"
      "#3/open cells: 1\n#3/sealed cells: 0\n#3/store combs: 2\n#3/supers full: 75 %\n#3/calm: y");
  EXPECT_EQ(look.colony, ColonyId("alder"));
  EXPECT_EQ(look.look, entries::Look::full);
  EXPECT_EQ(look.seams, 8.5);
  EXPECT_EQ(look.brood_combs, 6);
  EXPECT_EQ(look.eggs, true);
  EXPECT_EQ(look.queen, false);
  EXPECT_EQ(look.cups_with_egg, 2);
  EXPECT_EQ(look.charged_cells, 1);
  EXPECT_EQ(look.sealed_cells, 0);
  EXPECT_EQ(look.store_combs, 2);
  EXPECT_EQ(look.super_share, 0.75);
  EXPECT_EQ(look.calm, true);
  const auto quick = only<entries::Inspection>("#3/eggs: yes");
  EXPECT_EQ(quick.look, entries::Look::quick);
  EXPECT_FALSE(quick.sealed_cells) << "an empty box is not a nought";
}

TEST_F(KeyedSheet, signs_are_named_with_commas_between_and_none_is_an_answer) {
  EXPECT_THAT(only<entries::Inspection>("#3/health signs: chalk brood, deformed_wings").signs,
              ElementsAre("chalk_brood", "deformed_wings"));
  const auto none = only<entries::Inspection>("#3/health signs: none");
  EXPECT_THAT(none.signs, IsEmpty());
  EXPECT_EQ(none.remark, "no signs of ill health seen");
}

TEST_F(KeyedSheet, mites_of_a_board_are_told_on_the_day_it_came_out) {
  const auto answer =
      key("#5/board in: 2026-05-30\n#5/board out: 2026-06-03\n#5/mites: 12\n#5/share counted: 50");
  ASSERT_TRUE(answer);
  ASSERT_EQ(answer->entries.size(), 1U);
  EXPECT_EQ(answer->entries[0].happened, june(3));
  const auto count = std::get<entries::MiteCount>(answer->entries[0].payload);
  EXPECT_EQ(count.method, entries::MiteMethod::board);
  EXPECT_EQ(count.days, 4);
  EXPECT_EQ(count.mites, 12);
  EXPECT_EQ(count.board_share, 0.5);
  EXPECT_EQ(only<entries::Note>("#5/board in: 2026-06-04").text, "board put in on 2026-06-04");
}

TEST_F(KeyedSheet, other_boxes_are_read_by_what_they_tell_of) {
  const auto wash = only<entries::MiteCount>("#1/wash or roll: Wash\n#1/bees: 300\n#1/mites: 7");
  EXPECT_EQ(wash.method, entries::MiteMethod::wash);
  EXPECT_EQ(wash.bees, 300);
  const auto feed = only<entries::Feed>("#1/kg given: 2.5\n#1/sugar: 60\n#1/syrup or fondant: syrup");
  EXPECT_EQ(feed.kg, 2.5);
  EXPECT_EQ(feed.sugar_pct, 60);
  EXPECT_EQ(only<entries::Weight>("#4/left: 16\n#4/right: 17,5").kg, 33.5);
  const auto felt = only<entries::Inspection>("#4/by feel: light");
  EXPECT_EQ(felt.look, entries::Look::outside);
  EXPECT_EQ(felt.remark, "hefted by feel: light");
  const auto room =
      only<entries::Room>("two/super combs put on: 11\ntwo/undrawn: 11\ntwo/brood combs taken off: 1");
  EXPECT_EQ(room.super_combs, 11);
  EXPECT_EQ(room.brood_combs, -1);
  EXPECT_EQ(room.undrawn, 11);
  const auto treated = only<entries::Treatment>(
      "two/kind of treatment: oxalic trickle\ntwo/batch: LX7\ntwo/withdrawal: 0\ntwo/brood: no");
  EXPECT_EQ(treated.kind, entries::TreatmentKind::oxalic_trickle);
  EXPECT_EQ(treated.batch, "LX7");
  EXPECT_EQ(treated.withdrawal_days, 0);
  EXPECT_EQ(treated.remark, "without brood");
}

TEST_F(KeyedSheet, a_dead_one_ends_and_a_sample_of_it_is_under_way) {
  const auto answer =
      key("two/dead: yes\ntwo/likely cause: starved\ntwo/combs of stores left: 0\ntwo/sample taken: yes");
  ASSERT_TRUE(answer) << one_line(answer.problem());
  ASSERT_EQ(answer->entries.size(), 3U);
  EXPECT_EQ(std::get<entries::ColonyEnded>(answer->entries[0].payload).cause, "starved");
  EXPECT_TRUE(std::holds_alternative<entries::DeadColony>(answer->entries[1].payload));
  EXPECT_EQ(std::get<entries::Sample>(answer->entries[2].payload).finding, entries::Finding::pending);
  EXPECT_EQ(only<entries::Inspection>("two/dead: no").remark, "it lives");
}

TEST_F(KeyedSheet, the_answer_goes_to_every_job_of_the_frame) {
  const auto done = key("#1/answer: done");
  ASSERT_TRUE(done);
  ASSERT_EQ(done->entries.size(), 2U);
  EXPECT_EQ(std::get<entries::NeedAnswered>(done->entries[0].payload).need, "feed/birch");
  EXPECT_EQ(std::get<entries::NeedAnswered>(done->entries[1].payload).need, "count-mites/birch");
  const auto off = only<entries::NeedAnswered>("#4/answer: put off until 2026-06-09");
  EXPECT_EQ(off.answer, entries::NeedAnswered::Answer::put_off);
  EXPECT_EQ(off.until, june(9));
  EXPECT_EQ(only<entries::NeedAnswered>("#4/answer: not done").answer,
            entries::NeedAnswered::Answer::skipped);
  EXPECT_EQ(only<entries::Note>("#4/notes: roof leaks").colony, ColonyId("birch"));
}

// ---- all or none ----
TEST_F(KeyedSheet, is_only_shown_before_it_is_kept_and_then_kept_in_its_own_order) {
  const std::string lines = "two/eggs: yes\n#3/brood combs: 6\n#1/kg given: 2\n#1/syrup or fondant: syrup\n";
  const auto shown = key(lines);
  ASSERT_TRUE(shown);
  EXPECT_FALSE(shown->kept);
  EXPECT_EQ(session->book.entries()->size(), before);
  const auto kept = key(lines, true);
  ASSERT_TRUE(kept);
  EXPECT_TRUE(kept->kept);
  ASSERT_EQ(session->book.entries()->size(), before + 3);
  std::vector<std::string> kinds;
  for (const auto& entry : kept->entries) {
    kinds.emplace_back(entries::kind_name(entry.payload));
    EXPECT_EQ(entry.happened, june(4));
    EXPECT_FALSE(entry.id.text().empty());
  }
  EXPECT_THAT(kinds, ElementsAre("feed", "inspection", "inspection"));
}

TEST_F(KeyedSheet, with_one_wrong_value_keeps_nothing_and_names_row_and_box) {
  const std::string sound = "#1/kg given: 2\n#1/syrup or fondant: syrup\n";
  for (const auto& [line, where] :
       {std::pair("#3/brood combs: six", "#3 Alder/brood combs"),
        {"#3/brood combs: 600", "#3 Alder/brood combs"},
        {"#3/eggs: perhaps", "#3 Alder/eggs"},
        {"#3/cups with egg: 1.5", "#3 Alder/cups with egg"},
        {"#3/supers full: 120", "#3 Alder/supers full"},
        {"#3/health signs: measles", "#3 Alder/health signs"},
        {"#3/health signs: none, chalk brood", "#3 Alder/health signs"},
        {"#5/mites: 12", "#5 Alder/board in"},
        {"#5/board out: 2026-06-03\n#5/board in: 2026-06-03\n#5/mites: 1", "#5 Alder/board out"},
        {"#5/board in: 3 June", "#5 Alder/board in"},
        {"#1/mites: 7", "#1 Birch/wash or roll"},
        {"#1/wash or roll: wash\n#1/mites: 7", "#1 Birch/bees"},
        {"#4/left: 16", "#4 Birch/right"},
        {"#4/answer: maybe", "#4 Birch/answer"},
        {"#4/answer: put off until June", "#4 Birch/answer"},
        {"#4/answer: put off until 2026-06-04", "#4 Birch/answer"},
        {"two/undrawn: 3", "colony 2/brood combs put on"},
        {"two/batch: LX7", "colony 2/kind of treatment"},
        {"two/likely cause: starved", "colony 2/dead"},
        {"two/dead: no\ntwo/sample taken: yes", "colony 2/dead"},
        {"two/dead: yes\ntwo/seams of bees: 4", "colony 2/dead"},
        {"#1/wash or roll: wash\n#1/mites: 300\n#1/bees: 3", "#1 Birch/mites"},
        {"#3/eggs: yes\n#3/Eggs: no", "#3 Alder/eggs"},
        {"#3/brood combs: nan", "#3 Alder/brood combs"}})
    EXPECT_EQ(refused(sound + line).where, where) << line;
}

TEST_F(KeyedSheet, goes_through_every_gate_and_names_the_box_that_one_refuses) {
  ASSERT_TRUE(keep(*session, {{.happened = june(1),
                               .payload = entries::KeeperRule{.rule = entries::Refusal::no_synthetic_strips,
                                                              .kept = true}}}));
  ++before;
  const Problem problem = refused("#3/brood combs: 6\ntwo/kind of treatment: amitraz\n");
  EXPECT_THAT(problem.what, HasSubstr("rule"));
  EXPECT_EQ(problem.where, "colony 2/kind of treatment");
}

TEST_F(KeyedSheet, lines_that_are_none_are_refused_with_their_number) {
  EXPECT_EQ(refused("#3/brood combs: 6\n\nAlder 6 combs\n").where, "line 3");
  EXPECT_EQ(refused("#3/weight: 6\n").where, "line 1");
  EXPECT_EQ(refused("-- a remark\nElm/brood combs: 6\n").where, "line 2");
  EXPECT_EQ(refused("").what, "nothing is filled in");
  EXPECT_EQ(refused(lines_to_fill_in(sheet())).what, "nothing is filled in");
}

}  // namespace
}  // namespace beegarth::garth
