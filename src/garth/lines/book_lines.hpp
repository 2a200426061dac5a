// The queens of a book as a pedigree, with what follows from it: inbreeding, scores cleared of site and year,
// and which virgins to mate with whose drones.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "garth/session.hpp"
#include "lines/matings.hpp"
#include "lines/pedigree.hpp"
#include "lines/scores.hpp"

namespace beegarth::garth {

struct BookLines {
  lines::Pedigree pedigree;
  std::vector<std::string> names;  // shown names, in the pedigree's order
  std::vector<double> inbreeding;  // of each queen, 0..1
  std::vector<lines::TraitEstimates> traits;
  lines::MatingQuestion question;  // empty of virgins where there is none to advise on
  std::optional<lines::MatingAdvice> advice;
  std::vector<std::string> remarks;  // what was left out of the entries, because it cannot be
};

// Where the entries contradict each other (a queen who is her own ancestor, a mother who is not in the book)
// the rest is worked out without them, and a remark says so.
Expected<BookLines> lines_of(const Session& session);

nlohmann::json lines_json(const BookLines& lines);
std::string lines_text(const BookLines& lines);

}  // namespace beegarth::garth
