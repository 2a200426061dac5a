#include "garth/lines/pedigree_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "draw/draw.hpp"
#include "garth/lines/pedigree_places.hpp"
#include "lines/exact_kinship.hpp"
#include "scene/layout.hpp"

namespace beegarth::garth {
namespace {

using scene::Block;
using scene::Point;
using scene::Style;

constexpr std::size_t most_on_a_sheet = 150;
constexpr double margin_mm = 12;
constexpr double heading_mm = 24;
constexpr double legend_mm = 20;
constexpr double box_mm = 44;
constexpr double between_columns_mm = 24;
constexpr double between_rows_mm = 9;
constexpr double padding_mm = 1.5;
// Dark enough beside black on paper without colour: the dashes tell the two apart.
constexpr scene::Colour drone_colour{0.05, 0.3, 0.6, 1};
constexpr scene::Pen mother_pen{0.5, scene::black, false};
constexpr scene::Pen drone_pen{0.4, drone_colour, true};
constexpr Style name_style{11, true, scene::black, scene::Align::left};
constexpr Style box_style{8, false, scene::black, scene::Align::left};

class Drawing {
 public:
  explicit Drawing(const lines::Pedigree& pedigree)
      : pedigree_(pedigree), kinship_(pedigree), places_(pedigree_places(pedigree)) {
    for (std::size_t queen = 0; queen < pedigree.size(); ++queen) {
      words_.push_back(words_of(queen));
      box_height_mm_ = std::max(box_height_mm_, words_.back().height_mm + 2 * padding_mm);
      columns_ = std::max(columns_, places_[queen].column + 1);
      rows_ = std::max(rows_, places_[queen].row + 1);
    }
  }

  scene::Page page(const std::string& title) {
    constexpr double a4_long_mm = 297, a4_short_mm = 210;
    const auto columns = static_cast<double>(columns_), rows = static_cast<double>(rows_);
    page_.width_mm =
        std::max(a4_long_mm, 2 * margin_mm + columns * box_mm + (columns - 1) * between_columns_mm);
    page_.height_mm = std::max(a4_short_mm, margin_mm + heading_mm + rows * row_mm() + legend_mm);
    page_.items.emplace_back(scene::Text{{margin_mm, margin_mm}, title, 16, true});
    for (std::size_t column = 0; column < columns_; ++column)
      page_.items.emplace_back(scene::Text{{left_of(column), margin_mm + heading_mm - 10},
                                           fmt::format("generation {}", column + 1),
                                           9,
                                           false,
                                           box_mm,
                                           scene::Align::left,
                                           scene::grey});
    // Lines first, boxes over them.
    for (std::size_t queen = 0; queen < pedigree_.size(); ++queen) draw_parents(queen);
    for (std::size_t queen = 0; queen < pedigree_.size(); ++queen) draw_box(queen);
    draw_legend();
    return std::move(page_);
  }

 private:
  double row_mm() const { return box_height_mm_ + between_rows_mm; }
  double left_of(std::size_t column) const {
    return margin_mm + static_cast<double>(column) * (box_mm + between_columns_mm);
  }
  Point corner(std::size_t queen) const {
    return {left_of(places_[queen].column),
            margin_mm + heading_mm + static_cast<double>(places_[queen].row) * row_mm()};
  }

  Block text(const std::string& words, const Style& style) const {
    return scene::paragraph(words, box_mm - 2 * padding_mm, style, draw::text_height_mm);
  }

  Block words_of(std::size_t queen) {
    const lines::Queen& one = pedigree_.queen(queen);
    std::vector<Block> lines{
        text(one.living ? pedigree_.called(queen) : "\u2020 " + pedigree_.called(queen) + " (dead)",
             name_style),
        text(inbreeding_words(queen), box_style)};
    std::string about = "line " + pedigree_.line(queen);
    if (one.born) about += fmt::format(", born {}", one.born->year());
    lines.push_back(text(about, box_style));
    if (pedigree_.mother(queen)) lines.push_back(text("father: " + father_words(queen), box_style));
    if (!one.mating.empty()) lines.push_back(text("mated: " + mating_words(one.mating), box_style));
    return scene::stacked(lines);
  }

