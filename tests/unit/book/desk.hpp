// A place for books in tests, a clock that ticks when told, and random bytes that repeat.
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include "base/random.hpp"
#include "book/book.hpp"

namespace beegarth::book {

// Hundreds of books are made in tests; waiting for a disk each time would prove nothing more.
inline std::filesystem::path quick_place() {
  const std::filesystem::path memory = "/dev/shm";
  return access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
}

class Folder {
 public:
  Folder() {
    std::string name = (quick_place() / "beegarth-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) std::abort();
    path_ = name;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::permissions(path_, std::filesystem::perms::owner_all, ignored);
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string file(const std::string& name) const { return (path_ / name).string(); }
  std::vector<std::string> names() const {
    std::vector<std::string> all;
    for (const auto& found : std::filesystem::directory_iterator(path_))
      all.push_back(found.path().filename().string());
    std::sort(all.begin(), all.end());
    return all;
  }
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

struct Desk {
  std::int64_t now_ms = 1'780'000'000'000;  // 2026-05-28
  Stream random{{.seed = 7, .purpose = Purpose::demo}};

  Surroundings surroundings() {
    return {[this] { return now_ms; },
            [this](unsigned char* bytes, std::size_t count) {
              for (std::size_t i = 0; i < count; ++i) bytes[i] = static_cast<unsigned char>(random.word());
            }};
  }
};

inline Date day(int year, int month, int of_month) {
  return *Date::from_ymd(year, month, of_month);
}

inline std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream all;
  all << file.rdbuf();
  return all.str();
}

inline void write_bytes(const std::string& path, std::string_view bytes) {
  std::ofstream(path, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

inline Book new_book(const std::string& path, Desk& desk) {
  auto book = Book::open(path, {.create = true}, desk.surroundings());
  if (!book) throw std::runtime_error(one_line(book.problem()));
  return *std::move(book);
}

inline Draft note(std::string text, Date happened = day(2026, 5, 28)) {
  return {happened, {}, entries::Note{.text = std::move(text)}, {}};
}

}  // namespace beegarth::book
