// Registers on the command line: listed, shown, as CSV or JSON, or printed.
#include <iostream>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"
#include "garth/files.hpp"
#include "garth/registers/register.hpp"

namespace beegarth::cli {

using nlohmann::json;

namespace {

int list_them(const Call& call) {
  json list = json::array();
  for (const auto& one : garth::register_kinds()) {
    list.push_back({{"name", one.name}, {"title", one.title}, {"says", one.says}});
    if (!call.json) std::cout << one.name << ": " << one.says << '\n';
  }
  if (call.json) std::cout << list.dump(2) << '\n';
  return 0;
}

bool ends_with(const std::string& text, std::string_view ending) {
  return text.size() > ending.size() && text.substr(text.size() - ending.size()) == ending;
}

}  // namespace

int register_command(const Call& call) {
  if (call.subject.empty()) return list_them(call);
  const bool pdf = ends_with(call.out, ".pdf");
  if (!call.out.empty() && !pdf && !ends_with(call.out, ".csv"))
    return report(
        {ProblemKind::wrong_use, "a register is written as .pdf or .csv", "--out", "name the file so"});
  const auto from = day_of_option(call.from, "--from");
  if (!from) return report(from.problem());
  const auto to = day_of_option(call.to, "--to");
  if (!to) return report(to.problem());
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const garth::Span span{*from, *to};
  const auto found = garth::register_of(*session, call.subject, span);
  if (!found) return report(found.problem());
  if (!call.out.empty()) {
    const auto paper = call.paper == "Letter" ? scene::Paper::letter_across : scene::Paper::a4_across;
    const std::string bytes =
        pdf ? garth::register_pdf(*found, span, session->today, paper) : garth::register_csv(*found);
    if (const Outcome written = garth::write_file(call.out, bytes); !written)
      return report(written.problem());
    if (!call.json)
      std::cout << call.out << ": " << found->rows.size() << (found->rows.size() == 1 ? " row\n" : " rows\n");
    else
      std::cout << json{{"file", call.out}, {"rows", found->rows.size()}}.dump(2) << '\n';
    return 0;
  }
  if (call.json)
    std::cout << garth::register_json(*found).dump(2) << '\n';
  else
    std::cout << (call.csv ? garth::register_csv(*found) : garth::register_text(*found));
  return 0;
}

}  // namespace beegarth::cli
