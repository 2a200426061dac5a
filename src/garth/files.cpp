#include "garth/files.hpp"

#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

namespace beegarth::garth {
namespace {

std::string size_in_words(std::size_t bytes) {
  return bytes >= (1U << 20U) ? std::to_string(bytes >> 20U) + " MiB" : std::to_string(bytes >> 10U) + " KiB";
}

Problem storage(const std::string& what, const std::string& path, const std::string& remedy) {
  return {ProblemKind::storage, what, path, remedy};
}

// The plain file that the path leads to, through links, or that is to be made. A device is not replaced, nor
// is a book: what comes out of a book must never end it.
Expected<std::string> file_to_replace(const std::string& path) {
  std::error_code error;
  const auto target = std::filesystem::weakly_canonical(path, error);
  if (error) return storage("the path cannot be followed: " + error.message(), path, "check the folder");
  for (const std::string_view beside : {"-wal", "-shm", "-journal"}) {
    const std::string name = target.string();
    if (name.size() > beside.size() && name.ends_with(beside) &&
        std::filesystem::exists(name.substr(0, name.size() - beside.size()), error))
      return bad_input("this is where the book beside it keeps its newest entries", path,
                       "name another file");
  }
  const auto kind = std::filesystem::status(target, error);
  if (!std::filesystem::exists(kind)) return target.string();
  if (!std::filesystem::is_regular_file(kind))
    return bad_input("this is not a plain file", path, "name a file to write");
  std::array<char, 16> head{};
  std::ifstream(target, std::ios::binary).read(head.data(), head.size());
  if (std::string_view(head.data(), head.size()) == std::string_view("SQLite format 3\0", 16))
    return bad_input("this is a book, and would be gone", path, "name another file");
  return target.string();
}

// A new file beside the target that nobody else has; gone again unless it was renamed.
class Neighbour {
 public:
  explicit Neighbour(const std::string& target) : path_(target + ".XXXXXX"), file_(::mkstemp(path_.data())) {}
  Neighbour(const Neighbour&) = delete;
  Neighbour& operator=(const Neighbour&) = delete;
  ~Neighbour() {
    if (file_ < 0) return;
    ::close(file_);
    ::unlink(path_.c_str());  // after the rename there is nothing by this name
  }

  const std::string& path() const { return path_; }
  // Whether all the bytes are safely in it.
  bool holds(std::string_view bytes) const {
    if (file_ < 0) return false;
    for (std::size_t at = 0; at < bytes.size();) {
      const ssize_t written = ::write(file_, bytes.data() + at, bytes.size() - at);
      if (written < 0 && errno == EINTR) continue;
      if (written <= 0) return false;
      at += static_cast<std::size_t>(written);
    }
    constexpr mode_t readable_by_all = 0644;  // mkstemp lets in the owner alone
    return ::fchmod(file_, readable_by_all) == 0 && ::fsync(file_) == 0;
  }

 private:
  std::string path_;
  int file_;
};

}  // namespace

Expected<std::string> read_file(const std::string& path, std::size_t most_bytes) {
  std::error_code error;
  const auto kind = std::filesystem::status(path, error);
  if (!std::filesystem::exists(kind)) return bad_input("there is no such file", path, "check the path");
  if (std::filesystem::is_directory(kind)) return bad_input("this is a folder", path, "name a file in it");
  std::ifstream file(path, std::ios::binary);
  if (!file)
    return bad_input(std::string("the file cannot be read: ") + std::strerror(errno), path,
                     "check its permissions");
  std::string bytes;
  std::string block(std::size_t{1} << 20, '\0');
  while (file.read(block.data(), static_cast<std::streamsize>(block.size())) || file.gcount() > 0) {
    bytes.append(block.data(), static_cast<std::size_t>(file.gcount()));
    if (bytes.size() > most_bytes)
      return bad_input("the file is larger than " + size_in_words(most_bytes), path, "split it");
  }
  return bytes;
}

Outcome may_be_written(const std::string& path) {
  if (path.empty()) return Problem{ProblemKind::wrong_use, "no file was named", "--out", "name one"};
  const auto target = file_to_replace(path);
  if (!target) return target.problem();
  const auto folder = std::filesystem::path(*target).parent_path();
  if (!folder.empty() && !std::filesystem::is_directory(folder))
    return storage("there is no folder " + folder.string(), path, "make it, or name another file");
  return Done{};
}

Outcome write_file(const std::string& path, std::string_view bytes) {
  if (const auto allowed = may_be_written(path); !allowed) return allowed.problem();
  const auto target = file_to_replace(path);
  if (!target) return target.problem();
  Neighbour neighbour(*target);
  if (!neighbour.holds(bytes))
    return storage("the file cannot be written", path, "check the folder and the space on the disk");
  std::error_code error;
  std::filesystem::rename(neighbour.path(), *target, error);
  if (error) return storage("the file cannot be put in place: " + error.message(), path, "check the folder");
  return Done{};
}

}  // namespace beegarth::garth
