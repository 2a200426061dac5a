#include "entries/entry.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "entries/fields.hpp"

namespace beegarth::entries {
namespace {

constexpr std::size_t most_in_a_list = 200;

// In the order of the variant.
constexpr auto kind_names = std::to_array<std::string_view>({"site",
                                                             "site_closed",
                                                             "travel",
                                                             "hive",
                                                             "colony_began",
                                                             "colony_moved",
                                                             "colony_ended",
                                                             "queen",
                                                             "inspection",
                                                             "mite_count",
                                                             "weight",
                                                             "feed",
                                                             "treatment",
                                                             "room",
                                                             "swarmed",
                                                             "split",
                                                             "unite",
                                                             "harvest",
                                                             "need_answered",
                                                             "weather",
                                                             "normals",
                                                             "forage",
                                                             "working_hours",
                                                             "kit",
                                                             "setting",
                                                             "note",
                                                             "table_override",
                                                             "removed",
                                                             "cleared",
                                                             "land",
                                                             "ground_object",
                                                             "stand",
                                                             "queen_began",
                                                             "queen_mated",
                                                             "score",
                                                             "quarantine",
                                                             "stock_aim",
                                                             "sign",
                                                             "sample",
                                                             "dead_colony",
                                                             "treatment_ended",
                                                             "transfer",
                                                             "urgent",
                                                             "extraction",
                                                             "lot",
                                                             "jars",
                                                             "purchase",
                                                             "sale",
                                                             "medicine_disposed",
                                                             "part",
                                                             "part_now",
                                                             "assembled",
                                                             "combs",
                                                             "combs_moved",
                                                             "wax",
                                                             "build_step",
                                                             "patch",
                                                             "planted",
                                                             "plant_care",
                                                             "bloom",
                                                             "cut",
                                                             "flower_watch",
                                                             "nest",
                                                             "reported",
                                                             "keeper_rule",
                                                             "comparison",
                                                             "photo"});
static_assert(kind_names.size() == kind_count);

template <std::size_t I = 0>
std::optional<Payload> payload_at(std::size_t index) {
  if constexpr (I < kind_count) {
    if (index == I) return Payload(std::in_place_index<I>);
    return payload_at<I + 1>(index);
  } else {
    return std::nullopt;
  }
}

template <class Wanted>
struct FirstId : FieldsPassedBy {
  using FieldsPassedBy::id;
  Wanted found;
  void take(const Wanted& id) {
    if (found.empty()) found = id;
  }
  void id(const char*, const Wanted& value, bool) { take(value); }
  void id(const char*, const std::optional<Wanted>& value) {
    if (value) take(*value);
  }
};

template <class Wanted>
Wanted first_id(const Payload& payload) {
  FirstId<Wanted> visitor;
  visit_fields_of(visitor, payload);
  return visitor.found;
}

std::string plain(double value) {
  if (std::abs(value) >= 1e15) return value < 0 ? "below -1e15" : "above 1e15";
  std::string text = std::to_string(value);
  text.erase(text.find_last_not_of('0') + 1);
  if (!text.empty() && text.back() == '.') text.pop_back();
  return text;
}

class Checker {
 public:
  std::optional<Problem> fault;

  void number(const char* name, const double& value, Limits limits) {
    if (!std::isfinite(value)) return say(name, "is not a finite number", "give a number");
    if (value >= limits.low && value <= limits.high) return;
    std::string unit = *limits.unit ? std::string(" ") + limits.unit : "";
    say(name, "is " + plain(value) + unit, "give " + plain(limits.low) + " to " + plain(limits.high) + unit);
  }
  void number(const char* name, const Number& value, Limits limits) {
    if (value) number(name, *value, limits);
  }
  void count(const char* name, const int& value, Limits limits) {
    number(name, static_cast<double>(value), limits);
  }
  void count(const char* name, const Count& value, Limits limits) {
    if (value) count(name, *value, limits);
  }
  template <class T>
  void id(const char* name, const Id<T>& value, bool required) {
    if (required && value.empty()) say(name, "is missing", "give it");
    check_text(name, value.text(), 100);
  }
  template <class T>
  void id(const char* name, const std::optional<Id<T>>& value) {
    if (value) id(name, *value, true);
  }
  void text(const char* name, const std::string& value, bool required) {
    if (required && value.empty()) say(name, "is missing", "give it");
    check_text(name, value, 20000);
  }
  void text(const char* name, const Text& value) {
    if (value) check_text(name, *value, 20000);
  }
  template <class... Rest>
  void flag(const Rest&...) {}
  template <class E>
  void choice(const char* name, const E& value) {
    if (static_cast<std::size_t>(value) >= Words<E>::list.size())
      say(name, "is no known choice", "see the schema");
  }
  template <class E>
  void choice(const char* name, const std::optional<E>& value) {
    if (value) choice(name, *value);
  }
  void date(const char*, const std::optional<Date>&) {}
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>& value) {
    if (value.size() > most_in_a_list)
      say(name, "names more than " + std::to_string(most_in_a_list), "make two entries of it");
    for (const Id<T>& one : value) id(name, one, true);
  }
  void words(const char* name, const std::vector<std::string>& value) {
    for (const std::string& word : value) {
      if (std::find(signs_of_health.begin(), signs_of_health.end(), word) == signs_of_health.end()) {
        say(name, "has no sign '" + word + "'", "use one of the listed signs or a remark");
      }
    }
  }

