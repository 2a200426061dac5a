// What may not be entered, because it would break a rule that protects bees, neighbours or people who eat the
// honey. Every way in that a keeper writes by goes through here (see keep.hpp).
//
//   presence nothing is done to a colony that has ended; a hive holds one colony, or two if it is made for
//   two suspect  nothing moves to or from a suspect colony, hive or site until the inspector has cleared it
//   quarantine a stock of unknown origin is kept apart from all others
//   unite    two stocks become one only after a look through the brood of both
//   kit      a hive is put together and lived in of usable parts only; suspect kit is made safe, then clean,
//            then usable; old comb of others hangs nowhere
//   hive     a hive is asked for nothing that it cannot take or show
//   figures  no figure is larger than what the hive holds on that day
//   transfer a colony goes into another hive in a way that the combs of both allow
//   nest     nothing is cut or planted where a wild nest was found
//   honey    nothing from a comb that was on during feeding or treatment is for people
//   feed     never honey of unknown origin
//   rules    what this keeper will not do
//   descent  no queen is her own ancestor
#pragma once

#include <span>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"
#include "book/state.hpp"
#include "garth/gates/gate_rules.hpp"
#include "garth/keep/objection.hpp"
#include "garth/ledgers/honey.hpp"

namespace beegarth::garth {

// What is known when a draft is judged: everything that counts, and the state on the draft's own day.
struct Known {
  std::span<const entries::Entry> standing;  // until that day, oldest first
  std::span<const entries::Entry> later;     // what counts and happened after it
  const book::State& state;
  Date day;
  const GateRules& rules;
  std::span<const entries::Entry> said;     // of all days, what was corrected or removed too
  std::span<const book::Draft> told_after;  // in one go with the draft, not yet judged
};

// Each judges one draft; a Problem says what stands in the way, since which entry, and what to do.
Outcome presence_gate(const Known& known, const book::Draft& draft);
// Rows of the keeper's own that change what is suspect, and what that holds.
bool says_what_is_suspect(const entries::TableOverride& own);
Outcome suspect_gate(const Known& known, const book::Draft& draft);
Outcome quarantine_gate(const Known& known, const book::Draft& draft);
Outcome unite_gate(const Known& known, const book::Draft& draft);
Outcome kit_gate(const Known& known, const book::Draft& draft);
Outcome hive_gate(const Known& known, const book::Draft& draft);
Outcome figures_gate(const Known& known, const book::Draft& draft);
Outcome transfer_gate(const Known& known, const book::Draft& draft);
Outcome honey_gate(const Known& known, const book::Draft& draft);
Outcome nest_gate(const Known& known, const book::Draft& draft);
Outcome feed_gate(const Known& known, const book::Draft& draft);
Outcome rules_gate(const Known& known, const book::Draft& draft);

// Nothing but the inspector's word ends or shortens a suspicion: not a removal, a correction or a move
// entered late. Both spans hold the entries that count, of all days, without the draft and with it.
Outcome keeps_suspicion(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                        const book::Draft& draft, const Notifiable& notifiable);
// No correction or removal clears the mark of a batch of combs while the feeding or treatment stands that
// made it.
Outcome keeps_marks(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                    const book::Draft& draft, const HoneyRules& rules);
// A correction of how a stock began ends its quarantine only by saying whose swarm it is.
Outcome keeps_quarantine(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                         const book::Draft& draft, const QuarantineRules& rules);
// No hive holds more colonies than it is made for because of the draft, on the last day that is told of.
Outcome keeps_room(std::span<const entries::Entry> before, std::span<const entries::Entry> after);

// What is said of a colony is not left without its beginning.
Outcome keeps_beginnings(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                         const book::Draft& draft);

// No queen descends from herself because of the draft.
Outcome keeps_descent(std::span<const entries::Entry> before, std::span<const entries::Entry> after);

// All of them, for drafts that come one after another: nothing, or what stands in the way of the first.
std::optional<Objection> pass_the_gates(std::span<const entries::Entry> book,
                                        std::span<const book::Draft> drafts, const GateRules& rules);

}  // namespace beegarth::garth
