// The keys of one table of a mapping file, each read with its type checked. Private to the room.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/expected.hpp"
#include "garth/tables/parse_toml.hpp"

namespace beegarth::garth {

// Where in the mapping file a thing stands, for problems.
class Place {
 public:
  explicit Place(std::string name) : name_(std::move(name)) {}
  std::string at(std::size_t line) const { return name_ + ":" + std::to_string(line); }
  std::string at(const toml::node& node) const { return at(node.source().begin.line); }
  Problem refuse(const toml::node& node, std::string what, std::string remedy) const {
    return bad_input(std::move(what), at(node), std::move(remedy));
  }

 private:
  std::string name_;
};

std::string in_quotes(std::string_view text);

// A problem where the table holds another key.
Outcome only_these(const Place& place, const toml::table& table,
                   std::initializer_list<std::string_view> known);

// Reads `key` into `target` where it is there; a problem where it has another type.
template <class T>
Outcome take(const Place& place, const toml::table& table, std::string_view key, T& target,
             const char* described) {
  const toml::node* node = table.get(key);
  if (!node) return Done{};
  const auto value = node->value_exact<T>();
  if (!value) return place.refuse(*node, in_quotes(key) + " must be " + described, "mend it");
  target = *value;
  return Done{};
}

Outcome take_number(const Place& place, const toml::table& table, std::string_view key, double& target);
Outcome take_whole(const Place& place, const toml::table& table, std::string_view key, int low, int high,
                   int& target);
// One text, or a list of texts.
Outcome take_texts(const Place& place, const toml::table& table, std::string_view key,
                   std::vector<std::string>& target);

}  // namespace beegarth::garth
