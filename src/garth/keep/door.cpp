#include "garth/keep/door.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "entries/fields.hpp"
#include "work/need_keys.hpp"

namespace beegarth::garth {
namespace {

// Unicode's White_Space as far as keyboards have it, and the marks that take no room.
constexpr auto blanks = std::to_array<std::string_view>(
    {" ",      "\t",     "\n",     "\r",     "\v",     "\f",     "\u00a0", "\u1680", "\u2000", "\u2001",
     "\u2002", "\u2003", "\u2004", "\u2005", "\u2006", "\u2007", "\u2008", "\u2009", "\u200a", "\u200b",
     "\u200c", "\u200d", "\u2028", "\u2029", "\u202f", "\u205f", "\u2060", "\u3000", "\ufeff"});

bool is_blank(std::string_view text) {
  while (!text.empty()) {
    const auto one = std::find_if(blanks.begin(), blanks.end(),
                                  [&](std::string_view blank) { return text.starts_with(blank); });
    if (one == blanks.end()) return false;
    text.remove_prefix(one->size());
  }
  return true;
}

// What is printed inside a line elsewhere: on labels, in registers, in reasons, as the name of a file.
constexpr auto on_one_line = std::to_array<std::string_view>(
    {"name", "plant", "product", "batch", "type", "stand", "place", "file_name", "supplier", "buyer",
     "breeder", "owner", "currency", "country", "number", "trait", "unit", "table", "row"});

struct TextFinder : entries::FieldsPassedBy {
  using FieldsPassedBy::id;
  using FieldsPassedBy::text;
  std::optional<Problem> fault;

  void text(const char* name, const std::string& value, bool required) {
    look(name, value, required);
    keep_to_a_line(name, value);
  }
  void text(const char* name, const entries::Text& value) {
    if (value) keep_to_a_line(name, *value);
  }
  template <class T>
  void id(const char* name, const Id<T>& value, bool required) {
    look(name, value.text(), required);
  }

