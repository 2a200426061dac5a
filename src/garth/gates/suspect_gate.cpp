// Nothing moves to or from what is suspect (trade facts 5.4: nothing leaves the site until the inspector says
// so).
#include <algorithm>
#include <string>

#include "garth/gates/gates.hpp"
#include "garth/ledgers/suspects.hpp"

namespace beegarth::garth {
namespace {

class MoveJudge {
 public:
  explicit MoveJudge(const Known& known) : known_(known), suspects_(suspects_on(known.standing, known.day)) {}

  Outcome of(const entries::Payload& payload) {
    if (suspects_.colonies.empty()) return Done{};
    std::visit([&](const auto& said) { judge(said); }, payload);
    if (fault_) return *fault_;
    return Done{};
  }

 private:
  void refuse(const std::string& what, const SuspectColony& why) {
    if (fault_) return;
    std::string signs;
    for (const auto& sign : why.signs) signs += (signs.empty() ? "" : ", ") + sign;
    fault_ = bad_input(
        what + " is suspect since " + why.since.iso() + " (" + signs + "): nothing moves to or from it",
        "entry " + why.seen.front().text(),
        "tell the bee inspector; enter 'cleared' when the inspector has cleared it");
  }
  std::string name_of(const ColonyId& id) const {
    const auto at = known_.state.colonies.find(id);
    return at == known_.state.colonies.end() ? id.text() : at->second.began.name;
  }
  void colony(const ColonyId& id) {
    if (const auto* suspect = suspects_.at(id)) return refuse("'" + name_of(id) + "'", *suspect);
    const auto at = known_.state.colonies.find(id);
    if (at != known_.state.colonies.end()) hive(at->second.hive);
  }
  void hive(const HiveId& id) {
    if (const auto* suspect = suspects_.at(id)) return refuse("the hive '" + id.text() + "'", *suspect);
    const auto at = known_.state.hives.find(id);
    if (at != known_.state.hives.end()) site(at->second.site);
  }
  void site(const SiteId& id) {
    if (const auto* suspect = suspects_.at(id)) refuse("the site '" + id.text() + "'", *suspect);
  }

  void judge(const entries::Split& split) { colony(split.colony), hive(split.hive); }
  void judge(const entries::Unite& unite) { colony(unite.colony), colony(unite.from); }
  void judge(const entries::Transfer& move) { colony(move.colony), hive(move.hive); }
  void judge(const entries::ColonyMoved& move) { colony(move.colony), hive(move.hive); }
  void judge(const entries::ColonyBegan& began) {
    // What stood there all along may still be written down; what comes in may not.
    if (began.how != entries::Beginning::overwintered && began.how != entries::Beginning::unknown)
      hive(began.hive);
  }
  void judge(const entries::Room& room) { colony(room.colony); }
  void judge(const entries::Feed& feed) { colony(feed.colony); }
  void judge(const entries::Harvest& harvest) { colony(harvest.colony); }
  void judge(const entries::Queen& queen) {
    using entries::QueenEvent;
    if (queen.event == QueenEvent::introduced || queen.event == QueenEvent::cell_given ||
        queen.event == QueenEvent::removed)
      colony(queen.colony);
  }
  void judge(const entries::ColonyEnded& ended) {
    if (ended.how == entries::Ending::sold || ended.how == entries::Ending::given_away) colony(ended.colony);
  }
  void judge(const entries::Sale& sale) {
    if (sale.colony) colony(*sale.colony);
  }
  void judge(const entries::Hive& moved) {
    const auto before = known_.state.hives.find(moved.hive);
    if (before == known_.state.hives.end()) return site(moved.site);  // a hive comes in
    if (before->second.site == moved.site) return;
    hive(moved.hive);
    site(moved.site);
  }
  void judge(const entries::Assembled& assembled) { hive(assembled.hive); }
  void judge(const entries::Combs& combs) {
    if (combs.colony) colony(*combs.colony);
  }
  void judge(const entries::CombsMoved& moved) {
    if (moved.colony) colony(*moved.colony);
    if (const auto from = colony_with(moved.combs)) colony(*from);
  }
  template <class Other>
  void judge(const Other&) {}

  std::optional<ColonyId> colony_with(const CombsId& combs) const {
    std::optional<ColonyId> on;
    for (const auto& entry : known_.standing) {
      if (const auto* batch = std::get_if<entries::Combs>(&entry.payload); batch && batch->combs == combs) {
        if (batch->colony) on = batch->colony;
      }
      if (const auto* moved = std::get_if<entries::CombsMoved>(&entry.payload);
          moved && moved->combs == combs)
        on = moved->colony;
    }
    return on;
  }

  const Known& known_;
  Suspects suspects_;
  std::optional<Problem> fault_;
};

}  // namespace

Outcome suspect_gate(const Known& known, const book::Draft& draft) {
  return MoveJudge(known).of(draft.payload);
}

Outcome keeps_suspicion(std::span<const entries::Entry> book, const book::Draft& draft) {
  const auto* removed = std::get_if<entries::Removed>(&draft.payload);
  const std::optional<EntryId> gone = removed ? std::optional(removed->entry) : draft.supersedes;
  if (!gone) return Done{};
  const auto at =
      std::find_if(book.begin(), book.end(), [&](const auto& entry) { return entry.id == *gone; });
  if (at == book.end() || suspicious_signs(at->payload).empty()) return Done{};
  const bool still_said = entries::colony_of(draft.payload) == entries::colony_of(at->payload) &&
                          !suspicious_signs(draft.payload).empty();
  if (still_said) return Done{};
  return bad_input(
      "entry " + gone->text() + " told of a sign of a notifiable disease or pest: it is not taken back",
      std::string(entries::kind_name(draft.payload)),
      "enter 'cleared' when the inspector has cleared the colony");
}

}  // namespace beegarth::garth
