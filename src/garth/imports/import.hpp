// Bringing files into a book: another book's export, or CSV, places and events by a mapping. All
// or nothing, with a dry run.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"

namespace beegarth::garth {

struct ImportWish {
  std::string book;  // made where there is none
  std::string file;
  std::string
      form;  // jsonl, csv, geojson, calendar; empty: by the file's ending, else jsonl, or csv with a map
  std::string map;  // what the rows of csv, geojson and calendar mean
  bool dry_run = false;
  std::string who = "keeper";
  std::optional<Date> today;  // absent: the machine's
};

struct ImportAnswer {
  nlohmann::json json;
  std::string text;
  std::vector<std::string> remarks = {};  // beside the answer: what the gates would have refused
  std::vector<Problem> refused = {};      // what stands in the way, row by row; then nothing was written
};

// What stands in the way, as one line: the first, with how many more there are.
Problem as_one(const std::vector<Problem>& refused);

// What stands in the way is a Problem, as one.
Expected<ImportAnswer> import_file(const ImportWish& wish);

// A mapping at hand.
struct MapText {
  std::string name;  // for problems
  std::string toml;
};
// The same with the file at hand: `wish.file` gives its name, and `map` stands in for `wish.map`. What stands
// in the way of the rows is in the answer, all of it.
Expected<ImportAnswer> import_text(const ImportWish& wish, const std::string& bytes,
                                   const std::optional<MapText>& map);

}  // namespace beegarth::garth
