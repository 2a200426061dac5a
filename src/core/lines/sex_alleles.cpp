#include "lines/sex_alleles.hpp"

#include <algorithm>

namespace beegarth::lines {

Expected<DiploidDrones> diploid_drones(double daughters_inbreeding, const FactTable& table) {
  const auto alleles = table.value("sex_alleles");
  if (!alleles) return alleles.problem();
  const FactRow& row = *table.find("sex_alleles");
  const auto share = [&](double number) {
    return std::min(0.5, daughters_inbreeding + (1 - daughters_inbreeding) / std::max(2.0, number));
  };
  return DiploidDrones{share(*alleles), share(row.high.value_or(row.value)),
                       share(row.low.value_or(row.value))};
}

}  // namespace beegarth::lines
