// Nothing moves to or from what is suspect (trade facts 5.4: nothing leaves the site until the inspector says
// so).
#include <algorithm>
#include <set>
#include <string>

#include "garth/gates/gates.hpp"
#include "garth/ledgers/comb_stays.hpp"
#include "garth/ledgers/suspects.hpp"

namespace beegarth::garth {
namespace {

class MoveJudge {
 public:
  explicit MoveJudge(const Known& known)
      : known_(known), suspects_(suspects_on(known.standing, known.day, known.rules.notifiable)) {}

  Outcome of(const entries::Payload& payload) {
    if (suspects_.colonies.empty()) return Done{};
    stays_ = comb_stays_on(known_.standing, known_.day);
    std::visit([&](const auto& said) { judge(said); }, payload);
    if (fault_) return *fault_;
    return Done{};
  }

 private:
  void refuse(const std::string& what, const SuspectColony& why, const std::string& way_out = {}) {
    if (fault_) return;
    std::string signs;
    for (const auto& sign : why.signs) signs += (signs.empty() ? "" : ", ") + sign.text();
    const char* rule = feeding_ ? "): no feed moves to or from it, feed and feeders carry disease on"
                                : "): nothing moves to or from it";
    const std::string ask =
        feeding_ ? "ask the bee inspector, who may let you give feed that lies at this site already (write "
                   "that down as a note); "
                 : "tell the bee inspector; ";
    fault_ = bad_input(what + " is suspect since " + why.since.iso() + " (" + signs + rule,
                       "entry " + why.signs.front().entry.text(),
                       way_out + ask + "enter 'cleared' for '" + name_of(why.colony) +
                           "' when the inspector has cleared it");
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
    if (began.swarm_of) colony(*began.swarm_of);
  }
  void judge(const entries::Room& room) {
    colony(room.colony);
    const int put_on = std::max(0, room.super_combs.value_or(0)) + std::max(0, room.brood_combs.value_or(0));
    if (room.combs) return been_on(*room.combs);
    if (put_on > room.undrawn.value_or(0)) stored_unnamed();
  }
  void judge(const entries::Feed& feed) {
    feeding_ = true;
    colony(feed.colony);
    if (feed.form == entries::FeedForm::comb) stored_unnamed();
  }
  void judge(const entries::Harvest& harvest) { colony(harvest.colony); }
  void judge(const entries::TableOverride& own) {
    if (!says_what_is_suspect(own)) return;
    const SuspectColony& suspect = suspects_.colonies.begin()->second;
    fault_ = bad_input("'" + name_of(suspect.colony) +
                           "' is suspect: what makes it so, and what that holds, is "
                           "not changed meanwhile",
                       "table " + own.table + ", row " + own.row,
                       "enter it when the inspector has cleared the colony");
  }
  void judge(const entries::Queen& queen) {
    using entries::QueenEvent;
    if (queen.event == QueenEvent::introduced || queen.event == QueenEvent::cell_given ||
        queen.event == QueenEvent::removed)
      colony(queen.colony);
    if (queen.event != QueenEvent::introduced || !queen.which) return;
    for (const auto& entry : known_.standing) {  // where she was before
      const auto* before = std::get_if<entries::Queen>(&entry.payload);
      if (before && before->which == queen.which) colony(before->colony);
    }
  }
  void judge(const entries::ColonyEnded& ended) {
    if (ended.how != entries::Ending::died && ended.how != entries::Ending::absconded) colony(ended.colony);
  }
  void judge(const entries::Sale& sale) {
    if (sale.colony) colony(*sale.colony);
    if (sale.lot) crops_of(*sale.lot);
    using entries::Goods;
    const bool of_a_stock = sale.what == Goods::bees || sale.what == Goods::queen || sale.what == Goods::kit;
    if ((of_a_stock && !sale.colony) || (sale.what == Goods::honey && !sale.lot)) from_somewhere(of_a_stock);
  }
  void judge(const entries::Extraction& extraction) {
    // Combs that were robbed out or extracted carry foulbrood to whoever licks them dry.
    if (extraction.wet_combs_back.value_or(false)) crops_of(extraction.lot);
  }
  void judge(const entries::SiteClosed& closed) { site(closed.site); }  // it would be forgotten with its duty
  void judge(const entries::Part& part) {
    // What was never told of may be written down where it lies; what is carried may not.
    const auto before = site_of_part(part.part);
    if (!before || !part.site || before == part.site) return;
    site(*before);
    site(*part.site);
  }
  void judge(const entries::Hive& moved) {
    const auto before = known_.state.hives.find(moved.hive);
    if (before == known_.state.hives.end()) return site(moved.site);  // a hive comes in
    if (before->second.site != moved.site) {
      hive(moved.hive);
      site(moved.site);
    }
    count_changes(before->second, moved);
  }
  // Boxes and combs put on or taken off by telling the hive again.
  void count_changes(const entries::Hive& before, const entries::Hive& now) {
    const auto known = stays_.hives.find(now.hive);
    if (known == stays_.hives.end()) return;
    const int boxes = now.super_combs.value_or(known->second.boxes) - known->second.boxes;
    // A hive told again for another reason still says how many combs it began with.
    const bool as_before = now.brood_combs == before.brood_combs;
    const int nest = as_before ? 0 : now.brood_combs - known->second.nest;
    if (boxes == 0 && nest == 0) return;
    hive(now.hive);
    site(now.site);
    if (std::max(0, boxes) + std::max(0, nest) > now.undrawn_combs.value_or(0)) stored_unnamed();
  }
  void judge(const entries::Assembled& assembled) {
    hive(assembled.hive);
    const auto hive_now = known_.state.hives.find(assembled.hive);
    for (const PartId& part : assembled.parts) {
      const auto lies_at = site_of_part(part);
      const bool stays = hive_now != known_.state.hives.end() && lies_at == hive_now->second.site;
      if (lies_at && !stays) site(*lies_at);
    }
    for (const auto& entry : known_.standing) {  // where the parts were before
      const auto* before = std::get_if<entries::Assembled>(&entry.payload);
      if (before == nullptr || before->hive == assembled.hive) continue;
      for (const PartId& part : before->parts)
        if (std::find(assembled.parts.begin(), assembled.parts.end(), part) != assembled.parts.end())
          hive(before->hive);
    }
  }
  void judge(const entries::Combs& combs) {
    if (combs.parted_from) parted(*combs.parted_from, combs.colony);
    const auto before = colony_with(combs.combs);
    if (before == combs.colony) return;
    if (combs.colony) colony(*combs.colony);
    if (before) colony(*before);
    if (combs.colony) been_on(combs.combs);
  }
  // To part combs off is to move them from where the whole is or was.
  void parted(const CombsId& whole, const std::optional<ColonyId>& to) {
    const auto from = colony_with(whole);
    if (from == to) return;
    if (from) colony(*from);
    if (to) been_on(whole);
  }
  void judge(const entries::CombsMoved& moved) {
    if (moved.to == entries::CombsGo::burnt) return;  // what an inspector orders
    if (moved.colony) colony(*moved.colony);
    if (const auto from = colony_with(moved.combs)) colony(*from);
    if (moved.to != entries::CombsGo::into_store) been_on(moved.combs);
  }
  template <class Other>
  void judge(const Other&) {}