  std::string called(const lines::QueenId& id) const {
    const auto index = pedigree_.find(id);
    return index ? pedigree_.called(*index) : id.text();
  }

  std::string inbreeding_words(std::size_t queen) {
    const auto inbreeding = kinship_.inbreeding(queen);
    if (inbreeding == 0) return "not inbred";
    const std::string fraction = lines::text(inbreeding);
    constexpr std::size_t short_enough = 9;
    return fmt::format("inbred {:.3f}", lines::decimal(inbreeding)) +
           (fraction.size() <= short_enough ? " (" + fraction + ")" : "");
  }

  std::string drones_words(const lines::Drones& drones) const {
    std::string words = drones.number == 1 ? "1 son"
                        : drones.number    ? fmt::format("{} sons", *drones.number)
                                           : "sons";
    return words + " of " +
           (drones.dam           ? called(*drones.dam)
            : drones.number == 1 ? "unknown dam"
                                 : "unknown dams");
  }

  std::string mating_words(const std::vector<lines::Drones>& mating) const {
    std::string words;
    for (const lines::Drones& drones : mating) {
      if (!words.empty()) words += ", ";
      words += drones_words(drones);
      if (mating.size() > 1) words += fmt::format(" ({}/{})", drones.share.part, drones.share.of);
    }
    return words;
  }

  std::string father_words(std::size_t queen) const {
    const auto& mating = pedigree_.queen(*pedigree_.mother(queen)).mating;
    if (mating.empty()) return "unknown";
    const auto part = pedigree_.father(queen);
    if (!part && mating.size() > 1) return "one of her mother's mates";
    const lines::Drones& drones = mating[part.value_or(0)];
    const std::string name = drones.name.empty() ? "" : drones.name + ", ";
    return name + "son of " + (drones.dam ? called(*drones.dam) : "unknown dam");
  }

  void draw_box(std::size_t queen) {
    const Point at = corner(queen);
    const bool living = pedigree_.queen(queen).living;
    page_.items.emplace_back(scene::Rectangle{at, box_mm, box_height_mm_,
                                              scene::Pen{living ? 0.6 : 0.3, scene::black, !living},
                                              scene::Colour{1, 1, 1, 1}, 1.5});
    for (const scene::Item& item : words_[queen].items)
      page_.items.push_back(scene::moved(item, at.x_mm + padding_mm, at.y_mm + padding_mm));
  }

  void draw_parents(std::size_t queen) {
    const auto mother = pedigree_.mother(queen);
    if (!mother) return;
    const Point at = corner(queen);
    const double entry = at.y_mm + box_height_mm_ / 3;
    connect({corner(*mother).x_mm + box_mm, corner(*mother).y_mm + box_height_mm_ / 3}, 4, {at.x_mm, entry},
            3, at.y_mm - 2.5, places_[queen].column - places_[*mother].column > 1, mother_pen);
    page_.items.emplace_back(
        scene::Rectangle{{at.x_mm - 1.8, entry - 0.9}, 1.8, 1.8, std::nullopt, scene::black});
    std::size_t side = 0;
    for (const std::size_t dam : pedigree_.fathers_dams(queen)) draw_drone_side(queen, dam, side++);
  }

