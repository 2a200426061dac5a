// Kinship in exact fractions. The coancestry of two bees is the chance that a gene drawn from the one and a
// gene of the same place drawn from the other are copies of one gene of an ancestor; relationship is twice
// that. Where it is not known which drone was the father, the answers are means over the drones that can be.
#pragma once

#include <boost/multiprecision/cpp_int.hpp>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "lines/pedigree.hpp"

namespace beegarth::lines {

using Fraction = boost::multiprecision::cpp_rational;

// Answers are kept, so that many questions about one pedigree cost little more than one. Meant for some
// hundred queens; relationship.hpp does thousands in floating point. The pedigree must outlive it.
class ExactKinship {
 public:
  explicit ExactKinship(const Pedigree& pedigree);

  Fraction coancestry(std::size_t a, std::size_t b);
  Fraction relationship(std::size_t a, std::size_t b) { return 2 * coancestry(a, b); }
  // The chance that both genes of a queen are copies of one gene of an ancestor.
  Fraction inbreeding(std::size_t queen);
  // Of a daughter of `queen` from a mating that she may not have had yet.
  Fraction daughters_inbreeding(std::size_t queen, std::span<const Suitors> mating);
  // Mean relationship of two daughters of one mating, be they workers or queens, each by a drone drawn by
  // share.
  Fraction daughters_relationship(std::size_t queen, std::span<const Suitors> mating);

 private:
  // A queen, or a drone of one part of her mating (part 0 is the first).
  struct Bee {
    std::size_t queen;
    std::size_t part;
  };
  bool is_queen(const Bee& bee) const;
  std::size_t age(const Bee& bee) const;
  std::uint64_t key(const Bee& a, const Bee& b) const;
  Fraction between(const Bee& a, const Bee& b);
  Fraction work_out(const Bee& younger, const Bee& older);
  Fraction with_father(std::size_t queen, const Bee& other);

  const Pedigree& pedigree_;
  std::vector<std::size_t> rank_;
  std::unordered_map<std::uint64_t, Fraction> known_;
};

// "3/8"; "1" and "0" where it is whole.
std::string text(const Fraction& fraction);
double decimal(const Fraction& fraction);

}  // namespace beegarth::lines
