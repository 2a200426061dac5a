// Two corrections of one entry stand side by side until the keeper takes one back (book/standing.cpp): both
// are shown, but a thing that was there once is not counted twice.
#pragma once

#include <map>
#include <span>

#include "entries/entry.hpp"

namespace beegarth::garth {

// Each correction, with the first entry of its line.
using FirstSaid = std::map<EntryId, EntryId>;

// `all`: every entry, those that were corrected too.
FirstSaid first_said(std::span<const entries::Entry> all);

// Harvests that do not count, each with the one that counts in its place: the smallest of those that correct
// one harvest, and of equal ones the first.
std::map<EntryId, EntryId> outdone_harvests(std::span<const entries::Entry> standing, const FirstSaid& first);

}  // namespace beegarth::garth
