// The same kinship as exact_kinship.hpp in floating point, for thousands of queens at once.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "lines/pedigree.hpp"

namespace beegarth::lines {

// A square table of numbers, row after row.
struct Square {
  std::size_t size = 0;
  std::vector<double> cells;

  double& at(std::size_t row, std::size_t column) { return cells[row * size + column]; }
  double at(std::size_t row, std::size_t column) const { return cells[row * size + column]; }
};

// Coancestry of every queen with every queen, in the pedigree's order. Twice a cell is the relationship;
// inbreeding is twice a queen's own cell less one.
Expected<Square> coancestry_table(const Pedigree& pedigree);

// Of a daughter of `queen` from `mating`.
double daughters_inbreeding(const Square& coancestry, std::size_t queen, std::span<const Suitors> mating);

// Coancestry of a daughter of one mating with a daughter of another, in the mean over their fathers. `same`
// where both are of one and the same mating, so that they may share a drone.
double daughters_coancestry(const Square& coancestry, std::size_t queen, std::span<const Suitors> mating,
                            std::size_t other, std::span<const Suitors> other_mating, bool same);

}  // namespace beegarth::lines
