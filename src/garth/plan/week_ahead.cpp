#include "garth/plan/week_ahead.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <set>

#include "garth/keep/keep.hpp"
#include "garth/sheet/visit_sheet.hpp"

namespace beegarth::garth {

namespace {

constexpr int days_to_fill_in = 7;
constexpr int days_ahead = 14;  // no forecast says anything of use beyond

using Field = std::optional<double> DayAhead::*;
struct Column {
  const char* name;
  Field field;
};
constexpr auto columns_of_a_day = std::to_array<Column>({{"max C", &DayAhead::max_C},
                                                         {"min C", &DayAhead::min_C},
                                                         {"rain mm", &DayAhead::rain_mm},
                                                         {"wind m/s", &DayAhead::wind_m_s},
                                                         {"gust m/s", &DayAhead::gust_m_s}});

std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> cells;
  constexpr std::string_view between = " \t,;\r";
  for (auto from = line.find_first_not_of(between); from != std::string_view::npos;
       from = line.find_first_not_of(between, from)) {
    const auto end = std::min(line.find_first_of(between, from), line.size());
    cells.push_back(line.substr(from, end - from));
    from = end;
  }
  return cells;
}

Expected<std::optional<double>> number_in(std::string_view cell, const Column& column,
                                          const std::string& where) {
  if (cell == "-") return std::optional<double>();
  double value = 0;
  const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (fault != std::errc{} || end != cell.data() + cell.size() || !(value > -1000 && value < 1000))
    return bad_input("'" + std::string(cell.substr(0, 40)) + "' is no number for " + column.name, where,
                     "write a number, or a dash for what is not known");
  return std::optional(value);
}

Expected<DayAhead> day_in(std::string_view line, const std::string& where) {
  const auto cells = cells_of(line);
  const auto date = Date::parse(cells.front());
  if (!date) return bad_input(date.problem().what, where, "begin each row with its day, like 2026-06-04");
  if (cells.size() > columns_of_a_day.size() + 1)
    return bad_input("this row has more than five numbers", where,
                     "write the day, then highest, lowest, rain, wind and gust, with a point in 19.5");
  DayAhead day{.date = *date, .where = where};
  for (std::size_t i = 1; i < cells.size(); ++i) {
    const auto number = number_in(cells[i], columns_of_a_day[i - 1], where);
    if (!number) return number.problem();
    day.*columns_of_a_day[i - 1].field = *number;
  }
  return day;
}

Outcome soundly_dated(const std::vector<DayAhead>& days, Date today) {
  std::set<Date> seen;
  for (const DayAhead& day : days) {
    if (!seen.insert(day.date).second)
      return bad_input(day.date.iso() + " stands there twice", day.where, "keep one of the two rows");
    if (day.date < today)
      return bad_input(
          day.date.iso() + " is over", day.where,
          "a forecast is of days to come; what the weather was is entered with enter ... weather");
    if (day.date > today + days_ahead)
      return bad_input(day.date.iso() + " is more than two weeks away", day.where, "leave that row out");
  }
  return Done{};
}

book::Draft draft_of(const DayAhead& day, const SiteId& site) {
  return {.happened = day.date,
          .payload = entries::Weather{.site = site,
                                      .temperature_min_C = day.min_C,
                                      .temperature_max_C = day.max_C,
                                      .rain_mm = day.rain_mm,
                                      .wind_m_s = day.wind_m_s,
                                      .gust_m_s = day.gust_m_s,
                                      .forecast = true}};
}

}  // namespace

std::string week_to_fill_in(Date first) {
  std::string text = "-- day        max C  min C  rain mm  wind m/s  gust m/s\n";
  for (int day = 0; day < days_to_fill_in; ++day)
    text += (first + day).iso() + "    -      -      -        -         -\n";
  return text;
}

Expected<std::vector<DayAhead>> days_in_lines(std::string_view text) {
  std::vector<DayAhead> days;
  for (int number = 1; !text.empty(); ++number) {
    const auto end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (cells_of(line).empty() || line.starts_with("--")) continue;
    auto day = day_in(line, "line " + std::to_string(number));
    if (!day) return day.problem();
    days.push_back(*std::move(day));
  }
  return days;
}

Expected<WeekAhead> foretell(Session& session, std::string_view site, const std::vector<DayAhead>& days,
                             bool keep) {
  SiteId where("all");
  if (site != "all") {
    const auto found = site_named(session.state, site);
    if (!found) return found.problem();
    where = *found;
  }
  if (Outcome dated = soundly_dated(days, session.today); !dated) return dated.problem();
  std::vector<book::Draft> drafts;
  std::vector<const DayAhead*> rows;
  for (const DayAhead& day : days) {
    if (day.is_empty()) continue;
    drafts.push_back(draft_of(day, where));
    rows.push_back(&day);
  }
  if (drafts.empty()) return bad_input("no row is filled in", "the week", "type at least one number");
  const auto all = session.book.entries();
  if (!all) return all.problem();
  if (const auto objection = objection_to(*all, drafts, session.tables))
    return bad_input(objection->problem.where + ": " + objection->problem.what, rows[objection->draft]->where,
                     objection->problem.remedy);
  WeekAhead week;
  if (!keep) {
    for (const auto& draft : drafts)
      week.entries.push_back({.happened = draft.happened, .payload = draft.payload});
    return week;
  }
  auto kept = garth::keep(session, drafts);
  if (!kept) return kept.problem();
  week.entries = *std::move(kept);
  week.kept = true;
  if (const Outcome outcome = refresh(session); !outcome) return outcome.problem();
  return week;
}

}  // namespace beegarth::garth
