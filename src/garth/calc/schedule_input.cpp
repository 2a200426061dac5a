#include "garth/calc/schedule_input.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "garth/tables/tables.hpp"
#include "garth/weather.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_sites = 16, most_needs = 300, most_colonies = 300, most_days = 28,
                      most_members = 100, most_ways = 200;
constexpr double most_loss = 1e6, most_minutes = 1440;
constexpr auto clocks = std::to_array<std::string_view>({"opening", "daylight", "dusk", "dry_day", "any"});

facts::Clock clock_named(const std::string& name) {
  const auto at = std::find(clocks.begin(), clocks.end(), name);
  return static_cast<facts::Clock>(at - clocks.begin());
}

// Reads one question; the first fault stands in `reader`.
class Asking {
 public:
  Asking(const Json& input, const Tables& tables) : reader_(input), tables_(tables) {}

  Expected<ScheduleAsked> read() {
    plan().from = reader_.date("from");
    read_hours();
    read_sites();
    read_travel();
    read_colonies();
    read_needs();
    plan().people = reader_.maybe_whole("people", 1, 10).value_or(1);
    plan().price_per_hour = reader_.number_or("price_per_hour", 0, 1000, plan().price_per_hour);
    plan().price_per_travel_minute =
        reader_.number_or("price_per_travel_minute", 0, 100, plan().price_per_travel_minute);
    plan().price_of_opening = reader_.number_or("price_of_opening", 0, 1000, 0);
    plan().settle_minutes = reader_.number_or("settle_minutes", 0, 240, plan().settle_minutes);
    read_weather();
    read_own();
    if (auto fault = reader_.done()) return *std::move(fault);
    return std::move(asked_);
  }

 private:
  work::PlanInput& plan() { return asked_.plan; }

  // One part of a list, read with a reader of its own.
  template <class Take>
  void each(const char* field, const std::vector<Json>& list, const Take& take) {
    for (std::size_t i = 0; i < list.size(); ++i) {
      Reader part(list[i], reader_.path_of(field, i));
      take(part, reader_.path_of(field, i));
      if (auto fault = part.done()) return reader_.fail(*std::move(fault));
    }
  }

  void read_hours() {
    each("days", reader_.list("days", most_days), [&](Reader& day, const std::string& path) {
      const double start = day.number("start_hour", 0, 24), end = day.number("end_hour", 0, 24);
      if (end < start)
        day.fail(bad_input("the day ends before it begins", path, "give end_hour after start_hour"));
      plan().hours.push_back({start, end});
    });
    plan().days = static_cast<int>(plan().hours.size());
  }

  void read_sites() {
    each("sites", reader_.list("sites", most_sites), [&](Reader& site, const std::string& path) {
      const SiteId id(site.text("site"));
      if (id.text() == "home" || !index_.emplace(id.text(), index_.size() + 1).second)
        site.fail(
            bad_input("the site '" + id.text() + "' is there twice, or called home", path, "rename it"));
      const std::string name = site.maybe_text("name").value_or(id.text());
      plan().sites.push_back({.site = id, .name = name});
      asked_.names.sites[id] = name;
    });
    index_["home"] = 0;
  }

  // Ways that are not given stay unknown: the plan says so and plans the rest.
  void read_travel() {
    const std::size_t stops = plan().sites.size() + 1;
    auto& minutes = plan().travel.minutes;
    minutes.assign(stops, std::vector<std::optional<double>>(stops));
    for (std::size_t i = 0; i < stops; ++i) minutes[i][i] = 0.0;
    each("travel", reader_.maybe_list("travel", most_ways), [&](Reader& way, const std::string& path) {
      const auto from = index_.find(way.text("from")), to = index_.find(way.text("to"));
      const double takes = way.number("minutes", 0, most_minutes);
      if (from == index_.end() || to == index_.end())
        return way.fail(bad_input("leads from or to no site that is given", path, "name two sites, or home"));
      for (const auto& [a, b] : {std::pair{from->second, to->second}, std::pair{to->second, from->second}})
        minutes[a][b] = takes;
    });
  }

  void read_colonies() {
    each("colonies", reader_.maybe_list("colonies", most_colonies),
         [&](Reader& colony, const std::string& path) {
           const ColonyId id(colony.text("colony"));
           const std::string name = colony.maybe_text("name").value_or(id.text());
           const std::string site = site_named(colony, path);
           plan().colonies.push_back(
               {id, name, SiteId(site), colony.maybe_whole("place", 0, 1000).value_or(0)});
           asked_.names.colonies[id] = name;
         });
  }

  std::string site_named(Reader& part, const std::string& path) {
    std::string site = part.text("site");
    if (!site.empty() && (site == "home" || !index_.contains(site)))
      part.fail(bad_input("there is no site '" + site + "'", path + ".site", "name one of $.sites"));
    return site;
  }

