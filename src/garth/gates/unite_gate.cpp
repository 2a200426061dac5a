// Two stocks become one only after a look through the brood of both: what one has the other gets.
#include <string>

#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

Outcome looked_through(const Known& known, const ColonyId& id) {
  const int days = known.rules.unite_look_days;
  std::optional<Date> last;
  for (const auto& entry : known.standing) {
    const auto* look = std::get_if<entries::Inspection>(&entry.payload);
    if (look && look->colony == id && look->look == entries::Look::full) last = entry.happened;
  }
  if (last && *last >= known.day - days) return Done{};
  const auto at = known.state.colonies.find(id);
  const std::string name = at == known.state.colonies.end() ? id.text() : at->second.began.name;
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
