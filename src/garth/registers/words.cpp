#include <fmt/format.h>

#include <algorithm>

#include "garth/beliefs/believe.hpp"
#include "garth/registers/kinds.hpp"
#include "garth/tables/countries.hpp"

namespace beegarth::garth {

std::string colony_name(const Session& session, const ColonyId& id) {
  const auto at = session.state.colonies.find(id);
  return at == session.state.colonies.end() ? id.text() : at->second.began.name;
}

std::string site_name(const Session& session, const SiteId& id) {
  const auto at = session.state.sites.find(id);
  return at == session.state.sites.end() ? id.text() : at->second.name;
}

const FactTable& country_table(const Session& session, const std::optional<ColonyId>& colony) {
  std::string country = "general";
  const auto setting = session.state.settings.find("country");
  if (setting != session.state.settings.end()) country = setting->second;
  if (colony && session.state.colonies.contains(*colony)) {
    const auto site =
        session.state.sites.find(site_of_colony(session.state, session.state.colonies.at(*colony)));
    if (site != session.state.sites.end() && site->second.country) country = *site->second.country;
  }
  return session.tables[duty_table_of(country)];
}

std::string short_number(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string short_number(const std::optional<double>& value, int decimals) {
  return value ? short_number(*value, decimals) : std::string();
}

std::string yes_or_no(const std::optional<bool>& value) {
  return !value ? "" : *value ? "yes" : "no";
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : std::string(between)) + part;
  return text;
}

std::string key_in_words(std::string_view key) {
  std::string text(key);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::string place_of(const Session& session, const HiveId& hive) {
  const auto at = session.state.hives.find(hive);
  return at == session.state.hives.end() ? hive.text()
                                         : at->second.name + ", " + site_name(session, at->second.site);
}

}  // namespace beegarth::garth
