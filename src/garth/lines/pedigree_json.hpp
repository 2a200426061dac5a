// A pedigree as JSON, the same in every calculation that asks for one.
#pragma once

#include <vector>

#include "garth/calc/calc.hpp"
#include "lines/pedigree.hpp"

namespace beegarth::garth {

constexpr std::size_t most_queens = 2000;

Json queens_schema(std::size_t most);
Json mating_schema();

// The field `queens`. A fault is kept in the reader, and the pedigree is then empty.
lines::Pedigree read_pedigree(Reader& reader, std::size_t most);
// The field `mating`; empty where it is absent. Shares that are all left out go by the number of drones where
// every number is given, and are equal otherwise.
std::vector<lines::Drones> read_mating(Reader& reader);
// A mating that is planned, looked up in the pedigree.
std::vector<lines::Suitors> read_planned(Reader& reader, const lines::Pedigree& pedigree);
// The field names a queen of the pedigree; 0 after a fault.
std::size_t read_queen(Reader& reader, const char* field, const lines::Pedigree& pedigree);

}  // namespace beegarth::garth
