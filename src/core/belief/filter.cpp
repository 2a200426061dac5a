#include "belief/filter.hpp"

#include <algorithm>
#include <cmath>

#include "belief/moves.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// Below this an entry's log likelihood, averaged over the crowd, is called a surprise.
constexpr double surprising = -14;

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
      const auto sights = static_cast<double>(group.last - group.first);
      if (!step.reconciled || step.log_evidence < surprising * sights) {
        fitted_.surprises.push_back(
            {group_, step.reconciled && step.log_evidence > 2 * surprising * sights, step.log_evidence});
      }
    }
    live_to(fitted_.members, setting_, setting_.today);
    fitted_.weights = normalised(log_weights_);
    fitted_.sweeps = tally_.sweeps;
    fitted_.next_luck = next_id_;
    fitted_.accepted =
        tally_.proposed > 0 ? static_cast<double>(tally_.accepted) / static_cast<double>(tally_.proposed) : 0;
    return std::move(fitted_);
  }

 private:
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

  const Setting& setting_;
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
