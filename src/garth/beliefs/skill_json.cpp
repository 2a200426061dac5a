// The answer as JSON, and what it is made of as a JSON Schema.
#include <cmath>

#include "garth/beliefs/skill.hpp"
#include "garth/calc/calc.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

constexpr double any_figure = 1e9;

const LeadDays& days_of(Lead lead) {
  return lead_days.at(static_cast<std::size_t>(lead));
}

std::string band_key(double level) {
  return std::to_string(std::lround(level * 100));
}

json mean_json(const MeanOfCases& mean) {
  return {{"mean", mean.mean}, {"low", mean.low}, {"high", mean.high}};
}
json mean_schema(const char* of) {
  return object_schema(
      {{"mean", number_schema(of, 0, any_figure)},
       {"low", number_schema("80 % interval over colonies drawn with replacement", 0, any_figure)},
       {"high", number_schema("its upper end", 0, any_figure)}},
      {"mean", "low", "high"});
}

json against_json(const Comparison& c) {
  return {{"cases", c.cases},  {"colonies", c.colonies}, {"forecast", c.ours},      {"other", c.other},
          {"gain_low", c.low}, {"gain_high", c.high},    {"forecast_is", c.verdict}};
}
json against_schema() {
  json one = object_schema(
      {{"cases", number_schema("those for which the book held enough for this guess", 0, any_figure)},
       {"colonies", number_schema("of these cases", 0, any_figure)},
       {"forecast", number_schema("mean score of the forecast over these cases", 0, any_figure)},
       {"other", number_schema("mean score of the guess over the same cases", 0, any_figure)},
       {"gain_low", number_schema("80 % interval over colonies of the mean of other - forecast", -any_figure,
                                  any_figure)},
       {"gain_high", number_schema("its upper end; above 0 with gain_low: the forecast is better",
                                   -any_figure, any_figure)},
       {"forecast_is", text_schema("better, worse, not told apart, the same, too few colonies")}},
      {"cases", "colonies", "forecast", "other", "gain_low", "gain_high", "forecast_is"});
  json properties = json::object();
  for (const RivalName& rival : rivals) properties[std::string(rival.key)] = one;
  json schema = object_schema(std::move(properties), {});
  schema["description"] =
      "one for each guess that had a case; a guess that is not here had not enough in the book";
  return schema;
}

json reliability_json(const SkillGroup& g) {
  json rows = json::array();
  for (const ReliabilityRow& row : g.odds.rows) {
    rows.push_back({{"from", row.from},
                    {"to", row.to},
                    {"cases", row.cases},
                    {"mean_odds", row.mean_odds},
                    {"happened", row.happened}});
  }
  return {{"event", g.what == Scored::alive ? "alive" : "above the last figure"},
          {"cases", g.odds.cases},
          {"brier", mean_json(g.brier)},
          {"reliability", g.odds.reliability},
          {"resolution", g.odds.resolution},
          {"uncertainty", g.odds.uncertainty},
          {"within_bins", g.odds.within_bins},
          {"bins", std::move(rows)}};
}
json reliability_schema() {
  const json bin = object_schema({{"from", number_schema("odds of the bin", 0, 1)},
                                  {"to", number_schema("its end, which belongs to the next bin", 0, 1)},
                                  {"cases", number_schema("in the bin", 1, any_figure)},
                                  {"mean_odds", number_schema("that were given", 0, 1)},
                                  {"happened", number_schema("share in which it then happened", 0, 1)}},
                                 {"from", "to", "cases", "mean_odds", "happened"});
  return object_schema(
      {{"event", text_schema("what the odds are of: alive, or a figure above the last one seen")},
       {"cases", number_schema("a figure equal to the last one is no case", 1, any_figure)},
       {"brier",
        mean_schema(
            "mean of (odds - what happened)^2 = reliability - resolution + uncertainty + within_bins")},
       {"reliability", number_schema("how far the odds of a bin lie from what happened; 0 is best", 0, 1)},
       {"resolution", number_schema("how far what happened differs between the bins; much is best", 0, 1)},
       {"uncertainty", number_schema("of the event, whatever is forecast", 0, 0.25)},
       {"within_bins", number_schema("what odds that differ within a bin add", -1, 1)},
       {"bins", array_schema(bin, reliability_edges.size())}},
      {"event", "cases", "brier", "reliability", "resolution", "uncertainty", "within_bins", "bins"});
}

