// Use cases with invented answers, so that the face can be tested without a book.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "http/api.hpp"

namespace beegarth::http {

struct FakeBook {
  int plans = 0;  // how often a plan was asked for
  std::vector<std::string> kept;
  std::string version = "head-1";
  garth::EntrySearch asked;   // the last search
  std::optional<Date> known;  // of the last search or register
  garth::PhotoWish photo;     // the last photo
  std::size_t photo_bytes = 0;
  garth::SheetFilledIn sheet;  // the last sheet keyed in
  garth::WeekTyped week;
  garth::FileToDraft to_draft;
  garth::FileBroughtIn brought;
  int checks = 0;                // how often the book was checked
  std::optional<Date> stood_on;  // the last day asked for
  garth::FilledIn filled_in;     // the last entry
  garth::Span span;              // of the last register
};

inline Problem unknown(std::string_view what) {
  return bad_input("no such thing", std::string(what), "see the list");
}

inline Api fake_api(FakeBook& book) {
  Api api;
  api.version = [&book]() -> Expected<std::string> { return book.version; };
  api.book = []() -> Expected<Json> { return Json{{"name", "invented"}}; };
  api.plan = [&book](int days) -> Expected<Json> {
    ++book.plans;
    return Json{{"days", days}};
  };
  api.plan_as = [](garth::PlanForm form, int days) -> Expected<std::string> {
    return std::to_string(static_cast<int>(form)) + "/" + std::to_string(days);
  };
  api.own_week = [](const std::vector<work::OwnJob>& own, int days) -> Expected<Json> {
    Json jobs = Json::array();
    for (const auto& job : own) jobs.push_back(job.date.iso() + " " + job.need);
    if (!own.empty() && own.front().need == "none")
      return bad_input("there is no need 'none'", "own", "name one");
    return Json{{"jobs", jobs}, {"days", days}};
  };
  api.colonies = []() -> Expected<Json> {
    return Problem{ProblemKind::storage, "the book is locked", "invented.garth", "close the other program"};
  };
  api.doubts = []() -> Expected<Json> { return Json{{"doubts", Json::array()}}; };
  api.outlook = [](std::string_view colony) -> Expected<Json> {
    if (colony != "alder-5") return unknown(colony);
    return Json{{"colony", colony}};
  };
  api.entry = [](std::string_view id) -> Expected<Json> {
    if (id == "broken") throw std::runtime_error("invented fault");
    if (id == "look" || id == "sign") return Json{{"id", id}};
    return unknown(id);
  };
  api.find = [&book](const garth::EntrySearch& search, std::optional<Date> known) -> Expected<Json> {
    book.asked = search;
    book.known = known;
    return Json{{"entries", Json::array()}, {"count", 0}, {"more", false}};
  };
  api.enter = [&book](const garth::FilledIn& filled_in) -> Expected<Json> {
    if (filled_in.kind == "feed")
      return bad_input("honey of unknown origin is never fed", "source", "feed sugar");
    book.filled_in = filled_in;
    book.kept.push_back(filled_in.kind);
    return Json{{"kept", true}, {"entries", Json::array()}};
  };
  api.take_back = [&book](std::string_view id, std::string_view reason) -> Expected<Json> {
    if (id == "sign")
      return bad_input("a suspicion is not taken back", "entry sign", "let the inspector clear it");
    book.kept.push_back(std::string(id) + " back: " + std::string(reason));
    return Json{{"kept", true}, {"entries", Json::array()}};
  };
  api.kinds = []() -> Expected<Json> { return Json{{"groups", Json::array()}, {"names", Json::object()}}; };
  api.registers = []() -> Expected<Json> { return Json{{"registers", Json::array()}}; };
  api.register_shown = [&book](std::string_view name, const garth::RegisterWish& wish) -> Expected<Json> {
    if (name != "medicines") return unknown(name);
    if (wish.known && wish.known->year() < 2000)
      return bad_input("nothing was written yet", "known", "give a later day");
    book.span = wish.span;
    book.known = wish.known;
    return Json{{"name", name}};
  };
  api.register_as_csv = [](std::string_view name, const garth::RegisterWish&) -> Expected<std::string> {
    if (name != "medicines") return unknown(name);
    return std::string("date,colony\r\n");
  };
  api.register_as_pdf = [](std::string_view name, const garth::RegisterWish&) -> Expected<std::string> {
    if (name != "medicines") return unknown(name);
    return std::string("%PDF-invented");
  };
  api.exported = [](garth::BookForm form) -> Expected<std::string> {
    return std::string(form == garth::BookForm::jsonl ? "{}\n" : "invented form");
  };
  api.lines = []() -> Expected<Json> { return Json{{"queens", Json::array()}, {"traits", Json::array()}}; };
  api.pedigree = []() -> Expected<std::string> { return std::string("<svg/>"); };
  api.add_photo = [&book](const garth::PhotoWish& wish, std::string_view bytes) -> Expected<Json> {
    if (!bytes.starts_with("\xFF\xD8\xFF"))
      return bad_input("that is no JPEG, PNG or WebP picture", wish.file, "give a photo");
    book.photo = wish;
    book.photo_bytes = bytes.size();
    book.kept.emplace_back("photo");
    return Json{{"kept", true}, {"entries", Json::array()}};
  };
  api.photo = [](std::string_view id) -> Expected<garth::PhotoBytes> {
    if (id != "comb") return unknown(id);
    return garth::PhotoBytes{"\xFF\xD8\xFF invented", "image/jpeg"};
  };
  api.checklists = []() -> Expected<Json> {
    return Json{{"checklists", Json::array()}, {"emergency_number", "112"}};
  };
  api.sheet_boxes = [](const garth::KeyInWish& wish) -> Expected<Json> {
    if (wish.site != "withy") return unknown(wish.site);
    return Json{{"site", wish.site}, {"frames", Json::array()}};
  };
  api.key_in = [&book](const garth::SheetFilledIn& filled_in) -> Expected<Json> {
    book.sheet = filled_in;
    if (filled_in.keep) book.kept.emplace_back("sheet");
    return Json{{"kept", filled_in.keep}, {"entries", Json::array()}};
  };
  api.week_ahead = [&book](const garth::WeekTyped& week) -> Expected<Json> {
    book.week = week;
    if (week.keep) book.kept.emplace_back("week");
    return Json{{"kept", week.keep}, {"entries", Json::array()}};
  };
  api.maps = []() -> Expected<Json> { return Json{{"maps", Json::array()}}; };
  api.draft_map = [&book](const garth::FileToDraft& file) -> Expected<Json> {
    if (file.kind != "inspection")
      return bad_input("there is no such kind", "kind", "choose one of the kinds");
    book.to_draft = file;
    return Json{{"map", "invented map"}};
  };
  api.bring_in = [&book](const garth::FileBroughtIn& file) -> Expected<Json> {
    if (file.text == "torn") return bad_input("that is no table", file.name + ":1", "give one");
    book.brought = file;
    if (file.keep) book.kept.emplace_back("file");
    return Json{{"kept", file.keep}, {"added", 1}, {"known", 0}, {"refused", Json::array()}};
  };
  api.transfer_ways = [](std::string_view colony, std::string_view into) -> Expected<Json> {
    if (colony != "nuc/1") return bad_input("there is no such colony", {}, "see the list");
    if (into != "meadow-3") return bad_input("there is no such hive", "into", "enter the hive first");
    return Json{{"colony", colony}, {"into", into}};
  };
  api.suppose = [](std::string_view colony, const garth::Supposing& supposing) -> Expected<Json> {
    if (colony != "nuc/1") return bad_input("there is no such colony", {}, "see the list");
    if (supposing.ways.front() == "dance") return bad_input("that is no day", "ways", "begin with a day");
    return Json{{"colony", colony},
                {"ways", supposing.ways},
                {"until", supposing.until ? supposing.until->iso() : ""}};
  };
  api.check = [&book]() -> Expected<Json> { return Json{{"entries", ++book.checks}}; };
  api.as_it_stood = [&book](std::optional<Date> date) -> Expected<Json> {
    if (date && date->year() < 2000) return bad_input("the book began later", "date", "give a later day");
    book.stood_on = date;
    return Json{{"sites", Json::array()}};
  };
  api.note = [&book](std::string_view line, bool keep) -> Expected<Json> {
    if (keep) book.kept.emplace_back(line);
    return Json{{"kept", keep}, {"entries", Json::array()}};
  };
  api.answer = [&book](std::string_view need, std::string_view answer,
                       std::optional<Date> until) -> Expected<Json> {
    if (need != "look-cells/alder-5") return unknown(need);
    book.kept.push_back(std::string(need) + " " + std::string(answer) + (until ? " " + until->iso() : ""));
    return Json{{"kept", true}, {"entries", Json::array()}};
  };
  api.sheet = [](Date date, std::string_view site) -> Expected<std::string> {
    return "%PDF-invented " + date.iso() + " " + std::string(site);
  };
  api.calcs = []() -> Expected<Json> { return Json{{"calcs", Json::array()}}; };
  api.calc = [](std::string_view name, std::string_view input) -> Expected<Json> {
    if (name == "check") return Problem{ProblemKind::answer_is_no, "it does not fit", {}, {}};
    if (name != "echo")
      return Problem{ProblemKind::wrong_use, "there is no such calc", std::string(name), {}};
    return Json{{"bytes", input.size()}};
  };
  return api;
}

}  // namespace beegarth::http
