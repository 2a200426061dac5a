// The best plan found the slow, obvious way: every job on every part-day or not at all, every order of the
// sites. Only the table of what a job costs on a part-day is taken from the program; the roads, the hours,
// the order of jobs and the closing of the round are worked out afresh.
#pragma once

#include <algorithm>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "work/plan.hpp"
#include "work/plan_model.hpp"

namespace beegarth::reference {

class BestPlan {
 public:
  BestPlan(const work::PlanInput& input, const work::Model& model) : input_(input), model_(model) {
    shift_of_.assign(model.jobs.size(), -1);
    for (const auto& row : input.travel.minutes) {
      minutes_.emplace_back();
      for (const auto& minutes : row) minutes_.back().push_back(*minutes);
    }
    while (shorten()) {
    }
  }

  double value() {
    best_ = std::numeric_limits<double>::infinity();
    place(0, 0);
    return best_;
  }

 private:
  void place(std::size_t j, double so_far) {
    if (j == model_.jobs.size()) return finish(so_far);
    const work::Job& job = model_.jobs[j];
    shift_of_[j] = -1;
    place(j + 1, so_far + job.never);
    for (const auto& option : job.options) {
      shift_of_[j] = option.shift;
      place(j + 1, so_far + option.cost);
    }
    shift_of_[j] = -1;
  }

  void finish(double jobs_cost) {
    if (!in_order() || !clashes_apart()) return;
    std::map<int, int> shift_of_day;
    for (const int shift : shift_of_) {
      if (shift < 0) continue;
      const int day = model_.shifts[static_cast<std::size_t>(shift)].day;
      const auto [known, fresh] = shift_of_day.emplace(day, shift);
      if (!fresh && known->second != shift) return;
    }
    double sum = jobs_cost + openings_cost();
    for (const auto& [day, shift] : shift_of_day) {
      const auto cost = day_cost(shift);
      if (!cost) return;
      sum += *cost;
    }
    best_ = std::min(best_, sum);
  }

  // A colony opened on a day costs its price once.
  double openings_cost() const {
    std::set<std::pair<ColonyId, int>> opened;
    for (std::size_t j = 0; j < model_.jobs.size(); ++j)
      if (shift_of_[j] >= 0 && need_of(j).clock == facts::Clock::opening && need_of(j).colony)
        opened.emplace(*need_of(j).colony, day_of(j));
    return input_.price_of_opening * static_cast<double>(opened.size());
  }

  bool in_order() const {
    for (std::size_t j = 0; j < model_.jobs.size(); ++j) {
      if (shift_of_[j] < 0) continue;
      const auto& need = need_of(j);
      for (std::size_t i = 0; i < model_.jobs.size(); ++i) {
        const auto& first = need_of(i);
        if (std::find(need.after.begin(), need.after.end(), first.key) == need.after.end()) continue;
        if (shift_of_[i] < 0) return false;
        const int day_i = day_of(i), day_j = day_of(j);
        const bool same_day_will_do =
            first.site == need.site && !(first.last_in_round && !need.last_in_round);
        if (day_i > day_j || (day_i == day_j && !same_day_will_do)) return false;
      }
    }
    return true;
  }

  bool clashes_apart() const {
    for (std::size_t a = 0; a < model_.jobs.size(); ++a)
      for (std::size_t b = 0; b < model_.jobs.size(); ++b) {
        if (a == b || shift_of_[a] < 0 || shift_of_[b] < 0) continue;
        const auto& clashes = need_of(a).clashes;
        if (std::find(clashes.begin(), clashes.end(), need_of(b).key) != clashes.end()) return false;
      }
    return true;
  }

  // The cheapest round of a part-day, or nothing where it cannot be made within its hours.
  std::optional<double> day_cost(int shift) const {
    std::set<int> sites, closing;
    double minutes = 0;
    for (std::size_t j = 0; j < model_.jobs.size(); ++j) {
      if (shift_of_[j] != shift) continue;
      sites.insert(model_.jobs[j].site);
      if (need_of(j).last_in_round) closing.insert(model_.jobs[j].site);
      minutes += need_of(j).minutes;
    }
    if (closing.size() > 1) return std::nullopt;
    std::vector<int> order(sites.begin(), sites.end());
    double way = std::numeric_limits<double>::infinity();
    do {
      if (closing.empty() || order.back() == *closing.begin()) way = std::min(way, way_minutes(order));
    } while (std::next_permutation(order.begin(), order.end()));
    const double settling = input_.settle_minutes * static_cast<double>(order.size());
    const auto& hours = model_.shifts[static_cast<std::size_t>(shift)];
    if (way + settling + minutes > (hours.end_hour - hours.start_hour) * 60 + 1e-9) return std::nullopt;
    return way * input_.price_per_travel_minute + settling * input_.price_per_hour / 60;
  }

  // Takes a detour where it is shorter than the road given; false once there is none.
  bool shorten() {
    bool any = false;
    for (std::size_t a = 0; a < minutes_.size(); ++a)
      for (std::size_t b = 0; b < minutes_.size(); ++b)
        for (std::size_t via = 0; via < minutes_.size(); ++via)
          if (minutes_[a][via] + minutes_[via][b] < minutes_[a][b] - 1e-12) {
            minutes_[a][b] = minutes_[a][via] + minutes_[via][b];
            any = true;
          }
    return any;
  }

  double way_minutes(const std::vector<int>& order) const {
    double minutes = 0;
    std::size_t here = 0;
    for (const int site : order) {
      minutes += minutes_[here][static_cast<std::size_t>(site) + 1];
      here = static_cast<std::size_t>(site) + 1;
    }
    return minutes + minutes_[here][0];
  }

  const facts::Need& need_of(std::size_t j) const {
    return input_.needs[static_cast<std::size_t>(model_.jobs[j].need)];
  }
  int day_of(std::size_t j) const { return model_.shifts[static_cast<std::size_t>(shift_of_[j])].day; }

  const work::PlanInput& input_;
  const work::Model& model_;
  std::vector<int> shift_of_;
  std::vector<std::vector<double>> minutes_;
  double best_ = 0;
};

}  // namespace beegarth::reference
