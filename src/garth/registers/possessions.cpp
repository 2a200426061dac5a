// Money, queens, kit, combs and wax.
#include <algorithm>
#include <map>

#include "colony/marking.hpp"
#include "duty/years.hpp"
#include "entries/fields.hpp"
#include "garth/ledgers/honey.hpp"
#include "garth/ledgers/parts.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {

using entries::Entry;

namespace {

struct RentDue {
  Date date;
  const entries::Land* land;
  EntryId entry;
};

// A rent falls due on the day that the book tells of it and each year after, until the agreement ends or
// another entry about the same land takes its place.
std::vector<RentDue> rents_due(const Session& session) {
  std::vector<RentDue> due;
  for (std::size_t i = 0; i < session.standing.size(); ++i) {
    const Entry& entry = session.standing[i];
    const auto* land = std::get_if<entries::Land>(&entry.payload);
    if (land == nullptr || !land->rent_per_year) continue;
    Date last = std::min(session.today, land->agreed_until.value_or(session.today));
    for (std::size_t j = i + 1; j < session.standing.size(); ++j) {
      const auto* next = std::get_if<entries::Land>(&session.standing[j].payload);
      if (next != nullptr && next->site == land->site)
        last = std::min(last, session.standing[j].happened - 1);
    }
    for (int years = 0;; ++years) {
      const auto date = duty::years_after(entry.happened, years);
      if (!date || *date > last) break;
      due.push_back({*date, land, entry.id});
    }
  }
  return due;
}

std::string queen_name(const Session& session, const QueenId& id) {
  std::string name = id.text();
  for (const Entry& entry : session.standing) {
    const auto* began = std::get_if<entries::QueenBegan>(&entry.payload);
    if (began != nullptr && began->queen == id && !began->name.empty()) name = began->name;
  }
  return name;
}

// The colour she bears, and which it would be by the international code of the year she was born.
std::string mark_of(const entries::Queen& seen, const std::optional<int>& year) {
  std::string mark(entries::word_for(*seen.colour));
  if (seen.number) mark += " " + *seen.number;
  if (year && colony::marking_colour(*year) != entries::word_for(*seen.colour))
    mark += " (a queen of " + std::to_string(*year) + " is marked " +
            std::string(colony::marking_colour(*year)) + ")";
  return mark;
}

}  // namespace

Expected<Register> costs_register(const Session& session) {
  Register out;
  out.columns = {{"date", "date"},
                 {"what", "what"},
                 {"description", "description", 2},
                 {"with", "from or to", 1.5},
                 {"out", "paid", 0.8},
                 {"in", "got", 0.8},
                 {"currency", "currency", 0.8}};
  std::map<std::string, std::pair<double, double>> sums;
  for (const Entry& entry : session.standing) {
    if (const auto* bought = std::get_if<entries::Purchase>(&entry.payload)) {
      out.rows.push_back(
          {entry.happened,
           {entry.happened.iso(), key_in_words(entries::word_for(bought->what)), bought->description,
            bought->supplier.value_or(""), short_number(bought->price, 2), "", bought->currency.value_or("")},
           {entry.id}});
      sums[bought->currency.value_or("")].first += bought->price.value_or(0);
    } else if (const auto* sold = std::get_if<entries::Sale>(&entry.payload)) {
      out.rows.push_back(
          {entry.happened,
           {entry.happened.iso(), key_in_words(entries::word_for(sold->what)), sold->description,
            sold->buyer.value_or(""), "", short_number(sold->price, 2), sold->currency.value_or("")},
           {entry.id}});
      sums[sold->currency.value_or("")].second += sold->price.value_or(0);
    }
  }
  for (const RentDue& due : rents_due(session)) {
    out.rows.push_back({due.date,
                        {due.date.iso(), "rent", site_name(session, due.land->site) + ", for a year",
                         due.land->owner.value_or(""), short_number(due.land->rent_per_year, 2), "",
                         due.land->currency.value_or("")},
                        {due.entry}});
    sums[due.land->currency.value_or("")].first += *due.land->rent_per_year;
  }
  std::stable_sort(out.rows.begin(), out.rows.end(),
                   [](const auto& x, const auto& y) { return x.date < y.date; });
  for (const auto& [currency, sum] : sums)
    out.remarks.push_back("In all, in the whole book: paid " + short_number(sum.first, 2) + ", got " +
                          short_number(sum.second, 2) + (currency.empty() ? "" : " " + currency) + ".");
  return out;
}

