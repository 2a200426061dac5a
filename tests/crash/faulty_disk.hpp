// A disk that fails when told to: a layer under SQLite that counts every write, sync, truncation and
// deletion.
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "base/random.hpp"

namespace beegarth::crash {

enum class Fault {
  none,
  killed,          // the process dies before the k-th call
  power_lost,      // before the k-th call the machine stops: of what was not synced, each sector is there,
                   // missing or garbage
  error_once,      // the k-th call reports an error, the next ones work
  error_for_good,  // every call from the k-th on reports an error
  full,            // every write from the k-th call on finds the disk full
};

struct Plan {
  Fault fault = Fault::none;
  int at = 0;  // which call, 1 for the first
  std::uint64_t seed = 1;
};

class FaultyDisk {
 public:
  explicit FaultyDisk(const Plan& plan);
  ~FaultyDisk();
  FaultyDisk(const FaultyDisk&) = delete;
  FaultyDisk& operator=(const FaultyDisk&) = delete;

  bool fired() const { return calls_ >= plan_.at && plan_.fault != Fault::none; }

  // Called by the layer before it does the thing; SQLITE_OK: go on.
  int before(int error, bool is_write);
  void opened(const std::string& path);
  void wrote(const std::string& path, const void* bytes, std::size_t count, std::size_t offset);
  void truncated(const std::string& path, std::size_t size);
  void synced(const std::string& path);
  void deleted(const std::string& path) { files_.erase(path); }
  sqlite3_vfs* real() const { return real_; }

 private:
  struct Pending {
    bool truncation = false;
    std::size_t offset = 0;  // of a truncation: the new size
    std::string bytes;
  };
  struct Shadow {
    std::string durable;  // what a sync has confirmed
    std::vector<Pending> pending;
  };
  void lose_power();
  std::string after_power_loss(const Shadow& shadow);

  Plan plan_;
  int calls_ = 0;
  Stream random_;
  std::map<std::string, Shadow> files_;
  sqlite3_vfs* real_;
  sqlite3_vfs layer_;
};

}  // namespace beegarth::crash
