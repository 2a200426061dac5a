// A pedigree as a drawing: generations in columns, the oldest on the left; mother lines solid, drone sides
// dashed.
#pragma once

#include <string>

#include "lines/pedigree.hpp"
#include "scene/scene.hpp"

namespace beegarth::garth {

// One page, A4 across or as much larger as it takes. Refused for more queens than can be read on one sheet.
Expected<scene::Document> pedigree_drawing(const lines::Pedigree& pedigree, const std::string& title,
                                           Date dated);

}  // namespace beegarth::garth
