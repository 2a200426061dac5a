// A visitor of fields that looks at none. Whoever asks after a few sorts of fields derives from it and says
// `using` of those members; see fields.hpp.
#pragma once

namespace beegarth::entries {

struct FieldsPassedBy {
  template <class... Rest>
  void id(const Rest&...) {}
  template <class... Rest>
  void ids(const Rest&...) {}
  template <class... Rest>
  void text(const Rest&...) {}
  template <class... Rest>
  void number(const Rest&...) {}
  template <class... Rest>
  void count(const Rest&...) {}
  template <class... Rest>
  void flag(const Rest&...) {}
  template <class... Rest>
  void choice(const Rest&...) {}
  template <class... Rest>
  void date(const Rest&...) {}
  template <class... Rest>
  void words(const Rest&...) {}
};

}  // namespace beegarth::entries
