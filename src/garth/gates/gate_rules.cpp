#include "garth/gates/gate_rules.hpp"

namespace beegarth::garth {

Expected<GateRules> GateRules::from(const Tables& tables) {
  const FactTable& work = tables["work"];
  const auto honey = HoneyRules::from(work);
  if (!honey) return honey.problem();
  const auto quarantine = QuarantineRules::from(work);
  if (!quarantine) return quarantine.problem();
  const auto look = work.value("unite_look_days"), back = work.value("comb_look_back_days");
  if (!look) return look.problem();
  if (!back) return back.problem();
  auto notifiable = Notifiable::from(tables);
  if (!notifiable) return notifiable.problem();
  const auto figures = FigureRules::from(tables);
  if (!figures) return figures.problem();
  return GateRules{
      *honey,  *quarantine, static_cast<int>(*look), static_cast<int>(*back), *std::move(notifiable),
      *figures};
}

}  // namespace beegarth::garth
