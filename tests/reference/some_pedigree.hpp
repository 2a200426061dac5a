// Pedigrees that nobody kept: close and wide matings of every kind, by number.
#pragma once

#include <algorithm>
#include <string>

#include "base/random.hpp"
#include "reference/queens.hpp"

namespace beegarth::reference {

class SomePedigree {
 public:
  explicit SomePedigree(std::uint64_t number) : luck_({number, 0, 0, 0, Purpose::synthetic_truth}) {}

  std::vector<lines::Queen> queens(int count) {
    std::vector<lines::Queen> all;
    for (int i = 0; i < count; ++i) {
      lines::Queen made = queen("Q" + std::to_string(i));
      if (i > 0 && below(5) != 0) {
        const lines::Queen& mother =
            all[static_cast<std::size_t>(below(std::min(i, 12)) + std::max(0, i - 12))];
        made.mother = mother.id;
        if (!mother.mating.empty() && below(2) == 0)
          made.father =
              mother.mating[static_cast<std::size_t>(below(static_cast<int>(mother.mating.size())))].name;
      }
      made.mating = mating(i);
      all.push_back(made);
    }
    // What stands in a list is in no order.
    for (std::size_t i = all.size(); i > 1; --i)
      std::swap(all[i - 1], all[static_cast<std::size_t>(below(static_cast<int>(i)))]);
    return all;
  }

  int below(int bound) { return static_cast<int>(luck_.uniform() * bound); }

 private:
  // With drones of queens that came before, or of her own; a few kinds, counted or not.
  std::vector<lines::Drones> mating(int queens_so_far) {
    std::vector<lines::Drones> parts;
    const int kinds = below(4);
    for (int kind = 0; kind < kinds; ++kind) {
      lines::Drones drones;
      if (below(4) != 0) drones.dam = lines::QueenId("Q" + std::to_string(below(queens_so_far + 1)));
      if (below(3) != 0) drones.number = 1 + below(3);
      drones.name = "d" + std::to_string(kind);
      parts.push_back(drones);
    }
    int whole = 0;
    for (auto& drones : parts) whole += static_cast<int>(drones.share.part = 1 + below(3));
    for (auto& drones : parts) drones.share.of = whole;
    return parts;
  }

  Stream luck_;
};

}  // namespace beegarth::reference
