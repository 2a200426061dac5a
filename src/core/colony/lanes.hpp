// Private. Arithmetic on several members at once that gives the same bits whatever the width: every operation
// is one IEEE operation per lane, exp is our own, and nothing is summed across lanes.
#pragma once

#include <cstdint>
#include <cstring>

namespace beegarth::colony {

#define BEEGARTH_INLINE inline __attribute__((always_inline))

using Float4 = float __attribute__((vector_size(16)));
using Float8 = float __attribute__((vector_size(32)));
using Float16 = float __attribute__((vector_size(64)));
using Int4 = std::int32_t __attribute__((vector_size(16)));
using Int8 = std::int32_t __attribute__((vector_size(32)));
using Int16 = std::int32_t __attribute__((vector_size(64)));

template <class F>
struct Lane;
template <>
struct Lane<float> {
  using Int = std::int32_t;
  static constexpr int width = 1;
};
template <>
struct Lane<Float4> {
  using Int = Int4;
  static constexpr int width = 4;
};
template <>
struct Lane<Float8> {
  using Int = Int8;
  static constexpr int width = 8;
};
template <>
struct Lane<Float16> {
  using Int = Int16;
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

template <class M, class F>
BEEGARTH_INLINE F pick(M where, F yes, F no) {
  return where ? yes : no;
}

template <class F>
BEEGARTH_INLINE F least(F a, F b) {
  return pick(a < b, a, b);
}
template <class F>
BEEGARTH_INLINE F most(F a, F b) {
  return pick(a > b, a, b);
}
template <class F>
BEEGARTH_INLINE F clamp01(F x) {
  return least(most(x, F{}), all<F>(1.0F));
}

template <class F>
BEEGARTH_INLINE bool any_of(F x) {
  float lane[Lane<F>::width];
  store<F>(lane, x);
  bool any = false;
  for (const float v : lane) any = any || v > 0;
  return any;
}

// exp(-x) for x >= 0, to about 2e-7 relative; x is cut at 80. Cody-Waite reduction, Taylor polynomial of
// degree 6 on |r| <= ln(2)/2.
template <class F>
BEEGARTH_INLINE F exp_minus(F x) {
  using I = typename Lane<F>::Int;
  const F y = least(most(x, F{}), all<F>(80.0F));
  const F scaled = y * 1.44269504F + 0.5F;
  I whole;
  if constexpr (Lane<F>::width == 1) {
    whole = static_cast<std::int32_t>(scaled);
  } else {
    whole = __builtin_convertvector(scaled, I);
  }
  F n;
  if constexpr (Lane<F>::width == 1) {
    n = static_cast<float>(whole);
  } else {
    n = __builtin_convertvector(whole, F);
  }
  const F r = (n * 0.693359375F - y) - n * 2.12194440e-4F;  // exp(-y) = 2^-n * exp(r)
  F p = r * (1.0F / 720.0F) + (1.0F / 120.0F);
  p = p * r + (1.0F / 24.0F);
  p = p * r + (1.0F / 6.0F);
  p = p * r + 0.5F;
  p = p * r + 1.0F;
  p = p * r + 1.0F;
  const I bits = (127 - whole) << 23;
  F power;
  std::memcpy(&power, &bits, sizeof power);
  return p * power;
}

}  // namespace beegarth::colony
