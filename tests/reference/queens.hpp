// Queens and matings in few words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "lines/pedigree.hpp"

namespace beegarth::reference {

inline lines::Drones drones_of(const std::string& dam, std::optional<int> number = {},
                               lines::Share share = {}, const std::string& name = "") {
  return {lines::QueenId(dam), number, share, name};
}

inline lines::Drones unrelated(std::optional<int> number = {}, lines::Share share = {},
                               const std::string& name = "") {
  return {std::nullopt, number, share, name};
}

inline lines::Queen queen(const std::string& id, std::optional<std::string> mother = {},
                          std::optional<std::string> father = {}, std::vector<lines::Drones> mating = {}) {
  lines::Queen made;
  made.id = lines::QueenId(id);
  if (mother) made.mother = lines::QueenId(*mother);
  made.father = std::move(father);
  made.mating = std::move(mating);
  return made;
}

}  // namespace beegarth::reference
