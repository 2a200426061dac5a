// A page put onto a Cairo context whose unit is one millimetre.
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>

#include "scene/scene.hpp"

namespace beegarth::draw {

struct Unref {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
template <class T>
using Held = std::unique_ptr<T, Unref>;

inline constexpr double mm_per_inch = 25.4;
inline constexpr double points_per_inch = 72;
inline constexpr double points_per_mm = points_per_inch / mm_per_inch;

// The text set in its column, in points.
Held<PangoLayout> set_text(cairo_t* context, const scene::Text& text);

void ink_page(cairo_t* context, const scene::Page& page);

}  // namespace beegarth::draw
