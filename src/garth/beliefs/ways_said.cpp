#include "garth/beliefs/ways_said.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <regex>

#include "entries/fields.hpp"
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

std::string number_in_words(double value) {
  return nlohmann::json(value == std::floor(value) ? nlohmann::json(static_cast<long long>(value))
                                                   : nlohmann::json(value))
      .dump();
}

// The field that holds an amount, with its limits.
struct FieldOf : entries::FieldsPassedBy {
  using FieldsPassedBy::count;
  using FieldsPassedBy::number;
  explicit FieldOf(double wanted) : amount(wanted) {}
  double amount;
  std::string name;
  entries::Limits limits{0, 0, ""};

  void number(const char* field, double value, entries::Limits l) { look(field, value, l); }
  void number(const char* field, const entries::Number& value, entries::Limits l) {
    if (value) look(field, *value, l);
  }
  void count(const char* field, int value, entries::Limits l) { look(field, value, l); }
  void count(const char* field, const entries::Count& value, entries::Limits l) {
    if (value) look(field, *value, l);
  }

 private:
  void look(const char* field, double value, entries::Limits l) {
    if (!name.empty() || value != amount) return;
    name = field;
    limits = l;
  }
};

// Where the words are a deed as soon as one amount is a small one, it was that amount.
std::optional<Problem> amount_beyond(const Session& session, const std::string& name,
                                     const std::string& words, Date day) {
  static const std::regex amount(R"(-?\d+([.,]\d+)?)");
  for (std::sregex_iterator at(words.begin(), words.end(), amount), end; at != end; ++at) {
    const std::string typed = at->str(), after = at->suffix().str();
    constexpr auto small = std::to_array<std::string_view>({"2", "3", "5", "7"});
    const auto other = std::find_if(small.begin(), small.end(), [&](std::string_view one) {
      return words.find(one) == std::string::npos || typed.find(one) != std::string::npos;
    });
    if (other == small.end()) continue;
    std::string line = name + ": ";
    line += words.substr(0, static_cast<std::size_t>(at->position()));
    line += *other;
    line += after;
    const auto reading = entries::read_note(line, names_for_notes(session.state), day);
    if (!reading || !reading->questions.empty() || !reading->left_as_text.empty()) continue;
    for (const auto& entry : reading->entries) {
      FieldOf field(other->front() - '0');
      entries::visit_fields_of(field, entry.payload);
      if (field.name.empty()) continue;
      std::string unit(field.limits.unit);
      return bad_input("'" + typed.substr(0, 40) + "' is out of range in '" + words.substr(0, 60) + "'",
                       "WAY",
                       "give " + number_in_words(field.limits.low) + " to " +
                           number_in_words(field.limits.high) + (unit.empty() ? "" : " " + unit));
    }
  }
  return std::nullopt;
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
  const bool unread = !reading->left_as_text.empty() || deeds.empty();
  if (unread)
    if (auto beyond = amount_beyond(session, name, words, day)) return *std::move(beyond);
  if (unread)
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
  constexpr std::size_t longest = 500;
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
    if (ways > most_ways)
      return bad_input("that is more than " + std::to_string(most_ways) + " ways", "WAY",
                       "take a longer step or fewer days");
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
