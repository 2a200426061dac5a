// line-scores: the keeper's scores cleared of site and year, by queen, drawn towards the mean where data are
// few.
#include <algorithm>
#include <cmath>
#include <map>

#include "garth/calc/calc.hpp"
#include "garth/lines/pedigree_json.hpp"
#include "garth/tables/tables.hpp"
#include "lines/scores.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most = 1000;  // queens; the time goes with the cube of their number
constexpr std::size_t most_scores = 20000;
constexpr std::size_t most_traits = 10;

Json input_schema() {
  const Json text{{"type", "string"}, {"minLength", 1}, {"maxLength", 200}};
  return object_schema(
      {{"queens", queens_schema(most)},
       {"scores",
        array_schema(object_schema({{"queen", text},
                                    {"trait", text},
                                    {"site", text},
                                    {"year", {{"type", "integer"}, {"minimum", 1900}, {"maximum", 2999}}},
                                    {"score", number_schema("higher is better", -1e6, 1e6)}},
                                   {"queen", "trait", "site", "year", "score"}),
                     most_scores)},
       {"queens_share",
        number_schema("of the differences within a site and year; absent: the table's, with its range", 0.01,
                      0.99)},
       {"weights", array_schema(object_schema({{"trait", text}, {"weight", number_schema("", -100, 100)}},
                                              {"trait", "weight"}),
                                most_traits)}},
      {"queens", "scores"});
}

Json output_schema() {
  const Json text{{"type", "string"}}, number{{"type", "number"}}, maybe{{"type", {"number", "null"}}};
  const Json whole{{"type", "integer"}};
  const Json queen = object_schema(
      {{"queen", text},
       {"estimate", number},
       {"standard_error", maybe},
       {"reliability", number_schema("", 0, 1)},
       {"at_low_share", number},
       {"at_high_share", number},
       {"scores", whole}},
      {"queen", "estimate", "standard_error", "reliability", "at_low_share", "at_high_share", "scores"});
  const Json trait = object_schema({{"trait", text},
                                    {"scores", whole},
                                    {"sites_and_years", whole},
                                    {"uncompared", whole},
                                    {"differences", whole},
                                    {"spread", maybe},
                                    {"queens_share", number},
                                    {"plainly", text},
                                    {"queens", array_schema(queen, most)}},
                                   {"trait", "scores", "sites_and_years", "uncompared", "differences",
                                    "spread", "queens_share", "plainly", "queens"});
  const Json together = array_schema(
      object_schema({{"queen", text}, {"score", number_schema("in standard deviations", -1e9, 1e9)}},
                    {"queen", "score"}),
      most);
  return object_schema({{"traits", array_schema(trait, most_traits)}, {"together", together}}, {"traits"});
}

Json example() {
  const auto score = [](const char* queen, const char* site, int value) {
    return Json{{"queen", queen}, {"trait", "calmness"}, {"site", site}, {"year", 2026}, {"score", value}};
  };
  return {{"queens",
           {{{"id", "Dora"}, {"mating", {{{"name", "one"}, {"drones", 1}}}}},
            {{"id", "Anna"}, {"mother", "Dora"}},
            {{"id", "Bess"}, {"mother", "Dora"}},
            {{"id", "Edda"}}}},
          {"scores",
           {score("Anna", "brook", 4), score("Edda", "brook", 2), score("Bess", "hill", 3),
            score("Dora", "hill", 3)}}};
}

std::vector<lines::Score> read_scores(Reader& reader, const lines::Pedigree& pedigree) {
  std::vector<lines::Score> scores;
  std::map<std::string, int> traits;
  const std::vector<Json> list = reader.list("scores", most_scores);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader one(list[i], reader.path_of("scores", i));
    lines::Score score;
    score.queen = read_queen(one, "queen", pedigree);
    score.trait = one.text("trait");
    score.site = one.text("site");
    score.year = one.whole("year", 1900, 2999);
    score.value = one.number("score", -1e6, 1e6);
    if (++traits[score.trait]; traits.size() > most_traits)
      one.fail(bad_input("more than " + std::to_string(most_traits) + " traits", one.path_of("trait"),
                         "give fewer"));
    if (auto fault = one.done()) {
      reader.fail(*std::move(fault));
      return {};
    }
    scores.push_back(std::move(score));
  }
  return scores;
}

