// A figure of an entry beside what the hive can hold: what cannot be, and what is merely incredible.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"
#include "book/state.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {

// Rows of tables/work.toml and tables/observation.toml.
struct FigureRules {
  int untold_boxes = 0;           // so many times its nest may stand on a hive without a word of boxes
  int body_combs_max = 0;         // of one body of an upright hive
  int box_combs_min = 0;          // of one box on top
  double honey_comb_kg_max = 0;   // of a comb of which the hive does not say it
  double cells_per_comb_max = 0;  // the same
  double stores_error = 0;        // of an estimate, of the logarithm
  double cells_error = 0;         // the same
  double tare_kg_max = 0;         // of an empty hive
  double comb_kg = 0;             // wood and wax
  double board_mites_seldom = 0;  // a day
  double board_mites_never = 0;   // a day
  int boxes_wait_days = 0;        // at most between hive and extractor
  double bees_seldom = 0;         // of one colony
  double bees_never = 0;          // likewise
  double bees_per_seam_max = 0;   // between two combs full of bees
  double bee_mites_seldom = 0;    // on a bee
  double bee_mites_never = 0;     // likewise
  double whole_hive_kg_min = 0;   // the lightest empty box with its lid
  static Expected<FigureRules> from(const Tables& tables);
};

struct Figure {
  std::string field;
  std::string said;    // "40 combs with brood"
  std::string holds;   // "the hive 'Box 1' holds 11 combs on 2026-06-03"
  std::string remedy;  // what to do where it cannot be
  double amount = 0;
  double credible = 0;  // beyond it a remark
  double possible = 0;  // beyond it refused; infinite where the book does not know
};

// Whether figures_in may find any: asking is not for nothing.
bool has_figures(const entries::Payload& payload);

// What a payload of that day says beside what the book knows then. `standing`: entries that count, oldest
// first, none after `day`; `told_with`: drafts that are told after it.
std::vector<Figure> figures_in(const entries::Payload& payload, Date day,
                               std::span<const entries::Entry> standing,
                               std::span<const book::Draft> told_with, const book::State& state,
                               const FigureRules& rules);

}  // namespace beegarth::garth
