// The CSV reader and the mapping file. An input is a map and a CSV with a line "=====" between them; without
// such a line it is a CSV, read with a map of our own.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "garth/imports/import_plan.hpp"

namespace {

constexpr std::string_view own_map = R"(
missing = ["NA"]
[date]
column = "date"
format = ["%Y-%m-%d", "%d-%b"]
year = 2026
[[entry]]
kind = "inspection"
skip_when = [{ column = "bees", equals = 0 }]
[entry.fields]
colony = { column = "colony", as_key = true }
look = "full"
bees = { column = "bees", scale = 1.5 }
queen = { column = "queen", map = { seen = true, "not" = false }, others_missing = true }
[[entry]]
kind = "colony_began"
once_per = "colony"
[entry.fields]
colony = { column = "colony", as_key = true }
name = { column = "colony" }
hive = "h"
how = "unknown"
)";

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view input(reinterpret_cast<const char*>(data), size);
  constexpr std::string_view between = "\n=====\n";
  const std::size_t cut = input.find(between);
  const bool has_map = cut != std::string_view::npos;
  const std::string_view map = has_map ? input.substr(0, cut) : own_map;
  const std::string_view csv = has_map ? input.substr(cut + between.size()) : input;
  const auto plan = beegarth::garth::plan_import(csv, "f.csv", map, "m.toml");
  if (!plan) {
    if (plan.problem().where.empty()) std::abort();  // every problem says where
    return 0;
  }
  if (plan->ready() != plan->problems.empty() || (!plan->ready() && !plan->drafts.empty())) std::abort();
  for (const auto& problem : plan->problems) {
    if (problem.where.rfind("f.csv:", 0) != 0) std::abort();
  }
  for (const auto& draft : plan->drafts) {
    if (!beegarth::entries::validate(draft.payload)) std::abort();
  }
  (void)beegarth::garth::report(*plan);
  return 0;
}
