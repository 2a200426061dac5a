// Which of several drafts may not be kept, and why.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>

#include "base/problem.hpp"
#include "base/units.hpp"

namespace beegarth::garth {

struct Objection {
  std::size_t draft = 0;  // place among those given, from 0
  Problem problem;        // may name drafts before it by draft_id
};

// What a draft is called while it has no id in the book.
EntryId draft_id(std::size_t draft);

// The problem as the keeper is told of it: with the draft that it is about and those that it names, each in
// the words of `name`; empty words are left out.
Problem told(const Objection& objection, const std::function<std::string(std::size_t)>& name);
// "entry 2 of the 3 given"; of one entry, nothing.
Problem told(const Objection& objection, std::size_t given);

}  // namespace beegarth::garth