 private:
  void say(const char* name, const std::string& what, const std::string& remedy) {
    if (!fault) fault = bad_input(std::string(name) + " " + what, name, remedy);
  }
  void check_text(const char* name, const std::string& value, std::size_t most) {
    if (value.size() > most) say(name, "is longer than " + std::to_string(most) + " bytes", "shorten it");
    if (value.find('\0') != std::string::npos) say(name, "holds a zero byte", "remove it");
    // Such bytes would speak to the terminal that the text is shown on; a line end or a tab is text.
    const bool steers = std::any_of(value.begin(), value.end(), [](unsigned char byte) {
      return (byte < 0x20 && byte != '\n' && byte != '\t' && byte != '\r') || byte == 0x7f;
    });
    if (steers) say(name, "holds a control character", "remove it");
  }
};

// ---- rules between fields ----
std::optional<Problem> rule_between(const MiteCount& m) {
  if (m.method == MiteMethod::board && !m.days)
    return bad_input("a board count has no days", "days", "say how many days the board lay");
  if (m.board_share && *m.board_share <= 0)
    return bad_input("none of the board was counted", "board_share", "give a share above 0");
  if ((m.method == MiteMethod::sugar_roll || m.method == MiteMethod::wash) && !m.bees) {
    return bad_input("a roll or wash has no bees", "bees", "say how many bees were examined");
  }
  if (m.method == MiteMethod::brood) {
    if (!m.cells) return bad_input("a brood count has no cells", "cells", "say how many cells were opened");
    if (m.mites > *m.cells)
      return bad_input("more cells infested than opened", "mites", "check the two numbers");
  }
  return std::nullopt;
}
std::optional<Problem> rule_between(const WorkingHours& w) {
  if (w.weekday.has_value() == w.date.has_value()) {
    return bad_input("working hours need a weekday or a date", "weekday", "give one of the two");
  }
  if (w.end_hour < w.start_hour) return bad_input("the hours end before they start", "end_hour", "swap them");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Weather& w) {
  if (w.temperature_min_C && w.temperature_max_C && *w.temperature_min_C > *w.temperature_max_C) {
    return bad_input("the minimum is above the maximum", "temperature_min_C", "swap them or check the units");
  }
  return std::nullopt;
}
std::optional<Problem> rule_between(const Unite& u) {
  if (u.colony == u.from)
    return bad_input("a colony cannot be united with itself", "from", "name the other one");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Split& s) {
  if (s.colony == s.into) return bad_input("a split needs a new colony", "into", "give it a key of its own");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Sign& s) {
  if (s.signs.empty()) return bad_input("no sign is named", "signs", "give at least one of the listed signs");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Quarantine& q) {
  if (q.lifted.value_or(false) == q.until.has_value())
    return bad_input("a quarantine is either kept until a day or lifted", "until", "give one of the two");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Urgent& u) {
  if (!u.site && !u.colony && !u.place)
    return bad_input("nobody could find it", "site", "give the site, the colony or the place");
  return std::nullopt;
}
std::optional<Problem> rule_between(const QueenBegan& q) {
  if (q.mother && *q.mother == q.queen)
    return bad_input("a queen cannot be her own mother", "mother", "name the other queen");
  return std::nullopt;
}
std::optional<Problem> rule_between(const QueenMated& q) {
  if (q.drones && q.how != MatingKind::inseminated)
    return bad_input("drones are only counted where a queen is inseminated", "drones", "leave it out");
  return std::nullopt;
}
std::optional<Problem> rule_between(const CombsMoved& c) {
  if ((c.to == CombsGo::on_hive) != c.colony.has_value())
    return bad_input("combs on a hive need their colony, and no others do", "colony",
                     "give it, or leave it out");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Lot& l) {
  if (l.refractive_index && !l.temperature_C)
    return bad_input("a refractive index without its temperature says nothing", "temperature_C",
                     "give the temperature of the honey when it was read");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Assembled& a) {
  if (a.parts.empty()) return bad_input("no part is named", "parts", "name the parts that make up the hive");
  return std::nullopt;
}
std::optional<Problem> rule_between(const Comparison& c) {
  for (const ColonyId& one : c.first) {
    if (std::find(c.second.begin(), c.second.end(), one) != c.second.end())
      return bad_input("'" + one.text() + "' stands on both sides", "second", "name it once");
  }
  return std::nullopt;
}
std::optional<Problem> rule_between(const Photo& p) {
  const bool hex =
      p.sha256.size() == 64 && p.sha256.find_first_not_of("0123456789abcdef") == std::string::npos;
  if (!hex) return bad_input("that is no SHA-256", "sha256", "give its 64 hexadecimal digits in lower case");
  return std::nullopt;
}
template <class P>
std::optional<Problem> rule_between(const P&) {
  return std::nullopt;
}

}  // namespace

std::string_view kind_name(const Payload& payload) {
  return kind_names[payload.index()];
}
std::string_view kind_name_at(std::size_t index) {
  return kind_names[index];
}

std::optional<Payload> empty_payload(std::string_view kind) {
  const auto at = std::find(kind_names.begin(), kind_names.end(), kind);
  return payload_at(static_cast<std::size_t>(at - kind_names.begin()));
}

ColonyId colony_of(const Payload& payload) {
  return first_id<ColonyId>(payload);
}
SiteId site_of(const Payload& payload) {
  return first_id<SiteId>(payload);
}
HiveId hive_of(const Payload& payload) {
  return first_id<HiveId>(payload);
}

Outcome validate(const Payload& payload) {
  Checker checker;
  visit_fields_of(checker, payload);
  if (checker.fault) return *checker.fault;
  if (auto broken = std::visit([](const auto& p) { return rule_between(p); }, payload))
    return *std::move(broken);
  return Done{};
}

}  // namespace beegarth::entries
