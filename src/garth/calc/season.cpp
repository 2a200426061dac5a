// season: one colony day by day from a start that is given, as many members, to quantiles of every day.
#include <algorithm>
#include <numeric>

#include "almanac/generator.hpp"
#include "almanac/hours.hpp"
#include "belief/deeds.hpp"
#include "belief/trace.hpp"
#include "book/json_entry.hpp"
#include "colony/colony.hpp"
#include "garth/beliefs/outlook_json.hpp"
#include "garth/calc/calc.hpp"
#include "garth/forcing.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr int most_days = 1100, most_members = 4096, most_skies = 32;
const ColonyId it("it");

struct Deed {
  Date date;
  entries::Payload payload;
};
struct Asked {
  Date start;
  int days = 0, members = 0;
  std::uint64_t seed = 1;
  double latitude_deg = 52;
  facts::Dwelling dwelling;
  colony::Start begin;
  std::vector<facts::WeatherDay> weather;
  std::vector<Deed> deeds;
  std::vector<entries::TableOverride> overrides;
};

Json input_schema() {
  const auto n = number_schema;
  const Json day = object_schema({{"temperature_min_C", n("", -60, 50)},
                                  {"temperature_max_C", n("", -60, 55)},
                                  {"rain_mm", n("", 0, 500)},
                                  {"wind_m_s", n("mean at 10 m", 0, 60)}},
                                 {"temperature_min_C", "temperature_max_C"});
  const Json begin = object_schema({{"bees", n("", 0, 80000)},
                                    {"brood_cells", n("worker, all ages", 0, 60000)},
                                    {"stores_kg", n("", 0, 120)},
                                    {"mites", n("", 0, 100000)},
                                    {"winter_share", n("of the bees that are winter bees", 0, 1)},
                                    {"queen_age_days", n("", 0, 2500)}},
                                   {});
  const Json dwelling = object_schema({{"brood_combs", n("", 1, 60)},
                                       {"super_combs", n("", 0, 120)},
                                       {"worker_cells_per_comb", n("both sides", 500, 20000)},
                                       {"honey_kg_per_comb", n("", 0.2, 10)},
                                       {"undrawn_combs", n("of these still to be drawn", 0, 180)},
                                       {"conductance_W_K", n("heat loss of the whole hive", 0.05, 20)},
                                       {"horizontal", flag_schema("combs in one long row")},
                                       {"two_colonies", flag_schema("a second colony behind one wall")},
                                       {"mesh_floor", flag_schema("")},
                                       {"sheltered", flag_schema("from the wind")}},
                                      {});
  const Json action =
      object_schema({{"date", date_schema("of the deed")},
                     {"kind", text_schema("a kind of entry: feed, room, treatment, split, ...")},
                     {"fields", {{"type", "object"}, {"description", "of that kind, without the colony"}}}},
                    {"date", "kind", "fields"});
  return object_schema(
      {{"start", date_schema("the evening from which it is followed")},
       {"days", {{"type", "integer"}, {"minimum", 1}, {"maximum", most_days}}},
       {"latitude_deg", n("of the site; absent: 52", -65, 65)},
       {"begin", begin},
       {"dwelling", dwelling},
       {"weather", array_schema(day, most_days)},
       {"actions", array_schema(action, 200)},
       {"overrides", {{"type", "object"}, {"description", "rows of tables/colony.toml and their values"}}},
       {"members", {{"type", "integer"}, {"minimum", 16}, {"maximum", most_members}}},
       {"seed", {{"type", "integer"}, {"minimum", 0}, {"maximum", 2147483647}}}},
      {"start", "days"});
}

Json output_schema() {
  return object_schema(
      {{"fans", {{"type", "array"}, {"description", "quantiles in per cent, day by day"}}},
       {"alive", number_schema("share of the members on the last day", 0, 1)},
       {"happened",
        {{"type", "object"},
         {"description",
          "share of the members to which each befell once or more: swarm_preparation, swarm, cast, "
          "queen_loss, "
          "supersedure, starvation, robbing, absconding, death"}}},
       {"eggs_laid_mean", {{"type", "array"}, {"description", "by day, mean of the members"}}},
       {"under", {{"type", "string"}, {"description", "which weather and forage it is reckoned under"}}}},
      {"fans", "alive", "happened", "eggs_laid_mean", "under"});
}

