#include "garth/files.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

namespace beegarth::garth {
namespace {

Problem storage(const std::string& what, const std::string& path, const std::string& remedy) {
  return {ProblemKind::storage, what, path, remedy};
}

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
      return bad_input("the file is larger than " + std::to_string(most_bytes >> 20) + " MB", path,
                       "split it");
  }
  return bytes;
}

Outcome write_file(const std::string& path, std::string_view bytes) {
  const std::string neighbour = path + ".part";
  {
    std::ofstream file(neighbour, std::ios::binary | std::ios::trunc);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    file.flush();
    if (!file)
      return storage("the file cannot be written", path, "check the folder and the space on the disk");
  }
  std::error_code error;
  std::filesystem::rename(neighbour, path, error);
  if (error) return storage("the file cannot be put in place: " + error.message(), path, "check the folder");
  return Done{};
}

}  // namespace beegarth::garth
