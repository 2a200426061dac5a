// The words for each choice, in the order of its enumerators, and the signs of ill health.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

template <class E>
struct Words;
#define BEEGARTH_WORDS(E, ...)                                                   \
  template <>                                                                    \
  struct Words<E> {                                                              \
    static constexpr auto list = std::to_array<std::string_view>({__VA_ARGS__}); \
  }
BEEGARTH_WORDS(Level, "none", "little", "some", "plenty");

template <class E>
constexpr std::string_view word_for(E choice) {
  return Words<E>::list[static_cast<std::size_t>(choice)];
}

inline constexpr auto signs_of_health = std::to_array<std::string_view>({"patchy_brood",
                                                                         "sunken_cappings",
                                                                         "perforated_cappings",
                                                                         "greasy_cappings",
                                                                         "ropy_larva",
                                                                         "discoloured_larvae",
                                                                         "chalk_brood",
                                                                         "deformed_wings",
                                                                         "dysentery",
                                                                         "crawling_bees",
                                                                         "hornet",
                                                                         "hive_beetle",
                                                                         "mite_on_brood",
                                                                         "other_brood_mite",
                                                                         "wax_moth",
                                                                         "robbing",
                                                                         "foulbrood_suspected",
                                                                         "bald_brood",
                                                                         "sac_brood",
                                                                         "chilled_brood",
                                                                         "mouse",
                                                                         "laying_workers"});

}  // namespace beegarth::entries