Json example() {
  return {{"start", "2026-03-20"},
          {"days", 60},
          {"begin",
           {{"bees", 9000}, {"brood_cells", 5000}, {"stores_kg", 9}, {"mites", 60}, {"winter_share", 0.8}}},
          {"actions", {{{"date", "2026-04-25"}, {"kind", "room"}, {"fields", {{"super_combs", 10}}}}}},
          {"members", 64}};
}

void read_begin(Reader& reader, Asked& asked) {
  if (!reader.has("begin")) return;
  Reader part(reader.part("begin"), reader.path_of("begin"));
  colony::Start& b = asked.begin;
  b.bees = part.number_or("bees", 0, 80000, b.bees);
  b.brood_cells = part.number_or("brood_cells", 0, 60000, b.brood_cells);
  b.stores_kg = part.number_or("stores_kg", 0, 120, b.stores_kg);
  b.mites = part.number_or("mites", 0, 100000, b.mites);
  b.winter_share = part.number_or("winter_share", 0, 1, b.winter_share);
  b.queen_age_days = part.number_or("queen_age_days", 0, 2500, b.queen_age_days);
  if (auto fault = part.done()) reader.fail(*std::move(fault));
}

void read_dwelling(Reader& reader, Asked& asked) {
  if (!reader.has("dwelling")) return;
  Reader part(reader.part("dwelling"), reader.path_of("dwelling"));
  facts::Dwelling& d = asked.dwelling;
  d.brood_combs = part.maybe_whole("brood_combs", 1, 60).value_or(d.brood_combs);
  d.super_combs = part.maybe_whole("super_combs", 0, 120).value_or(d.super_combs);
  d.worker_cells_per_comb = part.number_or("worker_cells_per_comb", 500, 20000, d.worker_cells_per_comb);
  d.honey_kg_per_comb = part.number_or("honey_kg_per_comb", 0.2, 10, d.honey_kg_per_comb);
  d.conductance_W_K = part.number_or("conductance_W_K", 0.05, 20, d.conductance_W_K);
  d.undrawn_combs = part.maybe_whole("undrawn_combs", 0, 180).value_or(d.undrawn_combs);
  if (part.yes_or("horizontal", false)) d.form = facts::HiveForm::horizontal;
  d.two_colonies = part.yes_or("two_colonies", false);
  d.mesh_floor = part.yes_or("mesh_floor", false);
  d.sheltered = part.yes_or("sheltered", false);
  if (d.undrawn_combs > d.brood_combs + d.super_combs)
    part.fail(bad_input("more combs to be drawn than there are",
                        reader.path_of("dwelling") + ".undrawn_combs",
                        "give at most brood_combs and super_combs together"));
  if (auto fault = part.done()) reader.fail(*std::move(fault));
}

void read_weather(Reader& reader, Asked& asked) {
  const auto days = reader.maybe_list("weather", most_days);
  for (std::size_t i = 0; i < days.size(); ++i) {
    Reader day(days[i], reader.path_of("weather", i));
    facts::WeatherDay seen{.date = asked.start + 1 + static_cast<int>(i)};
    seen.temperature_min_C = day.number("temperature_min_C", -60, 50);
    seen.temperature_max_C = day.number("temperature_max_C", -60, 55);
    seen.rain_mm = day.maybe_number("rain_mm", 0, 500);
    seen.wind_m_s = day.maybe_number("wind_m_s", 0, 60);
    if (seen.temperature_min_C > seen.temperature_max_C)
      day.fail(bad_input("the day is colder at its warmest than at its coldest", reader.path_of("weather", i),
                         "swap them"));
    if (auto fault = day.done()) return reader.fail(*std::move(fault));
    asked.weather.push_back(seen);
  }
}

void read_actions(Reader& reader, Asked& asked) {
  const auto list = reader.maybe_list("actions", 200);
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string path = reader.path_of("actions", i);
    Reader action(list[i], path);
    const Date date = action.date("date");
    const std::string kind = action.text("kind");
    Json fields = action.part("fields");
    if (auto fault = action.done()) return reader.fail(*std::move(fault));
    fields["colony"] = it.text();
    const auto payload = book::payload_from(kind, fields, path);
    if (!payload) return reader.fail(payload.problem());
    if (const auto sound = entries::validate(*payload); !sound)
      return reader.fail(bad_input(sound.problem().what, path + ".fields", sound.problem().remedy));
    if (date <= asked.start || date > asked.start + asked.days)
      return reader.fail(
          bad_input("the deed lies outside the days asked for", path + ".date", "give a day within"));
    asked.deeds.push_back({date, *payload});
  }
}

