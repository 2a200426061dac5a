#include "work/rounds/orienteering.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "work/rounds/check.hpp"
#include "work/rounds/recombine.hpp"
#include "work/rounds/small.hpp"

namespace beegarth::work::rounds {
namespace {

// What one unit of effort allows.
constexpr std::int64_t looks_each = 2'000'000;
constexpr std::int64_t labels_each = 30'000'000;
constexpr std::int64_t cards_each = 2'000'000;
constexpr std::array walk_shares{0.05, 0.25, 0.3, 0.4};
constexpr double walk_warmest = 0.5, walk_coldest = 0.01;
constexpr std::size_t most_cards = 20'000;
constexpr std::size_t most_tours = 60'000;

class Search {
 public:
  Search(const Terrain& terrain, const Question& question)
      : terrain_(terrain),
        question_(question),
        labels_{question.effort * labels_each},
        best_(no_tours(terrain)),
        ways_(terrain) {
    for (int place = 0; place < terrain.places(); ++place) bound_ += terrain.score(place);
    for (int day = 0; day < terrain.days(); ++day) kinds_.emplace_back(terrain, ways_, day);
  }

  // Cheap first: where a short walk already meets the bound, nothing more is to be done.
  void run() {
    for (std::size_t number = 0; number < walk_shares.size() && !proven(); ++number) {
      walk_once(number);
      if (number == 0) find_bound();
      if (!proven()) put_together_pool();
      if (!proven() && (number == 0 || number + 1 == walk_shares.size())) close_gap();
    }
  }

  const Tours& best() const { return best_; }
  Worth bound() const { return bound_; }
  bool proven() const { return bound_ < best_.score + terrain_.score_step(); }

 private:
  void walk_once(std::size_t number) {
    Stream random(
        {.seed = question_.seed, .member = static_cast<std::uint32_t>(number), .purpose = Purpose::rounds});
    const double looks = walk_shares[number] * static_cast<double>(question_.effort * looks_each);
    const WalkPlan plan{static_cast<std::int64_t>(looks), walk_warmest, walk_coldest};
    keep(walk(terrain_, no_tours(terrain_), plan, random, pool_));
  }

  void keep(Tours tours) {
    if (better(tours, best_)) best_ = std::move(tours);
  }

  void find_bound() {
    if (terrain_.days() == 1 && terrain_.limits() == 0) {
      const auto found = kinds_[0].solve(terrain_.scores(), best_.score, labels_);
      if (!found.finished) return;
      bound_ = std::min(bound_, found.bound);
      Tours tours = no_tours(terrain_);
      if (found.simple && tours.days[0].become(found.stops)) {
        add_up(tours);
        keep(std::move(tours));
      }
      return;
    }
    Work work{labels_.left / 2};
    labels_.left -= work.left;
    priced_ = price_places(terrain_, kinds_, best_, work);
    labels_.left += std::max<std::int64_t>(0, work.left);
    if (priced_.found) bound_ = std::min(bound_, priced_.bound);
  }

  void put_together_pool() {
    if (terrain_.days() == 1) return;
    std::size_t sorts = 0;
    for (int day = 0; day < terrain_.days(); ++day) sorts += terrain_.alike(day) == day ? 1 : 0;
    Work work{question_.effort * cards_each / (2 * static_cast<std::int64_t>(walk_shares.size()))};
    keep(put_together(terrain_, pool_.best(most_cards / sorts), priced_, best_, work).tours);
  }

  // Where the bound is near, all tours that could be part of a better plan can be told, and the best of the
  // plans from them is the best there is (Baldacci, Christofides & Mingozzi 2008).
  void close_gap() {
    if (!priced_.found) return;
    const Worth room = priced_.bound - (best_.score + terrain_.score_step());
    std::vector<Column> columns;
    Work labels{labels_.left / 2};
    labels_.left -= labels.left;
    bool all = true;
    for (int day = 0; day < terrain_.days() && all; ++day) {
      if (terrain_.alike(day) != day) continue;
      std::vector<std::vector<int>> tours;
      const Worth least = priced_.best[static_cast<std::size_t>(day)] - room;
      all = kinds_[static_cast<std::size_t>(day)].every(priced_.net_worth, least, labels, most_tours, tours);
      for (auto& stops : tours) {
        Worth score = 0;
        for (const int stop : stops) score += terrain_.score(stop);
        columns.push_back({day, std::move(stops), score, 0});
      }
    }
    labels_.left += std::max<std::int64_t>(0, labels.left);
    if (!all) return;
    Work work{question_.effort * cards_each / 2};
    auto put = put_together(terrain_, columns, priced_, best_, work);
    keep(std::move(put.tours));
    if (put.finished) bound_ = best_.score;
  }

  const Terrain& terrain_;
  const Question& question_;
  Work labels_;
  Tours best_;
  Worth bound_ = 0;
  Ways ways_;
  std::vector<BestTour> kinds_;  // of each day; of days alike only the first is asked
  Priced priced_;
  Pool pool_;
};

Answer told(const Terrain& terrain, const Question& question, const Tours& tours, Worth bound) {
  constexpr double millionths = 1e6;
  Answer answer;
  std::vector<bool> seen(question.places.size(), false);
  for (const Tour& tour : tours.days) {
    answer.routes.push_back(tour.stops());
    auto& starts = answer.starts.emplace_back();
    for (std::size_t at = 0; at < tour.stops().size(); ++at) {
      starts.push_back(static_cast<double>(tour.work_begins(at)) / millionths);
      seen[static_cast<std::size_t>(tour.stops()[at])] = true;
    }
    answer.back.push_back(static_cast<double>(tour.back()) / millionths);
  }
  for (std::size_t place = 0; place < seen.size(); ++place)
    if (seen[place]) answer.score += question.places[place].score;
  answer.proven_optimal = bound < tours.score + terrain.score_step();
  // A bound between two sums that scores can have is the lower of them.
  const Worth reachable = bound - bound % terrain.score_step();
  answer.bound = answer.proven_optimal ? answer.score : static_cast<double>(reachable) / millionths;
  return answer;
}

}  // namespace

Expected<Answer> best_rounds(const Question& question) {
  if (auto fault = fault_in(question)) return *std::move(fault);
  const Terrain terrain(question);
  if (terrain.places() <= small_places) {
    const Tours tours = best_of_all_sets(terrain);
    return told(terrain, question, tours, tours.score);
  }
  Search search(terrain, question);
  search.run();
  return told(terrain, question, search.best(), search.bound());
}

}  // namespace beegarth::work::rounds
