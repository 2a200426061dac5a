#include "draw/draw.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include <cmath>
#include <map>
#include <stdexcept>
#include <string_view>

#include "draw/ink.hpp"

namespace beegarth::draw {

namespace {

cairo_status_t write_to_string(void* closure, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

// Out of memory, or a number that is not finite: neither comes from the keeper's data.
void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error(cairo_status_to_string(status));
}

void finish(cairo_surface_t* surface) {
  cairo_surface_finish(surface);
  check(cairo_surface_status(surface));
}

void ink(cairo_surface_t* surface, const scene::Page& page, double units_per_mm) {
  const Held<cairo_t> context(cairo_create(surface));
  cairo_scale(context.get(), units_per_mm, units_per_mm);
  ink_page(context.get(), page);
  check(cairo_status(context.get()));
}

// Cairo numbers surfaces through the whole run of a program; here by their order in this file.
std::string renumbered(const std::string& svg) {
  static constexpr std::string_view name = "surface";
  std::map<std::string, std::size_t> numbers;
  std::string out;
  std::size_t at = 0;
  for (std::size_t found = svg.find(name); found != std::string::npos; found = svg.find(name, at)) {
    std::size_t end = found + name.size();
    while (end < svg.size() && svg[end] >= '0' && svg[end] <= '9') ++end;
    out.append(svg, at, found + name.size() - at);
    if (end > found + name.size()) {
      const auto number = numbers.emplace(svg.substr(found, end - found), numbers.size()).first->second;
      out += std::to_string(number);
    }
    at = end;
  }
  return out.append(svg, at, std::string::npos);
}

std::pair<int, int> size_of(const scene::Text& text) {
  const Held<cairo_surface_t> surface(cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr));
  const Held<cairo_t> context(cairo_create(surface.get()));
  const auto layout = set_text(context.get(), text);
  int width = 0, height = 0;
  pango_layout_get_size(layout.get(), &width, &height);
  return {width, height};
}

}  // namespace

std::string to_pdf(const scene::Document& document) {
  std::string bytes;
  const Held<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(write_to_string, &bytes, 1, 1));
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, document.title.c_str());
  const std::string created = document.dated.iso() + "T00:00:00Z";
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, created.c_str());
  for (const scene::Page& page : document.pages) {
    cairo_pdf_surface_set_size(surface.get(), page.width_mm * points_per_mm, page.height_mm * points_per_mm);
    ink(surface.get(), page, points_per_mm);
    cairo_surface_show_page(surface.get());
  }
  finish(surface.get());
  return bytes;
}

std::string to_svg(const scene::Page& page) {
  std::string bytes;
  const Held<cairo_surface_t> surface(cairo_svg_surface_create_for_stream(
      write_to_string, &bytes, page.width_mm * points_per_mm, page.height_mm * points_per_mm));
  ink(surface.get(), page, points_per_mm);
  finish(surface.get());
  return renumbered(bytes);
}

std::string to_png(const scene::Page& page, double dots_per_inch) {
  const double dots_per_mm = dots_per_inch / mm_per_inch;
  const auto dots = [&](double mm) { return static_cast<int>(std::ceil(mm * dots_per_mm)); };
  const Held<cairo_surface_t> surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, dots(page.width_mm), dots(page.height_mm)));
  {
    const Held<cairo_t> paper(cairo_create(surface.get()));
    cairo_set_source_rgb(paper.get(), 1, 1, 1);
    cairo_paint(paper.get());
  }
  ink(surface.get(), page, dots_per_mm);
  std::string bytes;
  check(cairo_surface_write_to_png_stream(surface.get(), write_to_string, &bytes));
  return bytes;
}

double text_height_mm(const scene::Text& text) {
  return size_of(text).second / static_cast<double>(PANGO_SCALE) / points_per_mm;
}

double text_width_mm(const scene::Text& text) {
  return size_of(text).first / static_cast<double>(PANGO_SCALE) / points_per_mm;
}

}  // namespace beegarth::draw
