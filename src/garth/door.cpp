#include "garth/door.hpp"

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
    if (fault || value.find_first_of("\n\r\t") == std::string::npos) return;
    if (std::find(on_one_line.begin(), on_one_line.end(), name) != on_one_line.end())
      fault = bad_input(std::string(name) + " holds a line break or a tab", name, "write it on one line");
  }
};

// ---- what is likelier a slip than the truth ----
constexpr auto settings = std::to_array<std::string_view>(
    {"country", "emergency_number", "keeper", "label_address", "label_infant_caution", "label_name",
     "label_origin", "people", "price_per_hour", "today"});

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
  if (std::find(settings.begin(), settings.end(), setting.name) != settings.end()) return Done{};
  std::string all;
  for (const std::string_view name : settings) all += (all.empty() ? "" : ", ") + std::string(name);
  return bad_input("nothing asks for a setting '" + setting.name.substr(0, 60) + "'", "name",
                   "use one of: " + all);
}
Outcome likely(const entries::NeedAnswered& answer) {
  return work::sound_need_key(answer.need);
}
template <class Other>
Outcome likely(const Other&) {
  return Done{};
}

}  // namespace

Outcome fit_for_the_door(const entries::Payload& payload, Date happened) {
  TextFinder finder;
  entries::visit_fields_of(finder, payload);
  if (finder.fault) return *finder.fault;
  if (Outcome so = std::visit([](const auto& said) { return likely(said); }, payload); !so) return so;
  const auto* combs = std::get_if<entries::Combs>(&payload);
  if (combs && combs->drawn_year && *combs->drawn_year > happened.year())
    return bad_input("the combs were drawn in " + std::to_string(*combs->drawn_year) +
                         ", after the day they are entered for, " + happened.iso(),
                     "drawn_year", "check the year and the day");
  return Done{};
}

}  // namespace beegarth::garth
