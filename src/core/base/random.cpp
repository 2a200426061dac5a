#include "base/random.hpp"

#include <Random123/philox.h>

#include <cmath>
#include <numbers>

namespace beegarth {
namespace {

// One round of splitmix64, to spread seed and colony over the whole key.
std::uint64_t mix(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15ULL;
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9ULL;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebULL;
  return x ^ (x >> 31);
}

}  // namespace

std::array<std::uint32_t, 2> stream_key_words(std::uint64_t seed, std::uint64_t colony) {
  const std::uint64_t k = mix(seed ^ mix(colony));
  return {static_cast<std::uint32_t>(k), static_cast<std::uint32_t>(k >> 32)};
}

std::array<std::uint32_t, 4> random_words(const StreamKey& key, std::uint32_t block) {
  const auto k = stream_key_words(key.seed, key.colony);
  const r123::Philox4x32::ctr_type counter{
      {key.member, static_cast<std::uint32_t>(key.day), static_cast<std::uint32_t>(key.purpose), block}};
  const r123::Philox4x32::key_type philox_key{{k[0], k[1]}};
  const auto words = r123::Philox4x32{}(counter, philox_key);
  return {words[0], words[1], words[2], words[3]};
}

std::uint32_t Stream::word() {
  if (left_ == 0) {
    words_ = random_words(key_, block_++);
    left_ = 4;
  }
  --left_;
  return words_[static_cast<std::size_t>(3 - left_)];
}

double Stream::uniform() {
  // 52 bits, centred in their cell, so neither 0 nor 1 is ever drawn.
  const std::uint64_t high = word() >> 6;
  const std::uint64_t low = word() >> 6;
  return (static_cast<double>(high << 26 | low) + 0.5) * 0x1p-52;
}

double Stream::normal() {
  const double radius = std::sqrt(-2.0 * std::log(uniform()));
  return radius * std::cos(2.0 * std::numbers::pi * uniform());
}

double Stream::exponential() {
  return -std::log(uniform());
}

double Stream::gamma(double shape) {
  // Marsaglia & Tsang 2000; shapes below 1 by the boost of the same paper.
  if (shape < 1.0) return gamma(shape + 1.0) * std::pow(uniform(), 1.0 / shape);
  const double d = shape - 1.0 / 3.0;
  const double c = 1.0 / std::sqrt(9.0 * d);
  for (;;) {
    const double x = normal();
    const double t = 1.0 + c * x;
    if (t <= 0) continue;
    const double v = t * t * t;
    if (std::log(uniform()) < 0.5 * x * x + d - d * v + d * std::log(v)) return d * v;
  }
}

double Stream::beta(double a, double b) {
  const double x = gamma(a);
  return x / (x + gamma(b));
}

int Stream::poisson(double mean) {
  if (mean <= 0) return 0;
  // Large means are halved by the gamma trick (Ahrens & Dieter 1974) until counting exponentials is cheap.
  int count = 0;
  while (mean > 16.0) {
    const int half = static_cast<int>(mean * 0.875);
    const double arrival = gamma(half);
    if (arrival > mean) return count + binomial(half - 1, mean / arrival);
    count += half;
    mean -= arrival;
  }
  double arrival = exponential();
  while (arrival < mean) {
    ++count;
    arrival += exponential();
  }
  return count;
}

int Stream::binomial(int n, double p) {
  if (p <= 0 || n <= 0) return 0;
  if (p >= 1) return n;
  // Split at a beta order statistic until few trials are left (Devroye 1986, X.4.3).
  int count = 0;
  while (n > 16) {
    const int a = 1 + n / 2;
    const int b = n + 1 - a;
    const double x = beta(a, b);
    if (x >= p) {
      n = a - 1;
      p /= x;
    } else {
      count += a;
      n = b - 1;
      p = (p - x) / (1.0 - x);
    }
  }
  for (int i = 0; i < n; ++i) count += uniform() < p ? 1 : 0;
  return count;
}

}  // namespace beegarth
