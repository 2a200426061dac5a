// The entries of a book on the command line: newest first, searched, with what corrects or takes back each.
#include <iostream>
#include <limits>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"
#include "garth/entry_json.hpp"
#include "garth/outline.hpp"
#include "garth/search.hpp"

namespace beegarth::cli {

namespace {

std::string mark_of(const garth::FoundEntry& found) {
  std::string mark;
  for (const EntryId& by : found.fate.corrected_by) mark += "  [corrected by " + by.text() + "]";
  if (found.fate.removed_by) mark += "  [taken back by " + found.fate.removed_by->text() + "]";
  return mark;
}

// The entry as an export has it, and what became of it.
nlohmann::json as_json(const garth::FoundEntry& found, const book::State& state) {
  auto row = nlohmann::json::parse(book::entry_json(found.entry));
  const auto told = garth::found_json(found, state);
  for (const char* field : {"text", "counts", "superseded_by", "removed_by"})
    if (told.contains(field)) row[field] = told[field];
  return row;
}

}  // namespace

int entries_command(const Call& call) {
  const auto from = day_of_option(call.from, "--from");
  if (!from) return report(from.problem());
  const auto to = day_of_option(call.to, "--to");
  if (!to) return report(to.problem());
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto outline = garth::open_outline(call.book, *options);
  if (!outline) return report(outline.problem());
  const auto found = garth::search_entries(outline->book, outline->state,
                                           {.text = call.text,
                                            .kind = call.kind,
                                            .about = call.subject,
                                            .from = *from,
                                            .to = *to ? *to : outline->today,
                                            .after = {},
                                            .limit = std::numeric_limits<std::size_t>::max()});
  if (!found) return report(found.problem());
  nlohmann::json rows = nlohmann::json::array();
  for (const auto& one : found->entries) {
    if (call.json) {
      rows.push_back(as_json(one, outline->state));
    } else {
      std::cout << one.entry.happened.iso() << "  " << one.entry.id.text() << "  "
                << garth::read_back(one.entry.payload, outline->state) << mark_of(one) << '\n';
    }
  }
  if (call.json)
    std::cout << rows.dump(2) << '\n';
  else if (found->entries.empty())
    std::cout << "no entry fits\n";
  return 0;
}

}  // namespace beegarth::cli
