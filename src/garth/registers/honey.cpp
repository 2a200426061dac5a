// Harvest, lots, labels and yields: from the jar back to the combs, the colonies and what they were given.
#include "garth/ledgers/honey.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "duty/honey_limits.hpp"
#include "duty/honey_water.hpp"
#include "duty/label.hpp"
#include "entries/fields.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

Expected<HoneyLedger> ledger_of(const Session& session) {
  const auto rules = HoneyRules::from(session.tables["work"]);
  if (!rules) return rules.problem();
  return honey_on(session.standing, session.today, *rules, session.first_said);
}

Expected<std::optional<double>> moisture_of(const Session& session, const entries::Lot& lot) {
  if (lot.moisture_pct) return std::optional(*lot.moisture_pct);
  if (!lot.refractive_index) return std::optional<double>();
  const auto pct =
      duty::honey_moisture_pct(*lot.refractive_index, *lot.temperature_C, session.tables["honey"]);
  if (!pct) return pct.problem();
  return std::optional(*pct);
}

duty::HoneyKind law_kind(entries::HoneyKind kind) {
  duty::HoneyKind law;
  if (kind == entries::HoneyKind::heather) law.plant = duty::HoneyPlant::calluna;
  if (kind == entries::HoneyKind::honeydew) law.source = duty::HoneySource::honeydew;
  law.bakers = kind == entries::HoneyKind::bakers;
  return law;
}

// What a colony was given in the year before a crop of it. What came after is no matter of that crop.
void add_treatments(const Session& session, const ColonyId& colony, Date crop, std::set<std::string>& told) {
  for (const Entry& entry : session.standing) {
    const auto* t = std::get_if<entries::Treatment>(&entry.payload);
    if (t == nullptr || t->colony != colony || entry.happened > crop || entry.happened < crop - 365) continue;
    told.insert(colony_name(session, colony) + ": " + key_in_words(entries::word_for(t->kind)) + " " +
                entry.happened.iso());
  }
}

// " from Top bars east (drawn 2024)": the batches by name, with their age.
std::string batches_in_words(const HoneyLedger& ledger, const std::vector<CombsId>& ids) {
  std::string text;
  for (const CombsId& id : ids) {
    text += text.empty() ? " from " : " and ";
    const auto batch = ledger.batches.find(id);
    if (batch == ledger.batches.end()) {
      text += id.text();
      continue;
    }
    text += batch->second.combs.name;
    if (batch->second.combs.drawn_year)
      text += " (drawn " + std::to_string(*batch->second.combs.drawn_year) + ")";
  }
  return text;
}

struct LotStory {
  std::vector<std::string> crops;
  std::vector<EntryId> entries;
  std::set<std::string> treatments;
  double kg = 0;
  std::optional<Date> last;
};
LotStory story_of(const Session& session, const HoneyLedger& ledger, const LotId& lot) {
  LotStory story;
  for (const CropFrom& crop : ledger.crops) {
    if (crop.harvest.lot != lot) continue;
    std::string text = colony_name(session, crop.harvest.colony) +
                       batches_in_words(ledger, crop.harvest.from) + " " + crop.date.iso();
    if (crop.harvest.combs) text += ", " + std::to_string(*crop.harvest.combs) + " combs";
    text += ", " + short_number(crop.harvest.kg) + " kg";
    if (crop.outdone_by) text += " (not counted: corrected twice)";
    story.crops.push_back(text);
    add_treatments(session, crop.harvest.colony, crop.date, story.treatments);
    story.entries.push_back(crop.entry);
    if (!crop.outdone_by) story.kg += crop.harvest.kg;
    story.last = crop.date;
  }
  return story;
}

// What the keeper still has to decide between.
void say_what_stands_twice(const HoneyLedger& ledger, Register& out) {
  for (const CropFrom& crop : ledger.crops) {
    if (!crop.outdone_by) continue;
    out.remarks.push_back("The harvest of " + crop.date.iso() + " from " + crop.harvest.colony.text() +
                          " was corrected twice: the smaller of the two counts, and " +
                          kg_in_words(crop.harvest.kg) + " (entry " + crop.entry.text() +
                          ") does not, until you remove one of them.");
  }
}

std::string setting(const Session& session, const char* name) {
  const auto at = session.state.settings.find(name);
  return at == session.state.settings.end() ? std::string() : at->second;
}

}  // namespace

