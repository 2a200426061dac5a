// Laying out a printed page: blocks one below the other, none torn across pages unless it is longer than one.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "scene/scene.hpp"

namespace beegarth::scene {

// How high a run of text becomes in its column; passed in by whoever knows the fonts.
using Measure = std::function<double(const Text&)>;

// Items relative to their own top left corner, with the height they take.
struct Block {
  std::vector<Item> items;
  double height_mm = 0;
};

enum class Paper { a4, letter, a4_across, letter_across };  // across: the long side lies
Page blank(Paper paper);

struct Style {
  double size_pt = 11;
  bool bold = false;
  Colour colour = black;
  Align align = Align::left;
};

Block paragraph(const std::string& text, double width_mm, const Style& style, const Measure& measure);
// A narrow column with a word in it, a wide one with text beside it.
Block labelled(const std::string& label, const std::string& text, double label_width_mm, double width_mm,
               const Style& style, const Measure& measure);
Block gap(double height_mm);
Block rule(double width_mm);

// Something to write in by hand: a box with a small label above it.
struct WriteIn {
  std::string label;
  double share = 1;  // of the row's width
  bool operator==(const WriteIn&) const = default;
};
Block write_ins(const std::vector<WriteIn>& boxes, double width_mm, double height_mm);
// Squares to tick with words beside them, in as many columns as asked for.
Block tick_list(const std::vector<std::string>& words, int columns, double width_mm, const Style& style,
                const Measure& measure);

// A table with a heading row, or without one where it is empty; columns as shares of the width.
Block table(const std::vector<std::string>& heading, const std::vector<std::vector<std::string>>& rows,
            const std::vector<double>& shares, double width_mm, const Style& style, const Measure& measure);

// The cells of one row of a table, cut into as many rows as it takes for each to be at most so high: a row
// may be longer than a page. Cells are cut between words where they can be; what goes on begins with "…".
std::vector<std::vector<std::string>> cut_row(std::vector<std::string> cells,
                                              const std::vector<double>& shares, double width_mm,
                                              double most_mm, const Style& style, const Measure& measure);

Block stacked(const std::vector<Block>& blocks);
Block indented(Block block, double right_mm);
// With a border round it.
Block framed(const Block& block, double width_mm, double padding_mm, const Rectangle& look);

// Puts blocks on pages, from the top.
class Pages {
 public:
  Pages(Paper paper, double margin_mm);
  double width_mm() const;   // between the margins
  double height_mm() const;  // of an empty page, between the margins; a taller block would run over
  void place(const Block& block);
  std::vector<Page> finished() &&;

 private:
  void turn();
  Paper paper_;
  double margin_mm_;
  double y_mm_ = 0;
  std::vector<Page> pages_;
};

}  // namespace beegarth::scene
