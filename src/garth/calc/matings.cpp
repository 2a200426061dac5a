// matings: what each virgin would give with each set of drones, and which matings together keep the lines.
#include "lines/matings.hpp"

#include <algorithm>
#include <set>

#include "garth/calc/calc.hpp"
#include "garth/lines/pedigree_json.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_virgins = 40;
constexpr std::size_t most_sets = 20;

Json input_schema() {
  const Json text{{"type", "string"}, {"minLength", 1}, {"maxLength", 200}};
  return object_schema(
      {{"queens", queens_schema(most_queens)},
       {"virgins", array_schema(text, most_virgins)},
       {"drones",
        array_schema(object_schema({{"name", text}, {"mating", mating_schema()}}, {"name", "mating"}),
                     most_sets)},
       {"scores", array_schema(object_schema({{"queen", text}, {"score", number_schema("", -1e6, 1e6)}},
                                             {"queen", "score"}),
                               most_queens)},
       {"inbreeding_limit", number_schema("of daughters; absent: the table's", 0, 1)},
       {"coancestry_per_score",
        number_schema("how much mean coancestry one point of score is worth; absent: the table's", 0, 1000)},
       {"keep",
        {{"type", "integer"},
         {"minimum", 1},
         {"maximum", most_virgins},
         {"description", "matings to choose; absent: every virgin that may be mated"}}}},
      {"queens", "virgins", "drones"});
}

Json output_schema() {
  const Json text{{"type", "string"}}, number{{"type", "number"}};
  const Json words{{"type", "array"}, {"items", text}};
  const Json share = number_schema("expected, of fertilised eggs", 0, 0.5);
  const Json lost = object_schema({{"mid", share}, {"low", share}, {"high", share}}, {"mid", "low", "high"});
  const Json mating = object_schema({{"virgin", text}, {"drones", text}}, {"virgin", "drones"});
  const Json cross = object_schema(
      {{"virgin", text},
       {"drones", text},
       {"daughters_inbreeding", number_schema("", 0, 1)},
       {"kinship_with_living", number_schema("mean coancestry of a daughter with the living queens", 0, 1)},
       {"score", number},
       {"diploid_drone_share", lost},
       {"within_limit", {{"type", "boolean"}}},
       {"reasons", words}},
      {"virgin", "drones", "daughters_inbreeding", "kinship_with_living", "score", "diploid_drone_share",
       "within_limit", "reasons"});
  Json choice = object_schema({{"matings", array_schema(mating, most_virgins)},
                               {"mean_coancestry", number_schema("", 0, 1)},
                               {"mean_score", number},
                               {"proven", {{"type", "boolean"}}}},
                              {"matings", "mean_coancestry", "mean_score", "proven"});
  choice["type"] = {"object", "null"};
  return object_schema({{"crosses", array_schema(cross, most_virgins * most_sets)},
                        {"choice", choice},
                        {"reasons", words},
                        {"inbreeding_limit", number},
                        {"coancestry_per_score", number}},
                       {"crosses", "choice", "reasons", "inbreeding_limit", "coancestry_per_score"});
}

Json example() {
  return {{"queens",
           {{{"id", "Dora"}, {"mating", {{{"drones", 12}}}}},
            {{"id", "Edda"}, {"mating", {{{"drones", 12}}}}},
            {{"id", "Anna"}, {"mother", "Dora"}},
            {{"id", "Bess"}, {"mother", "Dora"}},
            {{"id", "Gwen"}, {"mother", "Edda"}}}},
          {"virgins", {"Anna", "Gwen"}},
          {"drones",
           {{{"name", "sons of Bess"}, {"mating", {{{"dam", "Bess"}}}}},
            {{"name", "sons of Edda"}, {"mating", {{{"dam", "Edda"}}}}}}},
          {"scores", {{{"queen", "Bess"}, {"score", 0.5}}}},
          {"inbreeding_limit", 0.1}};
}

std::vector<std::size_t> read_virgins(Reader& reader, const lines::Pedigree& pedigree) {
  std::vector<std::size_t> virgins;
  std::set<std::size_t> mothers;
  for (std::size_t i = 0; i < pedigree.size(); ++i)
    if (const auto mother = pedigree.mother(i)) mothers.insert(*mother);
  const std::vector<Json> list = reader.list("virgins", most_virgins);
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string where = reader.path_of("virgins", i);
    const auto id = list[i].is_string() ? list[i].get<std::string>() : std::string();
    const auto queen = pedigree.find(lines::QueenId(id));
    if (!queen) {
      reader.fail(bad_input("there is no queen '" + id + "'", where, "give the id of one in queens"));
      return {};
    }
    if (mothers.count(*queen) != 0 || !pedigree.mating(*queen).empty())
      reader.fail(bad_input("'" + id + "' has mated", where, "give virgins only"));
    if (!pedigree.queen(*queen).living)
      reader.fail(bad_input("'" + id + "' is dead", where, "leave her out"));
    if (std::find(virgins.begin(), virgins.end(), *queen) != virgins.end())
      reader.fail(bad_input("'" + id + "' stands twice", where, "keep one"));
    virgins.push_back(*queen);
  }
  return virgins;
}

