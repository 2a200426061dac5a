#include "garth/exports/calendar.hpp"

#include <algorithm>
#include <cmath>

#include "entries/fields.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

class DayCollector {
 public:
  explicit DayCollector(const Session& session) : session_(session) {}

  std::vector<CalendarDay> collect() {
    for (const Entry& entry : session_.standing)
      std::visit([&](const auto& said) { take(entry, said); }, entry.payload);
    std::stable_sort(days_.begin(), days_.end(),
                     [](const auto& a, const auto& b) { return a.date < b.date; });
    return std::move(days_);
  }

 private:
  void add(const Entry& entry, const char* what, Date date, std::string summary,
           std::string description = {}) {
    days_.push_back({entry.id.text() + "-" + what, date, std::move(summary), std::move(description)});
  }
  void take(const Entry& entry, const entries::Treatment& treatment) {
    if (!treatment.days) return;
    const std::string name = colony_name(session_, treatment.colony);
    const std::string kind = key_in_words(entries::word_for(treatment.kind));
    const Date ends = entry.happened + static_cast<int>(std::ceil(*treatment.days));
    add(entry, "treatment", ends, name + ": " + kind + " ends",
        "Read the label: take out what is taken out, count mites afterwards.");
    const int withdrawal = static_cast<int>(std::ceil(treatment.withdrawal_days.value_or(0)));
    if (withdrawal > 0)
      add(entry, "withdrawal", ends + withdrawal, name + ": withdrawal after " + kind + " ends");
  }
  void take(const Entry& entry, const entries::Quarantine& quarantine) {
    if (quarantine.until)
      add(entry, "quarantine", *quarantine.until,
          colony_name(session_, quarantine.colony) + ": quarantine ends", quarantine.reason.value_or(""));
  }
  void take(const Entry& entry, const entries::Land& land) {
    const std::string name = site_name(session_, land.site);
    if (land.agreed_until)
      add(entry, "agreement", *land.agreed_until, name + ": the agreement ends", land.owner.value_or(""));
    if (land.insured_until)
      add(entry, "insurance", *land.insured_until, name + ": the insurance ends",
          land.insurance.value_or(""));
  }
  void take(const Entry& entry, const entries::NeedAnswered& answer) {
    if (answer.until)
      add(entry, "put-off", *answer.until, "put off until today: " + answer.need, answer.remark.value_or(""));
  }
  void take(const Entry& entry, const entries::Lot& lot) {
    if (lot.best_before)
      add(entry, "best-before", *lot.best_before, "lot " + lot.lot.text() + ": best before");
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  const Session& session_;
  std::vector<CalendarDay> days_;
};

// RFC 5545, 3.3.11: backslash, semicolon, comma and line ends are escaped.
std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\r') continue;
    if (c == '\n')
      out += "\\n";
    else if (c == '\\' || c == ';' || c == ',')
      (out += '\\') += c;
    else
      out += c;
  }
  return out;
}

// RFC 5545, 3.1: no line is longer than 75 bytes; what follows on begins with a space.
std::string folded_line(const std::string& line) {
  constexpr std::size_t longest = 75;
  std::string out;
  std::size_t at = 0, room = longest;
  while (line.size() - at > room) {
    std::size_t cut = at + room;
    while (cut > at + 1 && (static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U)
      --cut;  // not within a character
    out += line.substr(at, cut - at) + "\r\n ";
    at = cut;
    room = longest - 1;
  }
  return out + line.substr(at) + "\r\n";
}

std::string compact(Date date) {
  std::string text = date.iso();
  std::erase(text, '-');
  return text;
}

// RFC 5545, 3.3.5, form 1: local time without a zone.
std::string floating(Date date, double hour) {
  const int minutes = std::clamp(static_cast<int>(std::lround(hour * 60)), 0, 24 * 60 - 1);
  std::string clock = std::to_string(10000 + minutes / 60 * 100 + minutes % 60).substr(1);
  return compact(date) + "T" + clock + "00";
}

std::string when_text(const CalendarDay& day) {
  if (day.start_hour && day.end_hour)
    return "DTSTART:" + floating(day.date, *day.start_hour) +
           "\r\nDTEND:" + floating(day.date, *day.end_hour) + "\r\n";
  return "DTSTART;VALUE=DATE:" + compact(day.date) + "\r\nDTEND;VALUE=DATE:" + compact(day.date + 1) + "\r\n";
}

}  // namespace

std::vector<CalendarDay> calendar_days(const Session& session) {
  return DayCollector(session).collect();
}

std::string calendar_text(const std::vector<CalendarDay>& days, Date stamped) {
  std::string out =
      "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//beegarth//book//EN\r\nCALSCALE:GREGORIAN\r\n";
  for (const CalendarDay& day : days) {
    out += "BEGIN:VEVENT\r\n";
    out += folded_line("UID:" + escaped(day.uid) + "@beegarth");
    out += "DTSTAMP:" + compact(stamped) + "T000000Z\r\n";
    out += when_text(day);
    out += folded_line("SUMMARY:" + escaped(day.summary));
    if (!day.location.empty()) out += folded_line("LOCATION:" + escaped(day.location));
    if (!day.description.empty()) out += folded_line("DESCRIPTION:" + escaped(day.description));
    if (!day.start_hour) out += "TRANSP:TRANSPARENT\r\n";
    out += "END:VEVENT\r\n";
  }
  return out + "END:VCALENDAR\r\n";
}

}  // namespace beegarth::garth
