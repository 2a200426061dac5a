// No figure is kept that cannot be: more than the hive holds on that day, by all that the book leaves open.
#include "garth/gates/gates.hpp"

namespace beegarth::garth {

Outcome figures_gate(const Known& known, const book::Draft& draft) {
  for (const Figure& figure : figures_in(draft.payload, known.day, known.standing, known.told_after,
                                         known.state, known.rules.figures)) {
    if (figure.amount <= figure.possible) continue;
    return bad_input(figure.said + " cannot be: " + figure.holds, figure.field, figure.remedy);
  }
  return Done{};
}

}  // namespace beegarth::garth
