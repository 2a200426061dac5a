// Drawings without a medium: what stands where on which page, in millimetres from the top left corner.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/date.hpp"

namespace beegarth::scene {

struct Colour {
  double red = 0, green = 0, blue = 0;  // 0..1
  double opacity = 1;
};
inline constexpr Colour black{0, 0, 0, 1};
inline constexpr Colour grey{0.35, 0.35, 0.35, 1};
inline constexpr Colour pale{0.92, 0.92, 0.92, 1};

struct Point {
  double x_mm = 0, y_mm = 0;
};
struct Pen {
  double width_mm = 0.3;
  Colour colour = black;
  bool dashed = false;
};

enum class Align { left, centre, right };

// A run of text in a column; wrapped at word borders where width_mm is above 0. The point is the column's top
// left.
struct Text {
  Point at;
  std::string text;
  double size_pt = 11;
  bool bold = false;
  double width_mm = 0;
  Align align = Align::left;
  Colour colour = black;
};
struct Line {
  Point from, to;
  Pen pen;
};
struct Rectangle {
  Point at;
  double width_mm = 0, height_mm = 0;
  std::optional<Pen> border = Pen{};
  std::optional<Colour> fill;
  double corner_mm = 0;
};
struct Polyline {
  std::vector<Point> points;
  Pen pen;
};
// The area between two courses, such as the quantiles of a fan. Both run from left to right.
struct Band {
  std::vector<Point> upper, lower;
  Colour fill = pale;
};
using Item = std::variant<Text, Line, Rectangle, Polyline, Band>;

struct Page {
  double width_mm = 210, height_mm = 297;
  std::vector<Item> items;
};

struct Document {
  std::string title;
  Date dated;  // written into the file in place of the clock, so that the same drawing gives the same bytes
  std::vector<Page> pages;
};

// The same items, moved.
Item moved(Item item, double right_mm, double down_mm);

}  // namespace beegarth::scene
