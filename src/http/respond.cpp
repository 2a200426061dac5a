#include "http/respond.hpp"

#include <algorithm>
#include <array>
#include <exception>
#include <string_view>
#include <utility>

#include "base/utf8.hpp"
#include "http/page_reply.hpp"
#include "http/replies.hpp"
#include "http/roads.hpp"

namespace beegarth::http {
namespace {

// ---- who may ask ----
// A page from elsewhere that was led here by a name of its own (DNS rebinding) sends that name as Host.
bool is_loopback(std::string_view host) {
  std::string_view name = host;
  const auto colon = host.rfind(':');
  if (colon != std::string_view::npos && host.find(']', colon) == std::string_view::npos) {
    const std::string_view port = host.substr(colon + 1);
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    if (port.empty() || port.size() > 5 || !std::all_of(port.begin(), port.end(), digit)) return false;
    name = host.substr(0, colon);
  }
  return name == "127.0.0.1" || name == "localhost" || name == "[::1]";
}

// A page from elsewhere must not write in the book: a browser names its origin, and ours is this very host.
bool is_ours(const Ask& ask) {
  return ask.origin.empty() || ask.origin == "http://" + ask.host;
}

bool is_said_to_be(Takes takes, std::string_view content_type) {
  const std::string_view type = content_type.substr(0, content_type.find(';'));
  if (takes != Takes::picture) return type == "application/json";
  return type.starts_with("image/") || type == "application/octet-stream";
}

Reply not_what_is_taken(Takes takes) {
  const bool json = takes != Takes::picture;
  return problem_reply(
      {ProblemKind::wrong_use,
       json ? "the body is not said to be JSON" : "the body is not said to be a picture", "Content-Type",
       json ? "send application/json" : "send image/jpeg, image/png or image/webp"},
      415);
}

Reply too_large(Takes takes) {
  if (takes == Takes::json)
    return problem_reply({ProblemKind::bad_input, "the body is too large", "body", "send at most 1 MiB"},
                         413);
  if (takes == Takes::file)
    return problem_reply({ProblemKind::bad_input, "the file is too large", "file",
                          "send at most 24 MiB; beegarth import takes larger ones"},
                         413);
  return problem_reply(
      {ProblemKind::bad_input, "the picture is too large", "picture", "send one of at most 24 MiB"}, 413);
}

// ---- which road ----
// The key where the path is the road's; empty for a road without one.
std::optional<std::string> key_on(const Road& road, std::string_view path) {
  const auto star = road.path.find('*');
  if (star == std::string_view::npos) return road.path == path ? std::optional(std::string{}) : std::nullopt;
  const std::string_view before = road.path.substr(0, star), behind = road.path.substr(star + 1);
  if (path.size() <= before.size() + behind.size() || !path.starts_with(before) || !path.ends_with(behind))
    return {};
  return std::string(path.substr(before.size(), path.size() - before.size() - behind.size()));
}

bool is_taken_by(const Road& road, std::string_view method) {
  return road.method == method || (road.method == "GET" && method == "HEAD");
}

struct Way {
  const Road* road = nullptr;  // nullptr: the address is known but not the method
  std::string key;
  std::string allowed;  // "GET, HEAD, POST"
};

// Nothing where no road has that address.
std::optional<Way> way_of(std::string_view path, std::string_view method) {
  for (const std::span<const Road> roads :
       {suppose_roads(), week_roads(), plan_roads(), entry_roads(), form_roads(), import_roads()}) {
    std::string_view address;
    Way way;
    for (const Road& road : roads) {
      if (!address.empty() && road.path != address) continue;
      const auto key = key_on(road, path);
      if (!key) continue;
      address = road.path;
      way.key = *key;
      way.allowed += std::string(way.allowed.empty() ? "" : ", ") +
                     (road.method == "GET" ? "GET, HEAD" : std::string(road.method));
      if (is_taken_by(road, method)) way.road = &road;
    }
    if (!address.empty()) return way;
  }
  return {};
}

Reply read_with_tag(const Way& way, const Ask& ask, const Api& api) {
  if (!way.road->tagged) {
    Reply reply = way.road->go(ask, way.key, api);
    reply.headers["Cache-Control"] = "no-store";
    return reply;
  }
  const Expected<std::string> version = api.version();
  if (!version) return problem_reply(version.problem());
  const std::string tag = "\"" + *version + "\"";
  const std::map<std::string, std::string> headers{{"ETag", tag}, {"Cache-Control", "no-cache"}};
  if (ask.if_none_match == tag) return {304, {}, {}, headers};
  Reply reply = way.road->go(ask, way.key, api);
  if (reply.status == 200) reply.headers.insert(headers.begin(), headers.end());
  return reply;
}

std::size_t limit_of(Takes takes) {
  switch (takes) {
    case Takes::json:
      return body_limit_bytes;
    case Takes::picture:
      return picture_limit_bytes;
    case Takes::file:
      return file_limit_bytes;
  }
  return body_limit_bytes;
}

bool is_asked_for(std::string_view asks, std::string_view name) {
  while (!asks.empty()) {
    const auto end = std::min(asks.find(' '), asks.size());
    if (asks.substr(0, end) == name) return true;
    asks.remove_prefix(std::min(end + 1, asks.size()));
  }
  return false;
}

// A misspelt filter that was passed by would show more than was asked for, and say nothing.
std::optional<Reply> not_asked_for(const Road& road, const Ask& ask) {
  for (const auto& [name, value] : ask.query) {
    if (is_asked_for(road.asks, name)) continue;
    const std::string remedy = road.asks.empty() ? "leave it out" : "it takes " + std::string(road.asks);
    return problem_reply(
        bad_input("'" + name.substr(0, 60) + "' is not asked for at this address", ask.path, remedy));
  }
  return std::nullopt;
}

Reply take_way(const Way& way, const Ask& ask, const Api& api) {
  if (way.road == nullptr) return not_allowed(way.allowed);
  if (way.road->method == "GET") {
    if (auto refused = not_asked_for(*way.road, ask)) return *std::move(refused);
    return read_with_tag(way, ask, api);
  }
  if (!is_ours(ask))
    return problem_reply({ProblemKind::wrong_use, "a page from elsewhere may not write here", "Origin", {}},
                         403);
  const Takes takes = way.road->takes;
  if (!is_said_to_be(takes, ask.content_type)) return not_what_is_taken(takes);
  if (ask.body.size() > limit_of(takes)) return too_large(takes);
  if (auto refused = not_asked_for(*way.road, ask)) return *std::move(refused);
  return way.road->go(ask, way.key, api);
}

bool is_written_in_utf8(const Ask& ask) {
  return is_utf8(ask.path) && std::all_of(ask.query.begin(), ask.query.end(), [](const auto& one) {
           return is_utf8(one.first) && is_utf8(one.second);
         });
}

Reply route(const Ask& ask, const Api& api) {
  if (!is_loopback(ask.host))
    return problem_reply({ProblemKind::wrong_use, "this program answers on this machine alone", "Host",
                          "open it as http://127.0.0.1 with its port"},
                         421);
  if (!is_written_in_utf8(ask))
    return problem_reply(
        bad_input("the address is not UTF-8", "address", "encode it as UTF-8 before percent signs"));
  if (const auto way = way_of(ask.path, ask.method)) return take_way(*way, ask, api);
  std::optional<Reply> file = page_reply(ask);
  if (!file)
    return problem_reply(
        {ProblemKind::wrong_use, "there is nothing at this address", ask.path, "see /openapi.json"});
  if (ask.method != "GET" && ask.method != "HEAD") return not_allowed("GET, HEAD");
  return std::move(*file);
}

}  // namespace

const std::map<std::string, std::string>& common_headers() {
  static const std::map<std::string, std::string> headers{
      {"Content-Security-Policy",
       "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; "
       "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors "
       "'none'"},
      {"X-Content-Type-Options", "nosniff"},
      {"X-Frame-Options", "DENY"},
      {"Referrer-Policy", "no-referrer"},
      {"Cross-Origin-Opener-Policy", "same-origin"},
      {"Cross-Origin-Resource-Policy", "same-origin"}};
  return headers;
}

Reply respond(const Ask& ask, const Api& api) {
  try {
    return route(ask, api);
  } catch (const std::exception& fault) {  // a bug: the server goes on, and says so
    return fault_reply({ProblemKind::storage, "a fault in beegarth", ask.path, fault.what()});
  }
}

}  // namespace beegarth::http
