// What a count of mites says: exact intervals, and the rules by which a day's fall on the board is made into
// a total.
#pragma once

#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::colony {

struct Interval {
  double low = 0, mid = 0, high = 0;
};

// The mean behind a count, exact Poisson 95 % (Garwood 1936), times `scale`.
Interval poisson_interval(int count, double scale);

// Standard error of the mean count of an apiary, as a share of it: `colonies` samples whose counts are
// negative binomial with mean `mites` and size `k` (small k: colonies unlike each other). Plan of Lee et al.
// 2010, J Econ Entomol; the formula is arithmetic.
double apiary_count_error(double mites, double k, int colonies);

enum class BoardRule { season_factors, flat_300, flat_100 };
struct BoardTotal {
  double mites = 0;
  std::string source;
};
// tables/mites.toml: the factor of the month; months shift by half a year south of the equator.
Expected<BoardTotal> total_from_board(double per_day, BoardRule rule, Date date, double latitude_deg,
                                      const FactTable& mites);

// What published leaflets say of a day's fall. They disagree; each is shown by its own name, none is followed
// blindly.
enum class Verdict { no_limit_for_this_month, below, watch, treat };
Verdict manual_rule(double per_day, int northern_month,
                    const FactTable& mites);  // May to August, one limit a month
Verdict breeders_rule(double per_day, int northern_month,
                      const FactTable& mites);  // July: three steps; November: one

}  // namespace beegarth::colony
