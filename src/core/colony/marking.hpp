// The international colours for marking queens, by the last figure of the year: a convention of the trade.
#pragma once

#include <array>
#include <string_view>

namespace beegarth::colony {

constexpr std::string_view marking_colour(int year) {
  constexpr std::array<std::string_view, 5> colours{"blue", "white", "yellow", "red", "green"};
  return colours[static_cast<std::size_t>(year % 5)];
}

}  // namespace beegarth::colony
