#include "garth/lines/pedigree_drawing.hpp"

#include <gmock/gmock.h>

#include <set>

#include "draw/draw.hpp"
#include "garth/lines/pedigree_places.hpp"
#include "reference/some_pedigree.hpp"

namespace beegarth::garth {
namespace {

using reference::drones_of;
using reference::queen;
using ::testing::Contains;

lines::Pedigree family() {
  auto dora = queen("Dora", {}, {}, {drones_of("Dora", 1)});
  dora.living = false;
  return *lines::Pedigree::of({dora, queen("Anna", "Dora")});
}

scene::Page page_of(const lines::Pedigree& pedigree) {
  const auto document = pedigree_drawing(pedigree, "Invented queens", *Date::from_ymd(2026, 6, 4));
  EXPECT_TRUE(document);
  return document->pages.front();
}

std::vector<std::string> words_on(const scene::Page& page) {
  std::vector<std::string> words;
  for (const auto& item : page.items)
    if (const auto* text = std::get_if<scene::Text>(&item)) words.push_back(text->text);
  return words;
}

int dashed_polylines(const scene::Page& page) {
  int count = 0;
  for (const auto& item : page.items)
    if (const auto* line = std::get_if<scene::Polyline>(&item)) count += line->pen.dashed ? 1 : 0;
  return count;
}

TEST(PedigreePlaces, DescendantsStandToTheRightAndNobodyOnAnother) {
  for (std::uint64_t number = 1; number <= 100; ++number) {
    const auto pedigree = *lines::Pedigree::of(reference::SomePedigree(number).queens(40));
    const auto places = pedigree_places(pedigree);
    std::set<std::pair<std::size_t, std::size_t>> taken;
    for (std::size_t i = 0; i < pedigree.size(); ++i) {
      EXPECT_TRUE(taken.emplace(places[i].column, places[i].row).second) << number;
      if (const auto mother = pedigree.mother(i)) {
        EXPECT_LT(places[*mother].column, places[i].column) << number;
      }
      for (const std::size_t dam : pedigree.fathers_dams(i))
        EXPECT_LT(places[dam].column, places[i].column) << number;
    }
  }
}

TEST(PedigreeDrawing, CallsQueensByTheirNamesWhereTheyHaveOne) {
  auto dora = queen("q-1", {}, {}, {drones_of("q-1", 1)});
  dora.name = "Dora";
  const auto words = words_on(page_of(*lines::Pedigree::of({dora, queen("q-2", "q-1")})));
  EXPECT_THAT(words, Contains("Dora"));
  EXPECT_THAT(words, Contains("q-2")) << "she has no name";
  for (const std::string& one : words) EXPECT_EQ(one.find("q-1"), std::string::npos) << one;
}

TEST(PedigreeDrawing, SaysInWordsWhatItsLinesShow) {
  const auto words = words_on(page_of(family()));
  EXPECT_THAT(words, Contains("\u2020 Dora (dead)"));
  EXPECT_THAT(words, Contains("inbred 0.500 (1/2)"));
  EXPECT_THAT(words, Contains("father: son of Dora"));
  EXPECT_THAT(words, Contains("mated: 1 son of Dora"));
  EXPECT_THAT(words, Contains("generation 2"));
}

TEST(PedigreeDrawing, DroneSidesAreDashed) {
  EXPECT_EQ(dashed_polylines(page_of(family())), 1);
  EXPECT_EQ(dashed_polylines(page_of(*lines::Pedigree::of({queen("Dora"), queen("Anna", "Dora")}))), 0);
}

TEST(PedigreeDrawing, EverythingLiesOnThePage) {
  for (std::uint64_t number = 1; number <= 20; ++number) {
    const auto page = page_of(*lines::Pedigree::of(reference::SomePedigree(number).queens(40)));
    for (const auto& item : page.items) {
      std::vector<scene::Point> points;
      if (const auto* text = std::get_if<scene::Text>(&item)) points = {text->at};
      if (const auto* line = std::get_if<scene::Polyline>(&item)) points = line->points;
      if (const auto* box = std::get_if<scene::Rectangle>(&item))
        points = {box->at, {box->at.x_mm + box->width_mm, box->at.y_mm + box->height_mm}};
      for (const auto& point : points) {
        EXPECT_GE(point.x_mm, 0) << number;
        EXPECT_LE(point.x_mm, page.width_mm) << number;
        EXPECT_GE(point.y_mm, 0) << number;
        EXPECT_LE(point.y_mm, page.height_mm) << number;
      }
    }
  }
}

TEST(PedigreeDrawing, BecomesAnSvgAndAPdf) {
  const auto document = *pedigree_drawing(family(), "Invented queens", *Date::from_ymd(2026, 6, 4));
  EXPECT_NE(draw::to_svg(document.pages.front()).find("<svg"), std::string::npos);
  EXPECT_EQ(draw::to_pdf(document).substr(0, 5), "%PDF-");
}

TEST(PedigreeDrawing, NothingAndTooManyAreRefused) {
  const Date date = *Date::from_ymd(2026, 6, 4);
  EXPECT_FALSE(pedigree_drawing(*lines::Pedigree::of({}), "none", date));
  EXPECT_FALSE(pedigree_drawing(*lines::Pedigree::of(reference::SomePedigree(1).queens(151)), "many", date));
}

}  // namespace
}  // namespace beegarth::garth
