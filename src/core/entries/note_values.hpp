// How a value is put where nothing else was said before. Private to the room.
#pragma once

#include <cmath>
#include <optional>

namespace beegarth::entries {

// False where the slot holds another value.
template <class T>
bool put(std::optional<T>& slot, const T& value) {
  if (slot && *slot != value) return false;
  slot = value;
  return true;
}

inline std::optional<int> whole(double value) {
  if (value != std::trunc(value) || std::abs(value) > 1e8) return std::nullopt;
  return static_cast<int>(value);
}

}  // namespace beegarth::entries
