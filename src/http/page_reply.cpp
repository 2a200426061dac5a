#include "http/page_reply.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <span>
#include <string_view>
#include <utility>

#include "http/page_files.hpp"

namespace beegarth::http {
namespace {

std::string_view type_of(std::string_view path) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 10> types{
      {{".html", "text/html; charset=utf-8"},
       {".js", "text/javascript; charset=utf-8"},
       {".css", "text/css; charset=utf-8"},
       {".svg", "image/svg+xml"},
       {".png", "image/png"},
       {".woff2", "font/woff2"},
       {".json", "application/json"},
       {".txt", "text/plain; charset=utf-8"},
       {".webmanifest", "application/manifest+json"},
       {".ico", "image/x-icon"}}};
  for (const auto& [ending, type] : types)
    if (path.ends_with(ending)) return type;
  return "application/octet-stream";
}

// The places of the page share one document; the rest of the path is read by the page itself.
std::string_view file_of(std::string_view path) {
  if (path == "/") return "index.html";
  for (const std::string_view place : {"/colonies", "/book"}) {
    if (path == place) return "index.html";
    if (path.starts_with(place) && path[place.size()] == '/') return "index.html";
  }
  return path.substr(1);
}

// FNV-1a, 64 bits: tells one build's file from another's, guards nothing.
std::uint64_t fingerprint(std::string_view bytes) {
  std::uint64_t hash = 0xcbf29ce484222325;
  for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3;
  return hash;
}

std::optional<Reply> file_reply(std::span<const EmbeddedFile> files, std::string_view name, const Ask& ask) {
  for (const EmbeddedFile& file : files) {
    if (file.path != name) continue;
    const std::string tag = fmt::format("\"{:016x}\"", fingerprint(file.bytes));
    Reply reply{200, std::string(type_of(name)), {}, {{"ETag", tag}, {"Cache-Control", "no-cache"}}};
    if (ask.if_none_match == tag)
      reply.status = 304;
    else
      reply.body = file.bytes;
    return reply;
  }
  return {};
}

}  // namespace

std::optional<Reply> page_reply(const Ask& ask) {
  const std::string_view name = ask.path.starts_with('/') ? file_of(ask.path) : std::string_view{};
  return file_reply(name == "openapi.json" ? description_files() : page_files(), name, ask);
}

}  // namespace beegarth::http
