// Private. Arithmetic on several members at once that gives the same bits whatever the width: every operation
// is one IEEE operation per lane, exp is our own, and nothing is summed across lanes.
#pragma once

#include <cstdint>
#include <cstring>

#if defined(__x86_64__)
#include <immintrin.h>
#endif

namespace beegarth::colony {

#define BEEGARTH_INLINE inline __attribute__((always_inline))

using Float4 = float __attribute__((vector_size(16)));
using Float8 = float __attribute__((vector_size(32)));
using Float16 = float __attribute__((vector_size(64)));
using Int4 = std::int32_t __attribute__((vector_size(16)));
using Int8 = std::int32_t __attribute__((vector_size(32)));
using Int16 = std::int32_t __attribute__((vector_size(64)));
using Wide4 = std::uint64_t __attribute__((vector_size(16)));
using Wide8 = std::uint64_t __attribute__((vector_size(32)));
using Wide16 = std::uint64_t __attribute__((vector_size(64)));

// Of each width: whole numbers, one a lane; and 64-bit numbers, one for every two lanes.
template <class F>
struct Lane;
template <>
struct Lane<float> {
  using Int = std::int32_t;
  using Wide = std::uint64_t;
  static constexpr int width = 1;
};
template <>
struct Lane<Float4> {
  using Int = Int4;
  using Wide = Wide4;
  static constexpr int width = 4;
};
template <>
struct Lane<Float8> {
  using Int = Int8;
  using Wide = Wide8;
  static constexpr int width = 8;
};
template <>
struct Lane<Float16> {
  using Int = Int16;
  using Wide = Wide16;
  static constexpr int width = 16;
};

template <class F>
BEEGARTH_INLINE F load(const float* from) {
  F x;
  std::memcpy(&x, from, sizeof x);
  return x;
}

template <class F>
BEEGARTH_INLINE void store(float* to, F x) {
  std::memcpy(to, &x, sizeof x);
}

template <class F>
BEEGARTH_INLINE F all(float x) {
  return x - F{};  // x in every lane
}

// Where something holds. In lanes all ones or all zeros; AVX-512 has registers of its own for it.
template <class F>
struct Mask {
  typename Lane<F>::Int bits;
};
template <>
struct Mask<float> {
  bool bits;
};

template <class F>
BEEGARTH_INLINE Mask<F> less(F a, F b) {
  return {a < b};
}
template <class F>
BEEGARTH_INLINE Mask<F> operator&(Mask<F> a, Mask<F> b) {
  return {a.bits & b.bits};
}
template <class F>
BEEGARTH_INLINE Mask<F> operator|(Mask<F> a, Mask<F> b) {
  return {a.bits | b.bits};
}
template <class F>
BEEGARTH_INLINE Mask<F> operator!(Mask<F> a) {
  return {~a.bits};
}
template <class F>
BEEGARTH_INLINE F pick(Mask<F> where, F yes, F no) {
  return where.bits ? yes : no;
}
template <class F>
BEEGARTH_INLINE F least(F a, F b) {
  return a < b ? a : b;
}
template <class F>
BEEGARTH_INLINE F most(F a, F b) {
  return a > b ? a : b;
}
template <class F>
BEEGARTH_INLINE bool any_of(Mask<F> where) {
  std::int32_t lane[Lane<F>::width];
  std::memcpy(lane, &where.bits, sizeof lane);
  std::int32_t any = 0;
  for (const std::int32_t bits : lane) any |= bits;
  return any != 0;
}

template <>
BEEGARTH_INLINE Mask<float> operator&(Mask<float> a, Mask<float> b) {
  return {a.bits && b.bits};
}
template <>
BEEGARTH_INLINE Mask<float> operator|(Mask<float> a, Mask<float> b) {
  return {a.bits || b.bits};
}
template <>
BEEGARTH_INLINE Mask<float> operator!(Mask<float> a) {
  return {!a.bits};
}
template <>
BEEGARTH_INLINE bool any_of(Mask<float> where) {
  return where.bits;
}

// What the compiler does not make of the above by itself. MINPS and MAXPS are `a < b ? a : b` and `a > b ? a
// : b`.
#if defined(__SSE2__)
template <>
BEEGARTH_INLINE Float4 least(Float4 a, Float4 b) {
  return _mm_min_ps(a, b);
}
template <>
BEEGARTH_INLINE Float4 most(Float4 a, Float4 b) {
  return _mm_max_ps(a, b);
}
template <>
BEEGARTH_INLINE bool any_of(Mask<Float4> where) {
  return _mm_movemask_ps(reinterpret_cast<__m128>(where.bits)) != 0;
}
#endif
#if defined(__AVX2__)
template <>
BEEGARTH_INLINE Float8 least(Float8 a, Float8 b) {
  return _mm256_min_ps(a, b);
}
template <>
BEEGARTH_INLINE Float8 most(Float8 a, Float8 b) {
  return _mm256_max_ps(a, b);
}
template <>
BEEGARTH_INLINE bool any_of(Mask<Float8> where) {
  return _mm256_movemask_ps(reinterpret_cast<__m256>(where.bits)) != 0;
}
#endif
#if defined(__AVX512F__)
// With a mask of all lanes, since the plain intrinsics of GCC 12 warn of a value without a beginning (GCC bug
// 105593).
inline constexpr __mmask16 each_lane = 0xFFFF;
template <>
struct Mask<Float16> {
  __mmask16 bits;
};
template <>
BEEGARTH_INLINE Mask<Float16> less(Float16 a, Float16 b) {
  return {_mm512_cmp_ps_mask(a, b, _CMP_LT_OQ)};
}
template <>
BEEGARTH_INLINE Mask<Float16> operator&(Mask<Float16> a, Mask<Float16> b) {
  return {_mm512_kand(a.bits, b.bits)};
}
template <>
BEEGARTH_INLINE Mask<Float16> operator|(Mask<Float16> a, Mask<Float16> b) {
  return {_mm512_kor(a.bits, b.bits)};
}
template <>
BEEGARTH_INLINE Mask<Float16> operator!(Mask<Float16> a) {
  return {_mm512_knot(a.bits)};
}
template <>
BEEGARTH_INLINE Float16 pick(Mask<Float16> where, Float16 yes, Float16 no) {
  return _mm512_mask_blend_ps(where.bits, no, yes);
}
template <>
BEEGARTH_INLINE Float16 least(Float16 a, Float16 b) {
  return _mm512_maskz_min_ps(each_lane, a, b);
}
template <>
BEEGARTH_INLINE Float16 most(Float16 a, Float16 b) {
  return _mm512_maskz_max_ps(each_lane, a, b);
}
template <>
BEEGARTH_INLINE bool any_of(Mask<Float16> where) {
  return where.bits != 0;
}
#endif

// x where it holds, else 0; and 1 or 0.
template <class F>
BEEGARTH_INLINE F only(Mask<F> where, F x) {
  return pick(where, x, F{});
}
template <class F>
BEEGARTH_INLINE F flag(Mask<F> where) {
  return pick(where, all<F>(1.0F), F{});
}
template <class F>
BEEGARTH_INLINE Mask<F> above_zero(F x) {
  return less(F{}, x);
}

// The sum of the four bytes of each number.
template <class F>
BEEGARTH_INLINE typename Lane<F>::Int sum_of_bytes(typename Lane<F>::Int x) {
  const auto pairs = (x & 0x00FF00FF) + ((x >> 8) & 0x00FF00FF);
  return (pairs & 0xFFFF) + (pairs >> 16);
}
#if defined(__AVX2__)
template <>
BEEGARTH_INLINE Int8 sum_of_bytes<Float8>(Int8 x) {
  const __m256i pairs = _mm256_maddubs_epi16(reinterpret_cast<__m256i>(x), _mm256_set1_epi8(1));
  return reinterpret_cast<Int8>(_mm256_madd_epi16(pairs, _mm256_set1_epi16(1)));
}
#endif
#if defined(__AVX512BW__)
template <>
BEEGARTH_INLINE Int16 sum_of_bytes<Float16>(Int16 x) {
  const __m512i pairs = _mm512_maddubs_epi16(reinterpret_cast<__m512i>(x), _mm512_set1_epi8(1));
  return reinterpret_cast<Int16>(_mm512_madd_epi16(pairs, _mm512_set1_epi16(1)));
}
#endif

template <class F>
BEEGARTH_INLINE F as_float(typename Lane<F>::Int x) {
  if constexpr (Lane<F>::width == 1) {
    return static_cast<float>(x);
  } else {
    return __builtin_convertvector(x, F);
  }
}
// exp(-x) for x >= 0, cut at 80; exactly 1 for 0. x is split into n ln 2 and a rest |r| <= ln(2)/2. The
// polynomial is the best of degree 5 in relative error that begins with 1 + r, found by Remez'
// exchange: 1.05e-7; with rounding 3e-7 as far as x = 5. It is reckoned in pairs, so that less has to wait
// for what comes before.
template <class F>
BEEGARTH_INLINE F exp_minus(F x) {
  constexpr float to_whole = 12582912.0F;  // 1.5 * 2^23: added, it leaves a whole number in the lowest bits
  const F y = least(x, all<F>(80.0F));
  const F shifted = y * 1.44269504F + to_whole;
  const F r = (shifted - to_whole) * 0.693147181F - y;  // exp(-y) = 2^-n * exp(r)
  const F square = r * r;
  const F high = r * 0.00831252057F + 0.0418901555F;
  const F low = r * 0.166671142F + 0.499992311F;
  const F p = (r + 1.0F) + square * (low + square * high);
  // p lies within 0.7..1.5, so the exponent stays above that of the smallest normal number.
  typename Lane<F>::Int bits;
  typename Lane<F>::Int n;
  std::memcpy(&bits, &p, sizeof bits);
  std::memcpy(&n, &shifted, sizeof n);
  bits -= n << 23;
  F result;
  std::memcpy(&result, &bits, sizeof result);
  return result;
}

}  // namespace beegarth::colony
