// No queen is her own ancestor.
#include <algorithm>
#include <string>

#include "garth/gates/gates.hpp"
#include "garth/lines/descent.hpp"

namespace beegarth::garth {

Outcome keeps_descent(std::span<const entries::Entry> before, std::span<const entries::Entry> after) {
  const auto circle = circle_in(descent_in(after));
  if (circle.empty() || !circle_in(descent_in(before)).empty()) return Done{};
  std::string names;
  for (const std::string& key : circle) {
    std::string name = key;
    for (const auto& entry : after) {
      const auto* began = std::get_if<entries::QueenBegan>(&entry.payload);
      if (began && began->queen.text() == key) name = began->name;
    }
    names += (names.empty() ? "'" : " and '") + name + "'";
  }
  return bad_input(circle.size() == 1 ? names + " would be her own ancestor"
                                      : names + " would each descend from the other",
                   "mother", "one of them has another mother, or her mother was mated otherwise");
}

}  // namespace beegarth::garth
