// A stock of unknown origin is united with nothing, gives and takes no combs, is not sold and breeds no
// queens, and is not carried to where others stand, until its quarantine is over (garth/ledgers/quarantines).
#include <algorithm>

#include "garth/gates/gates.hpp"
#include "garth/ledgers/comb_stays.hpp"

namespace beegarth::garth {
namespace {

class ApartJudge {
 public:
  explicit ApartJudge(const Known& known)
      : known_(known), apart_(quarantines_on(known.standing, known.day, known.rules.quarantine)) {}

  Outcome of(const entries::Payload& payload) {
    if (const auto* began = std::get_if<entries::ColonyBegan>(&payload)) moves_in(*began);
    if (apart_.empty()) {
      if (const auto* said = std::get_if<entries::Quarantine>(&payload)) judge(*said);
    } else {
      std::visit([&](const auto& said) { judge(said); }, payload);
    }
    if (fault_) return *fault_;
    return Done{};
  }

 private:
  void refuse(const ColonyId& id, const KeptApart& apart, const std::string& rule,
              const std::string& way_out = {}) {
    if (fault_) return;
    const std::string until = apart.until_look ? apart.until.iso() +
                                                     " and until a full look from then on through its sealed "
                                                     "brood shows no sign"
                                               : apart.until.iso();
    fault_ = bad_input(
        "'" + id.text() + "' is in quarantine until " + until + ": " + rule, "entry " + apart.said.text(),
        (way_out.empty() ? "" : way_out + "; or ") +
            std::string("look through all its brood first; where all is well, enter quarantine "
                        "with lifted = true"));
  }
  void kept_apart(const ColonyId& id,
                  const std::string& rule = "it is united with nothing and shares no combs") {
    if (const auto apart = apart_.find(id); apart != apart_.end()) refuse(id, apart->second, rule);
  }

  // Two stocks in one hive share what they have.
  void moves_in(const entries::ColonyBegan& began) {
    if (!comes_from_outside(began) || began.how != entries::Beginning::swarm) return;
    for (const auto& [id, colony] : known_.state.colonies) {
      if (id == began.colony || colony.ended || colony.hive != began.hive || apart_.contains(id)) continue;
      fault_ =
          bad_input("a swarm of unknown origin is kept apart, and '" + colony.began.name +
                        "' lives in the hive '" + began.hive.text() + "'",
                    "hive", "give it a hive of its own; or say which own colony it came out of (swarm_of)");
      return;
    }
  }
  void judge(const entries::Unite& unite) { kept_apart(unite.colony), kept_apart(unite.from); }
  void judge(const entries::Split& split) { kept_apart(split.colony); }

  // Only a look through the brood ends it sooner.
  void judge(const entries::Quarantine& said) {
    if (said.lifted.value_or(false) || !said.until) return;
    if (*said.until < known_.day) {
      fault_ = bad_input(
          "the quarantine would end on " + said.until->iso() + ", before its own day " + known_.day.iso(),
          "until", "give a later day, or lifted = true once its brood was looked through");
      return;
    }
    const auto apart = apart_.find(said.colony);
    if (apart != apart_.end() && *said.until < apart->second.until) kept_apart(said.colony);
  }

  // ---- combs ----
  void judge(const entries::Combs& combs) {
    if (combs.colony) shared(combs.combs, *combs.colony);
    if (combs.colony && combs.parted_from) shared(*combs.parted_from, *combs.colony);
  }
  void judge(const entries::CombsMoved& moved) {
    if (moved.colony) shared(moved.combs, *moved.colony);
  }
  void judge(const entries::Room& room) {
    const int boxes = room.super_combs.value_or(0), nest = room.brood_combs.value_or(0);
    if (room.combs && (boxes > 0 || nest > 0)) return shared(*room.combs, room.colony);
    const auto apart = apart_.find(room.colony);
    if ((nest < 0 || boxes < 0) && !room.combs && apart != apart_.end())
      refuse(room.colony, apart->second, "its combs do not go unnamed among others",
             "name the batch that they are: combs");
  }
  // Combs carry disease through the store: the colony on which a batch was last counts.
  void shared(const CombsId& combs, const ColonyId& to) {
    const auto stays = comb_stays_on(known_.standing, known_.day);
    const auto batch = stays.batches.find(combs);
    if (batch == stays.batches.end() || batch->second.empty()) {
      // What comes in with a stock was its own all along; what hung on no hive yet carries nothing.
      return;
    }
    const ColonyId& from = batch->second.back().colony;
    if (from == to) return;  // back where they were
    kept_apart(to);
    kept_apart(from);
  }

