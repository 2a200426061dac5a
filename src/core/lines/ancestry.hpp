// Who shares which ancestor, in words.
#pragma once

#include <string>
#include <vector>

#include "lines/pedigree.hpp"

namespace beegarth::lines {

// A foremother of both, such that no daughter of hers on the way is one of both as well.
struct SharedAncestor {
  std::size_t queen = 0;
  // "mother", "mother's father's mother"; empty where she is the queen herself. The shortest way.
  std::string to_first, to_second;
};

std::vector<SharedAncestor> shared_ancestors(const Pedigree& pedigree, std::size_t first, std::size_t second);

// "Ash and Birch share Cedar (Ash's mother, Birch's mother's mother)".
std::string in_words(const Pedigree& pedigree, std::size_t first, std::size_t second,
                     const SharedAncestor& shared);

// The chance that two daughters of one queen have one and the same drone for a father; 0 for others.
double chance_of_one_father(const Pedigree& pedigree, std::size_t first, std::size_t second);

}  // namespace beegarth::lines