std::vector<lines::DroneSet> read_sets(Reader& reader, const lines::Pedigree& pedigree) {
  std::vector<lines::DroneSet> sets;
  std::set<std::string> names;
  const std::vector<Json> list = reader.list("drones", most_sets);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader one(list[i], reader.path_of("drones", i));
    lines::DroneSet set;
    set.name = one.text("name");
    if (!names.insert(set.name).second)
      one.fail(bad_input("two sets of drones have this name", one.path_of("name"), "give each its own"));
    if (!one.has("mating")) one.list("mating", 1);
    set.mating = read_planned(one, pedigree);
    if (auto fault = one.done()) {
      reader.fail(*std::move(fault));
      return {};
    }
    sets.push_back(std::move(set));
  }
  return sets;
}

std::vector<double> read_scores(Reader& reader, const lines::Pedigree& pedigree) {
  std::vector<double> scores(pedigree.size(), 0.0);
  std::set<std::size_t> seen;
  const std::vector<Json> list = reader.maybe_list("scores", most_queens);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader one(list[i], reader.path_of("scores", i));
    const std::size_t queen = read_queen(one, "queen", pedigree);
    const double score = one.number("score", -1e6, 1e6);
    if (!seen.insert(queen).second)
      one.fail(bad_input("a second score of one queen", one.path_of("queen"), "keep one"));
    if (auto fault = one.done()) {
      reader.fail(*std::move(fault));
      return scores;
    }
    scores[queen] = score;
  }
  return scores;
}

Json crosses(const lines::MatingAdvice& advice, const lines::MatingQuestion& question,
             const lines::Pedigree& pedigree) {
  Json rows = Json::array();
  for (const lines::Cross& cross : advice.crosses)
    rows.push_back({{"virgin", pedigree.queen(question.virgins[cross.virgin]).id.text()},
                    {"drones", question.sets[cross.set].name},
                    {"daughters_inbreeding", cross.inbreeding},
                    {"kinship_with_living", cross.kinship},
                    {"score", cross.score},
                    {"diploid_drone_share",
                     {{"mid", cross.brood_lost.share},
                      {"low", cross.brood_lost.share_low},
                      {"high", cross.brood_lost.share_high}}},
                    {"within_limit", cross.allowed},
                    {"reasons", cross.reasons}});
  return rows;
}

Json choice_of(const lines::MatingAdvice& advice, const lines::MatingQuestion& question,
               const lines::Pedigree& pedigree) {
  if (!advice.choice) return Json();
  Json matings = Json::array();
  for (const std::size_t place : advice.choice->crosses) {
    const lines::Cross& cross = advice.crosses[place];
    matings.push_back({{"virgin", pedigree.queen(question.virgins[cross.virgin]).id.text()},
                       {"drones", question.sets[cross.set].name}});
  }
  return {{"matings", std::move(matings)},
          {"mean_coancestry", advice.choice->mean_coancestry},
          {"mean_score", advice.choice->mean_score},
          {"proven", advice.choice->proven}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  const FactTable& table = tables["lines"];
  const auto limit = table.value("inbreeding_limit"), weight = table.value("coancestry_per_score");
  if (!limit) return limit.problem();
  if (!weight) return weight.problem();
  Reader reader(input);
  const lines::Pedigree pedigree = read_pedigree(reader, most_queens);
  lines::MatingQuestion question;
  question.virgins = read_virgins(reader, pedigree);
  question.sets = read_sets(reader, pedigree);
  question.scores = read_scores(reader, pedigree);
  question.inbreeding_limit = reader.number_or("inbreeding_limit", 0, 1, *limit);
  question.coancestry_per_score = reader.number_or("coancestry_per_score", 0, 1000, *weight);
  question.keep = reader.maybe_whole("keep", 1, static_cast<int>(most_virgins));
  if (auto fault = reader.done()) return *std::move(fault);
  const auto advice = lines::advise_matings(pedigree, question, table);
  if (!advice) {
    Problem problem = advice.problem();
    problem.where = "$." + problem.where;
    return problem;
  }
  return Json{{"crosses", crosses(*advice, question, pedigree)},
              {"choice", choice_of(*advice, question, pedigree)},
              {"reasons", advice->reasons},
              {"inbreeding_limit", question.inbreeding_limit},
              {"coancestry_per_score", question.coancestry_per_score}};
}

}  // namespace

Calc matings_calc() {
  return {"matings",
          "advice on matings: inbreeding, kinship and score of each, and a choice that keeps the lines",
          input_schema,
          output_schema,
          example,
          run};
}

}  // namespace beegarth::garth
