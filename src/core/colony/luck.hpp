// Private. The luck of sixteen members on one day: one block of Philox4x32-10 each, the same words as
// random_words() of base/random.hpp. Three words become a nearly normal score each (the sum of four bytes,
// scaled: mean 0, variance 1, within 3.5), one becomes two uniforms of 16 bits.
#pragma once

#include <cstdint>

#include "colony/lanes.hpp"

namespace beegarth::colony {

struct LuckWords {
  std::uint32_t word[4][16];
};

// A template only so that every instruction set gets a copy of its own.
template <class F>
BEEGARTH_INLINE LuckWords luck_words(const std::uint32_t* ids, std::uint32_t day, std::uint32_t purpose,
                                     std::uint32_t key0, std::uint32_t key1) {
  LuckWords w;
  for (int i = 0; i < 16; ++i) {
    w.word[0][i] = ids[i];
    w.word[1][i] = day;
    w.word[2][i] = purpose;
    w.word[3][i] = 0;
  }
  for (int round = 0; round < 10; ++round) {
    for (int i = 0; i < 16; ++i) {
      const std::uint64_t a = std::uint64_t{w.word[0][i]} * 0xD2511F53U;
      const std::uint64_t b = std::uint64_t{w.word[2][i]} * 0xCD9E8D57U;
      const std::uint32_t next0 = static_cast<std::uint32_t>(b >> 32) ^ w.word[1][i] ^ key0;
      const std::uint32_t next2 = static_cast<std::uint32_t>(a >> 32) ^ w.word[3][i] ^ key1;
      w.word[1][i] = static_cast<std::uint32_t>(b);
      w.word[3][i] = static_cast<std::uint32_t>(a);
      w.word[0][i] = next0;
      w.word[2][i] = next2;
    }
    key0 += 0x9E3779B9U;
    key1 += 0xBB67AE85U;
  }
  return w;
}

template <class F>
struct Luck {
  F laying, forage, mites;  // scores
  F swarm, queen;           // uniform in (0, 1)
};

template <class F>
BEEGARTH_INLINE F as_float(typename Lane<F>::Int x) {
  if constexpr (Lane<F>::width == 1) {
    return static_cast<float>(x);
  } else {
    return __builtin_convertvector(x, F);
  }
}

template <class F>
BEEGARTH_INLINE Luck<F> luck_of(const LuckWords& w, int lane) {
  using I = typename Lane<F>::Int;
  I word[4];
  for (int k = 0; k < 4; ++k) std::memcpy(&word[k], &w.word[k][lane], sizeof(I));
  const auto score = [](I x) {
    const I sum = (x & 255) + ((x >> 8) & 255) + ((x >> 16) & 255) + ((x >> 24) & 255);
    return (as_float<F>(sum) - 510.0F) * (1.0F / 147.80054F);  // sd of the sum: sqrt(4 (256^2 - 1) / 12)
  };
  const auto uniform = [](I x) { return (as_float<F>(x & 65535) + 0.5F) * (1.0F / 65536.0F); };
  return {score(word[0]), score(word[1]), score(word[2]), uniform(word[3]), uniform(word[3] >> 16)};
}

}  // namespace beegarth::colony
