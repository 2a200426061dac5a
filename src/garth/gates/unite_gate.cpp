// Two stocks become one only after a look through the brood of both: what one has the other gets.
#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

// What a look may show and the stocks be united all the same: robbers, guests and the cold pass no disease
// on, and a stock with laying workers is united because of them (common practice).
constexpr auto signs_of_no_disease = std::to_array<std::string_view>(
    {"hornet", "robbing", "mouse", "wax_moth", "chilled_brood", "laying_workers"});

std::string sick_with(const std::vector<std::string>& signs) {
  for (const std::string& sign : signs)
    if (std::find(signs_of_no_disease.begin(), signs_of_no_disease.end(), sign) == signs_of_no_disease.end())
      return sign;
  return {};
}

Outcome looked_through(const Known& known, const ColonyId& id) {
  const int days = known.rules.unite_look_days;
  std::optional<Date> last, seen_on;
  std::string sick;
  const auto saw = [&](const std::vector<std::string>& signs, Date day) {
    const std::string sign = sick_with(signs);
    if (sign.empty()) return;
    sick = sign;
    seen_on = day;
  };
  for (const auto& entry : known.standing) {
    if (entries::colony_of(entry.payload) != id) continue;
    if (const auto* sign = std::get_if<entries::Sign>(&entry.payload)) saw(sign->signs, entry.happened);
    const auto* look = std::get_if<entries::Inspection>(&entry.payload);
    if (look == nullptr) continue;
    if (look->look == entries::Look::full) last = entry.happened;
    saw(look->signs, entry.happened);
  }
  const auto at = known.state.colonies.find(id);
  const std::string name = at == known.state.colonies.end() ? id.text() : at->second.began.name;
  if (last && *last >= known.day - days) {
    if (!seen_on || *seen_on < *last) return Done{};  // a later look through it saw nothing of it
    std::replace(sick.begin(), sick.end(), '_', ' ');
    return bad_input(
        "'" + name + "' was seen with " + sick + " on " + seen_on->iso() +
            ": what one stock has the other gets",
        "colony " + id.text(),
        "find out what it is first; unite them after a full look on a later day that sees no sign of it");
  }
  return bad_input("the brood of '" + name + "' was not looked through in the " + std::to_string(days) +
                       " days before" + (last ? ", last on " + last->iso() : "") +
                       ": what one stock has the other gets",
                   "colony " + id.text(),
                   "look through every comb of both for signs of disease, enter the full look (inspection), "
                   "then unite them");
}

}  // namespace

Outcome unite_gate(const Known& known, const book::Draft& draft) {
  const auto* unite = std::get_if<entries::Unite>(&draft.payload);
  if (unite == nullptr) return Done{};
  if (Outcome seen = looked_through(known, unite->colony); !seen) return seen;
  return looked_through(known, unite->from);
}

}  // namespace beegarth::garth
