#include "garth/seen_health.hpp"

#include <array>
#include <span>
#include <string_view>

#include "garth/ledgers/notifiable.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

// The kinds in which a suspicion begins, goes along or ends (ledgers/suspects), and quarantines.
constexpr auto kinds_of_health =
    std::to_array<std::string_view>({"hive", "colony_began", "colony_moved", "transfer", "split", "unite",
                                     "inspection", "sign", "dead_colony", "sample", "reported", "cleared",
                                     "quarantine", "mite_count", "site", "setting", "table_override"});

// An override that cannot be used is left out, as everywhere.
Expected<Tables> tables_by(std::span<const entries::Entry> standing) {
  auto tables = Tables::built_in();
  if (!tables) return tables.problem();
  for (const auto& entry : standing) {
    const auto* own = std::get_if<entries::TableOverride>(&entry.payload);
    if (own == nullptr) continue;
    if (auto changed = tables->with(std::span(own, 1)); changed) tables = *std::move(changed);
  }
  return tables;
}

}  // namespace

Expected<SeenHealth> seen_health(const Outline& outline) {
  const auto entries = outline.book.entries_of(kinds_of_health);
  if (!entries) return entries.problem();
  const auto standing = book::standing_entries(*entries, outline.today, outline.known_at);
  const auto tables = tables_by(standing);
  if (!tables) return tables.problem();
  const auto notifiable = Notifiable::from(*tables);
  if (!notifiable) return notifiable.problem();
  const auto rules = QuarantineRules::from((*tables)["work"]);
  if (!rules) return rules.problem();
  return SeenHealth{suspects_on(standing, outline.today, *notifiable),
                    quarantines_on(standing, outline.today, *rules)};
}

std::string kept_apart_text(const KeptApart& apart) {
  return "in quarantine until " + apart.until.iso() +
         (apart.until_look ? " and a full look from then on" : "");
}

std::string suspicion_text(const SuspectColony* suspect) {
  if (suspect == nullptr) return "";
  std::string text = "suspect since " + suspect->since.iso();
  for (std::size_t i = 0; i < suspect->signs.size(); ++i)
    text += (i == 0 ? ": " : ", ") + suspect->signs[i].text();
  return text;
}

}  // namespace beegarth::garth
