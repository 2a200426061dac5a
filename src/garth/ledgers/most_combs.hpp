// The most combs that a colony can have had about it on a day: where the book leaves something open, more.
#pragma once

#include <optional>
#include <span>

#include "book/book.hpp"
#include "entries/entry.hpp"

namespace beegarth::garth {

struct MostCombs {
  HiveId hive;
  int nest = 0;
  int boxes = 0;
  int others = 0;           // batches hung on it, and what came by a union or stood above at a transfer
  bool boxes_told = false;  // false: nobody ever said a word of boxes, and there may be some
  int counted() const { return nest + boxes; }
  int all() const { return nest + boxes + others; }
};

// `standing`: entries that count, oldest first; `told_with`: drafts that are told after. Of what happened
// from `from` to `day` only what was put on is counted: a look may have come before the boxes were off.
// Nothing where the colony has no hive that the book knows by then.
std::optional<MostCombs> most_combs(std::span<const entries::Entry> standing,
                                    std::span<const book::Draft> told_with, const ColonyId& colony, Date from,
                                    Date day);

}  // namespace beegarth::garth
