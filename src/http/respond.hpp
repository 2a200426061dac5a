// From one request to one reply: no sockets, no threads, so that every rule of the face can be read and
// tested here.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>

#include "http/api.hpp"

namespace beegarth::http {

inline constexpr std::size_t body_limit_bytes = std::size_t{1} << 20;
inline constexpr std::size_t picture_limit_bytes = std::size_t{24}
                                                   << 20;  // a telephone's photo is half of it
inline constexpr std::size_t file_limit_bytes = picture_limit_bytes;

struct Ask {
  std::string method;                        // "GET"
  std::string path;                          // percent signs already decoded
  std::map<std::string, std::string> query;  // the first value of each name
  std::string host;                          // the Host header
  std::string origin;                        // the Origin header, empty where there is none
  std::string content_type;
  std::string if_none_match;
  std::string body;
};

struct Reply {
  int status = 200;
  std::string content_type;
  std::string body;
  std::map<std::string, std::string> headers;
};

Reply respond(const Ask& ask, const Api& api);

// A problem as application/problem+json (RFC 9457). `status` is given where the kind alone does not say it.
Reply problem_reply(const Problem& problem, std::optional<int> status = {});

// Sent with every reply, whatever it is.
const std::map<std::string, std::string>& common_headers();

}  // namespace beegarth::http
