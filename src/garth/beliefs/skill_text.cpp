#include <fmt/format.h>

#include <cmath>

#include "garth/beliefs/skill.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

json comparison_json(const Comparison& c) {
  return {{"cases", c.cases},  {"colonies", c.colonies}, {"forecast", c.ours},      {"other", c.other},
          {"gain_low", c.low}, {"gain_high", c.high},    {"forecast_is", c.verdict}};
}

std::string figure(double x) {
  if (std::abs(x) < 5e-5) x = 0;  // never "-0.0000"
  return fmt::format("{:.{}f}", x, std::abs(x) >= 100 ? 0 : (std::abs(x) >= 1 ? 2 : 4));
}

std::string line(const char* against, const Comparison& c) {
  if (c.cases == 0) return {};
  return fmt::format(
      "    against {:<34} {:>9} : {:>9}  gain {} to {}  ({} cases, {} colonies)  forecast {}\n", against,
      figure(c.ours), figure(c.other), figure(c.low), figure(c.high), c.cases, c.colonies, c.verdict);
}

}  // namespace

json skill_json(const Skill& skill) {
  json groups = json::array();
  for (const SkillGroup& g : skill.groups) {
    json row{{"quantity", g.quantity},    {"lead", g.lead},
             {"cases", g.cases},          {"mean_seen", g.seen},
             {"mean_forecast", g.middle}, {"score", g.quantity == "alive" ? "brier" : "crps"}};
    if (g.quantity != "alive") row["covered_by_80_band"] = g.covered;
    if (g.last_value.cases > 0) row["last_value"] = comparison_json(g.last_value);
    if (g.others.cases > 0) row["other_colonies"] = comparison_json(g.others);
    if (g.growth.cases > 0) row["growth"] = comparison_json(g.growth);
    groups.push_back(std::move(row));
  }
  json cases = json::array();
  for (const SkillCase& c : skill.cases) {
    json row{{"colony", c.colony}, {"quantity", c.quantity}, {"from", c.from.iso()}, {"on", c.on.iso()},
             {"seen", c.seen},     {"forecast", c.middle},   {"score", c.ours}};
    if (c.quantity != "alive") row["inside_80_band"] = c.inside;
    if (c.last_value) row["last_value"] = *c.last_value;
    if (c.others) row["other_colonies"] = *c.others;
    if (c.growth) row["growth"] = *c.growth;
    cases.push_back(std::move(row));
  }
  return {{"today", skill.today.iso()}, {"groups", std::move(groups)}, {"cases", std::move(cases)}};
}

std::string skill_text(const Skill& skill) {
  std::string text =
      "Forecasts from the entries up to each look, held against the looks after it.\n"
      "Score: CRPS (alive: Brier), lower is better. Gain: mean of (other - forecast), 80 % interval over "
      "colonies.\n"
      "\"Other colonies\" know what the others turned out to have that day, which no forecast could.\n";
  for (const SkillGroup& g : skill.groups) {
    text += fmt::format("{}, {}: {} cases, mean seen {}, mean forecast {}", g.quantity, g.lead, g.cases,
                        figure(g.seen), figure(g.middle));
    text += g.quantity == "alive" ? "\n" : fmt::format(", 80 % band holds {:.0f} %\n", 100 * g.covered);
    text += line("the last value", g.last_value);
    text += line("the other colonies", g.others);
    text += line("growth of 0.021 a day", g.growth);
  }
  return text;
}

}  // namespace beegarth::garth
