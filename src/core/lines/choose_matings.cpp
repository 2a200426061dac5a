#include "lines/choose_matings.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

namespace beegarth::lines {
namespace {

class Search {
 public:
  Search(const ChoiceProblem& problem, std::int64_t most_steps)
      : problem_(problem), most_steps_(most_steps), added_(problem.options.size()), kept_(problem.lines, 0) {
    const auto keep = static_cast<double>(problem.keep);
    for (std::size_t i = 0; i < added_.size(); ++i)
      added_[i] = problem.coancestry.at(i, i) - keep * problem.options[i].score;
    for (std::size_t i = 0; i < problem.options.size(); ++i) {
      if (i == 0 || problem.options[i].virgin != problem.options[i - 1].virgin) virgins_.emplace_back();
      virgins_.back().push_back(i);
    }
  }

  std::optional<Choice> run() {
    go_on(0, 0.0);
    if (best_.empty()) return std::nullopt;
    Choice choice;
    choice.crosses = best_;
    const auto keep = static_cast<double>(problem_.keep);
    for (const std::size_t a : best_) {
      choice.mean_score += problem_.options[a].score / keep;
      for (const std::size_t b : best_)
        choice.mean_coancestry += problem_.coancestry.at(a, b) / (keep * keep);
    }
    choice.value = choice.mean_coancestry - choice.mean_score;
    choice.proven = steps_ <= most_steps_;
    choice.looked_at = steps_;
    return choice;
  }

 private:
  // `so_far` is keep^2 times the value of what is chosen.
  void go_on(std::size_t virgin, double so_far) {
    if (++steps_ > most_steps_ && !best_.empty()) return;
    if (chosen_.size() == problem_.keep) {
      if (missing_lines() == 0 && so_far < best_value_) {
        best_value_ = so_far;
        best_ = chosen_;
      }
      return;
    }
    if (!can_finish(virgin) || so_far + least_added(virgin) >= best_value_) return;
    std::vector<std::size_t> options = virgins_[virgin];
    std::stable_sort(options.begin(), options.end(),
                     [&](std::size_t a, std::size_t b) { return added_[a] < added_[b]; });
    for (const std::size_t option : options) take(virgin, option, so_far);
    go_on(virgin + 1, so_far);
  }

  void take(std::size_t virgin, std::size_t option, double so_far) {
    const double now = so_far + added_[option];
    chosen_.push_back(option);
    ++kept_[problem_.options[option].line];
    // Kept whole and put back whole, so that rounding does not pile up.
    const std::vector<double> before = added_;
    for (std::size_t i = 0; i < added_.size(); ++i) added_[i] += 2 * problem_.coancestry.at(option, i);
    go_on(virgin + 1, now);
    added_ = before;
    --kept_[problem_.options[option].line];
    chosen_.pop_back();
  }

  std::size_t missing_lines() const {
    return static_cast<std::size_t>(std::count(kept_.begin(), kept_.end(), 0));
  }

  bool can_finish(std::size_t virgin) const {
    const std::size_t open = problem_.keep - chosen_.size();
    if (virgins_.size() - virgin < open || missing_lines() > open) return false;
    std::vector<int> reachable = kept_;
    for (std::size_t v = virgin; v < virgins_.size(); ++v)
      ++reachable[problem_.options[virgins_[v].front()].line];
    return std::count(reachable.begin(), reachable.end(), 0) == 0;
  }

  // No completion adds less: the best option of each virgin left as if those to come were not akin to each
  // other.
  double least_added(std::size_t virgin) const {
    std::vector<double> least;
    for (std::size_t v = virgin; v < virgins_.size(); ++v) {
      double best = std::numeric_limits<double>::infinity();
      for (const std::size_t option : virgins_[v]) best = std::min(best, added_[option]);
      least.push_back(best);
    }
    const auto open = static_cast<std::ptrdiff_t>(problem_.keep - chosen_.size());
    std::nth_element(least.begin(), least.begin() + open - 1, least.end());
    return std::accumulate(least.begin(), least.begin() + open, 0.0);
  }

  const ChoiceProblem& problem_;
  std::int64_t most_steps_, steps_ = 0;
  std::vector<double> added_;  // what each option would add to keep^2 times the value
  std::vector<int> kept_;
  std::vector<std::vector<std::size_t>> virgins_;  // options of each
  std::vector<std::size_t> chosen_, best_;
  double best_value_ = std::numeric_limits<double>::infinity();
};

}  // namespace

std::optional<Choice> choose(const ChoiceProblem& problem, std::int64_t most_steps) {
  return Search(problem, most_steps).run();
}

}  // namespace beegarth::lines
