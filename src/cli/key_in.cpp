// A filled sheet keyed in from the command line: "row/box: value", one a line.
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"
#include "garth/entry_json.hpp"
#include "garth/files.hpp"
#include "garth/keep/remarks.hpp"
#include "garth/sheet/keyed_sheet.hpp"

namespace beegarth::cli {

namespace {

using nlohmann::json;

Expected<std::string> lines_of(const Call& call) {
  constexpr std::size_t largest_file = std::size_t{1} << 20;
  if (!call.subject.empty()) return garth::read_file(call.subject, largest_file);
  return std::string(std::istreambuf_iterator<char>(std::cin), {});
}

void show(const garth::KeyedIn& keyed, const book::State& state) {
  for (const auto& entry : keyed.entries)
    std::cout << entry.happened.iso() << "  " << garth::read_back(entry.payload, state) << '\n';
  if (keyed.kept)
    std::cout << "kept: " << keyed.entries.size() << (keyed.entries.size() == 1 ? " entry\n" : " entries\n");
  else
    std::cout << "nothing was written; add --keep to keep it\n";
}

}  // namespace

int key_in_command(const Call& call) {
  const auto printed = day_of_option(call.printed, "--printed");
  if (!printed) return report(printed.problem());
  const auto date = day_of_option(call.date, "--date");
  if (!date) return report(date.problem());
  const auto options = session_options(call, !call.keep);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto sheet = garth::sheet_to_key_in(
      *session, {.site = call.site, .date = date->value_or(session->today), .printed = *printed});
  if (!sheet) return report(sheet.problem());
  if (call.list) {
    if (call.json)
      std::cout << garth::sheet_to_key_in_json(*sheet).dump(2) << '\n';
    else
      std::cout << garth::lines_to_fill_in(*sheet);
    return 0;
  }
  const auto text = lines_of(call);
  if (!text) return report(text.problem());
  const auto boxes = garth::boxes_in_lines(*sheet, *text);
  if (!boxes) return report(boxes.problem());
  const auto keyed = garth::key_in(*session, *sheet, *boxes, call.keep);
  if (!keyed) return report(keyed.problem());
  if (!call.json) {
    show(*keyed, session->state);
    return tell_remarks(*session, keyed->entries);
  }
  json entries = json::array();
  for (const auto& entry : keyed->entries) entries.push_back(garth::shown_entry(entry, session->state));
  const auto remarks = garth::remarks_on(*session, keyed->entries);
  if (!remarks) return report(remarks.problem());
  std::cout << json{{"kept", keyed->kept},
                    {"entries", std::move(entries)},
                    {"remarks", garth::remarks_json(*remarks)}}
                   .dump(2)
            << '\n';
  return 0;
}

}  // namespace beegarth::cli
