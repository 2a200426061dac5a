#include "scene/layout.hpp"

#include <gtest/gtest.h>

namespace beegarth::scene {
namespace {

// Every run of text is one line of 5 mm.
double five(const Text&) {
  return 5;
}

double lowest(const Page& page) {
  double y = 0;
  for (const Item& item : page.items)
    if (const auto* text = std::get_if<Text>(&item)) y = std::max(y, text->at.y_mm + 5);
  return y;
}

TEST(Layout, StacksBlocksBelowEachOther) {
  const Block block = stacked({paragraph("one", 100, {}, five), gap(3), paragraph("two", 100, {}, five)});
  EXPECT_DOUBLE_EQ(block.height_mm, 13);
  EXPECT_DOUBLE_EQ(std::get<Text>(block.items.back()).at.y_mm, 8);
}

TEST(Layout, TurnsThePageRatherThanTearABlock) {
  Pages pages(Paper::a4, 15);
  for (int i = 0; i < 30; ++i) pages.place(stacked({paragraph("line", 100, {}, five), gap(20)}));
  const auto finished = std::move(pages).finished();
  EXPECT_EQ(finished.size(), 3U);  // arithmetic: 267 mm hold ten blocks of 25 mm
  for (const Page& page : finished) EXPECT_LE(lowest(page), page.height_mm - 15);
}

// Ten bytes a line, lines of 4 mm.
double by_length(const Text& text) {
  return 4.0 * static_cast<double>((text.text.size() + 9) / 10);
}

TEST(Layout, ARowThatIsTooLongIsCutAndLosesNoWord) {
  std::string words;
  for (int i = 100; i < 300; ++i) words += std::to_string(i) + " ";
  const auto rows = cut_row({"short", words, std::string(90, 'x')}, {1, 1, 1}, 180, 40, {}, by_length);
  ASSERT_GT(rows.size(), 5U);
  std::string joined;
  for (const auto& row : rows) {
    EXPECT_LE(table({}, {row}, {1, 1, 1}, 180, {}, by_length).height_mm, 40);
    joined += row[1].starts_with("\u2026 ") ? row[1].substr(4) : row[1];
  }
  EXPECT_EQ(joined, words);
  EXPECT_EQ(rows[0][0], "short");
  EXPECT_EQ(rows[1][0], "");
  EXPECT_EQ(cut_row({"a", "b"}, {1, 1}, 100, 40, {}, by_length).size(), 1U);
}

TEST(Layout, ABlockLongerThanAPageStartsOnAFreshOne) {
  Pages pages(Paper::letter, 15);
  pages.place(paragraph("line", 100, {}, five));
  pages.place({{Text{{0, 0}, "long", 11}}, 400});
  EXPECT_EQ(std::move(pages).finished().size(), 2U);
}

TEST(Layout, PaperIsOfItsStandardSize) {
  EXPECT_DOUBLE_EQ(blank(Paper::a4).height_mm, 297);            // ISO 216
  EXPECT_DOUBLE_EQ(blank(Paper::letter).width_mm, 8.5 * 25.4);  // ANSI/ASME Y14.1
}

TEST(Layout, BoxesToWriteInFillTheirRow) {
  const Block row = write_ins({{"eggs", 1}, {"notes", 3}}, 102, 11);
  double right = 0;
  for (const Item& item : row.items)
    if (const auto* box = std::get_if<Rectangle>(&item))
      right = std::max(right, box->at.x_mm + box->width_mm);
  EXPECT_NEAR(right, 102, 1e-9);
}

TEST(Layout, ATableHasARowForEachRow) {
  const Block block = table({"a", "b"}, {{"1", "2"}, {"3", "4"}}, {1, 2}, 90, {}, five);
  int texts = 0;
  for (const Item& item : block.items) texts += std::holds_alternative<Text>(item) ? 1 : 0;
  EXPECT_EQ(texts, 6);
}

TEST(Scene, MovesEveryKindOfItem) {
  EXPECT_DOUBLE_EQ(std::get<Line>(moved(Line{{0, 0}, {1, 1}, {}}, 2, 3)).to.y_mm, 4);
  EXPECT_DOUBLE_EQ(std::get<Band>(moved(Band{{{0, 0}}, {{0, 1}}, pale}, 2, 3)).lower.front().y_mm, 4);
  EXPECT_DOUBLE_EQ(std::get<Polyline>(moved(Polyline{{{0, 0}}, {}}, 2, 3)).points.front().x_mm, 2);
}

}  // namespace
}  // namespace beegarth::scene
