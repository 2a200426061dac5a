#include "garth/ledgers/honey.hpp"

#include <algorithm>
#include <utility>

#include "entries/fields.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

struct Exposure {  // a feeding or treatment that marks what comes onto the hive until `last`
  HoneyMark mark;
  Date last;
  std::optional<entries::TreatmentKind> treatment;
  bool open = false;  // nobody said when it ends: until TreatmentEnded, or the usual time
  int withdrawal_days = 0;
};

// The combs of one colony that nobody entered as a batch: those of the nest, and boxes or combs for honey.
struct Unnamed {
  int supers = 0;
  std::optional<HoneyMark> supers_mark;
  std::optional<Date> supers_off;     // the day on which the last of them came off, and
  std::optional<HoneyMark> off_mark;  // their mark
  std::optional<HoneyMark> nest_mark;
  std::vector<Exposure> exposures;
};

bool leaves_nothing_behind(entries::TreatmentKind kind) {
  return kind == entries::TreatmentKind::drone_comb_removed || kind == entries::TreatmentKind::brood_removed;
}

std::string words_of_key(std::string_view word) {
  std::string text(word);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

class HoneyTeller {
 public:
  HoneyTeller(const HoneyRules& rules, std::map<EntryId, EntryId> outdone)
      : rules_(rules), outdone_(std::move(outdone)) {}

  HoneyLedger take_all(std::span<const Entry> standing, Date day) {
    for (const Entry& entry : standing) {
      if (entry.happened > day) break;
      std::visit([&](const auto& said) { take(entry, said); }, entry.payload);
    }
    for (const auto& [colony, unnamed] : colonies_)
      ledger_.boxes[colony] = {unnamed.supers, type_of(colony),
                               unnamed.supers > 0 ? unnamed.supers_mark : std::nullopt};
    ledger_.store = std::move(store_);
    return std::move(ledger_);
  }

 private:
  Unnamed& of(const ColonyId& colony) { return colonies_[colony]; }

  const Exposure* exposed(const ColonyId& colony, Date day) {
    for (const Exposure& one : of(colony).exposures) {
      if (one.mark.since <= day && day <= one.last) return &one;
    }
    return nullptr;
  }
  static void mark(std::optional<HoneyMark>& place, const HoneyMark& mark) {
    if (!place) place = mark;
  }
  void expose(const ColonyId& colony, const Exposure& exposure) {
    Unnamed& unnamed = of(colony);
    unnamed.exposures.push_back(exposure);
    mark(unnamed.nest_mark, exposure.mark);
    if (unnamed.supers > 0) mark(unnamed.supers_mark, exposure.mark);
    for (auto& [id, batch] : ledger_.batches) {
      if (batch.on == colony) mark(batch.mark, exposure.mark);
    }
  }
  static void comes_off(CombBatch& batch, Date day) {
    if (batch.on) batch.taken_off[*batch.on] = day;
    batch.on.reset();
  }
  void comes_on(CombBatch& batch, const ColonyId& colony, Date day) {
    if (batch.on != colony) comes_off(batch, day);
    batch.on = colony;
    batch.been_on.insert(colony);
    if (const Exposure* one = exposed(colony, day)) mark(batch.mark, one->mark);
  }
  std::string type_of(const ColonyId& colony) const {
    const auto home = home_.find(colony);
    const auto type = home == home_.end() ? type_of_hive_.end() : type_of_hive_.find(home->second);
    return type == type_of_hive_.end() ? std::string() : type->second;
  }
  void supers_put_on(const ColonyId& colony, int combs, Date day) {
    Unnamed& unnamed = of(colony);
    if (combs <= 0) return;
    if (const Exposure* one = exposed(colony, day)) mark(unnamed.supers_mark, one->mark);
    unnamed.supers += combs;
  }
  // Gives their mark, if they have one. What nobody said was put on has been on since nobody knows when.
  std::optional<HoneyMark> supers_taken_off(const ColonyId& colony, int combs, Date day) {
    Unnamed& unnamed = of(colony);
    if (combs <= 0) return std::nullopt;
    auto their = unnamed.supers_mark;
    if (!their && combs > unnamed.supers) their = unnamed.nest_mark;
    const bool had_some = unnamed.supers > 0;
    unnamed.supers = std::max(0, unnamed.supers - combs);
    if (had_some && (unnamed.supers == 0 || their)) {
      unnamed.supers_off = day;
      unnamed.off_mark = their;
    }
    if (unnamed.supers == 0) unnamed.supers_mark.reset();
    return their;
  }
  void lay_in_store(CombStore::Pile pile, const ColonyId& colony, const std::optional<HoneyMark>& mark,
                    Date day) {
    if (mark) store_.lay(pile, type_of(colony), *mark, day);
  }
  void mark_from_store(CombStore::Pile pile, const ColonyId& colony) {
    const auto found = store_.mark_in(pile, type_of(colony));
    Unnamed& unnamed = of(colony);
    if (found) mark(pile == CombStore::Pile::boxes ? unnamed.supers_mark : unnamed.nest_mark, *found);
  }
  // The combs stay behind when a colony dies, leaves or is shaken out; or they are carried into the store.
  void leave_behind(const ColonyId& colony, Date day) {
    const auto home = home_.find(colony);
    if (home == home_.end()) return;
    Unnamed& left = left_in_[home->second];
    const Unnamed& gone = of(colony);
    if (gone.nest_mark) mark(left.nest_mark, *gone.nest_mark);
    if (gone.supers_mark) mark(left.supers_mark, *gone.supers_mark);
    left.exposures.insert(left.exposures.end(), gone.exposures.begin(), gone.exposures.end());
    lay_in_store(CombStore::Pile::nest, colony, gone.nest_mark, day);
    lay_in_store(CombStore::Pile::boxes, colony, gone.supers_mark, day);
  }
  // A colony that is carried over takes its nest along; its boxes may stay on the old hive.
  void boxes_stay_behind(const ColonyId& colony, Date day) {
    const auto home = home_.find(colony);
    if (home == home_.end()) return;
    const auto& boxes = of(colony).supers_mark;
    if (boxes && supers_of_hive_[home->second] > 0) mark(left_in_[home->second].supers_mark, *boxes);
    lay_in_store(CombStore::Pile::boxes, colony, boxes, day);
  }
  void move_in(const ColonyId& colony, const HiveId& hive, Date day) {
    home_[colony] = hive;
    if (const auto left = left_in_.find(hive); left != left_in_.end()) {
      Unnamed& unnamed = of(colony);
      if (left->second.nest_mark) mark(unnamed.nest_mark, *left->second.nest_mark);
      if (left->second.supers_mark) mark(unnamed.supers_mark, *left->second.supers_mark);
      unnamed.exposures.insert(unnamed.exposures.end(), left->second.exposures.begin(),
                               left->second.exposures.end());
      left_in_.erase(left);
    }
    const auto known = supers_of_hive_.find(hive);
    if (known != supers_of_hive_.end()) supers_put_on(colony, known->second - of(colony).supers, day);
  }

  void take(const Entry& entry, const entries::Hive& hive) {
    const auto [called, fresh] = type_of_hive_.try_emplace(hive.hive, hive.type);
    if (!fresh) store_.are_one_pattern(called->second, hive.type);
    called->second = hive.type;
    const int supers = hive.super_combs.value_or(0);
    const int more = supers - std::exchange(supers_of_hive_[hive.hive], supers);
    bool lived_in = false;
    for (const auto& [colony, home] : home_) {
      if (home != hive.hive) continue;
      lived_in = true;
      if (hive.super_combs)
        boxes_change(colony, supers - of(colony).supers, hive.undrawn_combs, entry.happened);
    }
    // Boxes that are kept on an empty hive came out of the store as they were on that day.
    const auto mark_there = store_.mark_in(CombStore::Pile::boxes, hive.type);
    if (!lived_in && more > hive.undrawn_combs.value_or(0) && mark_there)
      mark(left_in_[hive.hive].supers_mark, *mark_there);
  }
  // The keeper told the hive's boxes again, with others than are known to be on.
  void boxes_change(const ColonyId& colony, int change, const entries::Count& undrawn, Date day) {
    supers_put_on(colony, change, day);
    if (change > undrawn.value_or(0)) mark_from_store(CombStore::Pile::boxes, colony);
    lay_in_store(CombStore::Pile::boxes, colony, supers_taken_off(colony, -change, day), day);
  }
  void take(const Entry& entry, const entries::ColonyBegan& began) {
    move_in(began.colony, began.hive, entry.happened);
  }
  void take(const Entry& entry, const entries::ColonyMoved& moved) {
    boxes_stay_behind(moved.colony, entry.happened);
    move_in(moved.colony, moved.hive, entry.happened);
  }
  void take(const Entry& entry, const entries::Transfer& moved) {
    if (moved.how == entries::TransferWay::shaken) {
      leave_behind(moved.colony, entry.happened);
      of(moved.colony).nest_mark.reset();
      if (const Exposure* one = exposed(moved.colony, entry.happened))
        mark(of(moved.colony).nest_mark, one->mark);
    }
    boxes_stay_behind(moved.colony, entry.happened);
    of(moved.colony).supers = 0;
    of(moved.colony).supers_mark.reset();
    move_in(moved.colony, moved.hive, entry.happened);
  }
  void take(const Entry& entry, const entries::Split& split) {
    const auto mark = of(split.colony).nest_mark;
    of(split.into).nest_mark = mark;  // its combs came from there
    of(split.into).exposures = of(split.colony).exposures;
    move_in(split.into, split.hive, entry.happened);
  }
  void take(const Entry& entry, const entries::Unite& unite) {
    const Unnamed guest = of(unite.from);
    Unnamed& host = of(unite.colony);
    if (guest.nest_mark) mark(host.nest_mark, *guest.nest_mark);
    if (guest.supers_mark) mark(host.supers_mark, *guest.supers_mark);
    leave_behind(unite.from, entry.happened);
    if (guest.supers > 0) {
      if (const Exposure* one = exposed(unite.colony, entry.happened)) mark(host.supers_mark, one->mark);
    }
    host.supers += guest.supers;
    for (const Exposure& one : guest.exposures) {
      if (one.last >= entry.happened) expose(unite.colony, one);
    }
    for (auto& [id, batch] : ledger_.batches) {
      if (batch.on == unite.from) comes_on(batch, unite.colony, entry.happened);
    }
    colonies_.erase(unite.from);
  }
  void take(const Entry& entry, const entries::Room& room) {
    const Date day = entry.happened;
    const int boxes = room.super_combs.value_or(0), nest = room.brood_combs.value_or(0);
    const auto off = supers_taken_off(room.colony, -boxes, day);
    const auto nest_off = nest < 0 ? of(room.colony).nest_mark : std::nullopt;
    const bool drawn = std::max(0, boxes) + std::max(0, nest) > room.undrawn.value_or(0);
    supers_put_on(room.colony, boxes, day);
    if (const auto batch = room.combs ? ledger_.batches.find(*room.combs) : ledger_.batches.end();
        batch != ledger_.batches.end() && !batch->second.gone) {
      for (const auto& one : {off, nest_off})
        if (one) mark(batch->second.mark, *one);
      if (boxes <= 0 && nest <= 0) return comes_off(batch->second, day);
      comes_on(batch->second, room.colony, day);
      if (batch->second.mark)
        mark(boxes > 0 ? of(room.colony).supers_mark : of(room.colony).nest_mark, *batch->second.mark);
      return;
    }
    lay_in_store(CombStore::Pile::boxes, room.colony, off, day);
    lay_in_store(CombStore::Pile::nest, room.colony, nest_off, day);
    if (!drawn) return;
    if (boxes > 0) {
      mark_from_store(CombStore::Pile::boxes, room.colony);
      if (nest_off) mark(of(room.colony).supers_mark, *nest_off);  // hung up out of the nest
    }
    if (nest > 0) {
      mark_from_store(CombStore::Pile::nest, room.colony);
      if (off) mark(of(room.colony).nest_mark, *off);
    }
  }
  void take(const Entry& entry, const entries::Feed& feed) {
    const std::string words = "fed on " + entry.happened.iso();
    expose(feed.colony,
           {.mark = {entry.id, entry.happened, words}, .last = entry.happened + rules_.feed_taken_days});
  }
  void take(const Entry& entry, const entries::Treatment& treatment) {
    if (leaves_nothing_behind(treatment.kind)) return;
    const int withdrawal = static_cast<int>(treatment.withdrawal_days.value_or(0) + 0.999);
    const int days =
        treatment.days ? static_cast<int>(*treatment.days + 0.999) : rules_.unsaid_treatment_days;
    expose(treatment.colony, {.mark = {entry.id, entry.happened,
                                       "treated with " + words_of_key(entries::word_for(treatment.kind)) +
                                           " on " + entry.happened.iso()},
                              .last = entry.happened + days + withdrawal,
                              .treatment = treatment.kind,
                              .open = !treatment.days,
                              .withdrawal_days = withdrawal});
    if (treatment.supers_on.value_or(false))
      mark(of(treatment.colony).supers_mark, of(treatment.colony).exposures.back().mark);
  }
  void take(const Entry& entry, const entries::ColonyEnded& ended) {
    leave_behind(ended.colony, entry.happened);
  }
  void take(const Entry& entry, const entries::TreatmentEnded& ended) {
    for (Exposure& one : of(ended.colony).exposures) {
      if (one.treatment == ended.kind && one.mark.since <= entry.happened)
        one.last = one.open ? entry.happened + one.withdrawal_days
                            : std::max(one.last, entry.happened + one.withdrawal_days);
    }
  }

  void take(const Entry& entry, const entries::Combs& combs) {
    const auto [at, fresh] = ledger_.batches.try_emplace(combs.combs);
    at->second.combs = combs;
    if (fresh && combs.parted_from) part_off(*combs.parted_from, at->second);
    if (combs.colony && (fresh || at->second.on != combs.colony))
      comes_on(at->second, *combs.colony, entry.happened);
  }
  // What was part of a batch is as old as it, and bears its mark wherever it goes.
  void part_off(const CombsId& whole, CombBatch& part) {
    const auto from = ledger_.batches.find(whole);
    if (from == ledger_.batches.end()) return;
    CombBatch& rest = from->second;
    rest.combs.count = std::max(0, rest.combs.count - part.combs.count);
    part.mark = rest.mark;
    part.been_on = rest.been_on;
    part.taken_off = rest.taken_off;
    if (!part.combs.drawn_year) part.combs.drawn_year = rest.combs.drawn_year;
  }
  void take(const Entry& entry, const entries::CombsMoved& moved) {
    const auto at = ledger_.batches.find(moved.combs);
    if (at == ledger_.batches.end() || at->second.gone) return;
    if (at->second.on != moved.colony) comes_off(at->second, entry.happened);
    at->second.gone = moved.to == entries::CombsGo::melted || moved.to == entries::CombsGo::burnt;
    if (moved.colony) comes_on(at->second, *moved.colony, entry.happened);
  }

  void take(const Entry&, const entries::Lot& lot) { ledger_.lots[lot.lot] = lot; }
  void take(const Entry&, const entries::Jars& jars) { ledger_.jars[jars.lot].push_back(jars); }
  template <class Other>
  void take(const Entry&, const Other&) {}
  void take(const Entry& entry, const entries::Harvest& harvest) {
    CropFrom crop{entry.id, entry.happened, harvest, {}, {}, {}};
    if (const auto other = outdone_.find(entry.id); other != outdone_.end()) crop.outdone_by = other->second;
    judge(crop);
    ledger_.crops.push_back(std::move(crop));
  }

  void judge(CropFrom& crop) {
    const entries::Harvest& harvest = crop.harvest;
    const auto blame = [&](const HoneyMark& mark, const std::string& what) {
      if (!crop.fault) crop.fault = what + " " + mark.words;
      crop.because.push_back(mark.entry);
    };
    if (!harvest.for_people.value_or(true)) crop.fault = "entered as not for people";
    for (const CombsId& id : harvest.from) {
      const auto at = ledger_.batches.find(id);
      if (at == ledger_.batches.end()) {
        crop.fault = "there is no batch of combs '" + id.text() + "' on that day";
        continue;
      }
      const CombBatch& batch = at->second;
      if (!batch.been_on.contains(harvest.colony) && !crop.fault)
        crop.fault = "'" + batch.combs.name + "' was never on this colony";
      if (batch.mark) blame(*batch.mark, "'" + batch.combs.name + "' was on a hive that was");
      if (!batch.combs.for_people.value_or(batch.combs.use == entries::CombUse::honey) && !crop.fault)
        crop.fault = "'" + batch.combs.name + "' is not for people";
    }
    if (harvest.from.empty()) judge_unnamed(crop, blame);
  }
  template <class Blame>
  void judge_unnamed(const CropFrom& crop, const Blame& blame) {
    const ColonyId& colony = crop.harvest.colony;
    const Unnamed& unnamed = of(colony);
    const auto blame_boxes = [&](const HoneyMark& mark) {
      blame(mark, mark.stored ? "its boxes may be of those that were laid in store on " + mark.stored->iso() +
                                    ", which were on a hive that was"
                              : std::string("its boxes were on while the colony was"));
    };
    const bool just_off = unnamed.supers_off && crop.date - *unnamed.supers_off <= rules_.boxes_wait_days;
    if (just_off && unnamed.off_mark) blame_boxes(*unnamed.off_mark);
    if (unnamed.supers > 0 && unnamed.supers_mark) blame_boxes(*unnamed.supers_mark);
    const bool of_the_nest = unnamed.supers == 0 && !just_off;
    if (of_the_nest && unnamed.nest_mark)
      blame(*unnamed.nest_mark, unnamed.nest_mark->stored
                                    ? "its nest holds combs of those that were laid in store on " +
                                          unnamed.nest_mark->stored->iso() + ", out of a hive that was"
                                    : std::string("its combs were in the nest while the colony was"));
    for (const auto& [id, batch] : ledger_.batches) {
      const auto off = batch.taken_off.find(colony);
      const bool there = batch.on == colony ||
                         (off != batch.taken_off.end() && crop.date - off->second <= rules_.boxes_wait_days);
      const bool of_honey = batch.combs.use == entries::CombUse::honey;
      if (there && batch.mark && (of_honey || of_the_nest))
        blame(*batch.mark, "it may be of '" + batch.combs.name + "', which was on a hive that was");
    }
  }

  HoneyRules rules_;
  std::map<EntryId, EntryId> outdone_;
  HoneyLedger ledger_;
  std::map<ColonyId, Unnamed> colonies_;
  std::map<ColonyId, HiveId> home_;
  std::map<HiveId, Unnamed> left_in_;
  std::map<HiveId, int> supers_of_hive_;
  std::map<HiveId, std::string> type_of_hive_;
  CombStore store_;
};

}  // namespace

Expected<HoneyRules> HoneyRules::from(const FactTable& work) {
  const auto feed = work.value("feed_taken_days");
  if (!feed) return feed.problem();
  const auto treatment = work.value("unsaid_treatment_days");
  if (!treatment) return treatment.problem();
  const auto boxes = work.value("boxes_wait_days");
  if (!boxes) return boxes.problem();
  return HoneyRules{static_cast<int>(*feed), static_cast<int>(*treatment), static_cast<int>(*boxes)};
}

HoneyLedger honey_on(std::span<const Entry> standing, Date day, const HoneyRules& rules,
                     const FirstSaid& first) {
  return HoneyTeller(rules, outdone_harvests(standing, first)).take_all(standing, day);
}

}  // namespace beegarth::garth
