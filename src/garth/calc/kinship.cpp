// kinship: relationships and inbreeding of queens in exact fractions, from a pedigree.
#include "garth/calc/calc.hpp"
#include "garth/lines/pedigree_json.hpp"
#include "garth/tables/tables.hpp"
#include "lines/ancestry.hpp"
#include "lines/exact_kinship.hpp"
#include "lines/sex_alleles.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most = 200;  // queens in exact fractions
constexpr std::size_t most_pairs = 1000;
constexpr std::size_t most_kinds_in_all = 1000;  // of drones: each is a line of fractions of its own

Json fraction_schema(const char* description) {
  Json schema = object_schema({{"fraction", {{"type", "string"}}}, {"decimal", number_schema("", 0, 2)}},
                              {"fraction", "decimal"});
  schema["description"] = description;
  return schema;
}

Json input_schema() {
  const Json id{{"type", "string"}};
  Json pair = array_schema(id, 2);
  pair["minItems"] = 2;
  return object_schema({{"queens", queens_schema(most)},
                        {"pairs", array_schema(pair, most_pairs)},
                        {"planned", array_schema(object_schema({{"queen", id}, {"mating", mating_schema()}},
                                                               {"queen", "mating"}),
                                                 most_pairs)}},
                       {"queens"});
}

Json list_schema(Json properties) {
  std::vector<std::string> required;
  for (const auto& item : properties.items()) required.push_back(item.key());
  return {{"type", "array"}, {"items", object_schema(std::move(properties), std::move(required))}};
}

Json output_schema() {
  const Json id{{"type", "string"}}, words{{"type", "array"}, {"items", {{"type", "string"}}}};
  const Json share = number_schema("expected, of fertilised eggs", 0, 0.5);
  const Json lost = object_schema({{"mid", share}, {"low", share}, {"high", share}}, {"mid", "low", "high"});
  const Json workers = fraction_schema("mean relationship of two daughters of the mating");
  return object_schema(
      {{"queens", list_schema({{"queen", id}, {"inbreeding", fraction_schema("")}, {"line", id}})},
       {"colonies", list_schema({{"queen", id}, {"workers_relationship", workers}})},
       {"pairs", list_schema({{"queens", words},
                              {"coancestry", fraction_schema("")},
                              {"relationship", fraction_schema("twice the coancestry")},
                              {"shared", words}})},
       {"planned", list_schema({{"queen", id},
                                {"daughters_inbreeding", fraction_schema("")},
                                {"workers_relationship", workers},
                                {"diploid_drone_share", lost}})}},
      {"queens", "colonies", "pairs", "planned"});
}

Json example() {
  return {
      {"queens",
       {{{"id", "Dora"}, {"mating", {{{"name", "one"}, {"drones", 1}}, {{"name", "two"}, {"drones", 1}}}}},
        {{"id", "Anna"},
         {"mother", "Dora"},
         {"father", "one"},
         {"mating", {{{"dam", "Bess"}, {"drones", 1}}}}},
        {{"id", "Bess"}, {"mother", "Dora"}, {"father", "one"}},
        {{"id", "Cora"}, {"mother", "Anna"}}}},
      {"pairs", Json::array({Json::array({"Anna", "Bess"})})},
      {"planned", {{{"queen", "Bess"}, {"mating", {{{"dam", "Bess"}, {"drones", 1}}}}}}}};
}

Json both(const lines::Fraction& fraction) {
  return {{"fraction", lines::text(fraction)}, {"decimal", lines::decimal(fraction)}};
}

void refuse_too_many_kinds(Reader& reader, const lines::Pedigree& pedigree) {
  std::size_t kinds = 0;
  for (std::size_t i = 0; i < pedigree.size(); ++i) kinds += pedigree.mating(i).size();
  if (kinds > most_kinds_in_all)
    reader.fail(bad_input("more than " + std::to_string(most_kinds_in_all) + " kinds of drones in all",
                          reader.path_of("queens"),
                          "put drones of one dam together, or leave out distant queens"));
}

struct Pair {
  std::size_t first, second;
};

