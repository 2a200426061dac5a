// Scenes as files: PDF, SVG and PNG, by Cairo and Pango. The same scene gives the same bytes on the same
// machine.
#pragma once

#include <string>

#include "scene/layout.hpp"
#include "scene/scene.hpp"

namespace beegarth::draw {

std::string to_pdf(const scene::Document& document);
std::string to_svg(const scene::Page& page);
std::string to_png(const scene::Page& page, double dots_per_inch = 150);

// Heights in the font that the files are set in.
double text_height_mm(const scene::Text& text);
double text_width_mm(const scene::Text& text);

}  // namespace beegarth::draw
