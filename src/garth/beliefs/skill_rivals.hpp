// Plain ways to guess, which a forecast must beat to be worth its trouble.
#pragma once

#include <optional>

#include "base/fact_table.hpp"
#include "garth/beliefs/skill_leads.hpp"

namespace beegarth::garth {

enum class Rival { last_value, last_value_and_changes, trend, climatology, growth, other_colonies };
struct RivalName {
  Rival rival;
  std::string_view key;
  std::string_view words;
};
inline constexpr std::array<RivalName, 6> rivals{{
    {Rival::last_value, "last_value", "the last value"},
    {Rival::last_value_and_changes, "last_value_and_changes", "the last value and past changes"},
    {Rival::trend, "trend", "the trend of the last two"},
    {Rival::climatology, "climatology", "the time of year"},
    {Rival::growth, "growth", "growth of 0.021 a day"},
    {Rival::other_colonies, "other_colonies", "the other colonies that day"},
}};

// A distribution, or a point where there is one value only. Ascending; the weights sum to one.
struct Guess {
  std::vector<double> values;
  std::vector<double> weights;
};

// What is asked of a rival: of colony `own`, from what was seen up to look `origin`, its look `then`.
struct Asked {
  const SeenColony& own;
  std::size_t origin;
  std::size_t then;
  Lead lead;
  Scored what;
};

class Rivals {
 public:
  // `all` must outlive it. `observation`: the table of errors.
  Rivals(const std::vector<SeenColony>& all, const FactTable& observation, std::uint64_t seed);

  // Nothing where the book does not hold enough for it.
  std::optional<Guess> guess(Rival rival, const Asked& asked) const;

  // Whether what is learnt from others leaves out the whole site; with one site only the colony alone is left
  // out.
  bool whole_sites() const { return whole_sites_; }

 private:
  bool may_learn_from(const SeenColony& other, const SeenColony& own) const;
  std::optional<Guess> past_changes(const Asked& asked) const;
  std::optional<Guess> trend(const Asked& asked) const;
  std::optional<Guess> time_of_year(const Asked& asked) const;
  std::optional<Guess> survival(const Asked& asked) const;
  std::optional<Guess> growth(const Asked& asked) const;
  std::optional<Guess> same_round(const Asked& asked) const;
  double floor_of(Scored what) const;

  const std::vector<SeenColony>& all_;
  bool whole_sites_ = false;
  std::uint64_t seed_;
  double floor_bees_, floor_cells_, floor_stores_, sample_size_, wash_recovery_, roll_recovery_;
};

}  // namespace beegarth::garth
