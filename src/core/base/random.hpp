// Counter-based random streams: a draw is a pure function of what it is for, so it does not matter in which
// order, or on how many threads, draws are made.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace beegarth {

// What a draw is for. Two different purposes never share a stream.
enum class Purpose : std::uint32_t {
  prior = 1,
  daily_noise,
  event,
  observation,
  resample,
  move_parameters,
  move_noise,
  weather,
  weather_shared,
  synthetic_truth,
  demo,
  scoring,
  rounds,
};

struct StreamKey {
  std::uint64_t seed = 1;
  std::uint64_t colony = 0;  // stable_hash of the colony's id, or 0 where no colony is concerned
  std::uint32_t member = 0;
  std::int32_t day = 0;  // day number of the date, or 0
  Purpose purpose = Purpose::prior;
};

// FNV-1a, 64 bits: fixed for all time, because it is part of every result.
constexpr std::uint64_t stable_hash(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 1099511628211ULL;
  }
  return hash;
}

// Four 32-bit words of Philox4x32-10 (Salmon et al. 2011, "Parallel random numbers: as easy as 1, 2, 3") for
// block `block` of the stream.
std::array<std::uint32_t, 4> random_words(const StreamKey& key, std::uint32_t block);

// The two words of Philox key that seed and colony become: for kernels that draw for many members at once.
std::array<std::uint32_t, 2> stream_key_words(std::uint64_t seed, std::uint64_t colony);

// A cursor over one stream. Cheap to make; copy it to replay.
class Stream {
 public:
  explicit Stream(const StreamKey& key) : key_(key) {}

  double uniform();                 // in the open interval (0, 1)
  double normal();                  // mean 0, standard deviation 1
  double exponential();             // mean 1
  double gamma(double shape);       // scale 1, shape > 0
  double beta(double a, double b);  // a, b > 0
  int poisson(double mean);         // mean >= 0
  int binomial(int n, double p);    // n >= 0, 0 <= p <= 1
  std::uint32_t word();

 private:
  StreamKey key_;
  std::uint32_t block_ = 0;
  std::array<std::uint32_t, 4> words_{};
  int left_ = 0;
};

}  // namespace beegarth
