#include "http/server.hpp"

#include <fmt/format.h>
#include <httplib.h>
#include <sys/socket.h>

#include <memory>
#include <mutex>
#include <utility>

#include "http/respond.hpp"

namespace beegarth::http {
namespace {

constexpr const char* loopback = "127.0.0.1";

Ask ask_of(const httplib::Request& request) {
  Ask ask{.method = request.method,
          .path = request.path,
          .query = {},
          .host = request.get_header_value("Host"),
          .origin = request.get_header_value("Origin"),
          .content_type = request.get_header_value("Content-Type"),
          .if_none_match = request.get_header_value("If-None-Match"),
          .body = request.body};
  for (const auto& [name, value] : request.params) ask.query.emplace(name, value);
  return ask;
}

void send(const Reply& reply, httplib::Response& response) {
  response.status = reply.status;
  for (const auto& [name, value] : reply.headers) response.set_header(name, value);
  if (!reply.content_type.empty()) response.set_content(reply.body, reply.content_type);
}

// What httplib refuses by itself, before it asks us.
Reply refusal(int status) {
  switch (status) {
    case 413:
      return problem_reply({ProblemKind::bad_input, "the body is too large", "body",
                            "send at most 1 MiB; a picture or a file may have 24"},
                           413);
    case 414:
      return problem_reply({ProblemKind::bad_input, "the address is too long", {}, {}}, 414);
    default:
      return problem_reply(
          {ProblemKind::wrong_use, "this is not a request that beegarth understands", {}, {}}, status);
  }
}

}  // namespace

struct Server::Inside {
  explicit Inside(Api use_cases) : api(std::move(use_cases)) {}
  Api api;
  std::mutex one_at_a_time;
  httplib::Server http;
};

Server::Server(Api api) : inside_(std::make_unique<Inside>(std::move(api))) {
  Inside& inside = *inside_;
  const auto handle = [&inside](const httplib::Request& request, httplib::Response& response) {
    const std::lock_guard lock(inside.one_at_a_time);
    send(respond(ask_of(request), inside.api), response);
  };
  httplib::Server& http = inside.http;
  http.Get(".*", handle)
      .Post(".*", handle)
      .Put(".*", handle)
      .Patch(".*", handle)
      .Delete(".*", handle)
      .Options(".*", handle);
  http.set_payload_max_length(picture_limit_bytes);
  // Requests that never come to an end must not keep the others waiting.
  static constexpr std::size_t most_connections = 64;
  constexpr time_t patience_s = 3;
  http.new_task_queue = [] { return std::make_unique<httplib::ThreadPool>(most_connections).release(); };
  http.set_read_timeout(patience_s);
  http.set_error_handler([](const httplib::Request&, httplib::Response& response) {
    if (response.get_header_value("Content-Type").empty()) send(refusal(response.status), response);
  });
  http.set_default_headers({common_headers().begin(), common_headers().end()});
  // Not SO_REUSEPORT, httplib's own choice: two programs must not share one port unseen.
  http.set_socket_options([](socket_t socket) {
    const int yes = 1;
    setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  });
}

Server::~Server() = default;

Expected<int> Server::bind(int port) {
  const int taken = port == 0 ? inside_->http.bind_to_any_port(loopback)
                              : (inside_->http.bind_to_port(loopback, port) ? port : -1);
  if (taken > 0) return taken;
  return Problem{ProblemKind::wrong_use, "the port cannot be taken", fmt::format("{}:{}", loopback, port),
                 "another program may use it: choose another with --port"};
}

void Server::run() {
  inside_->http.listen_after_bind();
}

void Server::stop() {
  inside_->http.stop();
}

}  // namespace beegarth::http