Expected<Register> harvest_register(const Session& session) {
  const auto ledger = ledger_of(session);
  if (!ledger) return ledger.problem();
  Register out;
  out.columns = {{"date", "date"},
                 {"colony", "colony", 1.3},
                 {"kg", "kg", 0.6},
                 {"combs", "combs", 0.6},
                 {"from", "from", 1.3},
                 {"lot", "lot", 0.8},
                 {"cleared", "cleared by", 1},
                 {"who", "who", 0.8},
                 {"for_people", "for people", 0.8},
                 {"why_not", "why not", 2}};
  std::map<EntryId, std::string> who;
  for (const Entry& entry : session.standing)
    if (std::holds_alternative<entries::Harvest>(entry.payload)) who[entry.id] = entry.who;
  for (const CropFrom& crop : ledger->crops) {
    const std::string from = batches_in_words(*ledger, crop.harvest.from);
    std::vector<EntryId> because{crop.entry};
    because.insert(because.end(), crop.because.begin(), crop.because.end());
    out.rows.push_back(
        {crop.date,
         {crop.date.iso(), colony_name(session, crop.harvest.colony), short_number(crop.harvest.kg),
          crop.harvest.combs ? std::to_string(*crop.harvest.combs) : "",
          from.empty() ? "" : from.substr(std::string_view(" from ").size()),
          crop.harvest.lot ? crop.harvest.lot->text() : "", crop.harvest.cleared.value_or(""),
          who[crop.entry], crop.fault ? "no" : "yes", crop.fault.value_or("")},
         because});
  }
  say_what_stands_twice(*ledger, out);
  return out;
}

// Where and how cleanly the honey was got out of its combs, and whether the wet combs went back at dusk.
Expected<Register> extraction_register(const Session& session) {
  const auto ledger = ledger_of(session);
  if (!ledger) return ledger.problem();
  Register out;
  out.columns = {{"date", "date"},
                 {"lot", "lot", 0.8},
                 {"kg", "kg", 0.6},
                 {"harvested_kg", "harvested kg", 0.8},
                 {"where", "where", 1.4},
                 {"clean", "washed before", 0.8},
                 {"wet_combs_back", "wet combs back at dusk", 0.9},
                 {"who", "who", 0.9},
                 {"remark", "remark", 1.5}};
  std::map<LotId, double> extracted;
  for (const Entry& entry : session.standing) {
    const auto* one = std::get_if<entries::Extraction>(&entry.payload);
    if (one == nullptr) continue;
    extracted[one->lot] += one->kg.value_or(0);
    out.rows.push_back(
        {entry.happened,
         {entry.happened.iso(), one->lot.text(), short_number(one->kg),
          short_number(story_of(session, *ledger, one->lot).kg), one->where.value_or(""),
          yes_or_no(one->clean), yes_or_no(one->wet_combs_back), entry.who, one->remark.value_or("")},
         {entry.id}});
  }
  for (const auto& [lot, kg] : extracted) {
    const double harvested = story_of(session, *ledger, lot).kg;
    if (kg > harvested + 0.05)
      out.remarks.push_back("Of lot " + lot.text() + " " + kg_in_words(kg) + " were extracted and " +
                            kg_in_words(harvested) + " harvested: one of the two is wrong.");
  }
  return out;
}

Expected<Register> lots_register(const Session& session) {
  const auto ledger = ledger_of(session);
  if (!ledger) return ledger.problem();
  Register out;
  out.columns = {{"lot", "lot", 0.8},
                 {"name", "name"},
                 {"crops", "crops", 2.4},
                 {"kg", "kg", 0.6},
                 {"moisture_pct", "water %", 0.7},
                 {"may_be_offered", "may be offered", 1.8},
                 {"treatments", "treatments of its colonies in the year before", 2},
                 {"jars", "jars", 1},
                 {"best_before", "best before", 0.9},
                 {"store", "stands in", 0.9},
                 {"sold", "sold to", 1.2}};
  for (const auto& [id, lot] : ledger->lots) {
    const LotStory story = story_of(session, *ledger, id);
    std::vector<std::string> faults = ledger->faults_of(id);
    auto moisture = moisture_of(session, lot);
    if (!moisture) {
      faults.push_back(moisture.problem().what);
      moisture = std::optional<double>();
    }
    if (*moisture) {
      const auto law = duty::judge_composition(law_kind(lot.kind), {.moisture_pct = **moisture},
                                               country_table(session, std::nullopt));
      if (!law) return law.problem();
      if (!law->passes) faults.push_back("too much water for honey of this kind");
    }
    std::vector<std::string> jars, dates, sold;
    if (lot.best_before) dates.push_back(lot.best_before->iso());
    if (const auto at = ledger->jars.find(id); at != ledger->jars.end()) {
      for (const auto& one : at->second) {
        jars.push_back(std::to_string(one.jars) + " of " + short_number(one.net_g) + " g");
        if (one.best_before && one.best_before != lot.best_before) dates.push_back(one.best_before->iso());
      }
    }
    for (const Entry& entry : session.standing) {
      const auto* sale = std::get_if<entries::Sale>(&entry.payload);
      if (sale && sale->lot == id)
        sold.push_back(entry.happened.iso() + " " + sale->buyer.value_or(sale->description));
    }
    const std::vector<std::string> treatments(story.treatments.begin(), story.treatments.end());
    out.rows.push_back(
        {story.last,
         {id.text(), lot.name, joined(story.crops, "; "), short_number(story.kg), short_number(*moisture),
          faults.empty() ? (*moisture ? "yes" : "yes, once its water is measured")
                         : "no: " + joined(faults, "; "),
          joined(treatments, "; "), joined(jars), joined(dates), lot.store.value_or(""), joined(sold, "; ")},
         story.entries});
  }
  say_what_stands_twice(*ledger, out);
  return out;
}

