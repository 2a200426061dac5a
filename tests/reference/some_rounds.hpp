// Invented questions for rounds over several days, and two slow ways of answering them: by trying every
// order, and as a mixed-integer program. All numbers are whole, so that sums are exact.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

#include "base/random.hpp"
#include "work/plan.hpp"
#include "work/rounds/orienteering.hpp"

namespace beegarth::reference {

using work::rounds::Question;

struct RoundsSize {
  int places = 6;
  int days = 2;
  bool odd_roads = false;  // a way past a third place may be shorter, and back is not as there
  bool limits = false;
  bool days_alike = false;
};

inline Question some_rounds(std::uint64_t number, const RoundsSize& size) {
  Stream draw({.seed = number, .purpose = Purpose::demo});
  const auto whole = [&](unsigned below) { return static_cast<double>(draw.word() % below); };
  Question question;
  question.seed = number;
  question.days = size.days;
  question.begin = whole(3) * 10;
  for (int day = 0; day < size.days; ++day) question.length.push_back(size.days_alike ? 80 : 25 + whole(80));
  if (size.limits) question.limits = {{4 + whole(12), true}, {1 + whole(4), false}};
  std::vector<std::pair<double, double>> points;
  points.reserve(static_cast<std::size_t>(size.places) + 2);
  for (int i = 0; i < size.places + 2; ++i) points.push_back({whole(40), whole(40)});
  for (int i = 0; i < size.places; ++i) {
    work::rounds::Place place;
    place.service = whole(15);
    place.score = 1 + whole(20);
    place.uses = {whole(6), whole(2)};
    if (!size.limits) place.uses.clear();
    const unsigned windows = draw.word() % 4;
    for (unsigned w = 0; w < windows; ++w) {
      work::rounds::OpenTime time;
      time.open = whole(90);
      time.close = time.open + whole(30);
      if (!size.days_alike && draw.word() % 2 == 0)
        time.day = static_cast<int>(draw.word() % static_cast<unsigned>(size.days));
      place.windows.push_back(time);
    }
    question.places.push_back(place);
  }
  for (const auto& from : points) {
    auto& row = question.travel.emplace_back();
    for (const auto& to : points)
      row.push_back(size.odd_roads ? whole(40)
                                   : std::ceil(std::hypot(from.first - to.first, from.second - to.second)));
  }
  return question;
}

// Every order of every choice, day after day; what is left depends only on where and when one stands, and on
// what was seen, so that no such standing is gone through twice.
class EveryRound {
 public:
  explicit EveryRound(const Question& question) : question_(question) {}
  double best() { return from(0, start(), question_.begin, 0, 0); }

 private:
  using Set = unsigned;
  std::size_t start() const { return question_.places.size(); }
  std::size_t end() const { return question_.places.size() + 1; }

  double from(int day, std::size_t at, double time, Set seen, Set before_today) {
    if (day == question_.days) return 0;
    const auto key = std::make_tuple(day, at, time, seen, before_today);
    if (const auto known = known_.find(key); known != known_.end()) return known->second;
    const double service = at == start() ? 0 : question_.places[at].service;
    const double finish = question_.begin + question_.length[static_cast<std::size_t>(day)];
    double best = -1e9;  // standing where the end cannot be reached
    if (at == start() || time + service + question_.travel[at][end()] <= finish)
      best = from(day + 1, start(), question_.begin, seen, seen);
    for (std::size_t place = 0; place < question_.places.size(); ++place) {
      const Set now = seen | Set{1} << place;
      if (now == seen || !within_limits(now, before_today)) continue;
      const double work = open_from(place, day, time + service + question_.travel[at][place]);
      if (work > finish) continue;
      best = std::max(best, question_.places[place].score + from(day, place, work, now, before_today));
    }
    known_[key] = best;
    return best;
  }

  double open_from(std::size_t place, int day, double arrival) const {
    const auto& windows = question_.places[place].windows;
    double first = windows.empty() ? arrival : 1e9;
    for (const auto& window : windows)
      if (window.day.value_or(day) == day && arrival <= window.close)
        first = std::min(first, std::max(arrival, window.open));
    return first;
  }

  bool within_limits(Set seen, Set before_today) const {
    for (std::size_t limit = 0; limit < question_.limits.size(); ++limit) {
      const Set counted = question_.limits[limit].each_day ? seen & ~before_today : seen;
      double used = 0;
      for (std::size_t place = 0; place < question_.places.size(); ++place)
        if (counted & Set{1} << place) used += question_.places[place].uses[limit];
      if (used > question_.limits[limit].most) return false;
    }
    return true;
  }

  const Question& question_;
  std::map<std::tuple<int, std::size_t, double, Set, Set>, double> known_;
};

// The whole model for a mixed-integer minimiser: a column for each way of each day and for each window of
// each day that is used, and one, scaled to 0..1, for the beginning of the work at each place.
class RoundsProgram {
 public:
  explicit RoundsProgram(const Question& question)
      : question_(question), places_(static_cast<int>(question.places.size())) {
    for (const double length : question.length) horizon_ = std::max(horizon_, question.begin + length);
    lay_out_columns();
    for (int day = 0; day < question.days; ++day) {
      flow(day);
      windows(day);
    }
    times();
    once();
    limits();
  }
  const work::MipProblem& program() const { return program_; }

 private:
  using Row = work::MipProblem::Row;
  static constexpr double unbounded = std::numeric_limits<double>::infinity();

