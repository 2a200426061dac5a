#include "scene/scene.hpp"

namespace beegarth::scene {

namespace {

struct Mover {
  double right, down;
  void shift(Point& point) const {
    point.x_mm += right;
    point.y_mm += down;
  }
  void operator()(Text& text) const { shift(text.at); }
  void operator()(Line& line) const {
    shift(line.from);
    shift(line.to);
  }
  void operator()(Rectangle& rectangle) const { shift(rectangle.at); }
  void operator()(Polyline& line) const {
    for (Point& point : line.points) shift(point);
  }
  void operator()(Band& band) const {
    for (Point& point : band.upper) shift(point);
    for (Point& point : band.lower) shift(point);
  }
};

}  // namespace

Item moved(Item item, double right_mm, double down_mm) {
  std::visit(Mover{right_mm, down_mm}, item);
  return item;
}

}  // namespace beegarth::scene
