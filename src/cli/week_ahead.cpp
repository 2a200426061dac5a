// The weather of the week ahead from the command line: one row a day.
#include "garth/plan/week_ahead.hpp"

#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"
#include "garth/entry_json.hpp"
#include "garth/files.hpp"

namespace beegarth::cli {

using nlohmann::json;

int week_ahead_command(const Call& call) {
  const auto options = session_options(call, !call.keep);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  if (call.list) {
    std::cout << garth::week_to_fill_in(session->today);
    return 0;
  }
  constexpr std::size_t largest_file = 1 << 16;
  const auto text = call.subject.empty()
                        ? Expected<std::string>(std::string(std::istreambuf_iterator<char>(std::cin), {}))
                        : garth::read_file(call.subject, largest_file);
  if (!text) return report(text.problem());
  const auto days = garth::days_in_lines(*text);
  if (!days) return report(days.problem());
  const auto week = garth::foretell(*session, call.site.empty() ? "all" : call.site, *days, call.keep);
  if (!week) return report(week.problem());
  if (call.json) {
    json entries = json::array();
    for (const auto& entry : week->entries) entries.push_back(garth::shown_entry(entry, session->state));
    std::cout << json{{"kept", week->kept}, {"entries", std::move(entries)}}.dump(2) << '\n';
    return 0;
  }
  for (const auto& entry : week->entries)
    std::cout << entry.happened.iso() << "  " << garth::read_back(entry.payload, session->state) << '\n';
  std::cout << (week->kept ? "kept: " + std::to_string(week->entries.size()) +
                                 (week->entries.size() == 1 ? " day\n" : " days\n")
                           : "nothing was written; add --keep to keep it\n");
  return 0;
}

}  // namespace beegarth::cli