 private:
  void look(const char* name, const std::string& value, bool required) {
    if (required && !fault && is_blank(value))
      fault = bad_input(std::string(name) + " is blank", name, "say it in words");
  }
  void keep_to_a_line(const char* name, const std::string& value) {
    const auto takes_no_room = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
    if (fault || std::none_of(value.begin(), value.end(), takes_no_room)) return;
    if (std::find(on_one_line.begin(), on_one_line.end(), name) != on_one_line.end())
      fault = bad_input(std::string(name) + " holds a line break, a tab or another control character", name,
                        "write it on one line, in letters");
  }
};

// ---- what is likelier a slip than the truth ----
bool is_number_in(const std::string& text, double low, double high) {
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  return end != text.c_str() && *end == '\0' && value >= low && value <= high;
}

struct SettingTaken {
  std::string_view name;
  const char* what;
  bool (*takes)(const std::string& value);
};
constexpr auto anything = [](const std::string&) { return true; };
constexpr auto settings = std::to_array<SettingTaken>({
    {"country", "a country's name, or general", anything},
    {"emergency_number", "the digits to dial",
     [](const std::string& value) {
       return !value.empty() && value.find_first_not_of("0123456789+ ") == std::string::npos;
     }},
    {"keeper", "a name", anything},
    {"label_address", "an address", anything},
    {"label_infant_caution", "yes, or nothing",
     [](const std::string& value) { return value.empty() || value == "yes" || value == "no"; }},
    {"label_name", "a name", anything},
    {"label_origin", "a country", anything},
    {"people", "a whole number from 1 to 10",
     [](const std::string& value) {
       return is_number_in(value, 1, 10) && value.find_first_not_of("0123456789") == std::string::npos;
     }},
    {"price_per_hour", "a number from 0 to 1000",
     [](const std::string& value) { return is_number_in(value, 0, 1000); }},
    {"today", "a day as 2026-05-03, or nothing",
     [](const std::string& value) { return value.empty() || Date::parse(value).has_value(); }},
});

Outcome likely(const entries::MiteCount& count) {
  // from memory: colonies about to die of mites carry one or two on a bee; none carries three on each.
  constexpr int most_mites_on_a_bee = 3;
  if (!count.bees || count.mites <= most_mites_on_a_bee * *count.bees) return Done{};
  return bad_input("more than three mites on every bee", "mites",
                   "check that mites and bees are not swapped");
}
Outcome likely(const entries::Weather& weather) {
  if (!weather.gust_m_s || !weather.wind_m_s || *weather.gust_m_s >= *weather.wind_m_s) return Done{};
  return bad_input("the gusts are weaker than the wind", "gust_m_s", "swap them or check the units");
}
Outcome likely(const entries::Planted& planted) {
  if (planted.count > 0) return Done{};
  return bad_input("nothing was planted", "count", "say how many");
}
// More than any comb holds; the same limit as that of a hive's own figure.
Outcome likely(const entries::Harvest& harvest) {
  if (!harvest.combs || harvest.kg <= *harvest.combs * entries::limits::kg_per_comb.high) return Done{};
  return bad_input(
      "so much honey is in no " + std::to_string(*harvest.combs) + (*harvest.combs == 1 ? " comb" : " combs"),
      "kg", "check kg and combs");
}
// Whom it went to matters: that one takes over its signs and its combs.
Outcome likely(const entries::ColonyEnded& ended) {
  if (ended.how != entries::Ending::united) return Done{};
  return bad_input("it is not said with which colony it was united", "how",
                   "enter unite, which ends the one and names the other");
}
Outcome likely(const entries::Setting& setting) {
  const auto* const found = std::find_if(settings.begin(), settings.end(),
                                         [&](const SettingTaken& one) { return setting.name == one.name; });
  if (found == settings.end()) {
    std::string all;
    for (const SettingTaken& one : settings) all += (all.empty() ? "" : ", ") + std::string(one.name);
    return bad_input("nothing asks for a setting '" + setting.name.substr(0, 60) + "'", "name",
                     "use one of: " + all);
  }
  if (found->takes(setting.value)) return Done{};
  return bad_input("'" + setting.value.substr(0, 60) + "' is no value of " + setting.name, "value",
                   std::string("give ") + found->what);
}
Outcome likely(const entries::NeedAnswered& answer) {
  return work::sound_need_key(answer.need);
}
template <class Other>
Outcome likely(const Other&) {
  return Done{};
}

struct YearFinder {
  Date happened;
  std::optional<Problem> fault;
  void look(const char* field, const entries::Count& year) {
    if (year && *year > happened.year())
      fault = bad_input("a queen of " + std::to_string(*year) + " has not hatched by " + happened.iso(),
                        field, "check the year and the day");
  }
  void operator()(const entries::ColonyBegan& began) { look("queen_year", began.queen_year); }
  void operator()(const entries::Queen& queen) { look("year", queen.year); }
  void operator()(const entries::QueenBegan& queen) { look("year", queen.year); }
  template <class Other>
  void operator()(const Other&) {}
};

}  // namespace

Outcome fit_for_the_door(const entries::Payload& payload, Date happened) {
  TextFinder finder;
  entries::visit_fields_of(finder, payload);
  if (finder.fault) return *finder.fault;
  if (Outcome so = std::visit([](const auto& said) { return likely(said); }, payload); !so) return so;
  const auto* answer = std::get_if<entries::NeedAnswered>(&payload);
  if (answer && answer->until && *answer->until < happened)
    return bad_input("it is put off until " + answer->until->iso() + ", before the day it is answered on, " +
                         happened.iso(),
                     "until", "give a later day");
  YearFinder years{happened, {}};
  std::visit([&](const auto& said) { years(said); }, payload);
  if (years.fault) return *years.fault;
  const auto* combs = std::get_if<entries::Combs>(&payload);
  if (combs && combs->drawn_year && *combs->drawn_year > happened.year())
    return bad_input("the combs were drawn in " + std::to_string(*combs->drawn_year) +
                         ", after the day they are entered for, " + happened.iso(),
                     "drawn_year", "check the year and the day");
  return Done{};
}

}  // namespace beegarth::garth