Expected<Register> queens_register(const Session& session) {
  Register out;
  out.columns = {{"queen", "queen"},        {"name", "name"},      {"mother", "mother"},
                 {"origin", "origin", 0.9}, {"year", "year", 0.6}, {"line", "line"},
                 {"mated", "mated", 1.6},   {"mark", "mark", 0.9}, {"colony", "last in", 1.2},
                 {"scores", "scores", 1.8}};
  struct Story {
    entries::QueenBegan began;
    std::vector<std::string> mated, scores;
    std::string mark, colony;
    std::vector<EntryId> entries;
    Date date;
  };
  std::vector<QueenId> order;
  std::map<QueenId, Story> queens;
  for (const Entry& entry : session.standing) {
    if (const auto* began = std::get_if<entries::QueenBegan>(&entry.payload)) {
      if (!queens.contains(began->queen)) order.push_back(began->queen);
      Story& story = queens[began->queen];
      story.began = *began;
      story.date = entry.happened;
      story.entries.push_back(entry.id);
    } else if (const auto* mated = std::get_if<entries::QueenMated>(&entry.payload);
               mated && queens.contains(mated->queen)) {
      Story& story = queens[mated->queen];
      std::vector<std::string> drones;
      for (const auto& mother : mated->drone_mothers) drones.push_back(queen_name(session, mother));
      story.mated.push_back(key_in_words(entries::word_for(mated->how)) +
                            (drones.empty() ? "" : ", drones of " + joined(drones)));
      story.entries.push_back(entry.id);
    } else if (const auto* seen = std::get_if<entries::Queen>(&entry.payload);
               seen && seen->which && queens.contains(*seen->which)) {
      Story& story = queens[*seen->which];
      story.colony = colony_name(session, seen->colony);
      if (seen->colour) story.mark = mark_of(*seen, story.began.year);
      story.entries.push_back(entry.id);
    } else if (const auto* score = std::get_if<entries::Score>(&entry.payload);
               score && score->queen && queens.contains(*score->queen)) {
      Story& story = queens[*score->queen];
      story.scores.push_back(score->trait + " " + short_number(score->score) + " (" +
                             std::to_string(entry.happened.year()) + ")");
      story.entries.push_back(entry.id);
    }
  }
  for (const QueenId& id : order) {
    const Story& s = queens.at(id);
    out.rows.push_back(
        {s.date,
         {id.text(), s.began.name, s.began.mother ? queen_name(session, *s.began.mother) : "",
          key_in_words(entries::word_for(s.began.origin)), s.began.year ? std::to_string(*s.began.year) : "",
          s.began.line.value_or(""), joined(s.mated, "; "), s.mark, s.colony, joined(s.scores)},
         s.entries});
  }
  return out;
}

Expected<Register> kit_register(const Session& session) {
  Register out;
  out.columns = {{"part", "part"},        {"name", "name", 1.5},
                 {"what", "what"},        {"pattern", "pattern"},
                 {"count", "count", 0.6}, {"state", "state"},
                 {"since", "since"},      {"grounds", "why it began as suspect", 1.8}};
  for (const auto& [id, part] : parts_on(session.standing, session.today)) {
    out.rows.push_back(
        {part.since,
         {id.text(), part.part.name, key_in_words(entries::word_for(part.part.what)),
          part.part.pattern.value_or(""), part.part.count ? std::to_string(*part.part.count) : "",
          key_in_words(entries::word_for(part.state)), part.since.iso(),
          joined(grounds_for_suspicion(part.part))},
         {part.said}});
  }
  for (const auto& [what, kit] : session.state.kit)
    out.rows.push_back({std::nullopt, {"", what, "", "", std::to_string(kit.count), "ready", "", ""}, {}});
  return out;
}

