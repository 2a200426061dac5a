// The commands that write: a new book, notes, entries, imports, the demo, a sheet.
#include <fmt/format.h>

#include <algorithm>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>

#include "cli/call.hpp"
#include "garth/calc/calc.hpp"
#include "garth/demo.hpp"
#include "garth/files.hpp"
#include "garth/imports/import.hpp"
#include "garth/keep/checklists.hpp"
#include "garth/keep/keep.hpp"
#include "garth/keep/remarks.hpp"
#include "garth/note.hpp"
#include "garth/sheet/visit_sheet.hpp"

namespace beegarth::cli {

using nlohmann::json;

namespace {

std::string standard_input() {
  return {std::istreambuf_iterator<char>(std::cin), {}};
}

// The answer as JSON, with what is to be said about it, and done at once where something urgent was kept.
int tell_as_json(json answer, const garth::Session& session, const std::vector<entries::Entry>& told,
                 const std::vector<entries::Entry>& kept) {
  const auto remarks = garth::remarks_on(session, told);
  if (!remarks) return report(remarks.problem());
  if (!remarks->empty()) answer["remarks"] = garth::remarks_json(*remarks);
  const auto lists = garth::checklists_for(session, kept);
  if (!lists) return report(lists.problem());
  for (const auto& list : *lists) answer["checklists"].push_back(garth::checklist_json(list));
  std::cout << answer.dump(2) << '\n';
  return 0;
}

}  // namespace

int tell_remarks(const garth::Session& session, const std::vector<entries::Entry>& told) {
  const auto remarks = garth::remarks_on(session, told);
  if (!remarks) return report(remarks.problem());
  for (const auto& remark : *remarks) std::cout << "to know: " << remark.text() << '\n';
  return 0;
}

int tell_checklists(const garth::Session& session, const std::vector<entries::Entry>& kept) {
  const auto lists = garth::checklists_for(session, kept);
  if (!lists) return report(lists.problem());
  for (const auto& list : *lists)
    std::cout << '\n'
              << garth::checklist_text(list) << "Then plan anew: beegarth plan " << session.path << '\n';
  return 0;
}

int note_command(const Call& call) {
  const auto options = session_options(call, !call.keep);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto answer = garth::take_note(*session, call.text.empty() ? standard_input() : call.text, call.keep);
  if (!answer) return report(answer.problem());
  if (call.json)
    return tell_as_json(garth::note_json(*answer, session->state), *session, answer->understood,
                        answer->kept.empty() ? std::vector<entries::Entry>{} : answer->understood);
  for (const auto& line : answer->read_back) std::cout << line << '\n';
  std::cout << (answer->kept.empty() ? "nothing was written; add --keep to keep it\n"
                                     : fmt::format("kept: {} {}\n", answer->kept.size(),
                                                   answer->kept.size() == 1 ? "entry" : "entries"));
  if (const int code = tell_remarks(*session, answer->understood); code != 0) return code;
  return answer->kept.empty() ? 0 : tell_checklists(*session, answer->understood);
}

int enter_command(const Call& call) {
  if (call.list) {
    for (std::size_t i = 0; i < entries::kind_count; ++i) std::cout << entries::kind_name_at(i) << '\n';
    return 0;
  }
  if (call.subject.empty())
    return report({ProblemKind::wrong_use, "no kind was named", "enter", "see beegarth enter BOOK --list"});
  if (!entries::empty_payload(call.subject)) {
    return report(
        bad_input("there is no kind '" + call.subject + "'", "KIND", "see beegarth enter BOOK --list"));
  }
  if (call.schema) {
    std::cout << json::parse(book::schema_json(call.subject)).dump(2) << '\n';
    return 0;
  }
  const auto options = session_options(call, false);
  if (!options) return report(options.problem());
  auto payload =
      book::payload_from_json(call.subject, call.text.empty() ? standard_input() : call.text, call.subject);
  if (!payload) return report(payload.problem());
  garth::SessionOptions whole_book = *options;
  whole_book.today.reset();  // an entry may be older than all that is in the book
  auto session = garth::open_session(call.book, whole_book);
  if (!session) return report(session.problem());
  book::Draft draft{.happened = options->today.value_or(session->today), .payload = *std::move(payload)};
  if (!call.date.empty()) {
    const auto date = Date::parse(call.date);
    if (!date) return report(bad_input(date.problem().what, "--date", date.problem().remedy));
    draft.happened = *date;
  }
  if (const auto likely = garth::likely_date(draft.happened, session->today, "--date"); !likely)
    return report(likely.problem());
  // What is told of the day of an entry goes by the day that is given as today.
  if (options->today) session->today = std::max(session->today, *options->today);
  if (!call.corrects.empty()) draft.supersedes = EntryId(call.corrects);
  const auto kept = garth::keep(*session, {draft});
  if (!kept) return report(kept.problem());
  if (call.json) return tell_as_json(json::parse(book::entry_json(kept->front())), *session, *kept, *kept);
  std::cout << "kept: " << kept->front().id.text() << '\n';
  if (const int code = tell_remarks(*session, *kept); code != 0) return code;
  return tell_checklists(*session, *kept);
}

int import_command(const Call& call) {
  std::optional<Date> today;
  if (!call.today.empty()) {
    const auto date = Date::parse(call.today);
    if (!date) return report(bad_input(date.problem().what, "--today", date.problem().remedy));
    today = *date;
  }
  const auto answer = garth::import_file({.book = call.book,
                                          .file = call.subject,
                                          .form = call.form,
                                          .map = call.map,
                                          .dry_run = call.dry_run,
                                          .who = call.who,
                                          .today = today});
  if (!answer) return report(answer.problem());
  if (call.json) {
    std::cout << answer->json.dump(2) << '\n';
  } else {
    std::cout << answer->text;
    for (const std::string& remark : answer->remarks) std::cerr << "beegarth: " << remark << '\n';
  }
  return 0;
}

int new_command(const Call& call) {
  const auto book = book::Book::open(call.book, {.create = true}, garth::machine_surroundings());
  if (!book) return report(book.problem());
  if (call.json) {
    std::cout << json{{"book", call.book}, {"entries", 0}}.dump(2) << '\n';
  } else {
    std::cout << "a new book: " << call.book << '\n';
  }
  return 0;
}

int demo_command(const Call& call) {
  const auto count = garth::write_demo(call.book, call.seed);
  if (!count) return report(count.problem());
  if (call.json) {
    std::cout << json{{"book", call.book}, {"entries", *count}}.dump(2) << '\n';
  } else {
    std::cout << "the demo book: " << call.book << ", " << *count << " invented entries\n";
  }
  return 0;
}

int sheet_command(const Call& call) {
  if (const auto allowed = garth::may_be_written(call.out); !allowed) return report(allowed.problem());
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto sheet = garth::visit_sheet(
      *session, {.days = call.days, .date = call.date, .site = call.site, .paper = call.paper});
  if (!sheet) return report(sheet.problem());
  const auto written = garth::write_file(call.out, sheet->pdf);
  if (!written) return report(written.problem());
  if (call.json) {
    std::cout << json{{"file", call.out}, {"site", sheet->site.text()}, {"date", sheet->date.iso()}}.dump(2)
              << '\n';
  } else {
    std::cout << call.out << ": " << sheet->site_name << ", " << sheet->date.iso() << '\n';
  }
  return 0;
}

}  // namespace beegarth::cli
