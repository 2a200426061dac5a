#include "draw/draw.hpp"

#include <gtest/gtest.h>

#include "pdf.hpp"

namespace beegarth::draw {
namespace {

scene::Document drawing() {
  scene::Document document{"A drawing", *Date::from_ymd(2026, 6, 4), {scene::blank(scene::Paper::a4)}};
  auto& items = document.pages.front().items;
  items.emplace_back(scene::Text{{20, 20}, "Withy Meadow, 17 \u00b0C \u2013 dry", 14, true});
  items.emplace_back(scene::Rectangle{{20, 40}, 50, 20, scene::Pen{}, scene::pale, 2});
  items.emplace_back(scene::Polyline{{{20, 80}, {40, 70}, {60, 90}}, {0.5, scene::black, true}});
  items.emplace_back(scene::Band{{{20, 100}, {60, 105}}, {{20, 110}, {60, 120}}, scene::pale});
  document.pages.push_back(scene::blank(scene::Paper::letter));
  return document;
}

TEST(Pdf, TheWordsCanBeReadBack) {
  EXPECT_NE(read_back(to_pdf(drawing()), "words").find("Withy Meadow, 17 \u00b0C \u2013 dry"),
            std::string::npos);
}

TEST(Pdf, HasItsPagesAndSizes) {
  const std::string info = read_back(to_pdf(drawing()), "sizes", "pdfinfo -l 2");
  EXPECT_NE(info.find("A4"), std::string::npos) << info;
  EXPECT_NE(info.find("letter"), std::string::npos) << info;
  EXPECT_NE(info.find("A drawing"), std::string::npos) << info;
}

TEST(Pdf, IsTheSameEveryTimeAndHoldsNoClock) {
  const std::string once = to_pdf(drawing());
  EXPECT_TRUE(once == to_pdf(drawing()));
  EXPECT_NE(once.find("20260604"), std::string::npos);
}

TEST(Svg, IsASvg) {
  const std::string svg = to_svg(drawing().pages.front());
  EXPECT_NE(svg.find("<svg"), std::string::npos);
  EXPECT_TRUE(svg == to_svg(drawing().pages.front()));
}

TEST(Png, HasTheSignatureOfAPng) {
  EXPECT_EQ(to_png(drawing().pages.front(), 50).substr(0, 8), "\x89PNG\r\n\x1a\n");  // ISO/IEC 15948
}

TEST(Text, ACharacterThatNoFontHasIsShownByItsNumber) {
  scene::Document document{"Strange", *Date::from_ymd(2026, 6, 4), {scene::blank(scene::Paper::a4)}};
  document.pages.front().items.emplace_back(scene::Text{{20, 20}, "a \U0010FFF0 b \u00e9", 14});
  EXPECT_NE(read_back(to_pdf(document), "strange").find("a [U+10FFF0] b \u00e9"), std::string::npos);
}

TEST(Text, WrapsInItsColumn) {
  scene::Text text{{0, 0}, "a line that is a good deal longer than its narrow column", 11};
  const double one_line = text_height_mm(text);
  text.width_mm = 30;
  EXPECT_GT(text_height_mm(text), 2.5 * one_line);
  EXPECT_GT(text_width_mm({{0, 0}, "wide", 20}), text_width_mm({{0, 0}, "wide", 10}));
}

}  // namespace
}  // namespace beegarth::draw
