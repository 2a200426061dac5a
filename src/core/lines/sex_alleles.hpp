// Brood lost to one sex allele on both sides. A fertilised egg that holds two copies of one sex allele would
// become a drone with two sets of genes, whom the nurses eat as a young larva: the brood stays patchy
// (Mackensen 1951, Woyke 1963, both from memory).
#pragma once

#include "base/fact_table.hpp"

namespace beegarth::lines {

struct DiploidDrones {
  double share = 0;      // expected, of fertilised eggs
  double share_low = 0;  // with many and with few sex alleles about
  double share_high = 0;
};

// Two genes of one place are alike when they are copies of one gene (the inbreeding of the daughters) or,
// where they are not, by chance: 1 in the number of sex alleles that are about, taken as equally frequent. A
// living queen carries two different ones, so no mating costs more than half of the brood; for the same
// reason the sum over-states what follows after several generations of close mating.
Expected<DiploidDrones> diploid_drones(double daughters_inbreeding, const FactTable& table);

}  // namespace beegarth::lines
