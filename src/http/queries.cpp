#include "http/queries.hpp"

#include <charconv>

namespace beegarth::http {

namespace {

constexpr std::size_t most_entries = 200;

}  // namespace

std::string said(const Ask& ask, const char* name) {
  const auto found = ask.query.find(name);
  return found == ask.query.end() ? std::string{} : found->second;
}

Expected<std::optional<Date>> day_asked(const Ask& ask, const char* name) {
  const std::string text = said(ask, name);
  if (text.empty()) return std::optional<Date>();
  const Expected<Date> day = Date::parse(text);
  if (!day) return bad_input(day.problem().what, name, day.problem().remedy);
  return std::optional(*day);
}

Expected<garth::Span> span_asked(const Ask& ask) {
  const auto from = day_asked(ask, "from");
  if (!from) return from.problem();
  const auto to = day_asked(ask, "to");
  if (!to) return to.problem();
  if (*from && *to && **from > **to)
    return bad_input("the span ends before it begins", "from", "swap the two days");
  return garth::Span{*from, *to};
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

Expected<std::size_t> limit_asked(const Ask& ask) {
  const std::string text = said(ask, "limit");
  if (text.empty()) return std::size_t{50};
  std::size_t limit = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), limit);
  if (fault != std::errc{} || end != text.data() + text.size() || limit < 1 || limit > most_entries)
    return bad_input("limit is not a whole number from 1 to 200", "limit", "ask for 50, and then for more");
  return limit;
}

}  // namespace beegarth::http
