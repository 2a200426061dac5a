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

// Boxes wait so long at most between hive and extractor, for their harvest to be theirs.
constexpr int taken_off_before_days = 30;

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
  void comes_on(CombBatch& batch, const ColonyId& colony, Date day) {
    batch.on = colony;
    batch.been_on.insert(colony);
    if (const Exposure* one = exposed(colony, day)) mark(batch.mark, one->mark);
  }
  void supers_change(const ColonyId& colony, int change, Date day) {
    Unnamed& unnamed = of(colony);
    if (change > 0) {
      if (const Exposure* one = exposed(colony, day)) mark(unnamed.supers_mark, one->mark);
    }
    const bool had_some = unnamed.supers > 0;
    unnamed.supers = std::max(0, unnamed.supers + change);
    if (unnamed.supers > 0) return;
    if (had_some) {
      unnamed.supers_off = day;
      unnamed.off_mark = unnamed.supers_mark;
    }
    unnamed.supers_mark.reset();
  }
  // The combs stay behind when a colony dies, leaves or is shaken out.
  void leave_behind(const ColonyId& colony) {
    const auto home = home_.find(colony);
    if (home == home_.end()) return;
    Unnamed& left = left_in_[home->second];
    const Unnamed& gone = of(colony);
    if (gone.nest_mark) mark(left.nest_mark, *gone.nest_mark);
    if (gone.supers_mark) mark(left.supers_mark, *gone.supers_mark);
    left.exposures.insert(left.exposures.end(), gone.exposures.begin(), gone.exposures.end());
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
    if (known != supers_of_hive_.end() && known->second > of(colony).supers)
      supers_change(colony, known->second - of(colony).supers, day);
  }

  void take(const Entry& entry, const entries::Hive& hive) {
    const int supers = hive.super_combs.value_or(0);
    supers_of_hive_[hive.hive] = supers;
    for (const auto& [colony, home] : home_) {
      if (home == hive.hive && hive.super_combs)
        supers_change(colony, supers - of(colony).supers, entry.happened);
    }
  }
  void take(const Entry& entry, const entries::ColonyBegan& began) {
    move_in(began.colony, began.hive, entry.happened);
  }
  void take(const Entry& entry, const entries::ColonyMoved& moved) {
    move_in(moved.colony, moved.hive, entry.happened);
  }
  void take(const Entry& entry, const entries::Transfer& moved) {
    if (moved.how == entries::TransferWay::shaken) {
      leave_behind(moved.colony);
      of(moved.colony).nest_mark.reset();
      if (const Exposure* one = exposed(moved.colony, entry.happened))
        mark(of(moved.colony).nest_mark, one->mark);
    }
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
    supers_change(room.colony, room.super_combs.value_or(0), entry.happened);
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
  void take(const Entry&, const entries::ColonyEnded& ended) { leave_behind(ended.colony); }
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
    if (combs.colony && (fresh || at->second.on != combs.colony))
      comes_on(at->second, *combs.colony, entry.happened);
  }
  void take(const Entry& entry, const entries::CombsMoved& moved) {
    const auto at = ledger_.batches.find(moved.combs);
    if (at == ledger_.batches.end() || at->second.gone) return;
    at->second.on.reset();
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
    if (!harvest.from.empty()) return;
    const Unnamed& unnamed = of(harvest.colony);
    const bool just_off = unnamed.supers_off && crop.date - *unnamed.supers_off <= taken_off_before_days;
    if (unnamed.supers == 0 && just_off) {
      if (unnamed.off_mark) blame(*unnamed.off_mark, "its boxes were on while the colony was");
    } else if (unnamed.supers > 0) {
      if (unnamed.supers_mark) blame(*unnamed.supers_mark, "its boxes were on while the colony was");
    } else if (unnamed.nest_mark) {
      blame(*unnamed.nest_mark, "its combs were in the nest while the colony was");
    }
  }

  HoneyRules rules_;
  std::map<EntryId, EntryId> outdone_;
  HoneyLedger ledger_;
  std::map<ColonyId, Unnamed> colonies_;
  std::map<ColonyId, HiveId> home_;
  std::map<HiveId, Unnamed> left_in_;
  std::map<HiveId, int> supers_of_hive_;
};

}  // namespace

Expected<HoneyRules> HoneyRules::from(const FactTable& work) {
  const auto feed = work.value("feed_taken_days");
  if (!feed) return feed.problem();
  const auto treatment = work.value("unsaid_treatment_days");
  if (!treatment) return treatment.problem();
  return HoneyRules{static_cast<int>(*feed), static_cast<int>(*treatment)};
}

std::vector<std::string> HoneyLedger::faults_of(const LotId& lot) const {
  std::vector<std::string> faults;
  bool any = false;
  for (const CropFrom& crop : crops) {
    if (crop.harvest.lot != lot) continue;
    any = true;
    if (crop.fault)
      faults.push_back("the crop of " + crop.date.iso() + " from " + crop.harvest.colony.text() + ": " +
                       *crop.fault);
  }
  if (!any) faults.emplace_back("no harvest is entered for it");
  if (any && holds_too_much(jarred_kg(lot), held_kg(lot)))
    faults.push_back("its jars hold " + kg_in_words(jarred_kg(lot)) + " and its harvests " +
                     kg_in_words(held_kg(lot)));
  return faults;
}

double HoneyLedger::held_kg(const LotId& lot) const {
  double kg = 0;
  for (const CropFrom& crop : crops) {
    if (crop.harvest.lot == lot && !crop.outdone_by) kg += crop.harvest.kg;
  }
  return kg;
}

double HoneyLedger::jarred_kg(const LotId& lot) const {
  double kg = 0;
  if (const auto filled = jars.find(lot); filled != jars.end()) {
    for (const entries::Jars& one : filled->second) kg += one.jars * one.net_g / 1000;
  }
  return kg;
}

bool holds_too_much(double jarred_kg, double held_kg) {
  return jarred_kg > held_kg + 0.001;
}

std::string kg_in_words(double kg) {
  std::string text = std::to_string(kg);  // six decimals
  text.erase(text.size() - 3);            // to the gram
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text + " kg";
}

HoneyLedger honey_on(std::span<const Entry> standing, Date day, const HoneyRules& rules,
                     const FirstSaid& first) {
  return HoneyTeller(rules, outdone_harvests(standing, first)).take_all(standing, day);
}

}  // namespace beegarth::garth
