#include "garth/lines/pedigree_json.hpp"

#include <algorithm>
#include <charconv>
#include <numeric>
#include <utility>

namespace beegarth::garth {
namespace {

constexpr std::size_t most_kinds = 40;
constexpr int most_drones = 1000;
constexpr std::int64_t most_in_share = 10'000;

std::optional<std::int64_t> whole(std::string_view text) {
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || value < 0 || value > most_in_share)
    return std::nullopt;
  return value;
}

// "1/3" or "0.25", kept exact.
std::optional<lines::Share> share_of(const std::string& text) {
  if (const auto slash = text.find('/'); slash != std::string::npos) {
    const auto part = whole(std::string_view(text).substr(0, slash));
    const auto of = whole(std::string_view(text).substr(slash + 1));
    if (!part || !of || *of == 0) return std::nullopt;
    return lines::Share{*part, *of};
  }
  const auto point = text.find('.');
  const std::string digits =
      point == std::string::npos ? text : text.substr(0, point) + text.substr(point + 1);
  const auto part = whole(digits);
  const std::size_t places = point == std::string::npos ? 0 : text.size() - point - 1;
  if (!part || places > 4) return std::nullopt;
  lines::Share share{*part, 1};
  for (std::size_t i = 0; i < places; ++i) share.of *= 10;
  return share;
}

std::optional<lines::Share> read_share(Reader& reader, const Json& part) {
  if (!reader.has("share")) {
    reader.maybe_text("share");
    return std::nullopt;
  }
  const Json& value = part["share"];
  // A number is read as it is written, so that 0.1 is one tenth.
  const auto share = value.is_number() ? share_of(value.dump()) : share_of(reader.text("share"));
  if (value.is_number()) reader.maybe_number("share", 0, 1);
  if (!share)
    reader.fail(bad_input("not a share", reader.path_of("share"), "give a fraction such as \"1/3\" or 0.25"));
  return share;
}

void share_out(std::vector<lines::Drones>& mating) {
  const bool counted = std::all_of(mating.begin(), mating.end(),
                                   [](const lines::Drones& drones) { return drones.number.has_value(); });
  std::int64_t whole = 0;
  for (lines::Drones& drones : mating) {
    drones.share.part = counted ? *drones.number : 1;
    whole += drones.share.part;
  }
  for (lines::Drones& drones : mating) drones.share.of = whole;
}

lines::Drones read_drones(Reader& reader) {
  lines::Drones drones;
  if (const auto dam = reader.maybe_text("dam")) drones.dam = lines::QueenId(*dam);
  drones.number = reader.maybe_whole("drones", 1, most_drones);
  drones.name = reader.maybe_text("name").value_or("");
  return drones;
}

lines::Queen read_one(Reader& reader) {
  lines::Queen queen;
  queen.id = lines::QueenId(reader.text("id"));
  if (const auto mother = reader.maybe_text("mother")) queen.mother = lines::QueenId(*mother);
  queen.father = reader.maybe_text("father");
  queen.mating = read_mating(reader);
  queen.born = reader.maybe_date("born");
  queen.mated = reader.maybe_date("mated");
  queen.living = reader.yes_or("living", true);
  queen.line = reader.maybe_text("line").value_or("");
  return queen;
}

}  // namespace

std::vector<lines::Drones> read_mating(Reader& reader) {
  std::vector<lines::Drones> mating;
  std::size_t shares = 0;
  const std::vector<Json> parts = reader.maybe_list("mating", most_kinds);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    Reader part(parts[i], reader.path_of("mating", i));
    lines::Drones drones = read_drones(part);
    if (const auto share = parts[i].is_object() ? read_share(part, parts[i]) : std::nullopt) {
      drones.share = *share;
      ++shares;
    }
    if (auto fault = part.done()) reader.fail(*std::move(fault));
    mating.push_back(std::move(drones));
  }
  if (shares == 0)
    share_out(mating);
  else if (shares < mating.size())
    reader.fail(bad_input("some drones have a share and some have none", reader.path_of("mating"),
                          "give all of them a share, or none"));
  return mating;
}

lines::Pedigree read_pedigree(Reader& reader, std::size_t most) {
  std::vector<lines::Queen> queens;
  const std::vector<Json> list = reader.list("queens", most);
  for (std::size_t i = 0; i < list.size(); ++i) {
    Reader one(list[i], reader.path_of("queens", i));
    queens.push_back(read_one(one));
    if (auto fault = one.done()) {
      reader.fail(*std::move(fault));
      return *lines::Pedigree::of({});
    }
  }
  auto pedigree = lines::Pedigree::of(std::move(queens));
  if (pedigree) return *std::move(pedigree);
  Problem problem = pedigree.problem();
  problem.where = "$." + problem.where;
  reader.fail(std::move(problem));
  return *lines::Pedigree::of({});
}

std::vector<lines::Suitors> read_planned(Reader& reader, const lines::Pedigree& pedigree) {
  auto found = pedigree.look_up(read_mating(reader), reader.path_of("mating"));
  if (found) return *std::move(found);
  reader.fail(found.problem());
  return {};
}

std::size_t read_queen(Reader& reader, const char* field, const lines::Pedigree& pedigree) {
  const std::string id = reader.text(field);
  if (const auto found = pedigree.find(lines::QueenId(id))) return *found;
  reader.fail(
      bad_input("there is no queen '" + id + "'", reader.path_of(field), "give the id of one in queens"));
  return 0;
}

Json mating_schema() {
  const Json text{{"type", "string"}, {"minLength", 1}, {"maxLength", 200}};
  Json dam = text, name = text;
  dam["description"] =
      "id of the queen whose sons they are; absent: unknown dams, unrelated to every queen here";
  name["description"] = "for a daughter to say whose she is";
  const Json share{
      {"type", {"string", "number"}},
      {"description", "of the daughters, such as \"1/3\" or 0.25; all absent: by number, or equal"}};
  const Json drones{{"type", "integer"},
                    {"minimum", 1},
                    {"maximum", most_drones},
                    {"description", "how many; absent: so many that daughters hardly ever share one"}};
  return array_schema(object_schema({{"dam", dam}, {"drones", drones}, {"share", share}, {"name", name}}, {}),
                      most_kinds);
}

Json queens_schema(std::size_t most) {
  const Json text{{"type", "string"}, {"minLength", 1}, {"maxLength", 200}};
  const Json date{{"type", "string"}, {"format", "date"}};
  Json father = text, line = text;
  father["description"] = "name of the drones of her mother's mating that she is of; absent: any of them";
  line["description"] = "absent: that of her mother";
  return array_schema(object_schema({{"id", text},
                                     {"mother", text},
                                     {"father", father},
                                     {"mating", mating_schema()},
                                     {"born", date},
                                     {"mated", date},
                                     {"living", {{"type", "boolean"}}},
                                     {"line", line}},
                                    {"id"}),
                      most);
}

}  // namespace beegarth::garth
