// Where each queen of a pedigree stands in its drawing.
#pragma once

#include <vector>

#include "lines/pedigree.hpp"

namespace beegarth::garth {

struct PedigreePlace {
  std::size_t column = 0;  // generation
  std::size_t row = 0;
};

// Every queen to the right of her mother and of the dams her father may be of; daughters below one another,
// their mother level with the middle one. No two queens share a place.
std::vector<PedigreePlace> pedigree_places(const lines::Pedigree& pedigree);

}  // namespace beegarth::garth
