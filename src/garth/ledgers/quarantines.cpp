#include "garth/ledgers/quarantines.hpp"

#include <algorithm>

namespace beegarth::garth {
namespace {

using entries::Entry;

// A stock that died in quarantine stays in it: its combs may carry what it had.
class Apart {
 public:
  explicit Apart(const QuarantineRules& rules) : rules_(rules) {}

  void take(const Entry& entry) {
    std::visit([&](const auto& said) { take(entry, said); }, entry.payload);
  }
  std::map<ColonyId, KeptApart> on(Date day) && {
    std::erase_if(apart_, [&](const auto& one) { return !one.second.until_look && one.second.until < day; });
    return std::move(apart_);
  }

 private:
  void take(const Entry& entry, const entries::ColonyBegan& began) {
    if (comes_from_outside(began)) apart_[began.colony] = {entry.happened + rules_.days, true, entry.id};
  }
  void take(const Entry& entry, const entries::Quarantine& said) {
    const auto before = apart_.find(said.colony);
    if (said.lifted.value_or(false)) {
      apart_.erase(said.colony);
    } else if (!said.until) {
      return;
    } else if (before == apart_.end() || !before->second.until_look) {
      apart_[said.colony] = {*said.until, false, entry.id};
    } else if (*said.until > before->second.until) {
      before->second = {*said.until, true, entry.id};
    }
  }
  void take(const Entry& entry, const entries::Inspection& look) {
    const auto apart = apart_.find(look.colony);
    if (apart == apart_.end() || !apart->second.until_look || entry.happened < apart->second.until) return;
    if (finds_sealed_brood_well(look)) apart_.erase(apart);
  }
  // What comes of two stocks of which one is kept apart is kept apart as long.
  void take(const Entry&, const entries::Unite& unite) {
    const auto guest = apart_.find(unite.from);
    if (guest == apart_.end() || unite.from == unite.colony) return;
    const KeptApart one = guest->second;
    apart_.erase(guest);
    const auto [host, fresh] = apart_.try_emplace(unite.colony, one);
    if (fresh) return;
    host->second.until = std::max(host->second.until, one.until);
    host->second.until_look = host->second.until_look || one.until_look;
  }
  void take(const Entry&, const entries::Split& split) {
    if (const auto mother = apart_.find(split.colony); mother != apart_.end())
      apart_[split.into] = mother->second;
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  QuarantineRules rules_;
  std::map<ColonyId, KeptApart> apart_;
};

}  // namespace

Expected<QuarantineRules> QuarantineRules::from(const FactTable& work) {
  const auto days = work.value("swarm_quarantine_days");
  if (!days) return days.problem();
  return QuarantineRules{static_cast<int>(*days)};
}

bool comes_from_outside(const entries::ColonyBegan& began) {
  using entries::Beginning;
  return began.how == Beginning::unknown || (began.how == Beginning::swarm && !began.swarm_of);
}

bool finds_sealed_brood_well(const entries::Inspection& look) {
  const bool sealed =
      look.capped_brood.value_or(look.capped_cells.value_or(0) > 0 || look.brood_combs.value_or(0) > 0);
  return look.look == entries::Look::full && sealed && look.signs.empty();
}

std::map<ColonyId, KeptApart> quarantines_on(std::span<const Entry> standing, Date day,
                                             const QuarantineRules& rules) {
  Apart apart(rules);
  for (const Entry& entry : standing) {
    if (entry.happened > day) break;
    apart.take(entry);
  }
  return std::move(apart).on(day);
}

}  // namespace beegarth::garth
