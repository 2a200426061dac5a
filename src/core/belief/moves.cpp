#include "belief/moves.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "belief/proposal.hpp"

namespace beegarth::belief {
namespace {

template <class T>
void reorder(std::vector<T>& values, std::span<const int> ancestors) {
  std::vector<T> chosen(ancestors.size());
  for (std::size_t i = 0; i < chosen.size(); ++i) chosen[i] = values[static_cast<std::size_t>(ancestors[i])];
  values = std::move(chosen);
}

std::span<double> row_of(std::vector<double>& coordinates, std::size_t member) {
  return std::span(coordinates).subspan(member * dims, dims);
}

// Pieces of luck that have been lived through, all of them or in part.
std::size_t lived_pieces(const Members& members, const Setting& setting) {
  return members.day == 0 ? 1 : setting.piece_of(members.day - 1) + 1;
}

// A normal fitted to each half of the crowd. A member is moved by that of the other half: one that it had
// itself helped to fit would lean towards where it already is. Copies of one ancestor lie side by side and go
// to both halves, so that both know all families.
class Halves {
 public:
  explicit Halves(const std::vector<double>& coordinates)
      : even_(half_of(coordinates, 0)), odd_(half_of(coordinates, 1)) {}
  const CrowdNormal& for_member(std::size_t i) const { return i % 2 == 0 ? odd_ : even_; }

 private:
  static CrowdNormal half_of(const std::vector<double>& coordinates, std::size_t first) {
    const std::size_t n = coordinates.size() / dims;
    const std::size_t count = (n - first + 1) / 2;
    std::vector<double> weights(n, 0.0);
    for (std::size_t i = first; i < n; i += 2) weights[i] = 1.0 / static_cast<double>(count);
    return {coordinates, dims, weights};
  }
  CrowdNormal even_, odd_;
};

struct Proposal {
  std::vector<double> coordinates;
  std::vector<std::vector<std::uint32_t>> luck;
  std::vector<double> log_threshold;  // log of the uniform draw that decides
};

Proposal propose(const Members& members, const Setting& setting, const Halves& halves, int sweep,
                 std::uint32_t fresh_luck) {
  const auto n = static_cast<std::size_t>(setting.members);
  Proposal p{members.coordinates, members.luck, std::vector<double>(n)};
  const auto pieces = static_cast<int>(lived_pieces(members, setting));
  for (std::size_t i = 0; i < n; ++i) {
    Stream s({.seed = setting.seed,
              .colony = setting.colony,
              .member = static_cast<std::uint32_t>(i),
              .day = sweep,
              .purpose = Purpose::move_parameters});
    p.log_threshold[i] = std::log(s.uniform());
    const double kind = s.uniform();
    static constexpr std::array<double, 3> sizes{0.4, 0.7, 1.0};
    const double size = sizes[static_cast<std::size_t>(s.uniform() * 3)];
    if (kind < 0.75) {
      halves.for_member(i).step(members.at(static_cast<int>(i)), size, s, row_of(p.coordinates, i));
    }
    if (kind < 0.5 && kind >= 0.25) continue;  // coordinates alone
    const int first = static_cast<int>(s.uniform() * pieces);
    // Short stretches are the ones that fit in; longer ones now and then, for all that hangs together.
    const int count = std::min(pieces - first, 1 + static_cast<int>(s.exponential() * 2.0));
    for (int piece = first; piece < first + count; ++piece) {
      p.luck[static_cast<std::size_t>(piece)][i] = fresh_luck + static_cast<std::uint32_t>(i);
    }
  }
  return p;
}

// Member i becomes that of `next` where which[i] points behind the present ones.
void adopt(Members& m, const Members& next, std::span<const std::uint32_t> which) {
  const std::size_t n = which.size();
  m.ensemble = colony::Ensemble::join(m.ensemble, next.ensemble).take(which);
  for (std::size_t i = 0; i < n; ++i) {
    if (which[i] < n) continue;
    const auto taken = next.at(static_cast<int>(i));
    std::copy(taken.begin(), taken.end(), row_of(m.coordinates, i).begin());
    for (std::size_t piece = 0; piece < m.luck.size(); ++piece) m.luck[piece][i] = next.luck[piece][i];
    for (std::size_t o = 0; o < m.log_seen.size(); ++o) {
      if (!m.log_seen[o].empty()) m.log_seen[o][i] = next.log_seen[o][i];
      m.fallen[o][i] = next.fallen[o][i];
    }
  }
}

}  // namespace

void become(Members& m, const Setting& setting, std::span<const int> ancestors) {
  std::vector<double> coordinates(ancestors.size() * dims);
  for (std::size_t i = 0; i < ancestors.size(); ++i) {
    const auto from = m.at(ancestors[i]);
    std::copy(from.begin(), from.end(), row_of(coordinates, i).begin());
  }
  m.coordinates = std::move(coordinates);
  for (std::size_t piece = 0; piece < m.luck.size(); ++piece) {
    if (piece < lived_pieces(m, setting)) reorder(m.luck[piece], ancestors);
    m.luck[piece].resize(ancestors.size());
  }
  for (auto& logs : m.log_seen) {
    if (!logs.empty()) reorder(logs, ancestors);
  }
  for (auto& fallen : m.fallen) reorder(fallen, ancestors);
  reorder(m.family, ancestors);
  m.ensemble = m.ensemble.take(std::vector<std::uint32_t>(ancestors.begin(), ancestors.end()));
}

void move_all(Members& m, const Setting& setting, int sweeps, const LogTarget& target,
              std::uint32_t& next_luck, MoveTally& tally) {
  const auto n = static_cast<std::size_t>(setting.members);
  std::vector<double> now = target(m);
  for (int sweep = 0; sweep < sweeps; ++sweep) {
    const Halves halves(m.coordinates);
    Proposal p = propose(m, setting, halves, tally.sweeps++, next_luck);
    next_luck += static_cast<std::uint32_t>(n);
    Members next = set_back(setting, std::move(p.coordinates), std::move(p.luck));
    live_to(next, setting, m.day);
    const std::vector<double> then = target(next);
    std::vector<std::uint32_t> which(n);
    for (std::size_t i = 0; i < n; ++i) {
      const auto member = static_cast<int>(i);
      const CrowdNormal& normal = halves.for_member(i);
      const double gain = then[i] - now[i] + normal.log_prior_over_fit(next.at(member)) -
                          normal.log_prior_over_fit(m.at(member));
      const bool accept = p.log_threshold[i] < gain;
      which[i] = static_cast<std::uint32_t>(accept ? n + i : i);
      ++tally.proposed;
      if (!accept) continue;
      now[i] = then[i];
      ++tally.accepted;
    }
    adopt(m, next, which);
  }
}

}  // namespace beegarth::belief