void read_overrides(Reader& reader, Asked& asked) {
  if (!reader.has("overrides")) return;
  const Json rows = reader.part("overrides");
  for (const auto& [row, value] : rows.items()) {
    if (!value.is_number())
      return reader.fail(bad_input("the row '" + row.substr(0, 60) + "' is given no number",
                                   reader.path_of("overrides"), "give a number"));
    asked.overrides.push_back({.table = "colony", .row = row, .value = value.get<double>()});
  }
}

Expected<Asked> read(const Json& input) {
  Reader reader(input);
  Asked asked;
  asked.dwelling.super_combs = 0;
  asked.start = reader.date("start");
  asked.days = reader.whole("days", 1, most_days);
  asked.members = reader.maybe_whole("members", 16, most_members).value_or(256);
  asked.seed = static_cast<std::uint64_t>(reader.maybe_whole("seed", 0, 2147483647).value_or(1));
  asked.latitude_deg = reader.number_or("latitude_deg", -65, 65, 52);
  read_begin(reader, asked);
  read_dwelling(reader, asked);
  read_weather(reader, asked);
  read_actions(reader, asked);
  read_overrides(reader, asked);
  if (auto fault = reader.done()) return *std::move(fault);
  return asked;
}

// The days given, and beyond them ways in which a temperate year may go on.
Expected<std::vector<facts::ForcingPath>> skies(const Asked& asked, const Tables& tables) {
  const auto rules = almanac::HourRules::from(tables["hours"]);
  if (!rules) return rules.problem();
  const auto model = almanac::weather_from_normals(stand_in_normals(tables["climate"], asked.latitude_deg));
  const Date first = asked.start + 1, last = asked.start + asked.days;
  const auto paths = almanac::continue_weather(model, asked.weather, first, last, last + 1,
                                               std::min(most_skies, asked.members), asked.seed);
  const ForageYear forage = usual_forage(tables["forage"], asked.latitude_deg);
  const Neighbours neighbours(tables["forage"]);
  const almanac::Place place{asked.latitude_deg, 0, 0};
  std::vector<facts::ForcingPath> skies;
  for (const facts::WeatherPath& path : paths) {
    facts::ForcingPath sky;
    for (const auto& day : path)
      sky.push_back(forcing_on(day, almanac::day_fitness(day, place, 0, *rules).flight_hours, forage,
                               neighbours, asked.latitude_deg));
    skies.push_back(std::move(sky));
  }
  return skies;
}

std::string said_of_the_sky(const Asked& asked) {
  const std::size_t given = std::min(asked.weather.size(), static_cast<std::size_t>(asked.days));
  std::string said = given == 0 ? "" : "the first " + std::to_string(given) + " days of weather as given";
  if (given < static_cast<std::size_t>(asked.days))
    said +=
        std::string(given == 0 ? "" : ", then ") + "invented weather of a temperate year at this latitude";
  return said + "; forage of a stand-in year (tables/forage.toml)";
}

struct Followed {
  belief::Trace trace;
  std::vector<double> eggs;  // by day, mean of the members
  double alive = 0;
  std::array<double, colony::event_count> happened{};  // share of the members
};

