#include "http/respond.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <exception>
#include <string_view>
#include <utility>

#include "garth/calc/calc.hpp"
#include "http/page_files.hpp"

namespace beegarth::http {
namespace {

constexpr std::array<std::string_view, 4> answers{"done", "skipped", "put_off", "rained_off"};

// ---- what went wrong ----
std::string_view kind_word(ProblemKind kind) {
  switch (kind) {
    case ProblemKind::answer_is_no:
      return "answer_is_no";
    case ProblemKind::wrong_use:
      return "wrong_use";
    case ProblemKind::bad_input:
      return "bad_input";
    case ProblemKind::storage:
      return "storage";
  }
  return "fault";
}

int status_of(ProblemKind kind) {
  switch (kind) {
    case ProblemKind::answer_is_no:
      return 409;
    case ProblemKind::wrong_use:
      return 404;
    case ProblemKind::bad_input:
      return 400;
    case ProblemKind::storage:
      return 503;
  }
  return 500;
}

std::string dump(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Reply problem_json(std::string_view kind, int status, const Problem& problem) {
  Json body{{"type", "about:blank"}, {"title", problem.what}, {"status", status}, {"kind", kind}};
  std::string detail = problem.where;
  if (!problem.remedy.empty()) detail += (detail.empty() ? "" : ": ") + problem.remedy;
  if (!detail.empty()) body["detail"] = detail;
  if (!problem.where.empty()) body["where"] = problem.where;
  return {status, "application/problem+json", dump(body), {}};
}

Reply not_allowed(std::string_view allowed) {
  Reply reply = problem_reply(
      {ProblemKind::wrong_use, "this address does not take that method", {}, fmt::format("use {}", allowed)},
      405);
  reply.headers["Allow"] = allowed;
  return reply;
}

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

bool says_json(std::string_view content_type) {
  return content_type.substr(0, content_type.find(';')) == "application/json";
}

// ---- answers ----
Reply json_reply(const Expected<Json>& answer, std::optional<int> status_of_bad_input = {}) {
  if (answer) return {200, "application/json", dump(*answer), {}};
  const Problem& problem = answer.problem();
  return problem_reply(problem, problem.kind == ProblemKind::bad_input ? status_of_bad_input : std::nullopt);
}

Expected<int> days_asked(const Ask& ask) {
  const auto found = ask.query.find("days");
  if (found == ask.query.end()) return 14;
  const std::string& text = found->second;
  int days = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), days);
  if (fault != std::errc{} || end != text.data() + text.size() || days < 1 || days > 28)
    return bad_input("days is not a whole number from 1 to 28", "?days=" + text, "ask for /api/plan?days=14");
  return days;
}

Reply plan(const Ask& ask, const Api& api) {
  const Expected<int> days = days_asked(ask);
  return days ? json_reply(api.plan(*days)) : problem_reply(days.problem());
}

Reply sheet(const Ask& ask, const Api& api) {
  const auto date_text = ask.query.find("date");
  const auto site = ask.query.find("site");
  if (date_text == ask.query.end() || site == ask.query.end())
    return problem_reply(bad_input("the sheet needs a date and a site", ask.path,
                                   "ask for /api/sheet?date=2026-06-05&site=KEY"));
  const Expected<Date> date = Date::parse(date_text->second);
  if (!date) return problem_reply(date.problem());
  Expected<std::string> bytes = api.sheet(*date, site->second);
  if (!bytes) return problem_reply(bytes.problem());
  return {200, "application/pdf", std::move(*bytes), {}};
}

Reply note(const Ask& ask, const Api& api) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return problem_reply(body.problem());
  if (!body->is_object() || body->size() != 2 || !body->contains("line") || !(*body)["line"].is_string() ||
      !body->contains("keep") || !(*body)["keep"].is_boolean())
    return problem_reply(bad_input("a note is a line and whether to keep it", "body",
                                   R"(send {"line": "...", "keep": false})"));
  const auto line = (*body)["line"].get<std::string>();
  if (line.empty() || line.size() > 2000)
    return problem_reply(bad_input("a line has 1 to 2000 characters", "body.line", "split it in two"));
  return json_reply(api.note(line, (*body)["keep"].get<bool>()));
}

Reply answer(const std::string& need, const Ask& ask, const Api& api) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return problem_reply(body.problem());
  const bool has_until = body->is_object() && body->contains("until");
  const bool shaped = body->is_object() && body->size() == (has_until ? 2U : 1U) &&
                      body->contains("answer") && (*body)["answer"].is_string();
  const std::string word = shaped ? (*body)["answer"].get<std::string>() : std::string{};
  if (std::find(answers.begin(), answers.end(), word) == answers.end())
    return problem_reply(
        bad_input("that is no answer to a need", "body.answer", "send done, skipped, put_off or rained_off"));
  std::optional<Date> until;
  if (has_until) {
    const Json& said = (*body)["until"];
    const Expected<Date> day = Date::parse(said.is_string() ? said.get<std::string>() : std::string{});
    if (!day) return problem_reply(bad_input(day.problem().what, "body.until", day.problem().remedy));
    if (word != "put_off")
      return problem_reply(bad_input("only what is put off has a day", "body.until", "leave it out"));
    until = *day;
  }
  return json_reply(api.answer(need, word, until), 404);
}

