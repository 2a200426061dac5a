// Private. The luck of as many members as fit one vector: a block of Philox4x32-7 a day each, counted as
// random_words() of base/random.hpp counts. Seven rounds are the fewest with which this generator passes all
// of BigCrush (Salmon et al. 2011, "Parallel random numbers: as easy as 1, 2, 3", table 2); the draws that
// are made once have ten. Three words become a nearly normal score each (the sum of four bytes, scaled: mean
// 0, variance 1, within 3.5), one becomes two uniforms of 16 bits.
//
// Philox multiplies 32 by 32 bits into 64. Vectors do that for every second lane, so the even and the odd
// members lie in two vectors of 64-bit numbers, whose upper halves do not matter, and are brought together at
// the end.
#pragma once

#include <array>
#include <cstdint>

#include "colony/lanes.hpp"

namespace beegarth::colony {

namespace philox {
inline constexpr int rounds = 7;
inline constexpr std::uint64_t times0 = 0xD2511F53U;
inline constexpr std::uint64_t times1 = 0xCD9E8D57U;
inline constexpr std::uint32_t key_step0 = 0x9E3779B9U;
inline constexpr std::uint32_t key_step1 = 0xBB67AE85U;

// The lower half of each number of `a`, times m.
template <class W>
BEEGARTH_INLINE W product(W a, std::uint64_t m) {
  return (a & 0xFFFFFFFFULL) * m;
}
#if defined(__SSE2__)
template <>
BEEGARTH_INLINE Wide4 product(Wide4 a, std::uint64_t m) {
  return reinterpret_cast<Wide4>(
      _mm_mul_epu32(reinterpret_cast<__m128i>(a), _mm_set1_epi64x(static_cast<std::int64_t>(m))));
}
#endif
#if defined(__AVX2__)
template <>
BEEGARTH_INLINE Wide8 product(Wide8 a, std::uint64_t m) {
  return reinterpret_cast<Wide8>(
      _mm256_mul_epu32(reinterpret_cast<__m256i>(a), _mm256_set1_epi64x(static_cast<std::int64_t>(m))));
}
#endif
#if defined(__AVX512F__)
template <>
BEEGARTH_INLINE Wide16 product(Wide16 a, std::uint64_t m) {
  return reinterpret_cast<Wide16>(_mm512_maskz_mul_epu32(0xFF, reinterpret_cast<__m512i>(a),
                                                         _mm512_set1_epi64(static_cast<std::int64_t>(m))));
}
#endif
}  // namespace philox

// What the luck of one colony's members has in common: the keys of the rounds.
struct LuckKeys {
  LuckKeys(std::array<std::uint32_t, 2> key, std::uint32_t purpose_of_draw) : purpose(purpose_of_draw) {
    for (auto& round : rounds) {
      round = {key[0], key[1]};
      key[0] += philox::key_step0;
      key[1] += philox::key_step1;
    }
  }
  std::array<std::array<std::uint64_t, 2>, philox::rounds> rounds{};
  std::uint64_t purpose;
};

// What a day brings to the first two rounds, the same for every member.
struct LuckDay {
  std::uint64_t high, low;
};
BEEGARTH_INLINE LuckDay luck_day(const LuckKeys& keys, std::uint32_t day) {
  const std::uint64_t first = (keys.purpose * philox::times1 >> 32) ^ day ^ keys.rounds[0][0];
  const std::uint64_t second = first * philox::times0;
  return {second >> 32, second};
}

template <class F>
struct Luck {
  F laying, forage, mites;  // scores
  F swarm, queen;           // uniform in (0, 1)
};

template <class F>
class Dice {
 public:
  using Int = typename Lane<F>::Int;
  using Wide = typename Lane<F>::Wide;
  static constexpr int halves = Lane<F>::width == 1 ? 1 : 2;
  struct Words {
    Int word[4];
  };

  // ids: one per lane. The first two rounds are done here as far as the day has no part in them.
  BEEGARTH_INLINE void take_up(const LuckKeys& keys, const std::uint32_t* ids) {
    using philox::product;
    Wide id[halves]{};
    std::memcpy(&id[0], ids, sizeof(Int));
    if constexpr (halves == 2) id[1] = id[0] >> 32;
    const std::uint64_t low = keys.purpose * philox::times1 & 0xFFFFFFFFULL;
    for (int h = 0; h < halves; ++h) {
      const Wide first = product<Wide>(id[h], philox::times0);
      const Wide second = product<Wide>((first >> 32) ^ keys.rounds[0][1], philox::times1);
      w0_[h] = (second >> 32) ^ (low ^ keys.rounds[1][0]);
      w1_[h] = second;
      w2_[h] = first ^ keys.rounds[1][1];
    }
  }

  BEEGARTH_INLINE Words words(const LuckKeys& keys, LuckDay day) const {
    Wide w0[halves], w1[halves], w2[halves], w3[halves];
    for (int h = 0; h < halves; ++h) {
      w0[h] = w0_[h];
      w1[h] = w1_[h];
      w2[h] = w2_[h] ^ day.high;
      w3[h] = Wide{} + day.low;
    }
#pragma GCC unroll 8
    for (std::size_t round = 2; round < philox::rounds; ++round) {
      Wide a[halves], b[halves];  // the halves in turns: neither waits for the other
      for (int h = 0; h < halves; ++h) a[h] = philox::product<Wide>(w0[h], philox::times0);
      for (int h = 0; h < halves; ++h) b[h] = philox::product<Wide>(w2[h], philox::times1);
      for (int h = 0; h < halves; ++h) w0[h] = (b[h] >> 32) ^ w1[h] ^ keys.rounds[round][0];
      for (int h = 0; h < halves; ++h) w2[h] = (a[h] >> 32) ^ w3[h] ^ keys.rounds[round][1];
      for (int h = 0; h < halves; ++h) w1[h] = b[h];
      for (int h = 0; h < halves; ++h) w3[h] = a[h];
    }
    const Wide* const end[4] = {w0, w1, w2, w3};
    Words words;
    for (int k = 0; k < 4; ++k) {
      Wide both = end[k][0];
      if constexpr (halves == 2) both = (both & 0xFFFFFFFFULL) | (end[k][1] << 32);
      std::memcpy(&words.word[k], &both, sizeof(Int));
    }
    return words;
  }

  BEEGARTH_INLINE Luck<F> roll(const LuckKeys& keys, LuckDay day) const {
    const Words w = words(keys, day);
    return {score(w.word[0]), score(w.word[1]), score(w.word[2]), uniform(w.word[3]),
            uniform(w.word[3] >> 16)};
  }

 private:
  BEEGARTH_INLINE static F score(Int x) {
    return (as_float<F>(sum_of_bytes<F>(x)) - 510.0F) *
           (1.0F / 147.80054F);  // sd of the sum: sqrt(4 (256^2 - 1) / 12)
  }
  BEEGARTH_INLINE static F uniform(Int x) {
    return (as_float<F>(x & 65535) + 0.5F) * (1.0F / 65536.0F);
  }

  Wide w0_[halves], w1_[halves], w2_[halves];
};

}  // namespace beegarth::colony