  // Each dam of a column leaves in a lane of her own, as far as there is room for lanes.
  void draw_drone_side(std::size_t queen, std::size_t dam, std::size_t side) {
    constexpr double lane_mm = 1.6;
    constexpr std::size_t lanes = 7;
    const Point at = corner(queen);
    const double entry = at.y_mm + box_height_mm_ * 2 / 3 + static_cast<double>(side % 4) * 2.4;
    connect({corner(dam).x_mm + box_mm, corner(dam).y_mm + box_height_mm_ * 2 / 3},
            6.5 + lane_mm * static_cast<double>(places_[dam].row % lanes), {at.x_mm, entry},
            5 + static_cast<double>(side % 4),
            at.y_mm + box_height_mm_ + 2 + 1.2 * static_cast<double>(side % 4),
            places_[queen].column - places_[dam].column > 1, drone_pen);
    page_.items.emplace_back(scene::Polyline{{{at.x_mm - 2.4, entry},
                                              {at.x_mm - 1.2, entry - 1.2},
                                              {at.x_mm, entry},
                                              {at.x_mm - 1.2, entry + 1.2},
                                              {at.x_mm - 2.4, entry}},
                                             {0.4, drone_colour, false}});
  }

  // Right, along a lane between columns, and in from the left; past other columns through the gap between two
  // rows.
  void connect(Point from, double leave_mm, Point to, double arrive_mm, double gap_y, bool far,
               const scene::Pen& pen) {
    const double lane = from.x_mm + leave_mm, before = to.x_mm - arrive_mm;
    std::vector<Point> way{from, {lane, from.y_mm}};
    if (far)
      way.insert(way.end(), {{lane, gap_y}, {before, gap_y}, {before, to.y_mm}});
    else
      way.push_back({lane, to.y_mm});
    way.push_back(to);
    page_.items.emplace_back(scene::Polyline{way, pen});
  }

  void draw_legend() {
    const double y = page_.height_mm - legend_mm + 6;
    double x = margin_mm;
    const auto word = [&](const char* words) {
      const scene::Text text{{x, y - 2}, words, 8.5};
      page_.items.emplace_back(text);
      x += draw::text_width_mm(text) + 8;
    };
    page_.items.emplace_back(scene::Line{{x, y}, {x + 12, y}, mother_pen});
    page_.items.emplace_back(scene::Rectangle{{x + 10.2, y - 0.9}, 1.8, 1.8, std::nullopt, scene::black});
    x += 14;
    word("mother to daughter");
    page_.items.emplace_back(scene::Line{{x, y}, {x + 10, y}, drone_pen});
    page_.items.emplace_back(
        scene::Polyline{{{x + 10, y}, {x + 11.2, y - 1.2}, {x + 12.4, y}, {x + 11.2, y + 1.2}, {x + 10, y}},
                        {0.4, drone_colour, false}});
    x += 14.5;
    word("by a son of");
    page_.items.emplace_back(
        scene::Rectangle{{x, y - 2.5}, 8, 5, scene::Pen{0.6, scene::black, false}, std::nullopt, 1});
    x += 10;
    word("living");
    page_.items.emplace_back(
        scene::Rectangle{{x, y - 2.5}, 8, 5, scene::Pen{0.3, scene::black, true}, std::nullopt, 1});
    x += 10;
    word("\u2020 dead");
    word("inbred: the chance that both genes of one place are copies of one gene of an ancestor");
  }

  const lines::Pedigree& pedigree_;
  lines::ExactKinship kinship_;
  std::vector<PedigreePlace> places_;
  std::vector<Block> words_;
  double box_height_mm_ = 0;
  std::size_t columns_ = 1, rows_ = 1;
  scene::Page page_;
};

}  // namespace

Expected<scene::Document> pedigree_drawing(const lines::Pedigree& pedigree, const std::string& title,
                                           Date dated) {
  if (pedigree.size() == 0) return bad_input("there is no queen to draw", "queens", "add one");
  if (pedigree.size() > most_on_a_sheet)
    return bad_input(
        fmt::format("{} queens are too many for one sheet", pedigree.size()), "queens",
        fmt::format("draw {} or fewer: one line, or the ancestors of one queen", most_on_a_sheet));
  return scene::Document{title, dated, {Drawing(pedigree).page(title)}};
}

}  // namespace beegarth::garth
