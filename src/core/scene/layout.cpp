#include "scene/layout.hpp"

#include <algorithm>
#include <functional>

namespace beegarth::scene {

namespace {

void append(Block& to, const Block& block, double right_mm, double down_mm) {
  for (const Item& item : block.items) to.items.push_back(moved(item, right_mm, down_mm));
}

constexpr double tick_mm = 5;      // large enough for a gloved hand with a blunt pencil
constexpr double cell_gap_mm = 2;  // between the columns of a table
constexpr double row_gap_mm = 1.6;

}  // namespace

Page blank(Paper paper) {
  // ISO 216; ANSI/ASME Y14.1 size A
  constexpr double a4_short = 210, a4_long = 297, letter_short = 215.9, letter_long = 279.4;
  switch (paper) {
    case Paper::a4:
      return {a4_short, a4_long, {}};
    case Paper::a4_across:
      return {a4_long, a4_short, {}};
    case Paper::letter:
      return {letter_short, letter_long, {}};
    case Paper::letter_across:
      return {letter_long, letter_short, {}};
  }
  return {a4_short, a4_long, {}};
}

Block paragraph(const std::string& text, double width_mm, const Style& style, const Measure& measure) {
  const Text run{{0, 0}, text, style.size_pt, style.bold, width_mm, style.align, style.colour};
  return {{run}, measure(run)};
}

Block labelled(const std::string& label, const std::string& text, double label_width_mm, double width_mm,
               const Style& style, const Measure& measure) {
  Style bold = style;
  bold.bold = true;
  const Block left = paragraph(label, label_width_mm, bold, measure);
  const Block right = paragraph(text, width_mm - label_width_mm, style, measure);
  Block block;
  append(block, left, 0, 0);
  append(block, right, label_width_mm, 0);
  block.height_mm = std::max(left.height_mm, right.height_mm);
  return block;
}

Block gap(double height_mm) {
  return {{}, height_mm};
}

Block rule(double width_mm) {
  return {{Line{{0, 0}, {width_mm, 0}, {0.3, grey, false}}}, 0.3};
}

Block write_ins(const std::vector<WriteIn>& boxes, double width_mm, double height_mm) {
  double shares = 0;
  for (const WriteIn& box : boxes) shares += box.share;
  constexpr double between_mm = 2, label_mm = 4.2;
  Block block;
  double x = 0;
  const double room = width_mm - between_mm * (static_cast<double>(boxes.size()) - 1);
  for (const WriteIn& box : boxes) {
    const double width = room * box.share / shares;
    block.items.push_back(Text{{x, 0}, box.label, 8.5, false, 0, Align::left, grey});
    block.items.push_back(
        Rectangle{{x, label_mm}, width, height_mm, Pen{0.35, black, false}, std::nullopt, 1});
    x += width + between_mm;
  }
  block.height_mm = label_mm + height_mm;
  return block;
}

Block tick_list(const std::vector<std::string>& words, int columns, double width_mm, const Style& style,
                const Measure& measure) {
  const double column = width_mm / columns;
  Block block;
  double y = 0;
  for (std::size_t first = 0; first < words.size(); first += static_cast<std::size_t>(columns)) {
    double height = tick_mm;
    for (std::size_t i = first; i < std::min(words.size(), first + static_cast<std::size_t>(columns)); ++i) {
      const double x = column * static_cast<double>(i - first);
      block.items.push_back(Rectangle{{x, y}, tick_mm, tick_mm, Pen{0.35, black, false}, std::nullopt, 0.6});
      const Block text = paragraph(words[i], column - tick_mm - 4, style, measure);
      append(block, text, x + tick_mm + 2, y);
      height = std::max(height, text.height_mm);
    }
    y += height + 1.8;
  }
  block.height_mm = y;
  return block;
}

Block table(const std::vector<std::string>& heading, const std::vector<std::vector<std::string>>& rows,
            const std::vector<double>& shares, double width_mm, const Style& style, const Measure& measure) {
  double all = 0;
  for (const double share : shares) all += share;
  Block block;
  double y = 0;
  const auto add_row = [&](const std::vector<std::string>& cells, bool bold) {
    Style cell_style = style;
    cell_style.bold = bold;
    double x = 0, height = 0;
    for (std::size_t i = 0; i < cells.size() && i < shares.size(); ++i) {
      const double width = width_mm * shares[i] / all;
      const Block cell = paragraph(cells[i], width - cell_gap_mm, cell_style, measure);
      append(block, cell, x, y + 0.8);
      height = std::max(height, cell.height_mm);
      x += width;
    }
    y += height + row_gap_mm;
    block.items.push_back(Line{{0, y}, {width_mm, y}, {bold ? 0.4 : 0.2, grey, false}});
  };
  if (!heading.empty()) add_row(heading, true);
  for (const auto& row : rows) add_row(row, false);
  block.height_mm = y;
  return block;
}

namespace {

const std::string goes_on = "\u2026 ";

// Not within a character of UTF-8.
std::size_t start_of_character(const std::string& text, std::size_t at) {
  while (at > 0 && at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) --at;
  return at;
}

// How much of the text fits, by halving: at least one character, and up to the last blank where there is one.
std::size_t fitting(const std::string& text, const std::function<bool(const std::string&)>& fits) {
  if (fits(text)) return text.size();
  std::size_t good = 0, bad = text.size();
  while (bad - good > 1) {
    const std::size_t middle = (good + bad) / 2;
    (fits(text.substr(0, start_of_character(text, middle))) ? good : bad) = middle;
  }
  good = start_of_character(text, good);
  const std::size_t begun = text.starts_with(goes_on) ? goes_on.size() : 0;
  if (good <= begun) {  // nothing fits: one character, so that it comes to an end
    good = begun + 1;
    while (good < text.size() && (static_cast<unsigned char>(text[good]) & 0xC0U) == 0x80U) ++good;
    return good;
  }
  const std::size_t blank = text.find_last_of(" \n", good - 1);
  return blank == std::string::npos || blank < begun + 1 ? good : blank + 1;
}

}  // namespace

std::vector<std::vector<std::string>> cut_row(std::vector<std::string> cells,
                                              const std::vector<double>& shares, double width_mm,
                                              double most_mm, const Style& style, const Measure& measure) {
  double all = 0;
  for (const double share : shares) all += share;
  std::vector<std::vector<std::string>> rows;
  bool more = true;
  while (more) {
    more = false;
    std::vector<std::string> row(cells.size());
    for (std::size_t i = 0; i < cells.size() && i < shares.size(); ++i) {
      const double width = width_mm * shares[i] / all - cell_gap_mm;
      const std::size_t cut = fitting(cells[i], [&](const std::string& part) {
        return paragraph(part, width, style, measure).height_mm + row_gap_mm <= most_mm;
      });
      row[i] = cells[i].substr(0, cut);
      cells[i] = cut < cells[i].size() ? goes_on + cells[i].substr(cut) : "";
      more = more || !cells[i].empty();
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

Block stacked(const std::vector<Block>& blocks) {
  Block all;
  for (const Block& block : blocks) {
    append(all, block, 0, all.height_mm);
    all.height_mm += block.height_mm;
  }
  return all;
}

Block indented(Block block, double right_mm) {
  for (Item& item : block.items) item = moved(std::move(item), right_mm, 0);
  return block;
}

Block framed(const Block& block, double width_mm, double padding_mm, const Rectangle& look) {
  Rectangle frame = look;
  frame.at = {0, 0};
  frame.width_mm = width_mm;
  frame.height_mm = block.height_mm + 2 * padding_mm;
  Block out{{frame}, frame.height_mm};
  append(out, block, padding_mm, padding_mm);
  return out;
}

Pages::Pages(Paper paper, double margin_mm) : paper_(paper), margin_mm_(margin_mm) {
  turn();
}

double Pages::width_mm() const {
  return blank(paper_).width_mm - 2 * margin_mm_;
}

double Pages::height_mm() const {
  return blank(paper_).height_mm - 2 * margin_mm_;
}

void Pages::turn() {
  pages_.push_back(blank(paper_));
  y_mm_ = margin_mm_;
}

void Pages::place(const Block& block) {
  const double bottom = pages_.back().height_mm - margin_mm_;
  if (y_mm_ + block.height_mm > bottom && y_mm_ > margin_mm_) turn();
  for (const Item& item : block.items) pages_.back().items.push_back(moved(item, margin_mm_, y_mm_));
  y_mm_ += block.height_mm;
}

std::vector<Page> Pages::finished() && {
  return std::move(pages_);
}

}  // namespace beegarth::scene
