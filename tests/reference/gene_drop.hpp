// Kinship by letting genes fall: every queen of unknown descent gets two genes of her own, every drone of an
// unknown dam one, each descendant draws from her parents, and at the end like genes are counted. Slow, and
// it knows no formula.
#pragma once

#include <array>
#include <map>
#include <utility>
#include <vector>

#include "base/random.hpp"
#include "lines/pedigree.hpp"

namespace beegarth::reference {

class GeneDrop {
 public:
  GeneDrop(const lines::Pedigree& pedigree, std::uint64_t seed)
      : pedigree_(pedigree),
        luck_({seed, 0, 0, 0, Purpose::synthetic_truth}),
        genes_(pedigree.size()),
        sums_(pedigree.size() * pedigree.size()) {}

  void drop(int times) {
    for (int i = 0; i < times; ++i) once();
    times_ += times;
  }

  // The chance that a gene of the one and a gene of the other are alike; of one queen with herself, that her
  // two are.
  double alike(std::size_t a, std::size_t b) const { return sums_[a * genes_.size() + b] / times_; }

 private:
  using Gene = std::int64_t;

  std::size_t below(std::size_t bound) {
    return static_cast<std::size_t>(luck_.uniform() * static_cast<double>(bound));
  }
  Gene of_queen(std::size_t queen) { return genes_[queen][below(2)]; }
  Gene of_new_drone(const lines::Suitors& part) { return part.dam ? of_queen(*part.dam) : next_gene_++; }

  Gene of_father(std::size_t queen, std::size_t mother) {
    const auto mating = pedigree_.mating(mother);
    if (mating.empty()) return next_gene_++;
    const std::size_t part = pedigree_.father(queen) ? *pedigree_.father(queen) : drawn_part(mating);
    if (!mating[part].number) return of_new_drone(mating[part]);
    auto& drones = drones_[{mother, part}];  // one set for all her daughters
    if (drones.empty())
      for (int i = 0; i < *mating[part].number; ++i) drones.push_back(of_new_drone(mating[part]));
    return drones[below(drones.size())];
  }

  std::size_t drawn_part(std::span<const lines::Suitors> mating) {
    double left = luck_.uniform();
    for (std::size_t part = 0; part + 1 < mating.size(); ++part) {
      left -= static_cast<double>(mating[part].share.part) / static_cast<double>(mating[part].share.of);
      if (left < 0) return part;
    }
    return mating.size() - 1;
  }

  void once() {
    drones_.clear();
    next_gene_ = 0;
    for (const std::size_t queen : pedigree_.oldest_first()) {
      const auto mother = pedigree_.mother(queen);
      if (mother)
        genes_[queen] = {of_queen(*mother), of_father(queen, *mother)};
      else
        genes_[queen] = {next_gene_, next_gene_ + 1}, next_gene_ += 2;
    }
    for (std::size_t a = 0; a < genes_.size(); ++a)
      for (std::size_t b = 0; b < genes_.size(); ++b) count(a, b);
  }

  void count(std::size_t a, std::size_t b) {
    double like = 0;
    if (a == b)
      like = genes_[a][0] == genes_[a][1] ? 1 : 0;
    else
      for (const Gene one : genes_[a])
        for (const Gene other : genes_[b]) like += one == other ? 0.25 : 0;
    sums_[a * genes_.size() + b] += like;
  }

  const lines::Pedigree& pedigree_;
  Stream luck_;
  std::vector<std::array<Gene, 2>> genes_;
  std::map<std::pair<std::size_t, std::size_t>, std::vector<Gene>> drones_;
  Gene next_gene_ = 0;
  std::vector<double> sums_;
  int times_ = 0;
};

}  // namespace beegarth::reference
