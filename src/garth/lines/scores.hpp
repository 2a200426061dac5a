// The keeper's scores as the estimates ask for them: each with its queen, and the site and year of its own
// day.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "entries/entry.hpp"
#include "lines/pedigree.hpp"
#include "lines/scores.hpp"

namespace beegarth::garth {

// `standing` is what counts, oldest first. A score that names no queen is of the one who was last told of in
// its colony; where the book tells of none, a remark says so and the score is left out.
std::vector<lines::Score> scores_in(std::span<const entries::Entry> standing, const lines::Pedigree& pedigree,
                                    std::vector<std::string>& remarks);

}  // namespace beegarth::garth
