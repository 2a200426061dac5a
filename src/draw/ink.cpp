#include "draw/ink.hpp"

#include <array>
#include <cstdio>
#include <numbers>
#include <string>

namespace beegarth::draw {

namespace {

void use(cairo_t* context, const scene::Colour& colour) {
  cairo_set_source_rgba(context, colour.red, colour.green, colour.blue, colour.opacity);
}

void stroke(cairo_t* context, const scene::Pen& pen) {
  use(context, pen.colour);
  cairo_set_line_width(context, pen.width_mm);
  const std::array<double, 2> dashes{2, 1.5};
  cairo_set_dash(context, dashes.data(), pen.dashed ? 2 : 0, 0);
  cairo_stroke(context);
}

class Inker {
 public:
  explicit Inker(cairo_t* context) : context_(context) {}

  void operator()(const scene::Text& text) const {
    use(context_, text.colour);
    const auto layout = set_text(context_, text);
    cairo_save(context_);
    double x = text.at.x_mm;
    if (text.width_mm <= 0 && text.align != scene::Align::left) {
      int width = 0;
      pango_layout_get_size(layout.get(), &width, nullptr);
      const double width_mm = width / static_cast<double>(PANGO_SCALE) / points_per_mm;
      x -= text.align == scene::Align::right ? width_mm : width_mm / 2;
    }
    cairo_move_to(context_, x, text.at.y_mm);
    cairo_scale(context_, 1 / points_per_mm, 1 / points_per_mm);
    pango_cairo_show_layout(context_, layout.get());
    cairo_restore(context_);
    cairo_new_path(context_);
  }

  void operator()(const scene::Line& line) const {
    cairo_move_to(context_, line.from.x_mm, line.from.y_mm);
    cairo_line_to(context_, line.to.x_mm, line.to.y_mm);
    stroke(context_, line.pen);
  }

  void operator()(const scene::Rectangle& box) const {
    outline(box);
    if (box.fill) {
      use(context_, *box.fill);
      cairo_fill_preserve(context_);
    }
    if (box.border)
      stroke(context_, *box.border);
    else
      cairo_new_path(context_);
  }

  void operator()(const scene::Polyline& line) const {
    trace(line.points, true);
    stroke(context_, line.pen);
  }

  void operator()(const scene::Band& band) const {
    trace(band.upper, true);
    trace({band.lower.rbegin(), band.lower.rend()}, false);
    cairo_close_path(context_);
    use(context_, band.fill);
    cairo_fill(context_);
  }

 private:
  void trace(const std::vector<scene::Point>& points, bool from_new) const {
    for (std::size_t i = 0; i < points.size(); ++i) {
      if (i == 0 && from_new)
        cairo_move_to(context_, points[i].x_mm, points[i].y_mm);
      else
        cairo_line_to(context_, points[i].x_mm, points[i].y_mm);
    }
  }

  void outline(const scene::Rectangle& box) const {
    const double x = box.at.x_mm, y = box.at.y_mm, r = box.corner_mm;
    if (r <= 0) {
      cairo_rectangle(context_, x, y, box.width_mm, box.height_mm);
      return;
    }
    constexpr double quarter = std::numbers::pi / 2;
    const double right = x + box.width_mm, bottom = y + box.height_mm;
    cairo_new_sub_path(context_);
    cairo_arc(context_, right - r, y + r, r, -quarter, 0);
    cairo_arc(context_, right - r, bottom - r, r, 0, quarter);
    cairo_arc(context_, x + r, bottom - r, r, quarter, 2 * quarter);
    cairo_arc(context_, x + r, y + r, r, 2 * quarter, 3 * quarter);
    cairo_close_path(context_);
  }

  cairo_t* context_;
};

// Characters that no font here has, by their number: a box would say nothing.
std::string with_numbers(PangoLayout* layout, const std::string& text) {
  std::string shown;
  for (const char* at = text.c_str(); *at != '\0';) {
    const char* next = g_utf8_next_char(at);
    const std::string one(at, next);
    pango_layout_set_text(layout, one.c_str(), static_cast<int>(one.size()));
    if (one.size() > 1 && pango_layout_get_unknown_glyphs_count(layout) > 0) {
      std::array<char, 16> number{};
      std::snprintf(number.data(), number.size(), "[U+%04X]", static_cast<unsigned>(g_utf8_get_char(at)));
      shown += number.data();
    } else {
      shown += one;
    }
    at = next;
  }
  return shown;
}

}  // namespace

Held<PangoLayout> set_text(cairo_t* context, const scene::Text& text) {
  Held<PangoLayout> layout(pango_cairo_create_layout(context));
  PangoContext* pango = pango_layout_get_context(layout.get());
  pango_cairo_context_set_resolution(pango, points_per_inch);
  cairo_font_options_t* plain = cairo_font_options_create();  // no hinting: the same shapes at every scale
  cairo_font_options_set_hint_metrics(plain, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(plain, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options(pango, plain);
  cairo_font_options_destroy(plain);
  pango_context_set_round_glyph_positions(pango, FALSE);
  const Held<PangoFontDescription> font(pango_font_description_from_string("DejaVu Sans"));
  pango_font_description_set_absolute_size(font.get(), text.size_pt * PANGO_SCALE);
  pango_font_description_set_weight(font.get(), text.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description(layout.get(), font.get());
  if (text.width_mm > 0) {
    pango_layout_set_width(layout.get(), static_cast<int>(text.width_mm * points_per_mm * PANGO_SCALE));
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_alignment(layout.get(), text.align == scene::Align::left     ? PANGO_ALIGN_LEFT
                                             : text.align == scene::Align::centre ? PANGO_ALIGN_CENTER
                                                                                  : PANGO_ALIGN_RIGHT);
  }
  pango_layout_set_text(layout.get(), text.text.c_str(), static_cast<int>(text.text.size()));
  if (pango_layout_get_unknown_glyphs_count(layout.get()) > 0) {
    const std::string shown = with_numbers(layout.get(), text.text);
    pango_layout_set_text(layout.get(), shown.c_str(), static_cast<int>(shown.size()));
  }
  return layout;
}

void ink_page(cairo_t* context, const scene::Page& page) {
  cairo_set_line_cap(context, CAIRO_LINE_CAP_BUTT);
  for (const scene::Item& item : page.items) std::visit(Inker(context), item);
}

}  // namespace beegarth::draw