Followed follow(const Asked& asked, const colony::Model& model, const belief::DeedFigures& figures,
                const std::vector<facts::ForcingPath>& skies) {
  using colony::Quantity;
  constexpr std::array<Quantity, belief::fan_count> shown{Quantity::bees, Quantity::brood_cells,
                                                          Quantity::stores_kg, Quantity::mites,
                                                          Quantity::mites_per_100_bees};
  Followed followed{belief::Trace(asked.start, asked.days, asked.members),
                    std::vector<double>(static_cast<std::size_t>(asked.days) + 1, 0.0)};
  const auto traits = colony::draw_traits(model, asked.members, {.seed = asked.seed, .ids = {}});
  const auto whole = colony::make_ensemble(model, asked.dwelling, asked.start, asked.members,
                                           std::span(&asked.begin, 1), traits);
  const double share = 1.0 / asked.members;
  for (std::size_t sky = 0; sky < skies.size(); ++sky) {
    std::vector<std::uint32_t> which;
    for (auto i = static_cast<std::uint32_t>(sky); i < static_cast<std::uint32_t>(asked.members);
         i += static_cast<std::uint32_t>(skies.size()))
      which.push_back(i);
    colony::Ensemble ensemble = whole.take(which);
    for (int day = 0;; ++day) {
      for (std::size_t q = 0; q < shown.size(); ++q) {
        const auto values = ensemble.read(shown[q]);
        for (std::size_t k = 0; k < which.size(); ++k)
          followed.trace.values[q][followed.trace.at(day, static_cast<int>(which[k]))] = values[k];
      }
      for (const float eggs : ensemble.read(Quantity::eggs_laid))
        followed.eggs[static_cast<std::size_t>(day)] += share * static_cast<double>(eggs);
      if (day == asked.days) break;
      std::vector<colony::Action> actions;
      for (const Deed& deed : asked.deeds) {
        if (deed.date != asked.start + day + 1) continue;
        const auto more = belief::actions_of(deed.payload, figures, model, ensemble.dwelling());
        actions.insert(actions.end(), more.begin(), more.end());
      }
      colony::advance_day(ensemble, model, skies[sky][static_cast<std::size_t>(day)], actions,
                          {.seed = asked.seed, .ids = which});
    }
    for (const float lives : ensemble.read(Quantity::alive))
      followed.alive += share * static_cast<double>(lives);
    for (std::size_t event = 0; event < followed.happened.size(); ++event)
      for (std::size_t k = 0; k < which.size(); ++k)
        if (ensemble.first_day(static_cast<colony::Event>(event), static_cast<int>(k)))
          followed.happened[event] += share;
  }
  return followed;
}

Expected<Json> run(const Json& input, const Tables& tables) {
  const auto asked = read(input);
  if (!asked) return asked.problem();
  std::vector<entries::TableOverride> overrides = asked->overrides;
  for (entries::TableOverride& row : overrides) {
    row.source = "given with the question";
    if (const FactRow* fact = tables["colony"].find(row.row)) row.unit = fact->unit;
  }
  const auto own = tables.with(overrides);
  if (!own) return bad_input(own.problem().what, "$.overrides", own.problem().remedy);
  const auto model = colony::Model::from((*own)["colony"]);
  if (!model) return model.problem();
  const auto figures = belief::read_deed_figures((*own)["observation"]);
  if (!figures) return figures.problem();
  for (std::size_t i = 0; i < asked->deeds.size(); ++i)
    if (belief::actions_of(asked->deeds[i].payload, *figures, *model, asked->dwelling).empty())
      return bad_input(
          "'" + std::string(entries::kind_name(asked->deeds[i].payload)) + "' changes nothing in a colony",
          "$.actions[" + std::to_string(i) + "].kind", "give a deed, such as feed, room or treatment");
  const auto weather = skies(*asked, *own);
  if (!weather) return weather.problem();
  const Followed followed = follow(*asked, *model, *figures, *weather);
  const std::vector<double> alike(static_cast<std::size_t>(asked->members), 1.0 / asked->members);
  Json fans = Json::array();
  for (const facts::Fan& fan : belief::fans_of(followed.trace, alike, asked->days))
    fans.push_back(fan_json(fan));
  Json happened = Json::object();
  for (std::size_t event = 0; event < followed.happened.size(); ++event)
    happened[std::string(colony::name_of(static_cast<colony::Event>(event)))] =
        std::min(1.0, followed.happened[event]);
  return Json{{"fans", std::move(fans)},
              {"alive", std::min(1.0, followed.alive)},
              {"happened", std::move(happened)},
              {"eggs_laid_mean", followed.eggs},
              {"under", said_of_the_sky(*asked)}};
}

}  // namespace

Calc season_calc() {
  return {
      "season",     "one colony day by day under weather and deeds that are given, to quantiles of every day",
      input_schema, output_schema,
      example,      run};
}

}  // namespace beegarth::garth