json group_json(const SkillGroup& g) {
  const LeadDays& lead = days_of(g.lead);
  json row{{"quantity", name_of(g.what)},
           {"lead", lead.name},
           {"lead_days", {lead.first, lead.last}},
           {"cases", g.score.cases},
           {"colonies", g.score.colonies},
           {"mean_seen", g.seen},
           {"mean_forecast", g.middle},
           {"score_is", g.what == Scored::alive ? "brier" : "crps"},
           {"score", mean_json(g.score)},
           {"against", json::object()}};
  if (g.what != Scored::alive) {
    for (std::size_t b = 0; b < band_levels.size(); ++b) {
      json band = mean_json(g.bands[b].inside);
      band["own_odds"] = g.bands[b].odds;
      row["bands"][band_key(band_levels[b])] = std::move(band);
    }
  }
  for (const RivalName& rival : rivals) {
    const Comparison& c = g.against.at(static_cast<std::size_t>(rival.rival));
    if (c.cases > 0) row["against"][std::string(rival.key)] = against_json(c);
  }
  if (g.odds.cases > 0) row["odds"] = reliability_json(g);
  return row;
}
json group_schema() {
  json band = mean_schema("share of the cases whose figure lay within the band, ends included");
  band["properties"]["own_odds"] = number_schema(
      "mean odds that the forecasts themselves gave to what lies within; above the band's name for counts", 0,
      1);
  band["required"].push_back("own_odds");
  json bands = json::object();
  for (const double level : band_levels) bands[band_key(level)] = band;
  json days = array_schema({{"type", "integer"}}, 2);
  days["description"] = "first and last day ahead";
  return object_schema(
      {{"quantity", choice_schema("what was forecast", scored_names)},
       {"lead", text_schema("one week, two weeks, four weeks, longer, autumn to spring")},
       {"lead_days", days},
       {"cases", number_schema("forecasts scored", 1, any_figure)},
       {"colonies", number_schema("that they are of", 1, any_figure)},
       {"mean_seen", number_schema("mean of what was seen", -any_figure, any_figure)},
       {"mean_forecast", number_schema("mean of the forecasts' medians", -any_figure, any_figure)},
       {"score_is", text_schema("crps, in the unit of the quantity, or brier")},
       {"score", mean_schema("lower is better")},
       {"bands", object_schema(bands, {"50", "80", "95"})},
       {"against", against_schema()},
       {"odds", reliability_schema()}},
      {"quantity", "lead", "lead_days", "cases", "colonies", "mean_seen", "mean_forecast", "score_is",
       "score", "against"});
}

json case_json(const SkillCase& c) {
  json row{{"colony", c.colony},
           {"site", c.site},
           {"quantity", name_of(c.what)},
           {"lead", days_of(c.lead).name},
           {"from", c.from.iso()},
           {"on", c.on.iso()},
           {"seen", c.seen},
           {"forecast", c.middle},
           {"score", c.ours},
           {"against", json::object()}};
  for (std::size_t b = 0; b < band_levels.size() && c.what != Scored::alive; ++b)
    row["inside"][band_key(band_levels[b])] = c.bands[b].inside;
  for (const RivalName& rival : rivals) {
    if (const auto& score = c.others.at(static_cast<std::size_t>(rival.rival)))
      row["against"][std::string(rival.key)] = *score;
  }
  if (c.odds) row["odds"] = {{"given", *c.odds}, {"happened", c.happened}};
  return row;
}
json case_schema() {
  json inside = json::object();
  for (const double level : band_levels) inside[band_key(level)] = flag_schema("within the band");
  json against = json::object();
  for (const RivalName& rival : rivals)
    against[std::string(rival.key)] = number_schema("its score", 0, any_figure);
  return object_schema(
      {{"colony", text_schema("key")},
       {"site", text_schema("key; empty where it stands in no hive at a site")},
       {"quantity", choice_schema("what was forecast", scored_names)},
       {"lead", text_schema("as in groups")},
       {"from", date_schema("the day of the look at which it was forecast")},
       {"on", date_schema("the day of the look that it was held against")},
       {"seen", number_schema("what was seen", -any_figure, any_figure)},
       {"forecast", number_schema("median; of alive the odds", -any_figure, any_figure)},
       {"score", number_schema("CRPS; of alive the Brier score", 0, any_figure)},
       {"inside", object_schema(inside, {})},
       {"against", object_schema(against, {})},
       {"odds", object_schema({{"given", number_schema("of the group's event", 0, 1)},
                               {"happened", flag_schema("whether it then did")}},
                              {"given", "happened"})}},
      {"colony", "site", "quantity", "lead", "from", "on", "seen", "forecast", "score", "against"});
}

}  // namespace

json skill_json(const Skill& skill) {
  json groups = json::array();
  for (const SkillGroup& g : skill.groups) groups.push_back(group_json(g));
  json cases = json::array();
  for (const SkillCase& c : skill.cases) cases.push_back(case_json(c));
  return {{"today", skill.today.iso()},
          {"sites", skill.sites},
          {"left_out", skill.whole_sites ? "site" : "colony"},
          {"groups", std::move(groups)},
          {"cases", std::move(cases)}};
}

json skill_schema() {
  return object_schema(
      {{"today", date_schema("up to which the book was read")},
       {"sites", number_schema("of the colonies scored", 0, any_figure)},
       {"left_out",
        text_schema("what guesses that learn from others leave out: the colony's whole site; with one site "
                    "only, the colony alone")},
       {"groups", array_schema(group_schema(), 35)},
       {"cases", array_schema(case_schema(), 1'000'000)}},
      {"today", "sites", "left_out", "groups", "cases"});
}

}  // namespace beegarth::garth
