// Money, queens, kit, combs, and the wild pollinators that were counted.
#include <algorithm>
#include <map>

#include "entries/fields.hpp"
#include "garth/ledgers/honey.hpp"
#include "garth/ledgers/parts.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {

using entries::Entry;

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
    } else if (const auto* land = std::get_if<entries::Land>(&entry.payload); land && land->rent_per_year) {
      out.rows.push_back(
          {entry.happened,
           {entry.happened.iso(), "rent", site_name(session, land->site) + ", for a year",
            land->owner.value_or(""), short_number(land->rent_per_year, 2), "", land->currency.value_or("")},
           {entry.id}});
      sums[land->currency.value_or("")].first += *land->rent_per_year;
    }
  }
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
      for (const auto& mother : mated->drone_mothers) drones.push_back(mother.text());
      story.mated.push_back(key_in_words(entries::word_for(mated->how)) +
                            (drones.empty() ? "" : ", drones of " + joined(drones)));
      story.entries.push_back(entry.id);
    } else if (const auto* seen = std::get_if<entries::Queen>(&entry.payload);
               seen && seen->which && queens.contains(*seen->which)) {
      Story& story = queens[*seen->which];
      story.colony = colony_name(session, seen->colony);
      if (seen->colour)
        story.mark =
            std::string(entries::word_for(*seen->colour)) + (seen->number ? " " + *seen->number : "");
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
         {id.text(), s.began.name, s.began.mother ? s.began.mother->text() : "",
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

Expected<Register> wild_register(const Session& session) {
  Register out;
  out.columns = {{"date", "date"},
                 {"site", "site", 1.3},
                 {"what", "what", 1.5},
                 {"minutes", "minutes", 0.7},
                 {"honey_bees_per_h", "honey bees an hour", 0.9},
                 {"wild_per_h", "wild visitors an hour", 0.9},
                 {"kinds", "kinds of wild visitors", 0.9},
                 {"place", "place", 1.5}};
  for (const Entry& entry : session.standing) {
    if (const auto* w = std::get_if<entries::FlowerWatch>(&entry.payload)) {
      int wild = 0, kinds = 0;
      for (const auto& count : {w->bumblebees, w->solitary_bees, w->wasps, w->hoverflies, w->other_flies,
                                w->butterflies, w->beetles, w->others}) {
        wild += count.value_or(0);
        kinds += count.value_or(0) > 0 ? 1 : 0;
      }
      const double per_hour = 60 / w->minutes;
      out.rows.push_back(
          {entry.happened,
           {entry.happened.iso(), site_name(session, w->site), "flower watch: " + w->plant,
            short_number(w->minutes), w->honey_bees ? short_number(*w->honey_bees * per_hour) : "",
            short_number(wild * per_hour), std::to_string(kinds), w->patch ? w->patch->text() : ""},
           {entry.id}});
    } else if (const auto* nest = std::get_if<entries::Nest>(&entry.payload)) {
      out.rows.push_back({entry.happened,
                          {entry.happened.iso(), site_name(session, nest->site),
                           key_in_words(entries::word_for(nest->of)) +
                               (nest->gone.value_or(false) ? " nest: gone" : " nest"),
                           "", "", "", "", nest->place},
                          {entry.id}});
    }
  }
  out.remarks = {"A found nest locks its patch: nothing is cut, dug or burnt there."};
  return out;
}

}  // namespace beegarth::garth
