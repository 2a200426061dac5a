// What the HTTP face asks of the use cases. The caller fills it from garth/; a test fills it with its own
// answers.
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "garth/desk/desk.hpp"

namespace beegarth::http {

using Json = nlohmann::json;

// Every function answers with the JSON that openapi.json describes. They are called one at a time, never side
// by side. A Problem of kind bad_input means "no such thing" where a colony, an entry, a need or a calc is
// named in the path.
struct Api {
  // Changes whenever an answer could: the book's head together with today and the seed.
  std::function<Expected<std::string>()> version;
  std::function<Expected<Json>()> book;
  std::function<Expected<Json>(int days)> plan;  // days is 1..60
  std::function<Expected<std::string>(garth::PlanForm, int days)> plan_as;
  std::function<Expected<Json>(const std::vector<work::OwnJob>&, int days)> own_week;
  std::function<Expected<Json>()> colonies;
  std::function<Expected<Json>()> doubts;
  std::function<Expected<Json>(std::string_view colony)> outlook;
  std::function<Expected<Json>(std::string_view id)> entry;
  std::function<Expected<Json>(const garth::EntrySearch&, std::optional<Date> known)> find;
  std::function<Expected<Json>(const garth::FilledIn&)> enter;
  std::function<Expected<Json>(std::string_view id, std::string_view reason)> take_back;
  std::function<Expected<Json>()> kinds;
  std::function<Expected<Json>()> registers;
  std::function<Expected<Json>(std::string_view name, const garth::RegisterWish&)> register_shown;
  std::function<Expected<std::string>(std::string_view name, const garth::RegisterWish&)> register_as_csv;
  std::function<Expected<std::string>(std::string_view name, const garth::RegisterWish&)> register_as_pdf;
  std::function<Expected<std::string>(garth::BookForm)> exported;
  std::function<Expected<Json>()> lines;
  std::function<Expected<std::string>()> pedigree;  // SVG
  std::function<Expected<Json>(const garth::PhotoWish&, std::string_view bytes)> add_photo;
  std::function<Expected<garth::PhotoBytes>(std::string_view id)> photo;
  std::function<Expected<Json>()> checklists;
  std::function<Expected<Json>(const garth::KeyInWish&)> sheet_boxes;
  std::function<Expected<Json>(const garth::SheetFilledIn&)> key_in;
  std::function<Expected<Json>(const garth::WeekTyped&)> week_ahead;
  std::function<Expected<Json>()> maps;
  std::function<Expected<Json>(const garth::FileToDraft&)> draft_map;
  std::function<Expected<Json>(const garth::FileBroughtIn&)> bring_in;
  // A Problem that names no part of the question is about the colony in the path.
  std::function<Expected<Json>(std::string_view colony, std::string_view into)> transfer_ways;
  // Likewise.
  std::function<Expected<Json>(std::string_view colony, const garth::Supposing&)> suppose;
  std::function<Expected<Json>()> check;
  std::function<Expected<Json>(std::optional<Date> date)> as_it_stood;
  std::function<Expected<Json>(std::string_view line, bool keep)> note;
  // answer: done, skipped, put_off, rained_off; until: the day it is put off to
  std::function<Expected<Json>(std::string_view need, std::string_view answer, std::optional<Date> until)>
      answer;
  std::function<Expected<std::string>(Date date, std::string_view site)> sheet;  // a PDF's bytes
  std::function<Expected<Json>()> calcs;
  std::function<Expected<Json>(std::string_view name, std::string_view input)>
      calc;  // input: JSON text, not yet read
};

}  // namespace beegarth::http
