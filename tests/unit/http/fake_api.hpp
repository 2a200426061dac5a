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
  api.colonies = []() -> Expected<Json> {
    return Problem{ProblemKind::storage, "the book is locked", "invented.garth", "close the other program"};
  };
  api.outlook = [](std::string_view colony) -> Expected<Json> {
    if (colony != "alder-5") return unknown(colony);
    return Json{{"colony", colony}};
  };
  api.entry = [](std::string_view id) -> Expected<Json> {
    if (id == "broken") throw std::runtime_error("invented fault");
    return unknown(id);
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
