#include <string>

#include "entries/fields.hpp"
#include "garth/gates/gates.hpp"
#include "garth/ledgers/parts.hpp"

namespace beegarth::garth {
namespace {

std::string grounds_in_words(const entries::Part& part) {
  std::string words;
  for (const auto& ground : grounds_for_suspicion(part)) words += (words.empty() ? "" : ", ") + ground;
  return words;
}

Outcome assemble(const Known& known, const entries::Assembled& assembled) {
  const auto parts = parts_on(known.standing, known.day);
  for (const PartId& id : assembled.parts) {
    const auto at = parts.find(id);
    if (at == parts.end())
      return bad_input("there is no part '" + id.text() + "' on that day", "parts",
                       "enter the part first, with the day since when it is yours");
    if (at->second.state == entries::PartState::usable) continue;
    const std::string grounds = grounds_in_words(at->second.part);
    return bad_input(
        "'" + at->second.part.name + "' is " + std::string(entries::word_for(at->second.state)) +
            (grounds.empty() ? "" : " (" + grounds + ")") + ": no hive is put together with it",
        "entry " + at->second.said.text(),
        "scorch, dip or send it away, then enter it as clean and as usable; or take another part");
  }
  return Done{};
}

Outcome next_state(const Known& known, const entries::PartNow& now) {
  const auto parts = parts_on(known.standing, known.day);
  const auto at = parts.find(now.part);
  if (at == parts.end()) return Done{};
  const std::string why = why_not_now(at->second, now.state);
  if (why.empty()) return Done{};
  return bad_input("'" + at->second.part.name + "' cannot be " + std::string(entries::word_for(now.state)) +
                       " now: " + why,
                   "entry " + at->second.said.text(), "enter the steps in their order, with their dates");
}

}  // namespace

Outcome kit_gate(const Known& known, const book::Draft& draft) {
  if (const auto* assembled = std::get_if<entries::Assembled>(&draft.payload))
    return assemble(known, *assembled);
  if (const auto* now = std::get_if<entries::PartNow>(&draft.payload)) return next_state(known, *now);
  return Done{};
}

}  // namespace beegarth::garth