Expected<Register> combs_register(const Session& session) {
  const auto rules = HoneyRules::from(session.tables["work"]);
  if (!rules) return rules.problem();
  const HoneyLedger ledger = honey_on(session.standing, session.today, *rules);
  Register out;
  out.columns = {{"combs", "batch"},           {"name", "name", 1.4},
                 {"count", "count", 0.6},      {"use", "use", 0.7},
                 {"drawn_year", "drawn", 0.7}, {"age_years", "years old", 0.7},
                 {"where", "where", 1.4},      {"for_people", "honey for people", 2.2}};
  for (const auto& [id, batch] : ledger.batches) {
    const entries::Combs& combs = batch.combs;
    std::string people = "yes";
    if (batch.mark)
      people = "no: " + batch.mark->words;
    else if (!combs.for_people.value_or(combs.use == entries::CombUse::honey))
      people = "no";
    out.rows.push_back(
        {std::nullopt,
         {id.text(), combs.name, std::to_string(combs.count), std::string(entries::word_for(combs.use)),
          combs.drawn_year ? std::to_string(*combs.drawn_year) : "",
          combs.drawn_year && *combs.drawn_year <= session.today.year()
              ? std::to_string(session.today.year() - *combs.drawn_year)
              : "",
          batch.gone ? "melted or burnt"
          : batch.on ? "on " + colony_name(session, *batch.on)
                     : combs.store.value_or("in store"),
          people},
         batch.mark ? std::vector<EntryId>{batch.mark->entry} : std::vector<EntryId>{}});
  }
  return out;
}

// Wax in, foundation out: what was melted, what it gave, and what went out again as sheets.
Expected<Register> wax_register(const Session& session) {
  const auto rules = HoneyRules::from(session.tables["work"]);
  if (!rules) return rules.problem();
  const HoneyLedger ledger = honey_on(session.standing, session.today, *rules);
  Register out;
  out.columns = {{"date", "date"},
                 {"what", "what", 2},
                 {"combs", "combs melted", 0.8},
                 {"kg_in", "kg of wax in", 0.8},
                 {"sheets_out", "sheets of foundation out", 0.9},
                 {"remark", "remark", 1.5}};
  double kg = 0;
  int sheets = 0, melted = 0;
  for (const Entry& entry : session.standing) {
    if (const auto* wax = std::get_if<entries::Wax>(&entry.payload)) {
      kg += wax->kg;
      sheets += wax->sheets.value_or(0);
      out.rows.push_back({entry.happened,
                          {entry.happened.iso(), wax->kg > 0 ? "wax in" : "foundation out", "",
                           wax->kg > 0 ? short_number(wax->kg, 2) : "",
                           wax->sheets ? std::to_string(*wax->sheets) : "", wax->remark.value_or("")},
                          {entry.id}});
    } else if (const auto* moved = std::get_if<entries::CombsMoved>(&entry.payload);
               moved && moved->to == entries::CombsGo::melted) {
      const auto batch = ledger.batches.find(moved->combs);
      if (batch == ledger.batches.end()) continue;
      melted += batch->second.combs.count;
      out.rows.push_back({entry.happened,
                          {entry.happened.iso(), "melted: " + batch->second.combs.name,
                           std::to_string(batch->second.combs.count), "", "", moved->remark.value_or("")},
                          {entry.id}});
    }
  }
  if (!out.rows.empty())
    out.remarks = {"In all: " + std::to_string(melted) + " combs melted, " + short_number(kg, 2) +
                   " kg of wax in, " + std::to_string(sheets) + " sheets of foundation out."};
  return out;
}

}  // namespace beegarth::garth