std::vector<Pair> read_pairs(Reader& reader, const lines::Pedigree& pedigree) {
  std::vector<Pair> pairs;
  const std::vector<Json> list = reader.maybe_list("pairs", most_pairs);
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (!list[i].is_array() || list[i].size() != 2) {
      reader.fail(bad_input("not a pair", reader.path_of("pairs", i), "give two ids as [\"...\", \"...\"]"));
      return {};
    }
    // Read as an object, so that a fault is named in the same words.
    std::size_t found[2] = {0, 0};
    for (std::size_t side = 0; side < 2; ++side) {
      const std::string where = reader.path_of("pairs", i) + "[" + std::to_string(side) + "]";
      const auto queen = list[i][side].is_string()
                             ? pedigree.find(lines::QueenId(list[i][side].get<std::string>()))
                             : std::nullopt;
      if (!queen) {
        reader.fail(bad_input("there is no such queen", where, "give the id of one in queens"));
        return {};
      }
      found[side] = *queen;
    }
    pairs.push_back({found[0], found[1]});
  }
  return pairs;
}

Json shared_in_words(const lines::Pedigree& pedigree, const Pair& pair) {
  Json words = Json::array();
  if (pair.first == pair.second) return words;
  for (const auto& shared : lines::shared_ancestors(pedigree, pair.first, pair.second))
    words.push_back(lines::in_words(pedigree, pair.first, pair.second, shared));
  return words;
}

struct Planned {
  std::size_t queen;
  std::vector<lines::Suitors> mating;
};

std::vector<Planned> read_all_planned(Reader& reader, const lines::Pedigree& pedigree) {
  std::vector<Planned> planned;
  const std::vector<Json> list = reader.maybe_list("planned", most_pairs);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader one(list[i], reader.path_of("planned", i));
    if (!one.has("mating")) one.list("mating", 1);
    const std::size_t queen = read_queen(one, "queen", pedigree);
    planned.push_back({queen, read_planned(one, pedigree)});
    if (auto fault = one.done()) {
      reader.fail(*std::move(fault));
      return {};
    }
  }
  return planned;
}

Json of_queens(const lines::Pedigree& pedigree, lines::ExactKinship& kinship) {
  Json rows = Json::array();
  for (std::size_t i = 0; i < pedigree.size(); ++i)
    rows.push_back({{"queen", pedigree.queen(i).id.text()},
                    {"inbreeding", both(kinship.inbreeding(i))},
                    {"line", pedigree.line(i)}});
  return rows;
}

Json of_colonies(const lines::Pedigree& pedigree, lines::ExactKinship& kinship) {
  Json rows = Json::array();
  for (std::size_t i = 0; i < pedigree.size(); ++i)
    if (!pedigree.mating(i).empty())
      rows.push_back({{"queen", pedigree.queen(i).id.text()},
                      {"workers_relationship", both(kinship.daughters_relationship(i, pedigree.mating(i)))}});
  return rows;
}

Json of_pairs(const std::vector<Pair>& pairs, const lines::Pedigree& pedigree, lines::ExactKinship& kinship) {
  Json rows = Json::array();
  for (const Pair& pair : pairs)
    rows.push_back({{"queens", {pedigree.queen(pair.first).id.text(), pedigree.queen(pair.second).id.text()}},
                    {"coancestry", both(kinship.coancestry(pair.first, pair.second))},
                    {"relationship", both(kinship.relationship(pair.first, pair.second))},
                    {"shared", shared_in_words(pedigree, pair)}});
  return rows;
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const lines::Pedigree pedigree = read_pedigree(reader, most);
  refuse_too_many_kinds(reader, pedigree);
  const auto pairs = read_pairs(reader, pedigree);
  const auto planned = read_all_planned(reader, pedigree);
  if (auto fault = reader.done()) return *std::move(fault);
  lines::ExactKinship kinship(pedigree);
  Json of_planned = Json::array();
  for (const Planned& mating : planned) {
    const auto inbreeding = kinship.daughters_inbreeding(mating.queen, mating.mating);
    const auto lost = lines::diploid_drones(lines::decimal(inbreeding), tables["lines"]);
    if (!lost) return lost.problem();
    of_planned.push_back(
        {{"queen", pedigree.queen(mating.queen).id.text()},
         {"daughters_inbreeding", both(inbreeding)},
         {"workers_relationship", both(kinship.daughters_relationship(mating.queen, mating.mating))},
         {"diploid_drone_share",
          {{"mid", lost->share}, {"low", lost->share_low}, {"high", lost->share_high}}}});
  }
  return Json{{"queens", of_queens(pedigree, kinship)},
              {"colonies", of_colonies(pedigree, kinship)},
              {"pairs", of_pairs(pairs, pedigree, kinship)},
              {"planned", std::move(of_planned)}};
}

}  // namespace

Calc kinship_calc() {
  return {"kinship",    "relationships and inbreeding of queens, in exact fractions, from a pedigree",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
