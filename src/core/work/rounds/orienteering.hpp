// Which places to see on which of several days, and in which order, so that what they are worth together is
// as much as it can be: every day has a start, an end and only so many hours, and a place can be worked at
// only while it is open. Each place is seen once at most; what does not fit is left out.
//
// Times are counted from where the caller likes (midnight, or the start of the day), in the caller's unit,
// the same for every day.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "base/expected.hpp"

namespace beegarth::work::rounds {

// Work may begin at `open` at the earliest and at `close` at the latest; who comes early waits.
struct OpenTime {
  std::optional<int> day;  // 0 is the first; absent: every day
  double open = 0;
  double close = 0;
};

struct Place {
  std::vector<OpenTime> windows;  // none: open the whole time of every day
  double service = 0;             // how long the work there takes
  double score = 0;               // what it is worth
  std::vector<double> uses;       // of each of the question's limits; shorter: nothing of the rest
};

// Something of which there is only so much: room in the car (each day), or visits of one kind (in the plan).
struct Limit {
  double most = 0;
  bool each_day = false;
};

struct Question {
  int days = 1;
  std::vector<Place> places;
  // From row to column; the places in their order, then the start, then the end. Ways need not be the same in
  // both directions.
  std::vector<std::vector<double>> travel;
  double begin = 0;            // when a day can be begun
  std::vector<double> length;  // of each day: the end is reached by begin + length
  std::vector<Limit> limits;
  int effort = 100;  // thousands of steps of the search
  std::uint64_t seed = 1;
};

constexpr int most_days = 31;
constexpr int most_places = 400;
constexpr int most_limits = 20;
constexpr int most_effort = 10000;
constexpr double longest_time = 1e6;
constexpr double highest_score = 1e6;
constexpr double most_use = 1e6;  // of a limit

struct Answer {
  std::vector<std::vector<int>> routes;     // of each day, as the places are reached
  std::vector<std::vector<double>> starts;  // when work begins at each of them
  std::vector<double> back;  // when the end of each day is reached; `begin` where nothing is done
  double score = 0;
  std::optional<double> bound;  // no plan is worth more; absent where none was found within the work allowed
  bool proven_optimal = false;
};

// The same answer for the same question on every machine: the work is counted, not timed. A Problem where the
// question contradicts itself or a number is beyond the limits above; `where` names the field.
Expected<Answer> best_rounds(const Question& question);

}  // namespace beegarth::work::rounds
