#include "garth/lines/descent.hpp"

#include <algorithm>
#include <set>

namespace beegarth::garth {

Descent descent_in(std::span<const entries::Entry> standing) {
  std::map<std::string, std::string> mothers;
  std::map<std::string, std::vector<std::string>> matings;
  for (const auto& entry : standing) {
    if (const auto* began = std::get_if<entries::QueenBegan>(&entry.payload))
      mothers[began->queen.text()] = began->mother ? began->mother->text() : "";
    if (const auto* mated = std::get_if<entries::QueenMated>(&entry.payload)) {
      auto& dams = matings[mated->queen.text()];
      dams.clear();
      for (const QueenId& dam : mated->drone_mothers) dams.push_back(dam.text());
    }
  }
  Descent descent;
  for (const auto& [queen, mother] : mothers) {
    auto& from = descent[queen];
    if (mother.empty()) continue;
    from.push_back(mother);
    if (const auto mates = matings.find(mother); mates != matings.end())
      from.insert(from.end(), mates->second.begin(), mates->second.end());
  }
  return descent;
}

// Depth first, with a way of its own instead of the call stack: lines can be long.
std::vector<std::string> circle_in(const Descent& descent) {
  static const std::vector<std::string> nobody;
  const auto above = [&](const std::string& queen) -> const std::vector<std::string>& {
    const auto at = descent.find(queen);
    return at == descent.end() ? nobody : at->second;
  };
  std::set<std::string> done;
  for (const auto& [start, from] : descent) {
    std::vector<std::string> way{start};
    std::vector<std::size_t> next{0};
    while (!way.empty()) {
      const std::string here = way.back();
      if (done.contains(here) || next.back() == above(here).size()) {
        done.insert(here);
        way.pop_back();
        next.pop_back();
        continue;
      }
      const std::string& parent = above(here)[next.back()++];
      if (const auto again = std::find(way.begin(), way.end(), parent); again != way.end())
        return {again, way.end()};
      way.push_back(parent);
      next.push_back(0);
    }
  }
  return {};
}

}  // namespace beegarth::garth
