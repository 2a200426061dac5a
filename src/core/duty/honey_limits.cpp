#include "duty/honey_limits.hpp"

#include <algorithm>
#include <utility>

#include "duty/rows.hpp"

namespace beegarth::duty {
namespace {

class Checks {
 public:
  Checks(const HoneyKind& kind, Rows& country) : kind_(kind), country_(country) {}

  void at_most(const char* what, std::optional<double> value, const char* row) {
    held(what, value, row, true);
  }
  void at_least(const char* what, std::optional<double> value, const char* row) {
    held(what, value, row, false);
  }
  void must_not_be(const char* what, std::optional<bool> found) {
    if (!found) return not_measured.emplace_back(what), void();
    list.push_back({what, std::nullopt, std::nullopt, true, !*found, country_.source("honey_law")});
  }

  const char* moisture_row() const {
    if (kind_.plant == HoneyPlant::calluna)
      return kind_.bakers ? "honey_moisture_max_bakers_calluna_pct" : "honey_moisture_max_calluna_pct";
    return kind_.bakers ? "honey_moisture_max_bakers_pct" : "honey_moisture_max_pct";
  }
  const char* sucrose_row() const {
    if (kind_.plant == HoneyPlant::false_acacia_or_like) return "honey_sucrose_max_false_acacia_pct";
    if (kind_.plant == HoneyPlant::lavender_or_borage) return "honey_sucrose_max_lavender_pct";
    return "honey_sucrose_max_pct";
  }
  void conductivity(std::optional<double> value) {
    const bool exempt = kind_.plant == HoneyPlant::lime_or_like || kind_.plant == HoneyPlant::calluna;
    if (exempt) return;  // from memory: Directive 2001/110/EC
    if (kind_.source == HoneySource::honeydew || kind_.plant == HoneyPlant::chestnut)
      at_least("conductivity_mS_cm", value, "honey_conductivity_min_honeydew_mS_cm");
    else if (kind_.source == HoneySource::blossom)
      at_most("conductivity_mS_cm", value, "honey_conductivity_max_mS_cm");
  }
  void heat_and_age(const Measured& m) {
    at_most("free_acid_meq_kg", m.free_acid_meq_kg,
            kind_.bakers ? "honey_free_acid_max_bakers_meq_kg" : "honey_free_acid_max_meq_kg");
    if (kind_.bakers) return;  // it may be old, heated or fermenting
    at_most("hmf_mg_kg", m.hmf_mg_kg,
            kind_.tropical ? "honey_hmf_max_tropical_mg_kg" : "honey_hmf_max_mg_kg");
    at_least("diastase_schade", m.diastase_schade, "honey_diastase_min");
    must_not_be("fermenting", m.fermenting);
    must_not_be("overheated", m.overheated);
  }

  std::vector<LimitCheck> list;
  std::vector<std::string> not_measured;

 private:
  void held(const char* what, std::optional<double> value, const char* row, bool most) {
    if (!value) return not_measured.emplace_back(what), void();
    const double limit = country_.number(row);
    list.push_back(
        {what, value, limit, most, most ? *value <= limit : *value >= limit, country_.source(row)});
  }

  const HoneyKind& kind_;
  Rows& country_;
};

CompositionAnswer judge(const HoneyKind& kind, const Measured& m, Rows& country) {
  Checks checks(kind, country);
  checks.at_most("moisture_pct", m.moisture_pct, checks.moisture_row());
  checks.at_least("fructose_and_glucose_pct", m.fructose_and_glucose_pct,
                  kind.source == HoneySource::blossom ? "honey_fructose_and_glucose_min_blossom_pct"
                                                      : "honey_fructose_and_glucose_min_honeydew_pct");
  checks.at_most("sucrose_pct", m.sucrose_pct, checks.sucrose_row());
  checks.at_most("insoluble_pct", m.insoluble_pct,
                 kind.pressed ? "honey_insoluble_max_pressed_pct" : "honey_insoluble_max_pct");
  checks.conductivity(m.conductivity_mS_cm);
  checks.heat_and_age(m);
  CompositionAnswer answer;
  answer.not_measured = std::move(checks.not_measured);
  answer.checks = std::move(checks.list);
  answer.passes =
      std::all_of(answer.checks.begin(), answer.checks.end(), [](const LimitCheck& c) { return c.passes; });
  answer.law = country.words("honey_law");
  return answer;
}

}  // namespace

Expected<CompositionAnswer> judge_composition(const HoneyKind& kind, const Measured& measured,
                                              const FactTable& table) {
  Rows country(table);
  CompositionAnswer answer = judge(kind, measured, country);
  HoneyKind bakers = kind;
  bakers.bakers = true;
  answer.passes_as_bakers = judge(bakers, measured, country).passes;
  if (country.fault()) return *country.fault();
  return answer;
}

}  // namespace beegarth::duty
