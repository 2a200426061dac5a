#include "garth/imports/import_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "entries/read_back.hpp"
#include "garth/field_shapes.hpp"
#include "garth/imports/csv_cell.hpp"
#include "garth/imports/csv_map.hpp"

namespace beegarth::garth {
namespace {

std::string join(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

// A map and a header that go together: every column is found once, before the rows.
class Columns {
 public:
  explicit Columns(const std::vector<std::string>& header) : header_(header) {
    for (std::size_t i = 0; i < header.size(); ++i) at_.emplace(without_blanks(header[i]), i);
  }
  const std::size_t* find(std::string_view column) const {
    const auto found = at_.find(without_blanks(column));
    return found == at_.end() ? nullptr : &found->second;
  }
  void use(std::string_view column) {
    if (const auto* at = find(column)) used_.insert(*at);
  }
  std::string names() const {
    std::vector<std::string> some(
        header_.begin(),
        header_.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(header_.size(), 30)));
    for (std::string& name : some) name = name.substr(0, 40);
    return join(some) + (header_.size() > some.size() ? ", ..." : "");
  }
  std::vector<std::string> unused(std::size_t made_up) const {
    std::vector<std::string> names;
    for (std::size_t i = made_up; i < header_.size(); ++i) {
      if (!used_.contains(i)) names.push_back(header_[i]);
    }
    return names;
  }

 private:
  const std::vector<std::string>& header_;
  std::map<std::string_view, std::size_t> at_;
  std::set<std::size_t> used_;
};

struct Draft {
  ImportDraft draft;
  std::size_t rule = 0;
  bool once = false;
};

class Planner {
  static constexpr std::size_t most_told = 5;

 public:
  Planner(const CsvMap& map, TableRows& rows)
      : map_(map), rows_(rows), columns_(rows.header()), left_out_(map.entries.size()) {
    for (const EntryRule& rule : map.entries)
      shapes_.push_back(field_shapes(*entries::empty_payload(rule.kind)));
  }

  Outcome check_columns();
  ImportPlan run();

 private:
  Outcome known(const std::string& column, std::size_t line);
  std::optional<std::string_view> cell(std::string_view column) const;
  void row();
  void entry(std::size_t index, const CellText& cell_text);
  Expected<std::optional<entries::Payload>> payload_of(std::size_t index, const CellText& cell_text) const;
  void keep(std::size_t index, const CellText& cell_text, Date date, entries::Payload payload);
  Problem placed(const Problem& problem, const EntryRule& rule, bool is_column) const;
  void refuse(const EntryRule& rule, const Problem& problem) {
    if (!rule.leave_out_refused) return note(problem);
    if (refused_++ < most_told) plan_.oddities.push_back("left out: " + one_line(problem));
  }
  void note(Problem problem) {
    if (plan_.problems.size() < ImportPlan::most_problems) plan_.problems.push_back(std::move(problem));
  }
  void finish();
  void look_for_repeats();
  void look_for_gaps();

