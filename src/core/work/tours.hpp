// Shortest rounds from home through a set of sites and back.
#pragma once

#include <optional>
#include <vector>

#include "work/plan.hpp"

namespace beegarth::work {

struct Round {
  double minutes = 0;        // the whole way, home again included
  std::vector<int> order;    // site indices as they are reached
  std::vector<double> legs;  // minutes to reach each, then the way home
};

// Travel with its gaps filled where that is safe: by the other direction, then past other places.
class Roads {
 public:
  Roads(const TravelTable& table, int sites);

  bool reachable(int site) const;  // from home and back
  bool pieced_together(int a,
                       int b) const;  // no direct time was given, but a way past other places; -1 is home
  double from_home(int site) const { return at(0, site + 1); }
  double to_home(int site) const { return at(site + 1, 0); }

  // `sites` as bits of reachable sites, at most eight of them; `last`: the site that must close the round, or
  // -1.
  Round shortest_round(unsigned sites, int last) const;
  // The same sites the other way round.
  Round turned(const Round& round) const;

 private:
  double at(int from, int to) const {
    return minutes_[static_cast<std::size_t>(from) * static_cast<std::size_t>(size_) +
                    static_cast<std::size_t>(to)];
  }
  std::vector<double> legs_of(const std::vector<int>& order) const;

  int size_;
  std::vector<double> minutes_;  // infinite where unknown
  std::vector<bool> guessed_;
};

}  // namespace beegarth::work
