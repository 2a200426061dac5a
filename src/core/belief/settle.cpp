#include "belief/settle.hpp"

#include <algorithm>
#include <cmath>

#include "belief/pareto.hpp"
#include "belief/proposal.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// As when entries are let in: fewer members with weight than this share call for moves.
constexpr double resample_below = 0.3;

std::vector<double> log_ratios(const Members& members, const Neighbours& neighbours) {
  std::vector<SharedCoordinates> shared;
  const std::size_t n = members.coordinates.size() / dims;
  shared.reserve(n);
  for (std::size_t i = 0; i < n; ++i) shared.push_back(shared_of(members.at(static_cast<int>(i))));
  return neighbours.log_ratios(shared);
}

std::vector<double> logs_of(std::span<const double> weights) {
  std::vector<double> logs;
  logs.reserve(weights.size());
  for (const double weight : weights) logs.push_back(std::log(std::max(weight, 1e-300)));
  return logs;
}

template <class T>
void reorder(std::vector<T>& values, std::span<const int> from, std::size_t width = 1) {
  std::vector<T> chosen;
  chosen.reserve(values.size());
  for (const int i : from) {
    const auto first = values.begin() + static_cast<std::ptrdiff_t>(static_cast<std::size_t>(i) * width);
    chosen.insert(chosen.end(), first, first + static_cast<std::ptrdiff_t>(width));
  }
  values = std::move(chosen);
}

// Moves members that have lived to today: other coordinates, and for half of them other luck for a stretch of
// time, accepted by the odds of everything seen and of what the neighbours say.
class Mover {
 public:
  Mover(Fitted& fitted, const Setting& setting, const Neighbours& neighbours)
      : m_(fitted.members),
        sweeps_(fitted.sweeps),
        setting_(setting),
        neighbours_(neighbours),
        n_(static_cast<std::size_t>(setting.members)) {}

  void resample(std::span<const int> ancestors) {
    reorder(m_.coordinates, ancestors, dims);
    for (auto& piece : m_.luck) reorder(piece, ancestors);
    for (auto& logs : m_.log_seen)
      if (!logs.empty()) reorder(logs, ancestors);
    for (auto& fallen : m_.fallen) reorder(fallen, ancestors);
    reorder(m_.family, ancestors);
    m_.ensemble = m_.ensemble.take(std::vector<std::uint32_t>(ancestors.begin(), ancestors.end()));
  }

  std::vector<double> move(double share) {
    for (int i = 0; i < setting_.sweeps; ++i) sweep(share);
    return log_ratios(m_, neighbours_);
  }

 private:
  std::vector<double> log_target(const Members& members, double share) const {
    std::vector<double> sum = log_ratios(members, neighbours_);
    for (double& log : sum) log *= share;
    for (const auto& logs : members.log_seen) {
      for (std::size_t i = 0; i < logs.size(); ++i) sum[i] += logs[i];
    }
    return sum;
  }