  const CsvMap& map_;
  TableRows& rows_;
  Columns columns_;
  std::vector<std::vector<FieldShape>> shapes_;
  std::vector<std::string> cells_;
  std::vector<Draft> drafts_;
  std::map<std::pair<std::size_t, std::string>, std::size_t> once_;  // rule and key to draft
  std::vector<std::size_t> left_out_;
  std::size_t refused_ = 0;  // rows left out because the map says so
  ImportPlan plan_;
};

Outcome Planner::known(const std::string& column, std::size_t line) {
  if (!columns_.find(column)) {
    return bad_input(rows_.name() + " has no column '" + column.substr(0, 60) + "'",
                     map_.name + ":" + std::to_string(line), "use one of " + columns_.names());
  }
  columns_.use(column);
  return Done{};
}

Outcome Planner::check_columns() {
  std::vector<std::pair<std::string, std::size_t>> wanted;
  const auto want_date = [&](const std::optional<DateRule>& rule) {
    if (!rule) return;
    for (const std::string& column : rule->columns) wanted.emplace_back(column, rule->line);
  };
  want_date(map_.date);
  for (const EntryRule& rule : map_.entries) {
    want_date(rule.date);
    if (rule.once_per) wanted.emplace_back(*rule.once_per, rule.line);
    for (const auto* tests : {&rule.skip_when, &rule.only_when}) {
      for (const RowTest& test : *tests) wanted.emplace_back(test.column, rule.line);
    }
    for (const FieldRule& field : rule.fields) {
      for (const std::string& column : field.add) wanted.emplace_back(column, field.line);
      for (const std::string& column : field.subtract) wanted.emplace_back(column, field.line);
    }
  }
  for (const auto& [column, line] : wanted) {
    if (auto ok = known(column, line); !ok) return ok;
  }
  return Done{};
}

std::optional<std::string_view> Planner::cell(std::string_view column) const {
  const std::size_t* at = columns_.find(column);
  if (!at) return std::nullopt;
  const std::string_view text = without_blanks(cells_[*at]);
  if (text.empty() || std::find(map_.missing.begin(), map_.missing.end(), text) != map_.missing.end())
    return std::nullopt;
  return text;
}

// Where a problem stands: the row, and the column or the kind of entry.
Problem Planner::placed(const Problem& problem, const EntryRule& rule, bool is_column) const {
  std::string column = problem.where;
  if (!is_column) {
    const auto field = std::find_if(rule.fields.begin(), rule.fields.end(),
                                    [&](const FieldRule& f) { return f.field == problem.where; });
    const bool from_column = field != rule.fields.end() && !field->add.empty();
    column = from_column ? "column '" + field->add.front() + "'" : rule.kind;
  }
  return {problem.kind, problem.what, rows_.where() + ", " + column, problem.remedy};
}

// nullopt where the row says nothing of what the entry is for.
Expected<std::optional<entries::Payload>> Planner::payload_of(std::size_t index,
                                                              const CellText& cell_text) const {
  const EntryRule& rule = map_.entries[index];
  entries::Payload payload = *entries::empty_payload(rule.kind);
  bool could_say = false;
  bool says = false;
  for (const FieldRule& field : rule.fields) {
    const auto shape = std::find_if(shapes_[index].begin(), shapes_[index].end(),
                                    [&](const FieldShape& s) { return s.name == field.field; });
    auto value = read_cells(field, *shape, cell_text, map_.decimal);
    if (!value) return placed(value.problem(), rule, true);
    const bool from_row = !field.constant && !shape->needed && shape->type != FieldType::id;
    could_say = could_say || from_row;
    if (!value->has_value()) {
      if (!shape->needed) continue;
      return bad_input("the " + rule.kind + " has no " + field.field,
                       rows_.where() + ", column '" + field.add.front() + "'",
                       "fill the cell, or skip such rows with skip_when");
    }
    says = says || from_row;
    const auto filled = fill_field(payload, field.field, **value);
    if (!filled) {
      const Problem& problem = filled.problem();
      return placed(bad_input(problem.what, field.field, problem.remedy), rule, false);
    }
  }
  if (could_say && !says && !rule.bare_too) return std::optional<entries::Payload>();
  if (const auto valid = entries::validate(payload); !valid) return placed(valid.problem(), rule, false);
  return std::optional<entries::Payload>(std::move(payload));
}

void Planner::keep(std::size_t index, const CellText& cell_text, Date date, entries::Payload payload) {
  const EntryRule& rule = map_.entries[index];
  Draft draft{
      {date, std::move(payload), rows_.line(), rows_.hour()}, index, rule.once || rule.once_per.has_value()};
  if (!draft.once) return drafts_.push_back(std::move(draft));
  const std::string key = rule.once_per ? std::string(cell_text(*rule.once_per).value_or("")) : "";
  const auto [at, is_new] = once_.emplace(std::pair(index, key), drafts_.size());
  if (is_new) return drafts_.push_back(std::move(draft));
  if (date < drafts_[at->second].draft.happened) drafts_[at->second] = std::move(draft);
}

void Planner::entry(std::size_t index, const CellText& cell_text) {
  const EntryRule& rule = map_.entries[index];
  const auto test = [&](const RowTest& t) { return holds(t, cell_text, map_.decimal); };
  if (std::any_of(rule.skip_when.begin(), rule.skip_when.end(), test)) return;
  if (!std::all_of(rule.only_when.begin(), rule.only_when.end(), test)) return;
  auto payload = payload_of(index, cell_text);
  if (!payload) return refuse(rule, payload.problem());
  if (!payload->has_value()) {
    ++left_out_[index];
    return;
  }
  const DateRule& date_rule = rule.date ? *rule.date : *map_.date;
  const auto date = read_date_cells(date_rule, cell_text);
  if (!date) return refuse(rule, placed(date.problem(), rule, true));
  if (!date->has_value()) {
    return refuse(rule, bad_input("the " + rule.kind + " has no date",
                                  rows_.where() + ", column '" + date_rule.columns.front() + "'",
                                  "fill the cell, or skip such rows with skip_when"));
  }
  keep(index, cell_text, **date, *std::move(*payload));
}

void Planner::row() {
  ++plan_.rows;
  const CellText cell_text = [this](std::string_view column) { return cell(column); };
  for (std::size_t i = 0; i < map_.entries.size(); ++i) entry(i, cell_text);
}

// Two entries of one kind about one thing on one day may be a row that stands twice.
void Planner::look_for_repeats() {
  std::map<std::tuple<std::size_t, std::string, Date>, std::size_t> seen;
  std::size_t repeats = 0;
  std::string first;
  for (const Draft& each : drafts_) {
    const entries::Payload& payload = each.draft.payload;
    const std::string whom = entries::colony_of(payload).text() + "/" + entries::site_of(payload).text();
    const auto [at, is_new] = seen.emplace(std::tuple(each.rule, whom, each.draft.happened), each.draft.line);
    if (is_new || whom == "/") continue;
    if (repeats++ == 0) {
      first = at->second == each.draft.line
                  ? fmt::format("two on line {} say", at->second)
                  : fmt::format("lines {} and {} both say", at->second, each.draft.line);
      first += fmt::format(" {} for {}", entries::kind_name(payload), each.draft.happened.iso());
    }
  }
  if (repeats == 1) plan_.oddities.push_back(first);
  if (repeats > 1)
    plan_.oddities.push_back(first + ", and " + std::to_string(repeats - 1) + " more of the sort");
}

// Days without weather between the first and the last.
void Planner::look_for_gaps() {
  std::map<std::string, std::set<Date>> days;
  for (const Draft& each : drafts_) {
    const auto* weather = std::get_if<entries::Weather>(&each.draft.payload);
    if (weather) days[weather->site.text()].insert(each.draft.happened);
  }
  for (const auto& [site, dates] : days) {
    const auto whole = static_cast<std::size_t>(*dates.rbegin() - *dates.begin()) + 1;
    if (whole == dates.size()) continue;
    plan_.oddities.push_back("weather of site '" + site + "': " + std::to_string(whole - dates.size()) +
                             " of " + std::to_string(whole) + " days from " + dates.begin()->iso() + " to " +
                             dates.rbegin()->iso() + " are not there");
  }
}

void Planner::finish() {
  if (refused_ > most_told)
    plan_.oddities.push_back("left out: " + std::to_string(refused_ - most_told) + " more rows");
  look_for_repeats();
  look_for_gaps();
  for (std::size_t i = 0; i < map_.entries.size(); ++i) {
    if (left_out_[i] == 0) continue;
    plan_.oddities.push_back(std::to_string(left_out_[i]) + " rows say nothing for the " +
                             map_.entries[i].kind + " of " + map_.name + ":" +
                             std::to_string(map_.entries[i].line));
  }
  if (const auto unused = columns_.unused(rows_.made_up()); !unused.empty()) {
    plan_.oddities.push_back("columns not used: " + join(unused));
  }
  // By day; on one day what is said once (site, hive, beginning) before what is seen.
  std::stable_sort(drafts_.begin(), drafts_.end(), [](const Draft& a, const Draft& b) {
    if (a.draft.happened != b.draft.happened) return a.draft.happened < b.draft.happened;
    if (a.once != b.once) return a.once;
    return a.once && a.rule < b.rule;
  });
  std::map<std::string, std::size_t> made;
  for (Draft& each : drafts_) {
    ++made[map_.entries[each.rule].kind];
    plan_.drafts.push_back(std::move(each.draft));
  }
  for (const EntryRule& rule : map_.entries) {
    const auto at = made.extract(rule.kind);
    if (!at.empty()) plan_.kinds.emplace_back(rule.kind, at.mapped());
  }
  for (std::size_t i = 0; i < std::min<std::size_t>(3, plan_.drafts.size()); ++i) {
    plan_.first_entries.push_back(plan_.drafts[i].happened.iso() + " " +
                                  entries::read_back(plan_.drafts[i].payload));
  }
}

ImportPlan Planner::run() {
  for (;;) {
    auto more = rows_.next(cells_);
    if (!more) {
      note(more.problem());  // what follows a broken row cannot be trusted
      break;
    }
    if (!*more) break;
    row();
    if (plan_.problems.size() == ImportPlan::most_problems) break;
  }
  if (plan_.problems.empty()) finish();
  return std::move(plan_);
}

Expected<ImportPlan> planned(const CsvMap& map, TableRows& rows) {
  Planner planner(map, rows);
  if (auto ok = planner.check_columns(); !ok) return ok.problem();
  return planner.run();
}

}  // namespace

Expected<ImportPlan> plan_import(CsvSource csv, std::string_view csv_name, std::string_view map_toml,
                                 std::string_view map_name) {
  const auto map = read_csv_map(map_toml, std::string(map_name));
  if (!map) return map.problem();
  auto reader = CsvReader::open(std::move(csv), std::string(csv_name), map->separator);
  if (!reader) return reader.problem();
  return planned(*map, *reader);
}

Expected<ImportPlan> plan_import(TableRows& rows, std::string_view map_toml, std::string_view map_name) {
  const auto map = read_csv_map(map_toml, std::string(map_name));
  if (!map) return map.problem();
  return planned(*map, rows);
}

Expected<ImportPlan> plan_import(std::string_view csv, std::string_view csv_name, std::string_view map_toml,
                                 std::string_view map_name) {
  return plan_import(whole_text(csv), csv_name, map_toml, map_name);
}

std::vector<std::string> report(const ImportPlan& plan) {
  std::vector<std::string> lines;
  lines.push_back("rows read: " + std::to_string(plan.rows));
  if (!plan.ready()) {
    lines.push_back("nothing can be imported:");
    for (const Problem& problem : plan.problems) lines.push_back("  " + one_line(problem));
    return lines;
  }
  lines.push_back("entries: " + std::to_string(plan.drafts.size()));
  for (const auto& [kind, count] : plan.kinds) lines.push_back("  " + kind + ": " + std::to_string(count));
  for (const std::string& oddity : plan.oddities) lines.push_back("worth a look: " + oddity);
  for (const std::string& entry : plan.first_entries) lines.push_back("first: " + entry);
  return lines;
}

}  // namespace beegarth::garth
