// May a class of treatment be given in such weather, to such a colony? A gate with words and never a dose: it
// can only say no, warn, or see nothing against it. The label decides.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::duty {

enum class TreatmentClass { thymol, formic, amitraz, pyrethroid, oxalic_trickle, oxalic_vapour };
inline constexpr std::array<std::string_view, 6> treatment_keys{
    "thymol", "formic", "amitraz", "pyrethroid", "oxalic_trickle", "oxalic_vapour"};

struct GateQuestion {
  TreatmentClass kind = TreatmentClass::thymol;
  std::optional<double> day_max_C;   // the highest of the days that it works, as forecast
  std::optional<double> day_mean_C;  // of those days
  std::optional<bool> brood;         // capped brood is there
  std::optional<bool> supers_on;     // boxes with honey for people
};

enum class GateVerdict { ok, warn, refuse };

struct GateReason {
  GateVerdict verdict = GateVerdict::warn;
  std::string words;
  std::string source;
};

struct GateAnswer {
  GateVerdict verdict = GateVerdict::ok;  // the gravest of the reasons
  std::vector<GateReason> reasons;
  std::vector<std::string> not_told;  // what would have mattered and was not said
  std::string first;                  // before anything else
  std::vector<std::string> cautions;
};

// `work` is tables/work.toml, whose rows the needs use as well; `colony` is tables/colony.toml, by whose rows
// the daily step reckons what a treatment does.
Expected<GateAnswer> treatment_gate(const GateQuestion& question, const FactTable& work,
                                    const FactTable& colony);

// Whether a class has any authorised product in the country, by its table: refused where the row says no, a
// warning where it does not know. Of several products of a class only those on the authority's list may be
// used.
Expected<GateReason> authorised_in(TreatmentClass kind, const FactTable& country);

}  // namespace beegarth::duty
