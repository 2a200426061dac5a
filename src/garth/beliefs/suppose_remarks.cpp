#include "garth/beliefs/suppose_remarks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "garth/keep/remarks.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t median = 3;  // facts::fan_levels

struct Hunger {
  Date by;
  double short_kg = 0;
};

// The first morning within a fortnight on which half of the courses are short of stores if nothing is done.
std::optional<Hunger> hunger_if_left(const Session& session, const SupposeAnswer& answer) {
  constexpr int near = 14;
  const double short_kg = session.tables["observation"].value("stores_short_kg").value();
  for (std::size_t w = 0; w < answer.ways.size(); ++w) {
    if (!answer.ways[w].deeds.empty()) continue;
    for (const facts::Fan& fan : answer.supposed.ways[w].fans) {
      if (fan.quantity != "stores_kg") continue;
      for (std::size_t day = 0; day < fan.dates.size() && fan.dates[day] <= answer.supposed.today + near;
           ++day)
        if (fan.levels[day][median] < short_kg) return Hunger{fan.dates[day], short_kg};
    }
  }
  return std::nullopt;
}

// Whether half of the courses have hardly a bee this morning.
bool believed_dead(const Session& session, const SupposeAnswer& answer) {
  const double handful = session.tables["colony"].value("too_few_bees").value();
  for (const facts::Fan& fan : answer.supposed.ways.front().fans)
    if (fan.quantity == "bees" && !fan.levels.empty()) return fan.levels.front()[median] < handful;
  return false;
}

std::string hunger_words(const Hunger& hunger, Date today) {
  return fmt::format(
      "short of food: if nothing is done half of the courses have less than {:g} kg of stores {}; a colony "
      "that "
      "hungers comes to more harm than is reckoned here, so feed first and compare afterwards",
      hunger.short_kg, hunger.by <= today ? "today" : "by " + hunger.by.iso());
}

std::vector<entries::Entry> entries_of_way(const belief::Way& way) {
  std::vector<entries::Entry> list;
  for (const belief::Intended& deed : way.deeds) {
    entries::Entry entry;
    entry.id = EntryId("way-" + std::to_string(list.size()));
    entry.happened = deed.date;
    entry.payload = deed.payload;
    list.push_back(std::move(entry));
  }
  std::stable_sort(list.begin(), list.end(),
                   [](const entries::Entry& a, const entries::Entry& b) { return a.happened < b.happened; });
  return list;
}

// Once, however many days of a range it is true of.
struct SaidOnce {
  std::string words, text, last_way;
  int ways_more = 0;
};

}  // namespace

Expected<std::vector<std::string>> remarks_on_ways(const Session& session, const SupposeAnswer& answer) {
  std::vector<std::string> list;
  std::vector<SaidOnce> said;
  if (believed_dead(session, answer))
    list.emplace_back("it is believed dead, or as good as dead, already: look first");
  else if (const auto hunger = hunger_if_left(session, answer))
    list.push_back(hunger_words(*hunger, answer.supposed.today));
  for (const belief::Way& way : answer.ways) {
    const auto remarks = remarks_on(session, entries_of_way(way));
    if (!remarks) return remarks.problem();
    for (const Remark& remark : *remarks) {
      if (remark.source == rule_on_days) continue;  // a way lies ahead by its nature
      const auto same = std::find_if(said.begin(), said.end(),
                                     [&](const SaidOnce& one) { return one.words == remark.words; });
      if (same == said.end())
        said.push_back({remark.words, way.name + ": " + remark.text(), way.name, 0});
      else if (same->last_way != way.name)
        same->last_way = way.name, ++same->ways_more;
    }
  }
  for (const SaidOnce& one : said)
    list.push_back(one.text +
                   (one.ways_more == 0 ? "" : fmt::format("; and so for {} ways more", one.ways_more)));
  return list;
}

}  // namespace beegarth::garth