// ---- the page ----
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
  if (path == "/" || path == "/colonies" || path.starts_with("/colonies/")) return "index.html";
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

// ---- the roads ----
struct Road {
  std::string_view path;  // ends in "/" where a key follows
  std::string_view method;
  Reply (*go)(const Ask&, const std::string& key, const Api&);
};

constexpr std::array roads{
    Road{"/api/book", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.book()); }},
    Road{"/api/plan", "GET",
         [](const Ask& ask, const std::string&, const Api& api) { return plan(ask, api); }},
    Road{"/api/colonies", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.colonies()); }},
    Road{
        "/api/colonies/", "GET",
        [](const Ask&, const std::string& key, const Api& api) { return json_reply(api.outlook(key), 404); }},
    Road{"/api/entries/", "GET",
         [](const Ask&, const std::string& key, const Api& api) { return json_reply(api.entry(key), 404); }},
    Road{"/api/sheet", "GET",
         [](const Ask& ask, const std::string&, const Api& api) { return sheet(ask, api); }},
    Road{"/api/calc", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.calcs()); }},
    Road{"/api/notes", "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return note(ask, api); }},
    Road{"/api/needs/", "POST",
         [](const Ask& ask, const std::string& key, const Api& api) { return answer(key, ask, api); }},
    Road{"/api/calc/", "POST",
         [](const Ask& ask, const std::string& key, const Api& api) {
           return json_reply(api.calc(key, ask.body));
         }},
};

const Road* road_of(std::string_view path) {
  for (const Road& road : roads) {
    if (road.path == path && !road.path.ends_with('/')) return &road;
    if (road.path.ends_with('/') && path.size() > road.path.size() && path.starts_with(road.path))
      return &road;
  }
  return nullptr;
}

Reply read_with_tag(const Road& road, const std::string& key, const Ask& ask, const Api& api) {
  const Expected<std::string> version = api.version();
  if (!version) return problem_reply(version.problem());
  const std::string tag = "\"" + *version + "\"";
  const std::map<std::string, std::string> headers{{"ETag", tag}, {"Cache-Control", "no-cache"}};
  if (ask.if_none_match == tag) return {304, {}, {}, headers};
  Reply reply = road.go(ask, key, api);
  if (reply.status == 200) reply.headers = headers;
  return reply;
}

Reply take_road(const Road& road, const Ask& ask, const Api& api) {
  const bool reads = ask.method == "GET" || ask.method == "HEAD";
  if (road.method == "GET" ? !reads : ask.method != road.method)
    return not_allowed(road.method == "GET" ? "GET, HEAD" : road.method);
  const std::string key = road.path.ends_with('/') ? ask.path.substr(road.path.size()) : std::string{};
  if (reads) return read_with_tag(road, key, ask, api);
  if (!is_ours(ask))
    return problem_reply({ProblemKind::wrong_use, "a page from elsewhere may not write here", "Origin", {}},
                         403);
  if (!says_json(ask.content_type))
    return problem_reply(
        {ProblemKind::wrong_use, "the body is not said to be JSON", "Content-Type", "send application/json"},
        415);
  if (ask.body.size() > body_limit_bytes)
    return problem_reply({ProblemKind::bad_input, "the body is too large", "body", "send at most 1 MiB"},
                         413);
  return road.go(ask, key, api);
}

Reply route(const Ask& ask, const Api& api) {
  if (!is_loopback(ask.host))
    return problem_reply({ProblemKind::wrong_use, "this program answers on this machine alone", "Host",
                          "open it as http://127.0.0.1 with its port"},
                         421);
  if (const Road* road = road_of(ask.path)) return take_road(*road, ask, api);
  const std::string name(ask.path.starts_with('/') ? file_of(ask.path) : std::string_view{});
  std::optional<Reply> file =
      file_reply(name == "openapi.json" ? description_files() : page_files(), name, ask);
  if (!file)
    return problem_reply(
        {ProblemKind::wrong_use, "there is nothing at this address", ask.path, "see /openapi.json"});
  if (ask.method != "GET" && ask.method != "HEAD") return not_allowed("GET, HEAD");
  return std::move(*file);
}

}  // namespace

Reply problem_reply(const Problem& problem, std::optional<int> status) {
  return problem_json(kind_word(problem.kind), status.value_or(status_of(problem.kind)), problem);
}

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
    return problem_json("fault", 500, {ProblemKind::storage, "a fault in beegarth", ask.path, fault.what()});
  }
}

}  // namespace beegarth::http
