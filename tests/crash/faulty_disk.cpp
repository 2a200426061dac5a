#include "crash/faulty_disk.hpp"

#include <signal.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <new>
#include <sstream>

namespace beegarth::crash {
namespace {

// What SQLite allocates for a file of ours; the file of the real layer lies right behind it.
struct File {
  sqlite3_file base;
  FaultyDisk* disk;
  const char* path;  // SQLite keeps it alive as long as the file is open; null for temporary files
  sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

File& ours(sqlite3_file* file) {
  return *reinterpret_cast<File*>(file);
}
sqlite3_file* real(sqlite3_file* file) {
  return ours(file).real();
}
const sqlite3_io_methods& methods(sqlite3_file* file) {
  return *real(file)->pMethods;
}
FaultyDisk& disk_of(sqlite3_vfs* vfs) {
  return *static_cast<FaultyDisk*>(vfs->pAppData);
}

int file_close(sqlite3_file* file) {
  return methods(file).xClose(real(file));
}
int file_read(sqlite3_file* file, void* to, int count, sqlite3_int64 offset) {
  return methods(file).xRead(real(file), to, count, offset);
}

int file_write(sqlite3_file* file, const void* from, int count, sqlite3_int64 offset) {
  File& own = ours(file);
  if (own.path) {
    if (const int refused = own.disk->before(SQLITE_IOERR_WRITE, true); refused != SQLITE_OK) return refused;
    own.disk->wrote(own.path, from, static_cast<std::size_t>(count), static_cast<std::size_t>(offset));
  }
  return methods(file).xWrite(real(file), from, count, offset);
}

int file_truncate(sqlite3_file* file, sqlite3_int64 size) {
  File& own = ours(file);
  if (own.path) {
    if (const int refused = own.disk->before(SQLITE_IOERR_TRUNCATE, false); refused != SQLITE_OK)
      return refused;
    own.disk->truncated(own.path, static_cast<std::size_t>(size));
  }
  return methods(file).xTruncate(real(file), size);
}

// The shadow stands for the medium, so nothing has to wait for the real one.
int file_sync(sqlite3_file* file, int) {
  File& own = ours(file);
  if (!own.path) return SQLITE_OK;
  if (const int refused = own.disk->before(SQLITE_IOERR_FSYNC, false); refused != SQLITE_OK) return refused;
  own.disk->synced(own.path);
  return SQLITE_OK;
}

int file_size(sqlite3_file* file, sqlite3_int64* size) {
  return methods(file).xFileSize(real(file), size);
}
int file_lock(sqlite3_file* file, int level) {
  return methods(file).xLock(real(file), level);
}
int file_unlock(sqlite3_file* file, int level) {
  return methods(file).xUnlock(real(file), level);
}
int file_reserved(sqlite3_file* file, int* out) {
  return methods(file).xCheckReservedLock(real(file), out);
}
int file_control(sqlite3_file* file, int what, void* argument) {
  return methods(file).xFileControl(real(file), what, argument);
}
int file_sector(sqlite3_file* file) {
  return methods(file).xSectorSize(real(file));
}
int file_traits(sqlite3_file* file) {
  return methods(file).xDeviceCharacteristics(real(file));
}
int file_shm_map(sqlite3_file* file, int page, int size, int extend, void volatile** out) {
  return methods(file).xShmMap(real(file), page, size, extend, out);
}
int file_shm_lock(sqlite3_file* file, int offset, int count, int flags) {
  return methods(file).xShmLock(real(file), offset, count, flags);
}
void file_shm_barrier(sqlite3_file* file) {
  methods(file).xShmBarrier(real(file));
}
int file_shm_unmap(sqlite3_file* file, int remove) {
  return methods(file).xShmUnmap(real(file), remove);
}

constexpr sqlite3_io_methods io = {
    2,           file_close,   file_read,     file_write,       file_truncate,  file_sync,
    file_size,   file_lock,    file_unlock,   file_reserved,    file_control,   file_sector,
    file_traits, file_shm_map, file_shm_lock, file_shm_barrier, file_shm_unmap, nullptr,
    nullptr};

int disk_open(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* out_flags) {
  FaultyDisk& disk = disk_of(vfs);
  File& own = ours(file);
  constexpr int lasting = SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_WAL;
  own.base.pMethods = nullptr;
  own.disk = &disk;
  own.path = (flags & lasting) != 0 ? name : nullptr;
  const int result = disk.real()->xOpen(disk.real(), name, own.real(), flags, out_flags);
  if (own.real()->pMethods) own.base.pMethods = &io;
  if (result == SQLITE_OK && own.path) disk.opened(own.path);
  return result;
}

int disk_delete(sqlite3_vfs* vfs, const char* name, int sync_folder) {
  FaultyDisk& disk = disk_of(vfs);
  if (const int refused = disk.before(SQLITE_IOERR_DELETE, false); refused != SQLITE_OK) return refused;
  disk.deleted(name);
  return disk.real()->xDelete(disk.real(), name, sync_folder);
}

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream all;
  all << file.rdbuf();
  return all.str();
}

[[noreturn]] void die() {
  kill(getpid(), SIGKILL);
  for (;;) pause();
}

}  // namespace

FaultyDisk::FaultyDisk(const Plan& plan)
    : plan_(plan),
      random_({.seed = plan.seed, .member = static_cast<std::uint32_t>(plan.at), .purpose = Purpose::event}),
      real_(sqlite3_vfs_find(nullptr)),
      layer_(*real_) {
  layer_.pNext = nullptr;
  layer_.zName = "faulty";
  layer_.pAppData = this;
  layer_.szOsFile = static_cast<int>(sizeof(File)) + real_->szOsFile;
  layer_.xOpen = disk_open;
  layer_.xDelete = disk_delete;
  sqlite3_vfs_register(&layer_, 1);
}

FaultyDisk::~FaultyDisk() {
  sqlite3_vfs_unregister(&layer_);
}

int FaultyDisk::before(int error, bool is_write) {
  ++calls_;
  switch (plan_.fault) {
    case Fault::none:
      return SQLITE_OK;
    case Fault::killed:
      if (calls_ == plan_.at) die();
      return SQLITE_OK;
    case Fault::power_lost:
      if (calls_ == plan_.at) lose_power();
      return SQLITE_OK;
    case Fault::error_once:
      return calls_ == plan_.at ? error : SQLITE_OK;
    case Fault::error_for_good:
      return calls_ >= plan_.at ? error : SQLITE_OK;
    case Fault::full:
      return calls_ >= plan_.at && is_write ? SQLITE_FULL : SQLITE_OK;
  }
  return SQLITE_OK;
}

void FaultyDisk::opened(const std::string& path) {
  files_.emplace(path, Shadow{bytes_of(path), {}});
}

void FaultyDisk::wrote(const std::string& path, const void* bytes, std::size_t count, std::size_t offset) {
  files_[path].pending.push_back({false, offset, std::string(static_cast<const char*>(bytes), count)});
}
void FaultyDisk::truncated(const std::string& path, std::size_t size) {
  files_[path].pending.push_back({true, size, {}});
}

void FaultyDisk::synced(const std::string& path) {
  Shadow& shadow = files_[path];
  shadow.durable = bytes_of(path);
  shadow.pending.clear();
}

std::string FaultyDisk::after_power_loss(const Shadow& shadow) {
  constexpr std::size_t sector = 512;
  std::string bytes = shadow.durable;
  for (const Pending& pending : shadow.pending) {
    const std::uint32_t fate = random_.word() % 4;  // there, missing, or torn
    if (fate == 1) continue;
    if (pending.truncation) {
      bytes.resize(std::min(bytes.size(), pending.offset));
      continue;
    }
    for (std::size_t at = 0; at < pending.bytes.size(); at += sector) {
      const std::size_t count = std::min(sector, pending.bytes.size() - at);
      const std::uint32_t piece = fate == 0 ? 0 : random_.word() % 3;
      if (piece == 1) continue;
      if (bytes.size() < pending.offset + at + count) bytes.resize(pending.offset + at + count, '\0');
      for (std::size_t i = 0; i < count; ++i) {
        bytes[pending.offset + at + i] =
            piece == 0 ? pending.bytes[at + i] : static_cast<char>(random_.word());
      }
    }
  }
  return bytes;
}

void FaultyDisk::lose_power() {
  for (const auto& [path, shadow] : files_) {
    if (!std::filesystem::exists(path)) continue;
    const std::string bytes = after_power_loss(shadow);
    std::ofstream(path, std::ios::binary | std::ios::trunc)
        .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    std::filesystem::remove(path + "-shm");  // lives in memory only
  }
  die();
}

}  // namespace beegarth::crash