  void read_needs() {
    const auto list = reader_.maybe_list("needs", most_needs);
    each("needs", list, [&](Reader& need, const std::string& path) {
      facts::Need one = need_from(need, path);
      if (!keys_.insert(one.key).second)
        need.fail(
            bad_input("the key '" + one.key + "' is there twice", path + ".key", "give each need its own"));
      plan().needs.push_back(std::move(one));
    });
    for (std::size_t i = 0; i < plan().needs.size(); ++i)
      for (const auto* others : {&plan().needs[i].after, &plan().needs[i].clashes})
        for (const std::string& key : *others)
          if (!keys_.contains(key))
            return reader_.fail(bad_input("there is no need '" + key + "'", reader_.path_of("needs", i),
                                          "name keys of other needs in after and clashes"));
  }

  facts::Need need_from(Reader& need, const std::string& path) {
    facts::Need one;
    one.key = need.text("key");
    one.what = need.text("what");
    one.site = SiteId(site_named(need, path));
    if (const auto colony = need.maybe_text("colony")) one.colony = ColonyId(*colony);
    one.earliest = need.maybe_date("earliest").value_or(plan().from);
    one.latest = need.maybe_date("latest").value_or(plan().from + (plan().days - 1));
    one.best = need.maybe_date("best").value_or(one.earliest);
    one.clock = clock_named(need.maybe_choice_of("clock", clocks).value_or("opening"));
    one.temperature_min_C = need.number_or("temperature_min_C", -60, 50, one.temperature_min_C);
    one.minutes = need.maybe_whole("minutes", 0, 1440).value_or(one.minutes);
    one.people = need.maybe_whole("people", 1, 10).value_or(1);
    one.after = need.maybe_texts("after", most_needs);
    one.clashes = need.maybe_texts("clashes", most_needs);
    one.take = need.maybe_texts("take", 50);
    one.cautions = need.maybe_texts("cautions", 20);
    one.last_in_round = need.flag("last_in_round");
    one.loss = loss_from(Reader(need.part("loss"), path + ".loss"), need);
    return one;
  }

  facts::LossCurve loss_from(Reader loss, Reader& need) {
    facts::LossCurve curve{.from = plan().from};
    for (const Json& value : loss.list("by_day", most_days)) {
      const bool fits = value.is_number() && value.get<double>() >= 0 && value.get<double>() <= most_loss;
      const double day = fits ? value.get<double>() : 0;
      if (!fits || (!curve.by_day.empty() && day < curve.by_day.back()))
        loss.fail(bad_input("a loss is a number from 0 up that never falls from day to day",
                            loss.path_of("by_day"), "give the loss if met on each day of the plan"));
      curve.by_day.push_back(day);
    }
    curve.never = loss.number("never", 0, most_loss);
    curve.unit = loss.maybe_text("unit").value_or("kg honey equivalent");
    if (auto fault = loss.done()) need.fail(*std::move(fault));
    return curve;
  }

  void read_own() {
    each("own", reader_.maybe_list("own", most_needs), [&](Reader& job, const std::string& path) {
      const std::string key = job.text("need");
      const Date date = job.date("date");
      if (!keys_.contains(key))
        job.fail(bad_input("there is no need '" + key + "'", path + ".need", "name the key of a need"));
      asked_.own.push_back({key, date});
    });
  }

  // Members of one sky over all sites; without any, mild days, fit for opening as long as it is light.
  void read_weather() {
    const auto members = reader_.maybe_list("weather", most_members);
    const almanac::Place place{reader_.number_or("latitude_deg", -65, 65, 52), 0, 0};
    SiteWeather sky{.place = place, .first = plan().from, .last = plan().from + (plan().days - 1)};
    for (std::size_t m = 0; m < members.size(); ++m)
      take_member(members[m], reader_.path_of("weather", m), sky);
    if (failed_ || plan().hours.empty()) return;
    const auto rules = almanac::HourRules::from(tables_["hours"]);
    if (!rules) return reader_.fail(rules.problem());
    const bool given = asked_.weather_given = !sky.members.empty();
    if (!given) sky.members.push_back(mild_days());
    for (const auto& path : sky.members) {
      sky.fit.emplace_back();
      for (const auto& day : path) sky.fit.back().push_back(almanac::day_fitness(day, place, 0, *rules));
    }
    auto days = site_days(sky, plan().from, plan().days);
    if (!given) {
      for (work::SiteDay& day : days) day.opening = day.daylight;
    }
    plan().weather.assign(plan().sites.size(), days);
  }

  facts::WeatherPath mild_days() {
    facts::WeatherPath path;
    for (int d = 0; d < plan().days; ++d)
      path.push_back({.date = plan().from + d,
                      .temperature_min_C = 10,
                      .temperature_max_C = 20,
                      .rain_mm = 0,
                      .wind_m_s = 2});
    return path;
  }