  // The suspicion that holds combs which left a colony on that day, if any: its own, or that of the site.
  const SuspectColony* holds(const ColonyId& left, std::optional<Date> day) const {
    const SuspectColony* why = suspects_.at(left);
    const auto home = stays_.homes.find(left);
    if (why == nullptr && home != stays_.homes.end()) why = suspects_.at(home->second);
    const auto hive =
        home == stays_.homes.end() ? known_.state.hives.end() : known_.state.hives.find(home->second);
    if (why == nullptr && hive != known_.state.hives.end()) why = suspects_.at(hive->second.site);
    if (why == nullptr || (day && *day < why->since - known_.rules.comb_look_back_days)) return nullptr;
    return why;
  }
  std::string left_on(const ColonyId& left, Date day) const {
    return " came off '" + name_of(left) + "' on " + day.iso();
  }
  // Combs carry disease from where they were before anyone saw a sign.
  void been_on(const CombsId& combs) {
    const auto stays = stays_.batches.find(combs);
    if (stays == stays_.batches.end()) return;
    for (const CombStay& stay : stays->second) {
      const SuspectColony* why = holds(stay.colony, stay.until);
      if (why == nullptr || !stay.until) continue;
      refuse("'" + combs.text() + "'" + left_on(stay.colony, *stay.until) + ", and '" + name_of(why->colony) +
                 "'",
             *why);
    }
  }
  void stored_unnamed() {
    for (const TakenOff& one : stays_.unnamed) {
      const SuspectColony* why = holds(one.colony, one.day);
      if (why == nullptr || fault_) continue;
      refuse(std::to_string(one.combs) + " combs that nobody named" + left_on(one.colony, one.day) +
                 ", these may be of them, and '" + name_of(why->colony) + "'",
             *why, "where they are others, say so: undrawn for new foundation, or combs for their batch; ");
    }
  }
  void crops_of(const LotId& lot) {
    for (const auto& entry : known_.standing) {
      const auto* crop = std::get_if<entries::Harvest>(&entry.payload);
      if (crop && crop->lot == lot) colony(crop->colony);
    }
  }
  // Something goes out and nothing says where from, while some colony is suspect.
  void from_somewhere(bool of_a_stock) {
    if (fault_) return;
    const SuspectColony& suspect = suspects_.colonies.begin()->second;
    fault_ =
        bad_input("'" + name_of(suspect.colony) + "' is suspect, and this does not say where it comes from",
                  of_a_stock ? "colony" : "lot",
                  of_a_stock ? "name the colony that it was part of" : "name the lot that the honey is of");
  }
  std::optional<SiteId> site_of_part(const PartId& id) const {
    std::optional<SiteId> at;
    for (const auto& entry : known_.standing) {
      const auto* part = std::get_if<entries::Part>(&entry.payload);
      if (part && part->part == id && part->site) at = part->site;
    }
    return at;
  }
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
  CombStays stays_;
  bool feeding_ = false;
  std::optional<Problem> fault_;
};

}  // namespace

bool says_what_is_suspect(const entries::TableOverride& own) {
  return own.table.rfind("duty_", 0) == 0 || (own.table == "work" && own.row == "comb_look_back_days");
}

Outcome suspect_gate(const Known& known, const book::Draft& draft) {
  return MoveJudge(known).of(draft.payload);
}

namespace {

Problem frees(const std::string& what, const SuspectColony& before) {
  return bad_input(
      "this would end the suspicion of " + what + " without the inspector's word",
      "entry " + before.signs.front().entry.text(),
      "enter 'cleared' with colony = " + before.colony.text() +
          " and by = the inspector's name, when the inspector has cleared it; what was entered by "
          "mistake is cleared in the same way, and corrected or removed after that");
}

// What was suspect on a day and would be no longer, or only since a later day. `cleared` are those whose
// suspicion on that day the inspector has ended since.
std::optional<Problem> freed(const Suspects& before, const Suspects& after,
                             const std::set<ColonyId>& cleared) {
  for (const auto& [colony, suspect] : before.colonies) {
    if (cleared.contains(colony)) continue;
    const auto now = after.colonies.find(colony);
    if (now == after.colonies.end() || now->second.since > suspect.since)
      return frees("'" + colony.text() + "'", suspect);
    for (const HiveId& hive : suspect.hives)
      if (after.at(hive) == nullptr) return frees("the hive '" + hive.text() + "'", suspect);
    for (const SiteId& site : suspect.sites)
      if (after.at(site) == nullptr) return frees("the site '" + site.text() + "'", suspect);
  }
  return std::nullopt;
}

}  // namespace

Outcome keeps_suspicion(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                        const book::Draft& draft, const Notifiable& notifiable) {
  if (std::holds_alternative<entries::Cleared>(draft.payload)) return Done{};
  std::set<Date> days;
  for (const auto& entry : before)
    if (!notifiable.signs_in(entry.payload).empty() ||
        std::holds_alternative<entries::Cleared>(entry.payload))
      days.insert(entry.happened);
  for (const Date day : days) {
    std::set<ColonyId> cleared;
    for (const auto& entry : before) {
      const auto* word = std::get_if<entries::Cleared>(&entry.payload);
      if (word && entry.happened >= day) cleared.insert(word->colony);
    }
    if (auto fault =
            freed(suspects_on(before, day, notifiable), suspects_on(after, day, notifiable), cleared))
      return *std::move(fault);
  }
  if (days.empty()) return Done{};
  const Date last = *Date::from_ymd(2999, 12, 31);
  if (auto fault = freed(suspects_on(before, last, notifiable), suspects_on(after, last, notifiable), {}))
    return *std::move(fault);
  return Done{};
}

}  // namespace beegarth::garth
