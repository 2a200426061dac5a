#include "http/replies.hpp"

#include <fmt/format.h>

#include <utility>

namespace beegarth::http {
namespace {

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

Reply refused(const Problem& problem, std::optional<int> status_of_bad_input) {
  return problem_reply(problem, problem.kind == ProblemKind::bad_input ? status_of_bad_input : std::nullopt);
}

}  // namespace

Reply problem_reply(const Problem& problem, std::optional<int> status) {
  return problem_json(kind_word(problem.kind), status.value_or(status_of(problem.kind)), problem);
}

Reply fault_reply(const Problem& problem) {
  return problem_json("fault", 500, problem);
}

Reply not_allowed(std::string_view allowed) {
  Reply reply = problem_reply(
      {ProblemKind::wrong_use, "this address does not take that method", {}, fmt::format("use {}", allowed)},
      405);
  reply.headers["Allow"] = allowed;
  return reply;
}

Reply json_reply(const Expected<Json>& answer, std::optional<int> status_of_bad_input) {
  if (answer) return {200, "application/json", dump(*answer), {}};
  return refused(answer.problem(), status_of_bad_input);
}

Reply bytes_reply(Expected<std::string> answer, std::string_view content_type,
                  std::optional<int> status_of_bad_input) {
  if (answer) return {200, std::string(content_type), *std::move(answer), {}};
  return refused(answer.problem(), status_of_bad_input);
}

Reply named_file(Reply reply, const std::string& disposition) {
  if (reply.status == 200) reply.headers["Content-Disposition"] = disposition;
  return reply;
}

}  // namespace beegarth::http
