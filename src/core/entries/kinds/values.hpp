// What the fields of an entry are made of. Optional means "not said", which is never "none".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/units.hpp"

namespace beegarth::entries {

using Text = std::optional<std::string>;
using Number = std::optional<double>;
using Count = std::optional<int>;
using Flag = std::optional<bool>;

enum class Level { none, little, some, plenty };

}  // namespace beegarth::entries
