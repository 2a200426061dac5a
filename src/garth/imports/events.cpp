#include "garth/imports/events.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "garth/imports/content_lines.hpp"
#include "garth/ledgers/notifiable.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr std::string_view own_uid = "@beegarth";

// "20260605" or the beginning of "20260605T143000".
std::optional<Date> day_in(std::string_view text) {
  if (text.size() < 8 || text.substr(0, 8).find_first_not_of("0123456789") != std::string_view::npos)
    return std::nullopt;
  const auto number = [&](std::size_t from, std::size_t count) {
    int value = 0;
    for (const char c : text.substr(from, count)) value = value * 10 + (c - '0');
    return value;
  };
  return Date::from_ymd(number(0, 4), number(4, 2), number(6, 2));
}

// "T143000" or "T143000Z" behind the day; a leap second counts as the second before it.
std::optional<double> hour_in(std::string_view text) {
  if (text.size() != 7 && !(text.size() == 8 && text.back() == 'Z')) return std::nullopt;
  if (text[0] != 'T' || text.substr(1, 6).find_first_not_of("0123456789") != std::string_view::npos)
    return std::nullopt;
  const auto two = [&](std::size_t at) { return (text[at] - '0') * 10 + (text[at + 1] - '0'); };
  const int hours = two(1), minutes = two(3), seconds = std::min(two(5), 59);
  if (hours > 23 || minutes > 59 || two(5) > 60) return std::nullopt;
  return hours + minutes / 60.0 + seconds / 3600.0;
}

struct When {
  Date day;
  std::optional<double> hour;
  bool utc = false;
};

Expected<When> when_of(const ContentLine& line, const std::string& file, double utc_offset_h) {
  const auto refuse = [&] {
    return bad_input(line.name + " '" + line.value.substr(0, 40) + "' is no day or time",
                     file + ":" + std::to_string(line.line), "write it as 20260605 or 20260605T143000");
  };
  const auto day = day_in(line.value);
  if (!day) return refuse();
  const std::string* type = line.parameter("VALUE");
  const bool all_day = type != nullptr && *type == "DATE";
  if (line.value.size() == 8) return When{*day, std::nullopt, false};
  if (all_day) return refuse();
  const auto hour = hour_in(std::string_view(line.value).substr(8));
  if (!hour) return refuse();
  if (line.value.back() != 'Z') return When{*day, hour, false};
  const double local = *hour + utc_offset_h;
  const int days = static_cast<int>(std::floor(local / 24));
  return When{*day + days, local - 24 * days, true};
}

std::string text_of(const CalendarComponent& event, const char* name) {
  std::string text;
  for (const ContentLine& line : event.lines) {
    if (line.name == name) text += (text.empty() ? "" : ", ") + plain_text(line.value);
  }
  return text;
}

// Whose clock a time is told by.
std::string zone_of(const ContentLine& line) {
  const std::string* zone = line.parameter("TZID");
  return zone != nullptr ? *zone : line.value.ends_with('Z') ? "UTC" : "";
}

Expected<CalendarEvent> event_of(const CalendarComponent& component, const std::string& file, double offset) {
  const auto place = [&](std::size_t line) { return file + ":" + std::to_string(line); };
  CalendarEvent event{.line = component.line};
  const ContentLine* start = component.find("DTSTART");
  if (start == nullptr)
    return bad_input("the event has no DTSTART", place(component.line), "give it a day, or remove it");
  const auto from = when_of(*start, file, offset);
  if (!from) return from.problem();
  event.day = from->day;
  event.hour = from->hour;
  event.from_utc = from->utc;
  if (const ContentLine* end = component.find("DTEND")) {
    const auto until = when_of(*end, file, offset);
    if (!until) return until.problem();
    // The end is not part of the event (3.6.1): an all-day event ends on the day before.
    const Date last = until->hour || until->day == event.day ? until->day : until->day - 1;
    const bool before =
        last < event.day || (last == event.day && until->hour && event.hour && *until->hour < *event.hour);
    if (before && zone_of(*start) == zone_of(*end))
      return bad_input("the event ends before it begins", place(end->line), "correct one of the two");
    if (!before) {  // else the clocks of two zones are not to be compared: the end is left out
      event.last_day = last;
      event.end_hour = until->hour;
    }
  }
  event.recurs = component.find("RRULE") != nullptr || component.find("RDATE") != nullptr;
  event.uid = text_of(component, "UID");
  event.summary = text_of(component, "SUMMARY");
  event.description = text_of(component, "DESCRIPTION");
  event.location = text_of(component, "LOCATION");
  event.categories = text_of(component, "CATEGORIES");
  event.status = text_of(component, "STATUS");
  std::transform(event.status.begin(), event.status.end(), event.status.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c; });
  return event;
}

