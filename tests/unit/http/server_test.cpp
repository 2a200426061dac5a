// The server itself, over a real loopback socket.
#include "http/server.hpp"

#include <arpa/inet.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/socket.h>
#include <unistd.h>

#include <chrono>
#include <sstream>
#include <string>
#include <thread>

#include "http/respond.hpp"
#include "unit/http/fake_api.hpp"

namespace beegarth::http {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

int connect_to(int port) {
  const int channel = socket(AF_INET, SOCK_STREAM, 0);
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_port = htons(static_cast<std::uint16_t>(port));
  inet_pton(AF_INET, "127.0.0.1", &address.sin_addr);
  if (connect(channel, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0) return channel;
  close(channel);
  return -1;
}

class RunningServer : public ::testing::Test {
 protected:
  void SetUp() override {
    const Expected<int> taken = server.bind(0);
    ASSERT_TRUE(taken);
    port = *taken;
    thread = std::thread([this] { server.run(); });
    for (int i = 0; i < 200; ++i) {  // until it listens
      if (!ask("GET /openapi.json HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n").empty()) return;
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    FAIL() << "the server does not answer";
  }
  void TearDown() override {
    server.stop();
    if (thread.joinable()) thread.join();
  }

  // Sends bytes as they are and reads until the server closes.
  std::string ask(const std::string& bytes) const {
    const int channel = connect_to(port);
    if (channel < 0) return {};
    std::string answer;
    if (send(channel, bytes.data(), bytes.size(), MSG_NOSIGNAL) > 0) {
      char buffer[4096];
      for (ssize_t got = 0; (got = recv(channel, buffer, sizeof buffer, 0)) > 0;)
        answer.append(buffer, static_cast<std::size_t>(got));
    }
    close(channel);
    return answer;
  }
  std::string ask_for(const std::string& first_line, const std::string& rest = {}) const {
    std::ostringstream bytes;
    bytes << first_line << " HTTP/1.1\r\nHost: localhost:" << port << "\r\nConnection: close\r\n"
          << rest << "\r\n";
    return ask(bytes.str());
  }
  std::string post(const std::string& path, const std::string& body) const {
    std::ostringstream rest;
    rest << "Content-Type: application/json\r\nContent-Length: " << body.size() << "\r\n\r\n" << body;
    return ask_for("POST " + path, rest.str());
  }

  FakeBook book;
  Server server{fake_api(book)};
  int port = 0;
  std::thread thread;
};

TEST_F(RunningServer, answers_with_every_common_header) {
  const std::string answer = ask_for("GET /api/plan?days=5");
  EXPECT_THAT(answer, StartsWith("HTTP/1.1 200"));
  EXPECT_THAT(answer, HasSubstr(R"({"days":5})"));
  for (const auto& [name, value] : common_headers())
    EXPECT_THAT(answer, HasSubstr(std::string(name).append(": ").append(value)));
}

TEST_F(RunningServer, answers_head_without_a_body) {
  const std::string answer = ask_for("HEAD /api/plan");
  EXPECT_THAT(answer, StartsWith("HTTP/1.1 200"));
  EXPECT_THAT(answer, Not(HasSubstr("days")));
}

TEST_F(RunningServer, answers_304_to_a_tag_it_knows) {
  EXPECT_THAT(ask_for("GET /api/book", "If-None-Match: \"head-1\"\r\n"), StartsWith("HTTP/1.1 304"));
}

TEST_F(RunningServer, reads_a_key_with_an_encoded_slash) {
  const std::string answer = post("/api/needs/look-cells%2Falder-5", R"({"answer":"done"})");
  EXPECT_THAT(answer, StartsWith("HTTP/1.1 200"));
  EXPECT_EQ(book.kept.size(), 1U);
}

TEST_F(RunningServer, refuses_a_body_over_the_limit) {
  const std::string answer = post("/api/notes", std::string(body_limit_bytes + 1, 'x'));
  EXPECT_THAT(answer, StartsWith("HTTP/1.1 413"));
  EXPECT_THAT(answer, HasSubstr("application/problem+json"));
}

TEST_F(RunningServer, refuses_another_host_and_an_encoded_climb) {
  EXPECT_THAT(ask("GET /api/book HTTP/1.1\r\nHost: bees.example\r\nConnection: close\r\n\r\n"),
              StartsWith("HTTP/1.1 421"));
  EXPECT_THAT(ask_for("GET /%2e%2e/%2e%2e/etc/passwd"), StartsWith("HTTP/1.1 404"));
  EXPECT_THAT(ask_for("DELETE /api/book"), StartsWith("HTTP/1.1 405"));
}

TEST_F(RunningServer, does_not_share_its_port) {
  FakeBook other_book;
  Server other{fake_api(other_book)};
  const Expected<int> taken = other.bind(port);
  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.problem().kind, ProblemKind::wrong_use);
}

}  // namespace
}  // namespace beegarth::http
