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

// The kinds of treatment that the colonies of a lot were given in the year before its last crop.
std::vector<std::string> treatments_of(const Session& session, const std::set<ColonyId>& colonies,
                                       Date last) {
  std::vector<std::string> told;
  for (const Entry& entry : session.standing) {
    const auto* t = std::get_if<entries::Treatment>(&entry.payload);
    if (t == nullptr || !colonies.contains(t->colony) || entry.happened > last || entry.happened < last - 365)
      continue;
    told.push_back(colony_name(session, t->colony) + ": " + key_in_words(entries::word_for(t->kind)) + " " +
                   entry.happened.iso());
  }
  return told;
}

struct LotStory {
  std::vector<std::string> crops;
  std::vector<EntryId> entries;
  std::set<ColonyId> colonies;
  double kg = 0;
  std::optional<Date> last;
};
LotStory story_of(const Session& session, const HoneyLedger& ledger, const LotId& lot) {
  LotStory story;
  for (const CropFrom& crop : ledger.crops) {
    if (crop.harvest.lot != lot) continue;
    std::string combs;
    for (const CombsId& id : crop.harvest.from) {
      const auto batch = ledger.batches.find(id);
      combs += (combs.empty() ? " from " : " and ") +
               (batch == ledger.batches.end() ? id.text() : batch->second.combs.name);
    }
    story.crops.push_back(colony_name(session, crop.harvest.colony) + combs + " " + crop.date.iso() + ", " +
                          short_number(crop.harvest.kg) + " kg" +
                          (crop.outdone_by ? " (not counted: corrected twice)" : ""));
    story.entries.push_back(crop.entry);
    story.colonies.insert(crop.harvest.colony);
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
  out.columns = {
      {"date", "date"},        {"colony", "colony", 1.3},         {"kg", "kg", 0.6},          {"lot", "lot"},
      {"combs", "combs", 1.3}, {"for_people", "for people", 0.8}, {"why_not", "why not", 2.2}};
  for (const CropFrom& crop : ledger->crops) {
    std::vector<std::string> combs;
    for (const CombsId& id : crop.harvest.from) combs.push_back(id.text());
    std::vector<EntryId> because{crop.entry};
    because.insert(because.end(), crop.because.begin(), crop.because.end());
    out.rows.push_back({crop.date,
                        {crop.date.iso(), colony_name(session, crop.harvest.colony),
                         short_number(crop.harvest.kg), crop.harvest.lot ? crop.harvest.lot->text() : "",
                         joined(combs), crop.fault ? "no" : "yes", crop.fault.value_or("")},
                        because});
  }
  say_what_stands_twice(*ledger, out);
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
    std::vector<std::string> jars, sold;
    if (const auto at = ledger->jars.find(id); at != ledger->jars.end()) {
      for (const auto& one : at->second)
        jars.push_back(std::to_string(one.jars) + " of " + short_number(one.net_g) + " g");
    }
    for (const Entry& entry : session.standing) {
      const auto* sale = std::get_if<entries::Sale>(&entry.payload);
      if (sale && sale->lot == id)
        sold.push_back(entry.happened.iso() + " " + sale->buyer.value_or(sale->description));
    }
    const auto treatments =
        story.last ? treatments_of(session, story.colonies, *story.last) : std::vector<std::string>();
    out.rows.push_back(
        {story.last,
         {id.text(), lot.name, joined(story.crops, "; "), short_number(story.kg), short_number(*moisture),
          faults.empty() ? (*moisture ? "yes" : "yes, once its water is measured")
                         : "no: " + joined(faults, "; "),
          joined(treatments, "; "), joined(jars), joined(sold, "; ")},
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
                 {"missing", "still missing", 1.8}};
  const std::string name = setting(session, "label_name"), address = setting(session, "label_address"),
                    origin = setting(session, "label_origin");
  const auto said = [](const std::string& text) {
    return text.empty() ? std::optional<std::string>() : std::optional(text);
  };
  for (const auto& [id, lot_jars] : ledger->jars) {
    for (const auto& jars : lot_jars) {
      const auto lot = ledger->lots.find(id);
      auto best_before = jars.best_before;
      if (!best_before && lot != ledger->lots.end()) best_before = lot->second.best_before;
      const duty::Label label{.net_weight_g = jars.net_g,
                              .name = said(name),
                              .address = said(address),
                              .origin = said(origin),
                              .best_before = best_before ? std::optional(best_before->iso()) : std::nullopt,
                              .lot = id.text(),
                              .infant_caution = setting(session, "label_infant_caution") == "yes"};
      const auto answer = duty::judge_label(label, country_table(session, std::nullopt));
      if (!answer) return answer.problem();
      std::vector<std::string> missing = answer->missing;
      for (const auto& advised : answer->advised) missing.push_back(advised + " (advised)");
      out.rows.push_back({std::nullopt,
                          {id.text(), short_number(jars.net_g), short_number(answer->figure_height_min_mm),
                           name, address, origin, best_before ? best_before->iso() : "",
                           answer->lot_needed ? "yes" : "no", joined(missing)},
                          {}});
    }
  }
  out.remarks = {
      "The settings label_name, label_address, label_origin and label_infant_caution fill the label. Check "
      "the rules of your country."};
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
