// A keeper's own CSV (or places, or events) and a map become entries ready for the book: all of them, or none
// and what is wrong.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "entries/entry.hpp"
#include "garth/imports/csv.hpp"
#include "garth/imports/table_rows.hpp"

namespace beegarth::garth {

struct ImportDraft {
  Date happened;
  entries::Payload payload;
  std::size_t line = 0;  // of the file
  std::optional<double> hour;
};

struct ImportPlan {
  std::vector<ImportDraft> drafts;  // in the order of the book; empty where there are problems
  std::vector<Problem> problems;    // the first most_problems of them
  std::size_t rows = 0;
  std::vector<std::pair<std::string, std::size_t>>
      kinds;                               // entries made of each kind, in the order of the map
  std::vector<std::string> oddities;       // worth a look, no reason to stop
  std::vector<std::string> first_entries;  // three, as they will stand in the book

  static constexpr std::size_t most_problems = 20;
  bool ready() const { return problems.empty(); }
};

// A problem in place of the plan: the map is broken, or does not go with the file's header.
Expected<ImportPlan> plan_import(std::string_view csv, std::string_view csv_name, std::string_view map_toml,
                                 std::string_view map_name);
// The same from a file read piece by piece.
Expected<ImportPlan> plan_import(CsvSource csv, std::string_view csv_name, std::string_view map_toml,
                                 std::string_view map_name);

// The same from rows that are there already: places, events.
Expected<ImportPlan> plan_import(TableRows& rows, std::string_view map_toml, std::string_view map_name);

// The dry run's report, one line each.
std::vector<std::string> report(const ImportPlan& plan);

}  // namespace beegarth::garth
