#include "belief/filter.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "belief/proposal.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// Below this an entry's log likelihood, averaged over the crowd, is called a surprise.
constexpr double surprising = -14;

template <class T>
void reorder(std::vector<T>& values, std::span<const int> ancestors) {
  std::vector<T> chosen(ancestors.size());
  for (std::size_t i = 0; i < chosen.size(); ++i) chosen[i] = values[static_cast<std::size_t>(ancestors[i])];
  values = std::move(chosen);
}

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
    fitted_.sweeps = before.sweeps;
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
        fitted_.before_newest = {fitted_.members, log_weights_, next_id_, fitted_.sweeps};
      }
      std::vector<double> logs = log_group(fitted_.members, setting_, group);
      Stream shared(
          {.seed = setting_.seed, .colony = setting_.colony, .day = group.day, .purpose = Purpose::resample});
      const Crowd crowd{[&](std::span<const int> ancestors) { resample(ancestors); },
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
    fitted_.accepted = proposed_ > 0 ? static_cast<double>(accepted_) / static_cast<double>(proposed_) : 0;
    return std::move(fitted_);
  }

 private:
  // Pieces of luck that have been lived through, all of them or in part.
  std::size_t lived_pieces() const {
    const int day = fitted_.members.day;
    return day == 0 ? 1 : setting_.piece_of(day - 1) + 1;
  }

  void resample(std::span<const int> ancestors) {
    Members& m = fitted_.members;
    std::vector<double> coordinates(m.coordinates.size());
    for (std::size_t i = 0; i < n_; ++i) {
      const auto from = m.at(ancestors[i]);
      std::copy(from.begin(), from.end(), coordinates.begin() + static_cast<std::ptrdiff_t>(i * dims));
    }
    m.coordinates = std::move(coordinates);
    // Luck to come stays each member's own, so that copies part ways.
    for (std::size_t piece = 0; piece < lived_pieces(); ++piece) reorder(m.luck[piece], ancestors);
    for (auto& logs : m.log_seen) {
      if (!logs.empty()) reorder(logs, ancestors);
    }
    for (auto& fallen : m.fallen) reorder(fallen, ancestors);
    reorder(m.family, ancestors);
    const std::vector<std::uint32_t> which(ancestors.begin(), ancestors.end());
    m.ensemble = m.ensemble.take(which);
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
    for (int i = 0; i < setting_.sweeps; ++i) sweep(share);
    return log_group(fitted_.members, setting_, setting_.groups[group_]);
  }

  struct Proposal {
    std::vector<double> coordinates;
    std::vector<std::vector<std::uint32_t>> luck;
    std::vector<double> log_threshold;  // log of the uniform draw that decides
  };

  // A normal fitted to each half of the crowd. A member is moved by that of the other half: one that it had
  // itself helped to fit would lean towards where it already is. Copies of one ancestor lie side by side, so
  // nearly all of them are in one half.
  struct Halves {
    CrowdNormal first, second;
    const CrowdNormal& for_member(std::size_t i) const { return i % 2 == 0 ? second : first; }
  };
  Halves fit_halves() const {
    const auto of = [&](std::size_t from) {
      std::vector<double> weights(n_, 0.0);
      for (std::size_t i = from; i < n_; i += 2) weights[i] = 1.0 / static_cast<double>((n_ - from + 1) / 2);
      return CrowdNormal(fitted_.members.coordinates, dims, weights);
    };
    return {of(0), of(1)};
  }

  // New traits, new luck for a stretch of time, or both.
  Proposal propose(const Halves& halves) {
    const Members& m = fitted_.members;
    Proposal p{m.coordinates, m.luck, std::vector<double>(n_)};
    const auto pieces = static_cast<int>(lived_pieces());
    for (std::size_t i = 0; i < n_; ++i) {
      Stream s({.seed = setting_.seed,
                .colony = setting_.colony,
                .member = static_cast<std::uint32_t>(i),
                .day = fitted_.sweeps,
                .purpose = Purpose::move_parameters});
      p.log_threshold[i] = std::log(s.uniform());
      const double kind = s.uniform();
      static constexpr std::array<double, 3> sizes{0.4, 0.7, 1.0};
      const double size = sizes[static_cast<std::size_t>(s.uniform() * 3)];
      if (kind < 0.75) {
        halves.for_member(i).step(m.at(static_cast<int>(i)), size, s,
                                  std::span(p.coordinates).subspan(i * dims, dims));
      }
      if (kind < 0.5 && kind >= 0.25) continue;  // traits alone
      const int first = static_cast<int>(s.uniform() * pieces);
      // Short stretches are the ones that fit in; longer ones now and then, for all that hangs together.
      const int count = std::min(pieces - first, 1 + static_cast<int>(s.exponential() * 2.0));
      for (int piece = first; piece < std::min(pieces, first + count); ++piece) {
        p.luck[static_cast<std::size_t>(piece)][i] = next_id_ + static_cast<std::uint32_t>(i);
      }
    }
    next_id_ += static_cast<std::uint32_t>(n_);
    return p;
  }

  void sweep(double share) {
    Members& m = fitted_.members;
    const Halves halves = fit_halves();
    Proposal p = propose(halves);
    ++fitted_.sweeps;
    Members next = set_back(setting_, std::move(p.coordinates), std::move(p.luck));
    live_to(next, setting_, m.day);
    const auto target_now = log_target(m, share);
    const auto target_next = log_target(next, share);
    std::vector<std::uint32_t> which(n_);
    for (std::size_t i = 0; i < n_; ++i) {
      const auto member = static_cast<int>(i);
      const CrowdNormal& normal = halves.for_member(i);
      const double gain = target_next[i] - target_now[i] + normal.log_prior_over_fit(next.at(member)) -
                          normal.log_prior_over_fit(m.at(member));
      const bool accept = p.log_threshold[i] < gain;
      which[i] = static_cast<std::uint32_t>(accept ? n_ + i : i);
      ++proposed_;
      accepted_ += accept ? 1 : 0;
    }
    adopt(next, which);
  }

  // Member i becomes that of `next` where which[i] points behind the present ones.
  void adopt(const Members& next, std::span<const std::uint32_t> which) {
    Members& m = fitted_.members;
    m.ensemble = colony::Ensemble::join(m.ensemble, next.ensemble).take(which);
    for (std::size_t i = 0; i < n_; ++i) {
      if (which[i] < n_) continue;
      std::copy_n(next.coordinates.begin() + static_cast<std::ptrdiff_t>(i * dims), dims,
                  m.coordinates.begin() + static_cast<std::ptrdiff_t>(i * dims));
      for (std::size_t piece = 0; piece < m.luck.size(); ++piece) m.luck[piece][i] = next.luck[piece][i];
      for (std::size_t o = 0; o < m.log_seen.size(); ++o) {
        if (!m.log_seen[o].empty()) m.log_seen[o][i] = next.log_seen[o][i];
        m.fallen[o][i] = next.fallen[o][i];
      }
    }
  }

  const Setting& setting_;
  std::size_t n_;
  std::uint32_t next_id_;
  Fitted fitted_;
  std::vector<double> log_weights_;
  std::size_t group_ = 0;
  long proposed_ = 0;
  long accepted_ = 0;
};

}  // namespace

Fitted fit_to_entries(const Setting& setting) {
  return Fit(setting).run();
}

Fitted fit_without_newest(const Setting& setting, const BeforeNewest& before) {
  return Fit(setting, before).run();
}

}  // namespace beegarth::belief
