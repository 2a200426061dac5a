// A PDF read back by an independent reader (poppler's pdftotext and pdfinfo).
#pragma once

#include <array>
#include <cstdio>
#include <fstream>
#include <memory>
#include <string>

namespace beegarth {

inline std::string output_of(const std::string& command) {
  std::string out;
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), &pclose);
  std::array<char, 4096> part{};
  while (pipe != nullptr && fgets(part.data(), static_cast<int>(part.size()), pipe.get()) != nullptr)
    out += part.data();
  return out;
}

inline std::string read_back(const std::string& pdf, const std::string& name,
                             const std::string& tool = "pdftotext -layout") {
  const std::string path = ::testing::TempDir() + name + ".pdf";
  std::ofstream(path, std::ios::binary) << pdf;
  return output_of(tool + " '" + path + "'" + (tool.rfind("pdftotext", 0) == 0 ? " -" : ""));
}

}  // namespace beegarth
