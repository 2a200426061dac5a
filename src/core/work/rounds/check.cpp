#include "work/rounds/check.hpp"

#include <cmath>
#include <string>

namespace beegarth::work::rounds {
namespace {

std::string part(const std::string& list, std::size_t index) {
  return list + "[" + std::to_string(index) + "]";
}

// Keeps the first fault.
class Checker {
 public:
  void number(double value, double low, double high, const std::string& where) {
    if (fault_ || (value >= low && value <= high)) return;  // false for what is not a number
    fault_ = bad_input(
        std::isfinite(value) ? "the number is out of range" : "not a finite number", where,
        "give " + std::to_string(static_cast<long>(low)) + " to " + std::to_string(static_cast<long>(high)));
  }
  void hold(bool true_of, const char* what, const std::string& where, const std::string& remedy) {
    if (!fault_ && !true_of) fault_ = bad_input(what, where, remedy);
  }
  bool failed() const { return fault_.has_value(); }
  std::optional<Problem> fault() const { return fault_; }

 private:
  std::optional<Problem> fault_;
};

void check_place(const Question& question, std::size_t index, Checker& check) {
  const Place& place = question.places[index];
  const std::string where = part("places", index);
  check.number(place.service, 0, longest_time, where + ".service");
  check.number(place.score, 0, highest_score, where + ".score");
  for (std::size_t i = 0; i < place.windows.size(); ++i) {
    const OpenTime& time = place.windows[i];
    const std::string here = part(where + ".windows", i);
    check.number(time.open, -longest_time, longest_time, here + ".open");
    check.number(time.close, -longest_time, longest_time, here + ".close");
    check.hold(time.open <= time.close, "it closes before it opens", here, "give a close not before open");
    check.hold(!time.day || (*time.day >= 0 && *time.day < question.days), "there is no such day",
               here + ".day", "count the days from 0");
  }
  check.hold(place.uses.size() <= question.limits.size(), "more uses than there are limits", where + ".uses",
             "give one of each limit");
  for (const double use : place.uses) check.number(use, 0, most_use, where + ".uses");
}

void check_travel(const Question& question, Checker& check) {
  const std::size_t size = question.places.size() + 2;
  const std::string remedy = "give " + std::to_string(size) + " rows of " + std::to_string(size) +
                             ": the places, then start and end";
  check.hold(question.travel.size() == size, "the matrix has not the size of the places", "travel_matrix",
             remedy);
  for (std::size_t from = 0; from < question.travel.size() && !check.failed(); ++from) {
    const auto& row = question.travel[from];
    check.hold(row.size() == size, "the row has not the size of the places", part("travel_matrix", from),
               remedy);
    for (std::size_t to = 0; to < row.size() && !check.failed(); ++to)
      check.number(row[to], 0, longest_time, part(part("travel_matrix", from), to));
  }
}

}  // namespace

std::optional<Problem> fault_in(const Question& question) {
  Checker check;
  check.number(question.days, 1, most_days, "days");
  check.number(static_cast<double>(question.places.size()), 1, most_places, "places");
  check.number(static_cast<double>(question.limits.size()), 0, most_limits, "limits");
  check.number(question.effort, 1, most_effort, "effort");
  check.number(question.begin, -longest_time, longest_time, "begin");
  if (check.failed()) return check.fault();
  check.hold(question.length.size() == static_cast<std::size_t>(question.days), "not one for each day",
             "limit", "give one number, or one for each day");
  for (std::size_t i = 0; i < question.length.size(); ++i)
    check.number(question.length[i], 0, longest_time, part("limit", i));
  for (std::size_t i = 0; i < question.limits.size(); ++i)
    check.number(question.limits[i].most, 0, most_use, part("limits", i) + ".most");
  for (std::size_t i = 0; i < question.places.size() && !check.failed(); ++i) check_place(question, i, check);
  check_travel(question, check);
  return check.fault();
}

}  // namespace beegarth::work::rounds
