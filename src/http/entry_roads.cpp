// The book itself: entries found, entered, corrected and taken back; kinds; registers.
#include <array>
#include <utility>

#include "garth/calc/calc.hpp"
#include "http/queries.hpp"
#include "http/replies.hpp"
#include "http/roads.hpp"

namespace beegarth::http {
namespace {

constexpr std::size_t longest_search = 200;
constexpr std::size_t longest_reason = 2000;
constexpr std::string_view asked_of_registers = "from to known";

// ---- entries ----
Reply find_entries(const Ask& ask, const Api& api) {
  const auto span = span_asked(ask);
  if (!span) return problem_reply(span.problem());
  const auto limit = limit_asked(ask);
  if (!limit) return problem_reply(limit.problem());
  const auto known = day_asked(ask, "known");
  if (!known) return problem_reply(known.problem());
  garth::EntrySearch search{.text = said(ask, "text"),
                            .kind = said(ask, "kind"),
                            .about = said(ask, "about"),
                            .from = span->from,
                            .to = span->to,
                            .after = said(ask, "after"),
                            .limit = *limit};
  if (search.text.size() > longest_search)
    return problem_reply(bad_input("a search has up to 200 bytes", "text", "use fewer words"));
  return json_reply(api.find(search, *known));
}

// Reads the members of an entry filled in; the payload is read by the book, with the field named in a fault.
Expected<garth::FilledIn> filled_in(const Ask& ask) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return body.problem();
  constexpr const char* shape = R"(send {"kind": "...", "payload": {...}, "date": "2026-06-05"})";
  if (!body->is_object()) return bad_input("an entry is an object", "body", shape);
  garth::FilledIn entry;
  const auto text_at = [&](const char* name) -> std::optional<std::string> {
    if (!body->contains(name) || !(*body)[name].is_string()) return {};
    return (*body)[name].get<std::string>();
  };
  for (const auto& [name, value] : body->items()) {
    if (name != "kind" && name != "payload" && name != "date" && name != "hour" && name != "corrects")
      return bad_input("an entry has no '" + name.substr(0, 60) + "'", "body", shape);
  }
  const auto kind = text_at("kind");
  if (!kind) return bad_input("the kind is missing", "kind", shape);
  if (!body->contains("payload") || !(*body)["payload"].is_object())
    return bad_input("what was said is missing", "payload", shape);
  const auto date = text_at("date");
  if (!date) return bad_input("the day is missing", "date", "say when it happened, like 2026-06-05");
  const auto day = Date::parse(*date);
  if (!day) return bad_input(day.problem().what, "date", day.problem().remedy);
  if (body->contains("hour")) {
    const Json& hour = (*body)["hour"];
    if (!hour.is_number() || hour.get<double>() < 0 || hour.get<double>() > 24)
      return bad_input("the hour is not from 0 to 24", "hour",
                       "give 13.5 for half past one, or leave it out");
    entry.hour = hour.get<double>();
  }
  if (body->contains("corrects")) {
    const auto corrects = text_at("corrects");
    if (!corrects || corrects->empty())
      return bad_input("the entry to correct is not named", "corrects", "give its id, or leave it out");
    entry.corrects = EntryId(*corrects);
  }
  entry.kind = *kind;
  entry.payload = (*body)["payload"].dump();
  entry.happened = *day;
  return entry;
}

Reply enter(const Ask& ask, const Api& api) {
  const auto entry = filled_in(ask);
  if (!entry) return problem_reply(entry.problem());
  return json_reply(api.enter(*entry));
}

Reply take_back(const std::string& id, const Ask& ask, const Api& api) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return problem_reply(body.problem());
  if (!body->is_object() || body->size() != 1 || !body->contains("reason") || !(*body)["reason"].is_string())
    return problem_reply(
        bad_input("taking back an entry needs a reason", "body.reason", R"(send {"reason": "..."})"));
  const auto reason = (*body)["reason"].get<std::string>();
  if (reason.empty() || reason.size() > longest_reason)
    return problem_reply(bad_input("a reason has 1 to 2000 bytes", "reason", "say in a few words why"));
  // Only a missing entry is 404: what a gate refuses is there, and may not be done.
  if (const auto there = api.entry(id); !there) return json_reply(there, 404);
  return json_reply(api.take_back(id, reason));
}

// ---- registers ----
Reply on_register(const Ask& ask, const std::string& name, const Api& api,
                  Reply (*reply)(const Api&, const std::string& name, const garth::RegisterWish&)) {
  const auto span = span_asked(ask);
  if (!span) return problem_reply(span.problem());
  const auto known = day_asked(ask, "known");
  if (!known) return problem_reply(known.problem());
  return reply(api, name, {*span, *known});
}

// A register that is not there is 404; a day on which nothing was known yet is a wrong part of the question.
template <class Answer>
std::optional<int> status_where_refused(const Expected<Answer>& answer) {
  return !answer && answer.problem().where == "known" ? 400 : 404;
}

Reply shown_register(const Api& api, const std::string& name, const garth::RegisterWish& wish) {
  const auto shown = api.register_shown(name, wish);
  return json_reply(shown, status_where_refused(shown));
}
Reply csv_register(const Api& api, const std::string& name, const garth::RegisterWish& wish) {
  const auto bytes = api.register_as_csv(name, wish);
  // The name is that of a register, letters only, where the status is 200.
  return named_file(
      bytes_reply(bytes, "text/csv; charset=utf-8; header=present", status_where_refused(bytes)),
      "attachment; filename=\"" + name + ".csv\"");
}
Reply pdf_register(const Api& api, const std::string& name, const garth::RegisterWish& wish) {
  const auto bytes = api.register_as_pdf(name, wish);
  return named_file(bytes_reply(bytes, "application/pdf", status_where_refused(bytes)),
                    "inline; filename=\"" + name + ".pdf\"");
}

constexpr std::array roads_of_the_book{
    Road{"/api/entries", "GET",
         [](const Ask& ask, const std::string&, const Api& api) { return find_entries(ask, api); },
         "text kind about from to known after limit"},
    Road{"/api/entries", "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return enter(ask, api); }},
    Road{"/api/entries/*/removal", "POST",
         [](const Ask& ask, const std::string& key, const Api& api) { return take_back(key, ask, api); }},
    Road{"/api/entries/*", "GET",
         [](const Ask&, const std::string& key, const Api& api) { return json_reply(api.entry(key), 404); }},
    Road{"/api/kinds", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.kinds()); }},
    Road{"/api/registers", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.registers()); }},
    Road{"/api/registers/*.csv", "GET",
         [](const Ask& ask, const std::string& key, const Api& api) {
           return on_register(ask, key, api, csv_register);
         },
         asked_of_registers},
    Road{"/api/registers/*.pdf", "GET",
         [](const Ask& ask, const std::string& key, const Api& api) {
           return on_register(ask, key, api, pdf_register);
         },
         asked_of_registers},
    Road{"/api/registers/*", "GET",
         [](const Ask& ask, const std::string& key, const Api& api) {
           return on_register(ask, key, api, shown_register);
         },
         asked_of_registers},
};

}  // namespace

std::span<const Road> entry_roads() {
  return roads_of_the_book;
}

}  // namespace beegarth::http
