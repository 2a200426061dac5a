// The fields of every kind, told once: name, unit, limits. Validation, JSON, CSV mapping, schema and the
// note's read-back all visit this list, so they cannot disagree.
//
// A visitor is any type with the members used below:
//   id(name, Id<T>&, required), text(name, std::string&, required), text(name, Text&),
//   number(name, double&, Limits), number(name, Number&, Limits), count(name, int&, Limits), count(name,
//   Count&, Limits), flag(name, bool&), flag(name, Flag&), choice(name, E&), choice(name, std::optional<E>&),
//   date(name, std::optional<Date>&), id(name, std::optional<Id<T>>&), ids(name, std::vector<Id<T>>&),
//   words(name, std::vector<std::string>&), whose words are signs_of_health
// One that asks after a few sorts alone derives from FieldsPassedBy and says `using FieldsPassedBy::id;` and
// the like for those. The same functions serve const payloads: `visit_fields(visitor, payload)` deduces
// constness.
#pragma once

#include <type_traits>
#include <variant>

#include "entries/fields/colonies.hpp"
#include "entries/fields/deeds.hpp"
#include "entries/fields/kit.hpp"
#include "entries/fields/land.hpp"
#include "entries/fields/limits.hpp"
#include "entries/fields/looks.hpp"
#include "entries/fields/passed_by.hpp"
#include "entries/fields/places.hpp"
#include "entries/fields/produce.hpp"
#include "entries/fields/rest.hpp"
#include "entries/fields/weather.hpp"
#include "entries/fields/words.hpp"
#include "entries/payloads.hpp"
#undef BEEGARTH_WORDS

namespace beegarth::entries {

template <class V, class P>
void visit_fields(V& visitor, P& payload) {
  fields(visitor, payload, static_cast<const std::remove_const_t<P>*>(nullptr));
}

// The same for whichever kind the variant holds.
template <class V>
void visit_fields_of(V& visitor, Payload& payload) {
  std::visit([&](auto& p) { visit_fields(visitor, p); }, payload);
}
template <class V>
void visit_fields_of(V& visitor, const Payload& payload) {
  std::visit([&](const auto& p) { visit_fields(visitor, p); }, payload);
}

}  // namespace beegarth::entries