// The clock that most sites go by; UTC where none says.
double clock_of(const book::State& state) {
  std::map<double, int> votes;
  for (const auto& [id, site] : state.sites) {
    if (site.utc_offset_h) ++votes[*site.utc_offset_h];
  }
  double best = 0;
  int most = 0;
  for (const auto& [offset, count] : votes) {
    if (count > most) best = offset, most = count;
  }
  return best;
}

std::string number_text(double value) {
  std::string text = std::to_string(value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

// "Alder: super on" speaks of Alder.
std::string spoken_of(const std::string& summary) {
  const std::size_t colon = summary.find(':');
  return colon == std::string::npos ? std::string() : summary.substr(0, colon);
}

std::string all_words(const CalendarEvent& event) {
  std::string text = event.summary;
  for (const auto* more : {&event.description, &event.location}) {
    if (!more->empty()) text += (text.empty() ? "" : "\n") + *more;
  }
  return text;
}

void count_out(std::vector<std::string>& oddities, std::size_t count, const std::string& what) {
  if (count > 0) oddities.push_back(std::to_string(count) + (count == 1 ? " event " : " events ") + what);
}

}  // namespace

Expected<std::vector<CalendarEvent>> calendar_events(std::string_view bytes, const std::string& file,
                                                     double utc_offset_h) {
  const auto calendars = calendar_components(bytes, file);
  if (!calendars) return calendars.problem();
  std::vector<CalendarEvent> events;
  for (const CalendarComponent& calendar : *calendars) {
    for (const CalendarComponent& part : calendar.parts) {
      if (part.name != "VEVENT") continue;
      auto event = event_of(part, file, utc_offset_h);
      if (!event) return event.problem();
      events.push_back(*std::move(event));
    }
  }
  return events;
}

Expected<EventRows> event_rows(std::string_view bytes, const std::string& file, const book::State& state,
                               Date today) {
  const double offset = clock_of(state);
  const auto events = calendar_events(bytes, file, offset);
  if (!events) return events.problem();
  const auto tables = Tables::built_in();
  if (!tables) return tables.problem();
  const auto notifiable = Notifiable::from(*tables);
  if (!notifiable) return notifiable.problem();
  std::vector<ListedRow> rows;
  std::size_t own = 0, off = 0, to_come = 0, wordless = 0, utc = 0, recurring = 0, disease = 0;
  for (const CalendarEvent& event : *events) {
    const std::string words = all_words(event);
    const bool ours = event.uid.ends_with(own_uid);
    const bool called_off = event.status == "cancelled";
    own += ours;
    off += !ours && called_off;
    const bool counts = !ours && !called_off;
    to_come += counts && event.day > today;
    wordless += counts && event.day <= today && words.empty();
    if (!counts || event.day > today || words.empty()) continue;
    utc += event.from_utc;
    recurring += event.recurs;
    disease += notifiable->names_one(words);
    std::string site, colony;
    if (const auto found = book::find_site(state, event.location)) site = found->text();
    const std::string spoken = spoken_of(event.summary);
    if (const auto found = book::find_colony(state, spoken))
      colony = found->text();
    else if (const auto place = book::find_site(state, spoken))
      site = place->text();
    rows.push_back({event.line,
                    {event.uid, event.day.iso(), event.hour ? number_text(*event.hour) : "",
                     event.last_day ? event.last_day->iso() : "",
                     event.end_hour ? number_text(*event.end_hour) : "", event.summary, event.description,
                     event.location, event.categories, event.status, words, site, colony},
                    event.hour});
  }
  std::vector<std::string> columns = {"uid",     "day",         "hour",     "last_day",   "end_hour",
                                      "summary", "description", "location", "categories", "status",
                                      "text",    "site",        "colony"};
  const std::size_t made_up = columns.size();
  EventRows out{ListedRows(file, std::move(columns), made_up, std::move(rows)), {}};
  count_out(out.oddities, own, "left out: dates that beegarth's own calendar wrote");
  count_out(out.oddities, off, "left out: called off");
  count_out(out.oddities, to_come, "left out: still to come on " + today.iso());
  count_out(out.oddities, wordless, "left out: without a word in it");
  count_out(out.oddities, utc,
            "told in UTC and taken as " + number_text(offset) +
                " h ahead of it, the clock "
                "of the sites");
  count_out(out.oddities, disease,
            "that may tell of a notifiable disease, kept as a note: nothing is made suspect by it; "
            "enter the sign or the report, and tell the bee inspector");
  count_out(out.oddities, recurring, "said to recur: the first day alone is taken");
  return out;
}

}  // namespace beegarth::garth
