#include "belief/filter.hpp"

#include <algorithm>
#include <cmath>

#include "belief/moves.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// Below this an entry's log likelihood, averaged over the crowd, is called a surprise.
constexpr double surprising = -14;
// Slips of the pen are foreseen, so that even they make hardly anything less likely than this.
constexpr double out_of_reach = 2 * surprising;

class Fit {
 public:
  explicit Fit(const Setting& setting)
      : setting_(setting),
        n_(static_cast<std::size_t>(setting.members)),
        next_id_(static_cast<std::uint32_t>((setting.piece_starts.size() + 1) * n_)) {
    fitted_.members = before_seeing(setting);
    fitted_.lowest_ess = setting.members;
    log_weights_.assign(n_, -std::log(static_cast<double>(n_)));
  }

  Fit(const Setting& setting, const BeforeNewest& before)
      : setting_(setting),
        n_(static_cast<std::size_t>(setting.members)),
        next_id_(before.next_luck),
        log_weights_(before.log_weights),
        group_(setting.groups.size() - 1) {
    fitted_.members = before.members;
    fitted_.lowest_ess = setting.members;
    tally_.sweeps = before.sweeps;
    const Group& newest = setting.groups.back();
    for (std::size_t o = newest.first; o < newest.last; ++o) {
      if (setting.without == o)
        std::fill(fitted_.members.log_seen[o].begin(), fitted_.members.log_seen[o].end(), 0.0);
    }
  }

  Fitted run() {
    for (; group_ < setting_.groups.size(); ++group_) {
      const Group& group = setting_.groups[group_];
      live_to(fitted_.members, setting_, group.day);
      leave_out_what_no_course_goes_with(group);
      if (group_ + 1 == setting_.groups.size()) {
        fitted_.before_newest = {fitted_.members, log_weights_, next_id_, tally_.sweeps};
      }
      std::vector<double> logs = log_group(fitted_.members, setting_, group);
      Stream shared(
          {.seed = setting_.seed, .colony = setting_.colony, .day = group.day, .purpose = Purpose::resample});
      const Crowd crowd{[&](std::span<const int> ancestors) { become(fitted_.members, setting_, ancestors); },
                        [&](double share) { return move(share); }, [&] { return shared.uniform(); }};
      const Assimilated step = assimilate(log_weights_, logs, crowd, {.resample_below = 0.3});
      fitted_.log_evidence += step.log_evidence;
      fitted_.lowest_ess = std::min(fitted_.lowest_ess, step.lowest_ess);
      const auto sights = static_cast<double>(sights_let_in(group).size());
      if (!step.reconciled || step.log_evidence < surprising * sights) {
        const bool hard = !step.reconciled || step.log_evidence < out_of_reach * sights;
        fitted_.surprises.push_back(
            {sights_let_in(group), hard ? Surprise::Outcome::let_in_hard : Surprise::Outcome::let_in});
      }
    }
    live_to(fitted_.members, setting_, setting_.today);
    fitted_.weights = normalised(log_weights_);
    fitted_.sweeps = tally_.sweeps;
    fitted_.next_luck = next_id_;
    fitted_.left_out = setting_.left_out;
    fitted_.accepted =
        tally_.proposed > 0 ? static_cast<double>(tally_.accepted) / static_cast<double>(tally_.proposed) : 0;
    return std::move(fitted_);
  }

 private:
  std::vector<std::size_t> sights_let_in(const Group& group) const {
    std::vector<std::size_t> sights;
    for (std::size_t o = group.first; o < group.last; ++o) {
      if (!setting_.is_left_out(o)) sights.push_back(o);
    }
    return sights;
  }

  // Of one observation, as the crowd stands.
  double log_evidence_of(std::size_t observation) const {
    std::vector<double> logs = log_weights_;
    for (std::size_t i = 0; i < n_; ++i) logs[i] += fitted_.members.log_seen[observation][i];
    return log_sum_exp(logs) - log_sum_exp(log_weights_);
  }

  // A figure that even a slip does not explain would be met by any course in which it cannot be judged: the
  // colony would be believed dead because of a slip of the pen. A look holds many figures, each with slips of
  // its own, and is never so unlikely.
  void leave_out_what_no_course_goes_with(const Group& group) {
    for (const std::size_t o : sights_let_in(group)) {
      const Sight& sight = setting_.timeline.observations[o].sight;
      const bool one_figure =
          std::holds_alternative<entries::MiteCount>(sight) || std::holds_alternative<entries::Weight>(sight);
      if (!one_figure || !(log_evidence_of(o) < out_of_reach)) continue;
      setting_.left_out.push_back(o);
      std::fill(fitted_.members.log_seen[o].begin(), fitted_.members.log_seen[o].end(), 0.0);
      fitted_.surprises.push_back({{o}, Surprise::Outcome::left_out});
    }
  }

  // log p(all before) + share * log p(now), by member.
  std::vector<double> log_target(const Members& m, double share) const {
    std::vector<double> sum(n_, 0.0);
    for (std::size_t g = 0; g <= group_; ++g) {
      const double part = g == group_ ? share : 1.0;
      for (std::size_t o = setting_.groups[g].first; o < setting_.groups[g].last; ++o) {
        for (std::size_t i = 0; i < n_; ++i) sum[i] += part * m.log_seen[o][i];
      }
    }
    return sum;
  }

  std::vector<double> move(double share) {
    move_all(
        fitted_.members, setting_, setting_.sweeps,
        [&](const Members& members) { return log_target(members, share); }, next_id_, tally_);
    return log_group(fitted_.members, setting_, setting_.groups[group_]);
  }

  Setting setting_;  // its own: what is left out is found on the way
  std::size_t n_;
  std::uint32_t next_id_;
  Fitted fitted_;
  std::vector<double> log_weights_;
  std::size_t group_ = 0;
  MoveTally tally_;
};

}  // namespace

Fitted fit_to_entries(const Setting& setting) {
  return Fit(setting).run();
}

Fitted fit_without_newest(const Setting& setting, const BeforeNewest& before) {
  return Fit(setting, before).run();
}

}  // namespace beegarth::belief