  // ---- leaving ----
  void judge(const entries::Sale& sale) {
    using entries::Goods;
    if (sale.colony) return kept_apart(*sale.colony, "nothing of it is sold");
    if (sale.what == Goods::bees || sale.what == Goods::queen)
      refuse(apart_.begin()->first, apart_.begin()->second,
             "bees are not sold without saying of which colony", "name the colony that they are of");
  }
  void judge(const entries::ColonyEnded& ended) {
    if (ended.how == entries::Ending::sold || ended.how == entries::Ending::given_away)
      kept_apart(ended.colony, "it is neither sold nor given away");
  }
  void judge(const entries::ColonyMoved& moved) { carried(moved.colony, moved.hive); }
  void judge(const entries::Transfer& moved) { carried(moved.colony, moved.hive); }
  void judge(const entries::Hive& moved) {
    const auto before = known_.state.hives.find(moved.hive);
    if (before == known_.state.hives.end() || before->second.site == moved.site) return;
    for (const auto& [id, colony] : known_.state.colonies)
      if (!colony.ended && colony.hive == moved.hive) comes_to(id, moved.site);
  }
  void carried(const ColonyId& id, const HiveId& to) {
    const auto colony = known_.state.colonies.find(id);
    const auto hive = known_.state.hives.find(to);
    if (colony == known_.state.colonies.end() || hive == known_.state.hives.end()) return;
    if (site_of(colony->second) != hive->second.site) comes_to(id, hive->second.site);
  }
  // To a place of its own it may be carried; not to where sound stocks stand.
  void comes_to(const ColonyId& id, const SiteId& site) {
    const auto apart = apart_.find(id);
    if (apart == apart_.end()) return;
    for (const auto& [other, colony] : known_.state.colonies) {
      if (other == id || colony.ended || apart_.contains(other) || site_of(colony) != site) continue;
      return refuse(id, apart->second,
                    "it is carried to no site where others stand, and '" + colony.began.name +
                        "' stands at '" + site.text() + "'",
                    "take it to a site where no other stock stands");
    }
  }
  SiteId site_of(const book::ColonyState& colony) const {
    const auto hive = known_.state.hives.find(colony.hive);
    return hive == known_.state.hives.end() ? SiteId() : hive->second.site;
  }

  // ---- queens ----
  void judge(const entries::Queen& queen) {
    if (queen.event != entries::QueenEvent::introduced || !queen.which) return;
    if (const auto home = home_of(*queen.which); home && *home != queen.colony)
      kept_apart(*home, "its queen goes to no other stock");
  }
  void judge(const entries::QueenBegan& began) {
    if (began.origin != entries::QueenOrigin::reared || !began.mother) return;
    if (const auto home = home_of(*began.mother)) kept_apart(*home, "no queens are reared from it");
  }
  std::optional<ColonyId> home_of(const QueenId& queen) const {
    std::optional<ColonyId> home;
    for (const auto& entry : known_.standing) {
      const auto* seen = std::get_if<entries::Queen>(&entry.payload);
      if (seen && seen->which == queen) home = seen->colony;
    }
    return home;
  }
  template <class Other>
  void judge(const Other&) {}

  const Known& known_;
  std::map<ColonyId, KeptApart> apart_;
  std::optional<Problem> fault_;
};

}  // namespace

Outcome keeps_quarantine(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                         const book::Draft& draft, const QuarantineRules& rules) {
  const auto* removed = std::get_if<entries::Removed>(&draft.payload);
  const auto taken_back = removed != nullptr ? std::optional(removed->entry) : draft.supersedes;
  if (!taken_back) return Done{};
  const auto old = std::find_if(before.begin(), before.end(),
                                [&](const entries::Entry& entry) { return entry.id == *taken_back; });
  const auto* began = old == before.end() ? nullptr : std::get_if<entries::ColonyBegan>(&old->payload);
  if (began == nullptr || !comes_from_outside(*began)) return Done{};
  if (removed != nullptr) return Done{};  // it was never there: keeps_beginnings asks what else is said of it
  const auto* now = std::get_if<entries::ColonyBegan>(&draft.payload);
  if (now != nullptr && now->swarm_of && !comes_from_outside(*now)) return Done{};  // whose swarm it is
  const Date the_last_day = *Date::from_ymd(2999, 12, 31);
  const auto was = quarantines_on(before, the_last_day, rules);
  const auto still = quarantines_on(after, the_last_day, rules);
  if (!was.contains(began->colony) || still.contains(began->colony)) return Done{};
  return bad_input("this would end the quarantine of '" + began->colony.text() + "' without a look", "how",
                   "say whose swarm it is (swarm_of); or look through its brood first, and enter quarantine "
                   "with lifted = true");
}

Outcome quarantine_gate(const Known& known, const book::Draft& draft) {
  return ApartJudge(known).of(draft.payload);
}

}  // namespace beegarth::garth