  void sweep(double share) {
    const CrowdNormal normal(m_.coordinates, dims, std::vector<double>(n_, 1.0 / static_cast<double>(n_)));
    std::vector<double> coordinates = m_.coordinates;
    auto luck = m_.luck;
    std::vector<double> log_threshold(n_);
    // Ids that no piece of luck has had so far: those of the fit count from below.
    const std::uint32_t fresh =
        0x8000'0000U + static_cast<std::uint32_t>(sweeps_) * static_cast<std::uint32_t>(n_);
    for (std::size_t i = 0; i < n_; ++i) {
      Stream s({.seed = setting_.seed,
                .colony = setting_.colony,
                .member = static_cast<std::uint32_t>(i),
                .day = sweeps_,
                .purpose = Purpose::move_parameters});
      log_threshold[i] = std::log(s.uniform());
      static constexpr std::array<double, 3> sizes{0.4, 0.7, 1.0};
      const double size = sizes[static_cast<std::size_t>(s.uniform() * 3)];
      normal.step(m_.at(static_cast<int>(i)), size, s, std::span(coordinates).subspan(i * dims, dims));
      if (s.uniform() < 0.5) continue;
      const auto pieces = static_cast<double>(luck.size());
      const auto first = static_cast<std::size_t>(s.uniform() * pieces);
      const auto last =
          first + 1 + static_cast<std::size_t>(s.uniform() * (pieces - static_cast<double>(first)));
      for (std::size_t p = first; p < std::min(last, luck.size()); ++p)
        luck[p][i] = fresh + static_cast<std::uint32_t>(i);
    }
    ++sweeps_;
    Members next = set_back(setting_, std::move(coordinates), std::move(luck));
    live_to(next, setting_, m_.day);
    const auto now = log_target(m_, share);
    const auto then = log_target(next, share);
    std::vector<std::uint32_t> which(n_);
    for (std::size_t i = 0; i < n_; ++i) {
      const auto member = static_cast<int>(i);
      const double gain = then[i] - now[i] + normal.log_prior_over_fit(next.at(member)) -
                          normal.log_prior_over_fit(m_.at(member));
      const bool accept = log_threshold[i] < gain;
      which[i] = static_cast<std::uint32_t>(accept ? n_ + i : i);
      if (accept) adopt(next, i);
    }
    m_.ensemble = colony::Ensemble::join(m_.ensemble, next.ensemble).take(which);
  }

  void adopt(const Members& next, std::size_t i) {
    const auto at = static_cast<std::ptrdiff_t>(i * dims);
    std::copy_n(next.coordinates.begin() + at, dims, m_.coordinates.begin() + at);
    for (std::size_t piece = 0; piece < m_.luck.size(); ++piece) m_.luck[piece][i] = next.luck[piece][i];
    for (std::size_t o = 0; o < m_.log_seen.size(); ++o) {
      if (!m_.log_seen[o].empty()) m_.log_seen[o][i] = next.log_seen[o][i];
      m_.fallen[o][i] = next.fallen[o][i];
    }
  }

  Members& m_;
  int& sweeps_;
  const Setting& setting_;
  const Neighbours& neighbours_;
  std::size_t n_;
};

std::vector<double> weighed(std::span<const double> weights, std::span<const double> ratios) {
  std::vector<double> result(weights.begin(), weights.end());
  double sum = 0;
  for (std::size_t i = 0; i < result.size(); ++i) {
    result[i] *= ratios[i];
    sum += result[i];
  }
  for (double& weight : result) weight /= sum;
  return result;
}

}  // namespace

Settled settle(Fitted& fitted, const Setting& setting, const Neighbours& neighbours) {
  constexpr double trusted = 0.7;  // k of the tail: Vehtari et al. 2024
  std::vector<double> logs = log_ratios(fitted.members, neighbours);
  const SmoothedWeights ratios = pareto_smoothed(logs);
  std::vector<double> weights = weighed(fitted.weights, ratios.weights);
  if (ratios.shape <= trusted && effective_sample_size(weights) >= resample_below * setting.members) {
    fitted.weights = std::move(weights);
    return Settled::weighed;
  }
  Mover mover(fitted, setting, neighbours);
  Stream shared({.seed = setting.seed,
                 .colony = setting.colony,
                 .day = setting.today + 1,  // no morning of the fit
                 .purpose = Purpose::resample});
  const Crowd crowd{[&](std::span<const int> ancestors) { mover.resample(ancestors); },
                    [&](double share) { return mover.move(share); }, [&] { return shared.uniform(); }};
  std::vector<double> log_weights = logs_of(fitted.weights);
  const Assimilated step = assimilate(log_weights, logs, crowd, {.resample_below = resample_below});
  fitted.weights = normalised(log_weights);
  return step.reconciled ? Settled::moved : Settled::not_at_all;
}

}  // namespace beegarth::belief
