#include "work/rounds/terrain.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace beegarth::work::rounds {
namespace {

constexpr double millionths = 1e6;

std::int64_t whole(double value) {
  return std::llround(value * millionths);
}

// In order of time, each within the day, those that touch or overlap as one.
std::vector<Window> windows_of(const Place& place, int day, Ticks begin, Ticks finish) {
  if (place.windows.empty()) return {{begin, finish}};
  std::vector<Window> all, merged;
  for (const OpenTime& time : place.windows) {
    if (time.day.value_or(day) != day) continue;
    const Window one{std::max(begin, whole(time.open)), std::min(finish, whole(time.close))};
    if (one.open <= one.close) all.push_back(one);
  }
  std::sort(all.begin(), all.end(), [](const Window& a, const Window& b) { return a.open < b.open; });
  for (const Window& one : all) {
    if (!merged.empty() && one.open <= merged.back().close)
      merged.back().close = std::max(merged.back().close, one.close);
    else
      merged.push_back(one);
  }
  return merged;
}

}  // namespace

Terrain::Terrain(const Question& question)
    : places_(static_cast<int>(question.places.size())), days_(question.days), begin_(whole(question.begin)) {
  for (const double length : question.length) finish_.push_back(whole(question.begin + length));
  for (const Place& place : question.places) {
    service_.push_back(whole(place.service));
    score_.push_back(whole(place.score));
    for (int day = 0; day < days_; ++day) {
      first_window_.push_back(windows_.size());
      for (const Window& one : windows_of(place, day, begin_, finish_[index(day)])) windows_.push_back(one);
    }
  }
  first_window_.push_back(windows_.size());
  service_.resize(index(places_) + 2, 0);
  for (std::size_t from = 0; from < question.travel.size(); ++from)
    for (const double way : question.travel[from]) leg_.push_back(service_[from] + whole(way));
  for (const Limit& limit : question.limits) {
    most_.push_back(whole(limit.most));
    each_day_.push_back(limit.each_day);
  }
  for (const Place& place : question.places)
    for (std::size_t i = 0; i < most_.size(); ++i)
      uses_.push_back(i < place.uses.size() ? whole(place.uses[i]) : 0);
  score_step_ = std::accumulate(score_.begin(), score_.end(), Worth{0}, std::gcd<Worth, Worth>);
  if (score_step_ == 0) score_step_ = 1;
  number_days_alike();
}

void Terrain::number_days_alike() {
  const auto same = [&](int a, int b) {
    if (finish(a) != finish(b)) return false;
    for (int place = 0; place < places_; ++place) {
      const auto one = windows(place, a), other = windows(place, b);
      if (!std::equal(
              one.begin(), one.end(), other.begin(), other.end(),
              [](const Window& x, const Window& y) { return x.open == y.open && x.close == y.close; }))
        return false;
    }
    return true;
  };
  for (int day = 0; day < days_; ++day) {
    int first = 0;
    while (first < day && !same(first, day)) ++first;
    alike_.push_back(first);
  }
}

std::span<const Window> Terrain::windows(int place, int day) const {
  const std::size_t from = first_window_[slot(place, day)], to = first_window_[slot(place, day) + 1];
  return {windows_.data() + from, to - from};
}

Ticks Terrain::work_from(int place, int day, Ticks arrival) const {
  for (const Window& window : windows(place, day))
    if (arrival <= window.close) return std::max(arrival, window.open);
  return never;
}

Ticks Terrain::work_until(int place, int day, Ticks moment) const {
  const auto all = windows(place, day);
  for (std::size_t i = all.size(); i-- > 0;)
    if (all[i].open <= moment) return std::min(moment, all[i].close);
  return too_early;
}

bool Use::room_for(int place, int day) const {
  for (std::size_t i = 0; i < plan_.size(); ++i) {
    const std::int64_t used = terrain_->each_day(i) ? of_day(day, i) : plan_[i];
    if (used + terrain_->uses(place, i) > terrain_->most(i)) return false;
  }
  return true;
}

void Use::add(int place, int day, int times) {
  for (std::size_t i = 0; i < plan_.size(); ++i) {
    plan_[i] += times * terrain_->uses(place, i);
    of_day(day, i) += times * terrain_->uses(place, i);
  }
}

}  // namespace beegarth::work::rounds
