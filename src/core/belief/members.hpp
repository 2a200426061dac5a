// Members: possible courses of one colony. A member's course is a function of its coordinates (traits, start,
// ways of the observer; all standard normal before anything was seen) and of its luck (noise ids, one per
// piece of time).
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "belief/beginning.hpp"
#include "belief/deeds.hpp"
#include "belief/observation.hpp"
#include "belief/timeline.hpp"
#include "colony/colony.hpp"

namespace beegarth::belief {

// Observations of one morning: observations[first .. last) of the timeline.
struct Group {
  int day = 0;
  std::size_t first = 0;
  std::size_t last = 0;
};

// All that the members of a colony have in common. The references must outlive it.
struct Setting {
  const Timeline& timeline;
  const facts::ForcingPath& past;
  colony::Model model;
  StartPrior start;
  ObserverPrior observer;
  ObservationErrors errors;
  DeedFigures figures;
  facts::Dwelling dwelling;
  double latitude_deg = 52;
  std::uint64_t seed = 1;
  std::uint64_t colony = 0;
  int members = 512;
  int sweeps = 3;
  int today = 0;                       // days since the colony began
  std::vector<Group> groups;           // up to today
  std::vector<int> piece_starts;       // luck is drawn anew at each; the first is 0
  std::optional<std::size_t> without;  // an observation to leave out
  std::vector<std::size_t> left_out;   // those that no course of the colony could have made

  bool is_left_out(std::size_t observation) const;

  std::size_t piece_of(int day) const;
};

Expected<Setting> make_setting(const History& history, const Forcing& forcing, const Timeline& timeline,
                               const Tables& tables, const Options& options);

inline constexpr int observer_dims = 7;
inline constexpr int dims = colony::trait_count + start_dims + observer_dims;

// Called with the state of every morning.
using OnMorning = std::function<void(int day, const colony::Ensemble&)>;

struct Members {
  std::vector<double> coordinates;               // [member * dims]: traits, start, observer
  std::vector<std::vector<std::uint32_t>> luck;  // [piece][member]
  colony::Ensemble ensemble;                     // on the morning of `day`
  int day = 0;
  std::vector<std::vector<double>> log_seen;  // [observation][member], of those up to now
  std::vector<std::vector<double>> fallen;    // [observation][member]: mites on the board so far
  std::vector<int> family;  // [member]: the same for all that were copied from one, see kin.hpp

  std::span<const double> at(int member) const {
    return std::span(coordinates).subspan(static_cast<std::size_t>(member) * dims, dims);
  }
};

// Members as they are before anything was seen.
Members before_seeing(const Setting& setting);
// The same coordinates and luck, set back to the day the colony began.
Members set_back(const Setting& setting, std::vector<double> coordinates,
                 std::vector<std::vector<std::uint32_t>> luck);

// Lives on to the morning of `day`, judging on the way what was seen before and on that morning.
void live_to(Members& members, const Setting& setting, int day, const OnMorning& on_morning = {});

// What the colony lives in on a day, room that was given since apart.
const facts::Dwelling& dwelling_on(const Setting& setting, Date date);

// What the keeper did on a day, in the model's terms; a colony that ended on it is killed.
std::vector<colony::Action> actions_on(const Setting& setting, int day, const facts::Dwelling& dwelling);

// The sum of the logs of one morning's observations, by member.
std::vector<double> log_group(const Members& members, const Setting& setting, const Group& group);

// Every member as it would show itself; what has fallen on boards is not in it.
std::vector<Visible> all_visible(const colony::Ensemble& ensemble);

ObserverTraits observer_of(const Members& members, const Setting& setting, int member);

}  // namespace beegarth::belief
