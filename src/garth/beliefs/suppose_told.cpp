// An answer about suppositions as JSON (the shape in src/http/openapi.json) and as text for a terminal.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "garth/beliefs/outlook_json.hpp"
#include "garth/beliefs/suppose.hpp"
#include "garth/entry_json.hpp"
#include "garth/plan/plan_json.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

double round_to(double value, double parts) {
  return std::round(value * parts) / parts;
}

json odds_in_json(const facts::Odds& odds) {
  return {{"value", round_to(odds.value, 1e4)},
          {"low", round_to(odds.low, 1e4)},
          {"high", round_to(odds.high, 1e4)}};
}

// Every seventh day, and the last.
facts::Fan thinned(const facts::Fan& fan) {
  facts::Fan thin{fan.quantity, fan.unit, {}, {}};
  for (std::size_t day = 0; day < fan.dates.size(); ++day) {
    if (day % 7 != 0 && day + 1 != fan.dates.size()) continue;
    thin.dates.push_back(fan.dates[day]);
    thin.levels.push_back(fan.levels[day]);
  }
  return thin;
}

json way_json(const SupposeAnswer& answer, const belief::WayJudged& judged, const Session& session) {
  const belief::Way& way = answer.ways[judged.way];
  json deeds = json::array(), fans = json::array();
  for (const belief::Intended& deed : way.deeds)
    deeds.push_back({{"date", deed.date.iso()}, {"what", read_back(deed.payload, session.state)}});
  for (const facts::Fan& fan : answer.supposed.ways[judged.way].fans) fans.push_back(fan_json(thinned(fan)));
  return {{"name", way.name},
          {"deeds", std::move(deeds)},
          {"deeds_kg", round_to(judged.deeds_kg, 100)},
          {"cost_kg", round_to(judged.cost_kg, 100)},
          {"cost_low_kg", round_to(judged.cost_low_kg, 100)},
          {"cost_high_kg", round_to(judged.cost_high_kg, 100)},
          {"died", odds_in_json(judged.died)},
          {"swarmed", odds_in_json(judged.swarmed)},
          {"surplus_kg", round_to(judged.surplus_kg, 100)},
          {"least_stores_kg", round_to(judged.least_stores_kg, 100)},
          {"bees", std::round(judged.bees)},
          {"mites", std::round(judged.mites)},
          {"dearer_kg", round_to(judged.dearer_kg, 100)},
          {"dearer_low_kg", round_to(judged.dearer_low_kg, 100)},
          {"dearer_high_kg", round_to(judged.dearer_high_kg, 100)},
          {"dearer_in", round_to(judged.dearer_in, 1e4)},
          {"first_better", std::clamp(round_to(judged.first_better, 1e4), 0.0001, 0.9999)},  // never certain
          {"why", reasons_json(answer.supposed.ways[judged.way].why)},
          {"fans", std::move(fans)}};
}

// Never a bare 0 or 100 %: no count of courses shows that.
std::string odds_words(double share) {
  const double pct = share * 100;
  if (pct < 1) return "<1 %";
  if (pct > 99) return ">99 %";
  return fmt::format("{:.0f} %", pct);
}

// Never "-0.0".
double tenth(double kg) {
  return round_to(kg, 10) + 0.0;
}

std::string way_text(const SupposeAnswer& answer, const belief::WayJudged& judged, std::size_t place) {
  std::string text = fmt::format("\n{}. {}\n", place, answer.ways[judged.way].name);
  text += fmt::format(
      "   costs {:.1f} kg ({:.1f} to {:.1f}); dies {} ({} to {}), swarms {}; surplus {:.1f} kg, stores at "
      "the "
      "least {:.1f} kg; at the end, where it lives, {:.0f} bees, {:.0f} mites\n",
      tenth(judged.cost_kg), tenth(judged.cost_low_kg), tenth(judged.cost_high_kg),
      odds_words(judged.died.value), odds_words(judged.died.low), odds_words(judged.died.high),
      odds_words(judged.swarmed.value), judged.surplus_kg, judged.least_stores_kg, judged.bees, judged.mites);
  if (place > 1)
    text += fmt::format(
        "   {:.1f} kg dearer than the first on average ({:.1f} to {:.1f} in four courses of five), dearer in "
        "{} of "
        "the courses; that the first "
        "is "
        "better on average: {}\n",
        tenth(judged.dearer_kg), tenth(judged.dearer_low_kg), tenth(judged.dearer_high_kg),
        odds_words(judged.dearer_in), odds_words(judged.first_better));
  for (const facts::Reason& reason : answer.supposed.ways[judged.way].why)
    if (!reason.assumed) text += fmt::format("   why: {}\n", reason.text);
  return text;
}

constexpr const char* rests_on =
    "Prices: tables/choices.toml, tables/work.toml (colony_lost_kg, prime_swarm_kg, uniting_saved_kg), yours "
    "to "
    "change by table_override. Nothing else is done in all that time: no other feeding, room or treatment.";

}  // namespace

json suppose_json(const SupposeAnswer& answer, const Session& session) {
  json ways = json::array(), refused = json::array();
  for (const belief::WayJudged& judged : answer.ranked) ways.push_back(way_json(answer, judged, session));
  for (const RefusedWay& way : answer.refused)
    refused.push_back({{"name", way.name}, {"why", way.why.what}, {"remedy", way.why.remedy}});
  return {{"colony", answer.colony.text()},
          {"today", answer.supposed.today.iso()},
          {"until", answer.supposed.last.iso()},
          {"members", answer.supposed.weights.size()},
          {"effective_sample_size", round_to(answer.supposed.effective_sample_size, 10)},
          {"ways", std::move(ways)},
          {"refused", std::move(refused)},
          {"remarks", answer.remarks},
          {"rests_on", rests_on}};
}

std::string suppose_text(const SupposeAnswer& answer, const Session& session) {
  const std::string& name = session.state.colonies.at(answer.colony).began.name;
  std::string text = fmt::format(
      "{} from {} to {} in {} courses, the same weather and luck for each way. Costs in kg of honey, gains "
      "below nothing; in brackets 80 % of the courses (of odds: 80 % interval).\n",
      name, answer.supposed.today.iso(), answer.supposed.last.iso(), answer.supposed.weights.size());
  for (const std::string& remark : answer.remarks) text += fmt::format("Mind: {}\n", remark);
  for (std::size_t i = 0; i < answer.ranked.size(); ++i) text += way_text(answer, answer.ranked[i], i + 1);
  for (const RefusedWay& way : answer.refused)
    text += fmt::format("\nNot followed: {}\n   {}{}{}\n", way.name, way.why.what,
                        way.why.remedy.empty() ? "" : "; ", way.why.remedy);
  return text + "\n" + rests_on + "\n";
}

}  // namespace beegarth::garth
