// The page, on this machine only.
#include <iostream>

#include "cli/call.hpp"
#include "garth/desk.hpp"
#include "http/server.hpp"

namespace beegarth::cli {

namespace {

http::Api api_of(garth::Desk& desk) {
  return {.version = [&desk] { return desk.version(); },
          .book = [&desk] { return desk.book(); },
          .plan = [&desk](int days) { return desk.plan(days); },
          .colonies = [&desk] { return desk.colonies(); },
          .outlook = [&desk](std::string_view colony) { return desk.outlook(colony); },
          .entry = [&desk](std::string_view id) { return desk.entry(id); },
          .note = [&desk](std::string_view line, bool keep) { return desk.note(line, keep); },
          .answer = [&desk](std::string_view need,
                            std::string_view answer) { return desk.answer_need(need, answer); },
          .sheet = [&desk](Date date, std::string_view site) { return desk.sheet(date, site); },
          .calcs = [] { return Expected<nlohmann::json>(garth::Desk::calcs()); },
          .calc = [&desk](std::string_view name, std::string_view input) { return desk.calc(name, input); }};
}

}  // namespace

int serve_command(const Call& call) {
  const auto options = session_options(call, false);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  garth::Desk desk(*std::move(session));
  http::Server server(api_of(desk));
  const auto port = server.bind(call.port);
  if (!port) return report(port.problem());
  const std::string address = "http://127.0.0.1:" + std::to_string(*port) + "/";
  if (call.json) {
    std::cout << nlohmann::json{{"address", address}}.dump() << std::endl;
  } else {
    std::cout << "the page of " << call.book << ": " << address << std::endl;
  }
  server.run();
  return 0;
}

}  // namespace beegarth::cli
