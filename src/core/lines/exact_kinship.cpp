#include "lines/exact_kinship.hpp"

#include <algorithm>
#include <limits>

namespace beegarth::lines {
namespace {

constexpr std::size_t no_part = std::numeric_limits<std::size_t>::max();

Fraction fraction(const Share& share) {
  return Fraction(share.part) / share.of;
}

// Two drones drawn from one part of a mating: the same one by 1 in `number`, a whole copy of himself as he
// has one set of genes only; else two sons of one dam, or of two unknown dams.
Fraction two_of_one_part(const Suitors& part, const Fraction& dam_with_herself) {
  if (!part.number) return dam_with_herself;
  const Fraction same = Fraction(1) / *part.number;
  return same + (1 - same) * dam_with_herself;
}

}  // namespace

ExactKinship::ExactKinship(const Pedigree& pedigree) : pedigree_(pedigree), rank_(pedigree.size()) {
  const auto order = pedigree.oldest_first();
  for (std::size_t i = 0; i < order.size(); ++i) rank_[order[i]] = i;
}

bool ExactKinship::is_queen(const Bee& bee) const {
  return bee.part == no_part;
}

// Even for queens, odd for drones, who come after their dam and after the queen they mated with but before
// all of her daughters.
std::size_t ExactKinship::age(const Bee& bee) const {
  if (is_queen(bee)) return 2 * rank_[bee.queen];
  const auto& dam = pedigree_.mating(bee.queen)[bee.part].dam;
  return 2 * std::max(rank_[bee.queen], dam ? rank_[*dam] : 0) + 1;
}

std::uint64_t ExactKinship::key(const Bee& a, const Bee& b) const {
  // 24 bits of queen and 8 of part: a mating has at most 40 parts.
  const auto code = [](const Bee& bee) {
    return static_cast<std::uint64_t>(bee.queen) << 8 | (bee.part == no_part ? 255 : bee.part);
  };
  return std::min(code(a), code(b)) << 32 | std::max(code(a), code(b));
}

Fraction ExactKinship::between(const Bee& a, const Bee& b) {
  const std::uint64_t pair = key(a, b);
  if (const auto found = known_.find(pair); found != known_.end()) return found->second;
  Fraction value = age(a) >= age(b) ? work_out(a, b) : work_out(b, a);
  known_.emplace(pair, value);
  return value;
}

// The recursion of coancestry (Malecot 1948; for queens and drones as in Brascamp & Bijma 2014): the younger
// of the two is put in terms of her or his parents.
Fraction ExactKinship::work_out(const Bee& younger, const Bee& older) {
  const bool same = younger.queen == older.queen && younger.part == older.part;
  if (is_queen(younger)) {
    if (same) return (1 + inbreeding(younger.queen)) / 2;
    const auto mother = pedigree_.mother(younger.queen);
    if (!mother) return 0;
    return (between({*mother, no_part}, older) + with_father(younger.queen, older)) / 2;
  }
  const Suitors& part = pedigree_.mating(younger.queen)[younger.part];
  if (same) return two_of_one_part(part, part.dam ? coancestry(*part.dam, *part.dam) : Fraction(0));
  return part.dam ? between({*part.dam, no_part}, older) : Fraction(0);
}

// Coancestry of the father of `queen`, one drone of her mother's mating, with another bee.
Fraction ExactKinship::with_father(std::size_t queen, const Bee& other) {
  const std::size_t mother = *pedigree_.mother(queen);
  if (const auto part = pedigree_.father(queen)) return between({mother, *part}, other);
  Fraction sum = 0;
  const auto mating = pedigree_.mating(mother);
  for (std::size_t part = 0; part < mating.size(); ++part)
    sum += fraction(mating[part].share) * between({mother, part}, other);
  return sum;
}

Fraction ExactKinship::coancestry(std::size_t a, std::size_t b) {
  return between({a, no_part}, {b, no_part});
}

Fraction ExactKinship::inbreeding(std::size_t queen) {
  const auto mother = pedigree_.mother(queen);
  return mother ? with_father(queen, {*mother, no_part}) : Fraction(0);
}

Fraction ExactKinship::daughters_inbreeding(std::size_t queen, std::span<const Suitors> mating) {
  Fraction sum = 0;
  for (const Suitors& part : mating)
    if (part.dam) sum += fraction(part.share) * coancestry(queen, *part.dam);
  return sum;
}

Fraction ExactKinship::daughters_relationship(std::size_t queen, std::span<const Suitors> mating) {
  Fraction between_fathers = 0;
  for (const Suitors& one : mating) {
    for (const Suitors& other : mating) {
      const Fraction dams = one.dam && other.dam ? coancestry(*one.dam, *other.dam) : Fraction(0);
      between_fathers +=
          fraction(one.share) * fraction(other.share) * (&one == &other ? two_of_one_part(one, dams) : dams);
    }
  }
  const Fraction daughters =
      (coancestry(queen, queen) + 2 * daughters_inbreeding(queen, mating) + between_fathers) / 4;
  return 2 * daughters;
}

std::string text(const Fraction& fraction) {
  return fraction.str();
}

double decimal(const Fraction& fraction) {
  return fraction.convert_to<double>();
}

}  // namespace beegarth::lines