std::map<std::string, double> read_weights(Reader& reader, const std::vector<lines::Score>& scores) {
  std::map<std::string, double> weights;
  const std::vector<Json> list = reader.maybe_list("weights", most_traits);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader one(list[i], reader.path_of("weights", i));
    const std::string trait = one.text("trait");
    const double weight = one.number("weight", -100, 100);
    if (std::none_of(scores.begin(), scores.end(),
                     [&](const lines::Score& score) { return score.trait == trait; }))
      one.fail(bad_input("no score is of '" + trait + "'", one.path_of("trait"), "give a trait of scores"));
    if (!weights.emplace(trait, weight).second)
      one.fail(bad_input("a second weight for '" + trait + "'", one.path_of("trait"), "keep one"));
    if (auto fault = one.done()) reader.fail(*std::move(fault));
  }
  return weights;
}

Json of_trait(const lines::TraitEstimates& trait, const lines::Pedigree& pedigree) {
  Json queens = Json::array();
  for (std::size_t i = 0; i < pedigree.size(); ++i) {
    const lines::ScoreEstimate& queen = trait.queens[i];
    queens.push_back({{"queen", pedigree.queen(i).id.text()},
                      {"estimate", queen.estimate},
                      {"standard_error", queen.standard_error ? Json(*queen.standard_error) : Json()},
                      {"reliability", queen.reliability},
                      {"at_low_share", queen.at_low_share},
                      {"at_high_share", queen.at_high_share},
                      {"scores", queen.scores}});
  }
  return {{"trait", trait.trait},
          {"scores", trait.scores},
          {"sites_and_years", trait.sites_and_years},
          {"uncompared", trait.uncompared},
          {"differences", trait.differences},
          {"spread", trait.spread ? Json(*trait.spread) : Json()},
          {"queens_share", trait.queens_share},
          {"plainly", trait.plainly},
          {"queens", std::move(queens)}};
}

// Traits of unlike units are added in their standard deviations.
Json together(const std::vector<lines::TraitEstimates>& traits, const std::map<std::string, double>& weights,
              const lines::Pedigree& pedigree) {
  Json rows = Json::array();
  for (std::size_t i = 0; i < pedigree.size(); ++i) {
    double score = 0;
    for (const lines::TraitEstimates& trait : traits) {
      const auto weight = weights.find(trait.trait);
      if (weight != weights.end() && trait.spread)
        score += weight->second * trait.queens[i].estimate / *trait.spread;
    }
    rows.push_back({{"queen", pedigree.queen(i).id.text()}, {"score", score}});
  }
  return rows;
}

Expected<FactTable> table_with(const FactTable& table, std::optional<double> share) {
  if (!share) return table;
  const FactRow row{"score_share_of_queen", *share, {}, {}, "1", "given with the question", ""};
  return table.with(std::span(&row, 1));
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const lines::Pedigree pedigree = read_pedigree(reader, most);
  const auto scores = read_scores(reader, pedigree);
  const auto share = reader.maybe_number("queens_share", 0.01, 0.99);
  const auto weights = read_weights(reader, scores);
  if (auto fault = reader.done()) return *std::move(fault);
  const auto table = table_with(tables["lines"], share);
  if (!table) return table.problem();
  const auto traits = lines::estimate_scores(pedigree, scores, *table);
  if (!traits) return traits.problem();
  Json answer{{"traits", Json::array()}};
  for (const lines::TraitEstimates& trait : *traits) answer["traits"].push_back(of_trait(trait, pedigree));
  if (!weights.empty()) answer["together"] = together(*traits, weights, pedigree);
  return answer;
}

}  // namespace

Calc line_scores_calc() {
  return {
      "line-scores", "scores of queens cleared of site and year, with their kin, few data drawn to the mean",
      input_schema,  output_schema,
      example,       run};
}

}  // namespace beegarth::garth
