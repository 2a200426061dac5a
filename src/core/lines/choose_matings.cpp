#include "lines/choose_matings.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <set>

namespace beegarth::lines {
namespace {

constexpr int most_swaps = 200;
constexpr double least_gain = 1e-12;  // above rounding, so that no exchange goes to and fro

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
    if (steps_ > most_steps_) swap_while_better();
    Choice choice;
    choice.crosses = best_;
    const auto keep = static_cast<double>(problem_.keep);
    for (const std::size_t a : best_) {
      choice.mean_score += problem_.options[a].score / keep;
      for (const std::size_t b : best_)
        choice.mean_coancestry += problem_.coancestry.at(a, b) / (keep * keep);
    }
    choice.value = choice.mean_coancestry - choice.mean_score;
    std::sort(choice.crosses.begin(), choice.crosses.end());
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

  // Where not all could be looked at: the best exchange of one option for another, again and again.
  void swap_while_better() {
    for (int round = 0; round < most_swaps; ++round) {
      std::vector<std::size_t> better;
      for (std::size_t place = 0; place < best_.size(); ++place) {
        std::vector<std::size_t> swapped = best_;
        for (std::size_t option = 0; option < problem_.options.size(); ++option) {
          swapped[place] = option;
          if (!is_valid(swapped)) continue;
          if (const double value = value_of(swapped); value < best_value_ - least_gain) {
            best_value_ = value;
            better = swapped;
          }
        }
      }
      if (better.empty()) return;
      best_ = better;
    }
  }

  bool is_valid(const std::vector<std::size_t>& options) const {
    std::set<std::size_t> virgins, lines;
    for (const std::size_t option : options) {
      virgins.insert(problem_.options[option].virgin);
      lines.insert(problem_.options[option].line);
    }
    return virgins.size() == options.size() && lines.size() == problem_.lines;
  }

  // keep^2 times the value.
  double value_of(const std::vector<std::size_t>& options) const {
    double value = 0;
    for (const std::size_t a : options) {
      value -= static_cast<double>(problem_.keep) * problem_.options[a].score;
      for (const std::size_t b : options) value += problem_.coancestry.at(a, b);
    }
    return value;
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
