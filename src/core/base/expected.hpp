// Expected<T>: a value, or the Problem that stands in its place. (std::expected is C++23.)
#pragma once

#include <cassert>
#include <utility>
#include <variant>

#include "base/problem.hpp"

namespace beegarth {

template <class T>
class [[nodiscard]] Expected {
 public:
  Expected(T value) : state_(std::in_place_index<0>, std::move(value)) {}  // NOLINT: implicit on purpose
  Expected(Problem problem)
      : state_(std::in_place_index<1>, std::move(problem)) {}  // NOLINT: implicit on purpose

  bool has_value() const { return state_.index() == 0; }
  explicit operator bool() const { return has_value(); }

  T& value() & {
    assert(has_value());
    return *std::get_if<0>(&state_);
  }
  const T& value() const& {
    assert(has_value());
    return *std::get_if<0>(&state_);
  }
  T&& value() && {
    assert(has_value());
    return std::move(*std::get_if<0>(&state_));
  }
  T& operator*() & { return value(); }
  const T& operator*() const& { return value(); }
  T&& operator*() && { return std::move(*this).value(); }
  T* operator->() { return &value(); }
  const T* operator->() const { return &value(); }

  const Problem& problem() const {
    assert(!has_value());
    return *std::get_if<1>(&state_);
  }

 private:
  std::variant<T, Problem> state_;
};

struct Done {};
using Outcome = Expected<Done>;  // success carries nothing

}  // namespace beegarth
