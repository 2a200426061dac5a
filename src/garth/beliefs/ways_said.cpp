#include "garth/beliefs/ways_said.hpp"

#include <algorithm>
#include <charconv>
#include <optional>
#include <regex>

#include "garth/note.hpp"

namespace beegarth::garth {
namespace {

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

std::vector<std::string> parts_of(std::string_view text) {
  std::vector<std::string> parts;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(';', at), text.size());
    parts.push_back(trimmed(text.substr(at, end - at)));
    at = end + 1;
  }
  return parts;
}

int whole(const std::string& digits) {
  int number = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return number;
}

struct When {
  std::vector<Date> days;  // one, or those of a range
};

// "2026-08-10", "today", "in 7 days", "A to B every 7 days"
Expected<When> when_said(const std::string& text, Date today) {
  static const std::regex range(R"((\S+) to (\S+) every (\d{1,3}) days?)"), later(R"(in (\d{1,3}) days?)");
  std::smatch found;
  if (text == "today") return When{{today}};
  if (std::regex_match(text, found, later)) return When{{today + whole(found[1])}};
  if (std::regex_match(text, found, range)) {
    const auto from = found[1] == "today" ? Expected<Date>(today) : Date::parse(found[1].str());
    if (!from) return from.problem();
    const auto to = Date::parse(found[2].str());
    if (!to) return to.problem();
    const int step = whole(found[3]);
    if (step < 1 || *to < *from)
      return bad_input("'" + text + "' holds no day", "WAY", "like 2026-08-01 to 2026-09-05 every 7 days");
    When when;
    for (Date day = *from; day <= *to; day = day + step) when.days.push_back(day);
    return when;
  }
  const auto day = Date::parse(text);
  if (!day)
    return bad_input("'" + text.substr(0, 60) + "' is no day", "WAY",
                     "begin with a day and a colon: 2026-08-10: treated with thymol for 28 days");
  return When{{*day}};
}

struct Said {
  When when;
  std::string words;
};

Expected<Said> said_in(const std::string& part, Date today) {
  const std::size_t colon = part.find(':');
  if (colon == std::string::npos)
    return bad_input("'" + part.substr(0, 60) + "' says no day", "WAY",
                     "begin with a day and a colon: 2026-08-10: treated with thymol for 28 days");
  auto when = when_said(trimmed(std::string_view(part).substr(0, colon)), today);
  if (!when) return when.problem();
  if (when->days.front() < today)
    return bad_input(when->days.front().iso() + " is past", "WAY", "give a day from " + today.iso() + " on");
  return Said{*std::move(when), trimmed(std::string_view(part).substr(colon + 1))};
}

// The deeds that the words mean on a day.
Expected<std::vector<belief::Intended>> deeds_on(const Session& session, const ColonyId& colony,
                                                 const std::string& words, Date day) {
  const std::string& name = session.state.colonies.at(colony).began.name;
  const auto reading = entries::read_note(name + ": " + words, names_for_notes(session.state), day);
  if (!reading) return reading.problem();
  if (!reading->questions.empty())
    return bad_input("'" + words + "' leaves something open: " + reading->questions.front(), "WAY",
                     "say it as docs/note.md does");
  std::vector<belief::Intended> deeds;
  for (const auto& entry : reading->entries)
    if (!std::holds_alternative<entries::Note>(entry.payload)) deeds.push_back({day, entry.payload});
  if (!reading->left_as_text.empty() || deeds.empty())
    return bad_input("'" + (reading->left_as_text.empty() ? words : reading->left_as_text) +
                         "' is not understood as a deed",
                     "WAY",
                     "say it as a note would: fed 4 kg syrup, treated with thymol for 28 days, super on, "
                     "split into Nova in Box 2");
  return deeds;
}

std::string name_of_part(const Said& said, Date day) {
  return day.iso() + ": " + said.words;
}

}  // namespace

Expected<std::vector<belief::Way>> ways_said(const Session& session, const ColonyId& colony,
                                             std::string_view text) {
  constexpr std::size_t longest = 500, most = 60;
  if (text.size() > longest) return bad_input("the way is longer than 500 bytes", "WAY", "say it shorter");
  if (std::any_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < ' '; }))
    return bad_input("a way is one line", "WAY", "give each way for itself, its deeds with ; between");
  if (trimmed(text) == "nothing") return std::vector<belief::Way>{{"nothing", {}}};
  std::vector<Said> parts;
  std::size_t ways = 1;
  for (const std::string& part : parts_of(text)) {
    auto said = said_in(part, session.today);
    if (!said) return said.problem();
    ways *= said->when.days.size();
    if (ways > most) return bad_input("that is more than 60 ways", "WAY", "take a longer step or fewer days");
    parts.push_back(*std::move(said));
  }
  std::vector<belief::Way> list{{}};
  for (const Said& part : parts) {
    std::vector<belief::Way> longer;
    for (const belief::Way& begun : list) {
      for (const Date day : part.when.days) {
        auto deeds = deeds_on(session, colony, part.words, day);
        if (!deeds) return deeds.problem();
        belief::Way way = begun;
        way.name += (way.name.empty() ? "" : "; ") + name_of_part(part, day);
        way.deeds.insert(way.deeds.end(), deeds->begin(), deeds->end());
        longer.push_back(std::move(way));
      }
    }
    list = std::move(longer);
  }
  return list;
}

}  // namespace beegarth::garth