  void take_member(const Json& member, const std::string& path, SiteWeather& sky) {
    if (!member.is_array() || member.size() != plan().hours.size()) {
      failed_ = true;
      return reader_.fail(
          bad_input("a course of the weather has as many days as $.days", path, "give each day once"));
    }
    sky.members.emplace_back();
    for (std::size_t d = 0; d < member.size(); ++d) {
      Reader day(member[d], path + "[" + std::to_string(d) + "]");
      sky.members.back().push_back({.date = plan().from + static_cast<int>(d),
                                    .temperature_min_C = day.number("temperature_min_C", -60, 50),
                                    .temperature_max_C = day.number("temperature_max_C", -60, 55),
                                    .rain_mm = day.number_or("rain_mm", 0, 500, 0),
                                    .wind_m_s = day.number_or("wind_m_s", 0, 60, 3)});
      if (auto fault = day.done()) {
        failed_ = true;
        return reader_.fail(*std::move(fault));
      }
    }
  }

  Reader reader_;
  const Tables& tables_;
  ScheduleAsked asked_;
  std::map<std::string, std::size_t> index_;  // of a stop in the table of ways
  std::set<std::string> keys_;                // of the needs
  bool failed_ = false;                       // in the weather
};

}  // namespace

Json schedule_input() {
  const auto n = number_schema;
  const auto t = text_schema;
  const Json site = object_schema({{"site", t("key")}, {"name", t("")}}, {"site"});
  const Json way = object_schema({{"from", t("a site, or home")},
                                  {"to", t("a site, or home")},
                                  {"minutes", n("both ways alike", 0, most_minutes)}},
                                 {"from", "to", "minutes"});
  const Json colony = object_schema({{"colony", t("key")},
                                     {"name", t("")},
                                     {"site", t("key")},
                                     {"place", n("in the order of the site", 0, 1000)}},
                                    {"colony", "site"});
  const Json loss = object_schema({{"by_day", array_schema(n("if met on that day", 0, most_loss), most_days)},
                                   {"never", n("if not met within the plan", 0, most_loss)},
                                   {"unit", t("absent: kg honey equivalent")}},
                                  {"by_day", "never"});
  const Json need =
      object_schema({{"key", t("")},
                     {"what", t("in words")},
                     {"site", t("key")},
                     {"colony", t("key; one that is not given is gone")},
                     {"earliest", date_schema("absent: the first day")},
                     {"best", date_schema("absent: the earliest")},
                     {"latest", date_schema("absent: the last day")},
                     {"clock", choice_schema("absent: opening", clocks)},
                     {"temperature_min_C", n("absent: 13", -60, 50)},
                     {"minutes", n("absent: 10", 0, 1440)},
                     {"people", n("", 1, 10)},
                     {"after", array_schema(t("key of a need that comes first"), most_needs)},
                     {"clashes", array_schema(t("key; only one of the two is done"), most_needs)},
                     {"take", array_schema(t(""), 50)},
                     {"cautions", array_schema(t(""), 20)},
                     {"last_in_round", flag_schema("health: after every other colony")},
                     {"loss", loss}},
                    {"key", "what", "site", "loss"});
  const Json hours =
      object_schema({{"start_hour", n("", 0, 24)}, {"end_hour", n("equal: no time that day", 0, 24)}},
                    {"start_hour", "end_hour"});
  const Json day = object_schema({{"temperature_min_C", n("", -60, 50)},
                                  {"temperature_max_C", n("", -60, 55)},
                                  {"rain_mm", n("absent: 0", 0, 500)},
                                  {"wind_m_s", n("mean at 10 m; absent: 3", 0, 60)}},
                                 {"temperature_min_C", "temperature_max_C"});
  return object_schema(
      {{"from", date_schema("first day")},
       {"days", array_schema(hours, most_days)},
       {"sites", array_schema(site, most_sites)},
       {"travel", array_schema(way, most_ways)},
       {"colonies", array_schema(colony, most_colonies)},
       {"needs", array_schema(need, most_needs)},
       {"weather", array_schema(array_schema(day, most_days), most_members)},
       {"own", array_schema(object_schema({{"need", t("key")}, {"date", date_schema("")}}, {"need", "date"}),
                            most_needs)},
       {"latitude_deg", n("absent: 52", -65, 65)},
       {"people", n("absent: 1", 1, 10)},
       {"price_per_hour", n("of the keeper's time, in the unit of loss", 0, 1000)},
       {"price_per_travel_minute", n("", 0, 100)},
       {"price_of_opening", n("what an opening costs a colony, once a visit", 0, 1000)},
       {"settle_minutes", n("at each stop, to suit up and to leave", 0, 240)}},
      {"from", "days", "sites"});
}

Expected<ScheduleAsked> read_schedule(const Json& input, const Tables& tables) {
  return Asking(input, tables).read();
}

}  // namespace beegarth::garth
