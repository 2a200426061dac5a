#include "garth/as_it_stood.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

#include "entries/fields.hpp"
#include "garth/beliefs/believe.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

void put_suspicion(json& row, const SuspectColony* suspect) {
  if (suspect != nullptr) row["suspect"] = suspicion_text(suspect);
}

json colonies_seen(const Outline& outline, const SeenHealth& health) {
  json colonies = json::array();
  for (const auto& [id, colony] : outline.state.colonies) {
    json row{{"colony", id.text()},
             {"name", colony.began.name},
             {"hive", colony.hive.text()},
             {"began", colony.began_on.iso()}};
    if (const auto hive = outline.state.hives.find(colony.hive); hive != outline.state.hives.end())
      row["hive_name"] = hive->second.name;
    const SiteId site = site_of_colony(outline.state, colony);
    if (!site.empty()) row["site"] = site.text();
    if (colony.ended) {
      row["ended"] = colony.ended_on.value_or(outline.today).iso();
      row["how"] = entries::word_for(colony.ended->how);
    }
    put_suspicion(row, health.suspects.at(id));
    if (const auto apart = health.kept_apart.find(id); apart != health.kept_apart.end() && !colony.ended) {
      row["quarantine"] = kept_apart_text(apart->second);
      row["quarantined_until"] = apart->second.until.iso();
    }
    colonies.push_back(std::move(row));
  }
  return colonies;
}

json hives_seen(const Outline& outline, const SeenHealth& health) {
  std::set<HiveId> lived_in;
  for (const auto& [id, colony] : outline.state.colonies)
    if (!colony.ended) lived_in.insert(colony.hive);
  json hives = json::array();
  for (const auto& [id, hive] : outline.state.hives) {
    json row{{"hive", id.text()},
             {"name", hive.name},
             {"site", hive.site.text()},
             {"type", hive.type},
             {"form", entries::word_for(hive.form)},
             {"empty", !lived_in.contains(id)}};
    put_suspicion(row, health.suspects.at(id));
    hives.push_back(std::move(row));
  }
  return hives;
}

std::string line_of(const json& colony) {
  std::string health;
  for (const char* member : {"suspect", "quarantine"})
    if (colony.contains(member)) health += ", " + colony[member].get<std::string>();
  return fmt::format("  {:<18} in {:<14} since {}{}{}\n", colony["name"].get<std::string>(),
                     colony.value("hive_name", colony["hive"].get<std::string>()),
                     colony["began"].get<std::string>(),
                     colony.contains("ended")
                         ? ", " + colony["how"].get<std::string>() + " " + colony["ended"].get<std::string>()
                         : "",
                     health);
}

std::string line_of_empty(const json& hive) {
  return fmt::format("  {:<18} {} ({}, {})\n", "empty hive", hive["name"].get<std::string>(),
                     hive["type"].get<std::string>(), hive["form"].get<std::string>());
}

}  // namespace

json as_it_stood_json(const Outline& outline, const SeenHealth& health) {
  json sites = json::array();
  for (const auto& [id, site] : outline.state.sites) {
    json row{{"site", id.text()},
             {"name", site.name},
             {"latitude_deg", site.latitude_deg},
             {"longitude_deg", site.longitude_deg}};
    put_suspicion(row, health.suspects.at(id));
    sites.push_back(std::move(row));
  }
  return {{"as_of", outline.today.iso()},
          {"sites", std::move(sites)},
          {"hives", hives_seen(outline, health)},
          {"colonies", colonies_seen(outline, health)}};
}

std::string as_it_stood_text(const Outline& outline, const SeenHealth& health) {
  std::map<std::string, std::string> lines_at;  // by site; "" for those in no hive at an open one
  for (const json& colony : colonies_seen(outline, health))
    lines_at[colony.value("site", "")] += line_of(colony);
  for (const json& hive : hives_seen(outline, health))
    if (hive["empty"].get<bool>()) lines_at[hive["site"].get<std::string>()] += line_of_empty(hive);
  std::string text = "As it stood on " + outline.today.iso() + '\n';
  for (const auto& [id, site] : outline.state.sites) {
    const std::string suspicion = suspicion_text(health.suspects.at(id));
    text += site.name + (suspicion.empty() ? "" : ", " + suspicion) + '\n' + lines_at[id.text()];
  }
  if (const std::string& rest = lines_at[""]; !rest.empty()) text += "In no hive at an open site\n" + rest;
  return text;
}

}  // namespace beegarth::garth