  int way(int day, int from, int to) const { return (day * (places_ + 2) + from) * (places_ + 2) + to; }
  int time(int place) const { return first_time_ + place; }
  int start() const { return places_; }
  int end() const { return places_ + 1; }
  double travel(int from, int to) const {
    return question_.travel[static_cast<std::size_t>(from)][static_cast<std::size_t>(to)];
  }
  const work::rounds::Place& place(int index) const {
    return question_.places[static_cast<std::size_t>(index)];
  }
  double leg(int from, int to) const {
    return ((from < places_ ? place(from).service : 0) + travel(from, to)) / horizon_;
  }
  bool possible(int from, int to) const {
    return from != to && from != end() && to != start() && !(from == start() && to == end());
  }

  int column(double cost, bool whole) {
    program_.cost.push_back(cost);
    program_.integer.push_back(whole);
    return static_cast<int>(program_.cost.size()) - 1;
  }
  void row(const std::vector<std::pair<int, double>>& terms, double low, double high) {
    Row row{{}, {}, low, high};
    for (const auto& [where, coefficient] : terms) {
      row.columns.push_back(where);
      row.coefficients.push_back(coefficient);
    }
    program_.rows.push_back(std::move(row));
  }

  void lay_out_columns() {
    for (int day = 0; day < question_.days; ++day)
      for (int from = 0; from < places_ + 2; ++from)
        for (int to = 0; to < places_ + 2; ++to)
          column(to < places_ && possible(from, to) ? -place(to).score : 0, true);
    first_time_ = static_cast<int>(program_.cost.size());
    for (int i = 0; i < places_; ++i) column(0, false);
  }

  void flow(int day) {
    for (int from = 0; from < places_ + 2; ++from)
      for (int to = 0; to < places_ + 2; ++to)
        if (!possible(from, to)) row({{way(day, from, to), 1}}, 0, 0);
    for (int here = 0; here < places_; ++here) {
      std::vector<std::pair<int, double>> terms;
      for (int other = 0; other < places_ + 2; ++other) {
        if (possible(other, here)) terms.push_back({way(day, other, here), 1});
        if (possible(here, other)) terms.push_back({way(day, here, other), -1});
      }
      row(terms, 0, 0);
    }
    std::vector<std::pair<int, double>> out;
    out.reserve(question_.places.size());
    for (int to = 0; to < places_; ++to) out.push_back({way(day, start(), to), 1});
    row(out, 0, 1);
  }

  std::vector<std::pair<int, double>> seen(int day, int here) const {
    std::vector<std::pair<int, double>> terms;
    for (int from = 0; from < places_ + 1; ++from)
      if (possible(from, here)) terms.push_back({way(day, from, here), 1});
    return terms;
  }

  void windows(int day) {
    const double finish = question_.begin + question_.length[static_cast<std::size_t>(day)];
    for (int here = 0; here < places_; ++here) {
      auto one = seen(day, here);
      std::vector<std::pair<int, double>> not_before{{time(here), 1}}, not_after{{time(here), 1}};
      const auto use = [&](double open, double close) {
        const int used = column(0, true);
        one.push_back({used, -1});
        not_before.push_back({used, -open / horizon_});
        not_after.push_back({used, 1 - close / horizon_});
      };
      if (place(here).windows.empty()) use(question_.begin, finish);
      for (const auto& window : place(here).windows) {
        const double open = std::max(window.open, question_.begin), close = std::min(window.close, finish);
        if (window.day.value_or(day) == day && open <= close) use(open, close);
      }
      row(one, 0, 0);                 // seen through one of its windows
      row(not_before, 0, unbounded);  // open <= time, where used
      row(not_after, -unbounded, 1);  // time <= close, where used
      row({{time(here), 1}, {way(day, here, end()), leg(here, end())}}, -unbounded, 1);
      // time + leg <= finish where the day ends from here
      row({{time(here), 1}, {way(day, here, end()), 1}}, -unbounded,
          finish / horizon_ - leg(here, end()) + 1);
    }
  }

  void times() {
    for (int to = 0; to < places_; ++to) {
      for (int from = 0; from < places_; ++from) {
        if (from == to) continue;
        // time(to) >= time(from) + leg where that way is gone
        const double slack = 1 + leg(from, to);
        std::vector<std::pair<int, double>> terms{{time(to), 1}, {time(from), -1}};
        for (int day = 0; day < question_.days; ++day) terms.push_back({way(day, from, to), -slack});
        row(terms, leg(from, to) - slack, unbounded);
      }
      std::vector<std::pair<int, double>> terms{{time(to), 1}};
      for (int day = 0; day < question_.days; ++day)
        terms.push_back({way(day, start(), to), -(question_.begin / horizon_ + leg(start(), to))});
      row(terms, 0, unbounded);
    }
  }

  void once() {
    for (int here = 0; here < places_; ++here) {
      std::vector<std::pair<int, double>> all;
      for (int day = 0; day < question_.days; ++day)
        for (const auto& term : seen(day, here)) all.push_back(term);
      row(all, 0, 1);
    }
  }

  void limits() {
    for (std::size_t limit = 0; limit < question_.limits.size(); ++limit) {
      std::vector<std::pair<int, double>> all;
      for (int day = 0; day < question_.days; ++day) {
        for (int here = 0; here < places_; ++here)
          for (const auto& [where, one] : seen(day, here))
            all.push_back({where, one * place(here).uses[limit]});
        if (!question_.limits[limit].each_day && day + 1 < question_.days) continue;
        row(all, 0, question_.limits[limit].most);
        all.clear();
      }
    }
  }

  const Question& question_;
  int places_;
  double horizon_ = 1;
  int first_time_ = 0;
  work::MipProblem program_;
};

}  // namespace beegarth::reference
