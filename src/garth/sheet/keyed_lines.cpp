// A sheet to key in as lines of text and as JSON; and how rows and boxes are named.
#include <algorithm>
#include <array>
#include <cctype>

#include "base/utf8.hpp"
#include "garth/sheet/keyed_sheet.hpp"

namespace beegarth::garth {

namespace {

using nlohmann::json;

std::string_view trim(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

bool alike(std::string_view a, std::string_view b) {
  const auto small = [](char c) { return std::tolower(static_cast<unsigned char>(c)); };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return small(x) == small(y); });
}

bool is_number(std::string_view text) {
  return !text.empty() && text.size() < 6 &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool has_number(const FrameToKeyIn& frame, std::string_view digits) {
  return std::any_of(frame.jobs.begin(), frame.jobs.end(),
                     [&](const SheetJob& job) { return std::to_string(job.number) == digits; });
}

const FrameToKeyIn* by_number(const SheetToKeyIn& sheet, std::string_view digits) {
  for (const auto& frame : sheet.frames)
    if (has_number(frame, digits)) return &frame;
  return nullptr;
}

std::vector<const FrameToKeyIn*> by_name(const SheetToKeyIn& sheet, std::string_view name) {
  std::vector<const FrameToKeyIn*> found;
  for (const auto& frame : sheet.frames)
    if (alike(frame.row, name) || alike(frame.name, name) || (frame.colony && frame.colony->text() == name))
      found.push_back(&frame);
  return found;
}

const char* word_for(BoxReads reads) {
  constexpr std::array words{"yes_no", "number", "whole", "percent", "choice",
                             "signs",  "day",    "text",  "answer"};
  return words.at(static_cast<std::size_t>(reads));
}

json set_json(const BoxSet& set) {
  json rows = json::array();
  for (const auto& row : set.rows) {
    json boxes = json::array();
    for (const Box& box : row) {
      json one{{"name", box.name},
               {"printed", box.printed()},
               {"share", box.share},
               {"reads", word_for(box.reads)}};
      if (!box.choices.empty()) one["choices"] = box.choices;
      boxes.push_back(std::move(one));
    }
    rows.push_back(std::move(boxes));
  }
  return {{"set", set.key}, {"words", set.words}, {"rows", std::move(rows)}};
}

json sets_json(const std::vector<BoxSet>& sets) {
  json list = json::array();
  for (const BoxSet& set : sets) list.push_back(set_json(set));
  return list;
}

void add_lines(std::string& text, const FrameToKeyIn& frame, const BoxSet& set) {
  for (const auto& row : set.rows)
    for (const Box& box : row) text += frame.row + "/" + box.name + ":\n";
}

}  // namespace

Expected<const FrameToKeyIn*> frame_named(const SheetToKeyIn& sheet, std::string_view row) {
  row = trim(row);
  const auto named = by_name(sheet, row);
  const FrameToKeyIn* numbered = nullptr;
  if (row.starts_with('#') && named.empty()) numbered = by_number(sheet, trim(row.substr(1)));
  if (is_number(row)) numbered = by_number(sheet, row);
  const std::string said(row);
  if (named.size() > 1)
    return bad_input("'" + said + "' stands on the sheet more than once", said,
                     "say it with its number: " + named[0]->row + ", " + named[1]->row);
  if (!named.empty() && numbered != nullptr && numbered != named.front())
    return bad_input("'" + said + "' is the name of one and the number of another", said,
                     "say " + numbered->row + " or " + named.front()->row);
  if (!named.empty()) return named.front();
  if (numbered != nullptr) return numbered;
  std::string all;
  for (const auto& frame : sheet.frames) all += (all.empty() ? "" : ", ") + frame.row;
  return bad_input("there is no row '" + said + "' for " + sheet.site_name + " on " + sheet.date.iso(), said,
                   all.empty() ? "no colony stands there" : "the rows are " + all);
}

const Box* box_named(const FrameToKeyIn& frame, std::string_view name) {
  name = trim(name);
  for (const auto* sets : {&frame.printed, &frame.others})
    for (const BoxSet& set : *sets)
      for (const auto& row : set.rows)
        for (const Box& box : row)
          if (alike(box.name, name) || alike(box.printed(), name)) return &box;
  return nullptr;
}

std::string lines_to_fill_in(const SheetToKeyIn& sheet) {
  std::string text = "-- " + sheet.site_name + ", " + sheet.date.iso() + "; an empty box makes no entry\n";
  if (!sheet.planned)
    text += "-- the plan of " + sheet.printed.iso() + " has no such visit: these are the colonies there\n";
  for (const auto& frame : sheet.frames) {
    text += "\n";
    for (const auto& job : frame.jobs) text += "-- " + std::to_string(job.number) + "  " + job.what + "\n";
    for (const auto& set : frame.printed) add_lines(text, frame, set);
    if (frame.others.empty()) continue;
    text += "-- and where more was written:";
    for (const auto& set : frame.others)
      for (const auto& row : set.rows)
        for (const Box& box : row) text += " " + box.name + ";";
    text.back() = '\n';
  }
  return text;
}

Expected<std::vector<WrittenBox>> boxes_in_lines(const SheetToKeyIn& sheet, std::string_view text) {
  std::vector<WrittenBox> boxes;
  int number = 0;
  while (!text.empty()) {
    const auto end = std::min(text.find('\n'), text.size());
    const std::string_view line = trim(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    ++number;
    if (line.empty() || line.starts_with("--")) continue;
    const std::string where = "line " + std::to_string(number);
    if (const auto bad = first_bad_utf8(line))
      return bad_input("is not UTF-8 at byte " + std::to_string(*bad + 1), where, "save it as UTF-8");
    // A name may hold a slash: the row ends at the first one before which a row is named.
    std::optional<Problem> fault;
    for (auto slash = line.find('/'); slash != std::string_view::npos; slash = line.find('/', slash + 1)) {
      const std::string_view rest = line.substr(slash + 1);
      const auto colon = rest.find(':');
      if (colon == std::string_view::npos) break;
      const auto frame = frame_named(sheet, line.substr(0, slash));
      if (!frame) {
        if (!fault) fault = frame.problem();
        continue;
      }
      fault.reset();
      if (box_named(**frame, rest.substr(0, colon)) == nullptr)
        return bad_input(
            "there is no box '" + std::string(trim(rest.substr(0, colon))) + "' for " + (*frame)->name, where,
            "beegarth key-in BOOK --list shows every box");
      boxes.push_back({(*frame)->row, std::string(trim(rest.substr(0, colon))),
                       std::string(trim(rest.substr(colon + 1))), where});
      break;
    }
    if (fault) return bad_input(fault->what, where, fault->remedy);
    if (boxes.empty() || boxes.back().where != where)
      return bad_input("this is no 'row/box: value'", where, "write it like  Alder/brood combs: 6");
  }
  return boxes;
}

json sheet_to_key_in_json(const SheetToKeyIn& sheet) {
  json frames = json::array();
  for (const auto& frame : sheet.frames) {
    json jobs = json::array();
    for (const auto& job : frame.jobs)
      jobs.push_back({{"number", job.number}, {"need", job.need}, {"what", job.what}});
    json one{{"row", frame.row},
             {"name", frame.name},
             {"jobs", std::move(jobs)},
             {"printed", sets_json(frame.printed)},
             {"others", sets_json(frame.others)}};
    if (frame.colony) one["colony"] = frame.colony->text();
    frames.push_back(std::move(one));
  }
  return {{"site", sheet.site.text()},      {"site_name", sheet.site_name}, {"date", sheet.date.iso()},
          {"printed", sheet.printed.iso()}, {"planned", sheet.planned},     {"frames", std::move(frames)}};
}

}  // namespace beegarth::garth