Expected<Register> labels_register(const Session& session) {
  const auto ledger = ledger_of(session);
  if (!ledger) return ledger.problem();
  Register out;
  out.columns = {{"lot", "lot", 0.8},
                 {"net_g", "net g", 0.7},
                 {"figure_height_mm", "figures at least mm", 0.9},
                 {"name", "name"},
                 {"address", "address", 1.6},
                 {"origin", "origin"},
                 {"best_before", "best before"},
                 {"lot_needed", "lot mark needed", 0.8},
                 {"missing", "still missing", 1.8},
                 {"faults", "wrong", 1.8}};
  const std::string usual_name = setting(session, "label_name"), address = setting(session, "label_address"),
                    origin = setting(session, "label_origin");
  const auto said = [](const std::string& text) {
    return text.empty() ? std::optional<std::string>() : std::optional(text);
  };
  for (const auto& [id, lot_jars] : ledger->jars) {
    for (const auto& jars : lot_jars) {
      const auto lot = ledger->lots.find(id);
      auto best_before = jars.best_before;
      if (!best_before && lot != ledger->lots.end()) best_before = lot->second.best_before;
      const entries::Lot what = lot == ledger->lots.end() ? entries::Lot{.lot = id} : lot->second;
      const std::string name = what.label_name.value_or(usual_name);
      const duty::Label label{.net_weight_g = jars.net_g,
                              .name = said(name),
                              .address = said(address),
                              .origin = said(origin),
                              .best_before = best_before ? std::optional(best_before->iso()) : std::nullopt,
                              .lot = id.text(),
                              .named_plant_share_pct = what.plant_share_pct,
                              .infant_caution = setting(session, "label_infant_caution") == "yes",
                              .source = law_kind(what.kind).source,
                              .bakers = what.kind == entries::HoneyKind::bakers};
      const auto answer =
          duty::judge_label(label, country_table(session, std::nullopt), session.tables["honey"]);
      if (!answer) return answer.problem();
      std::vector<std::string> missing = answer->missing;
      for (const auto& advised : answer->advised) missing.push_back(advised + " (advised)");
      out.rows.push_back(
          {std::nullopt,
           {id.text(), short_number(jars.net_g), short_number(answer->figure_height_min_mm), name, address,
            origin, best_before ? best_before->iso() : "", answer->lot_needed ? "yes" : "no",
            key_in_words(joined(missing)), joined(answer->faults, "; ")},
           {}});
    }
  }
  out.remarks = {
      "The settings label_name, label_address, label_origin and label_infant_caution fill the label; a lot "
      "may "
      "have a label_name of its own. Check the rules of your country."};
  return out;
}

Expected<Register> yields_register(const Session& session) {
  Register out;
  out.columns = {{"year", "year"},
                 {"colony", "colony", 2},
                 {"kg", "kg harvested"},
                 {"crops", "crops"},
                 {"fed_kg", "kg fed"}};
  struct Year {
    double kg = 0, fed = 0;
    int crops = 0;
    std::vector<EntryId> entries;
  };
  std::map<std::pair<int, std::string>, Year> years;
  const auto outdone = outdone_harvests(session.standing, session.first_said);
  for (const Entry& entry : session.standing) {
    if (outdone.contains(entry.id)) continue;
    if (const auto* crop = std::get_if<entries::Harvest>(&entry.payload)) {
      Year& year = years[{entry.happened.year(), colony_name(session, crop->colony)}];
      year.kg += crop->kg;
      ++year.crops;
      year.entries.push_back(entry.id);
    } else if (const auto* feed = std::get_if<entries::Feed>(&entry.payload)) {
      Year& year = years[{entry.happened.year(), colony_name(session, feed->colony)}];
      year.fed += feed->kg;
      year.entries.push_back(entry.id);
    }
  }
  for (const auto& [key, year] : years)
    out.rows.push_back({Date::from_ymd(key.first, 12, 31).value(),
                        {std::to_string(key.first), key.second, short_number(year.kg),
                         std::to_string(year.crops), short_number(year.fed, 2)},
                        year.entries});
  return out;
}

}  // namespace beegarth::garth
