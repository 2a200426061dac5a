#include "garth/imports/map_keys.hpp"

#include <algorithm>

namespace beegarth::garth {

std::string in_quotes(std::string_view text) {
  return "'" + std::string(text.substr(0, 60)) + "'";
}

Outcome only_these(const Place& place, const toml::table& table,
                   std::initializer_list<std::string_view> known) {
  for (const auto& [key, value] : table) {
    if (std::find(known.begin(), known.end(), key.str()) != known.end()) continue;
    std::string list;
    for (const std::string_view word : known) list += (list.empty() ? "" : ", ") + std::string(word);
    return place.refuse(value, "a map has no " + in_quotes(key.str()) + " here", "use " + list);
  }
  return Done{};
}

Outcome take_number(const Place& place, const toml::table& table, std::string_view key, double& target) {
  const toml::node* node = table.get(key);
  if (!node) return Done{};
  if (!node->is_number()) return place.refuse(*node, in_quotes(key) + " must be a number", "mend it");
  target = node->value_or(0.0);
  return Done{};
}

Outcome take_whole(const Place& place, const toml::table& table, std::string_view key, int low, int high,
                   int& target) {
  const toml::node* node = table.get(key);
  if (!node) return Done{};
  const auto value = node->value_exact<std::int64_t>();
  if (!value || *value < low || *value > high) {
    return place.refuse(*node,
                        in_quotes(key) + " must be a whole number from " + std::to_string(low) + " to " +
                            std::to_string(high),
                        "mend it");
  }
  target = static_cast<int>(*value);
  return Done{};
}

Outcome take_texts(const Place& place, const toml::table& table, std::string_view key,
                   std::vector<std::string>& target) {
  const toml::node* node = table.get(key);
  if (!node) return Done{};
  const auto refused = [&] {
    return place.refuse(*node, in_quotes(key) + " must be a text or a list of texts", "mend it");
  };
  if (const auto one = node->value_exact<std::string>()) {
    target = {*one};
    return Done{};
  }
  const toml::array* list = node->as_array();
  if (!list || list->empty()) return refused();
  target.clear();
  for (const toml::node& each : *list) {
    const auto text = each.value_exact<std::string>();
    if (!text) return refused();
    target.push_back(*text);
  }
  return Done{};
}

}  // namespace beegarth::garth
