#include "garth/session.hpp"

#include <sys/random.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <ctime>
#include <span>
#include <stdexcept>
#include <thread>
#include <utility>

#include "garth/tables/usable.hpp"

namespace beegarth::garth {
namespace {

template <class Map, class NameOf>
std::string known_names(const Map& things, NameOf name_of) {
  std::string list;
  std::size_t shown = 0;
  for (const auto& [key, thing] : things) {
    if (++shown > 8) return list + ", ...";
    if (!list.empty()) list += ", ";
    list += name_of(thing);
  }
  return list.empty() ? "there is none yet" : "known are " + list;
}

}  // namespace

book::Surroundings machine_surroundings() {
  return {.utc_ms =
              [] {
                const auto now = std::chrono::system_clock::now().time_since_epoch();
                return std::int64_t{std::chrono::duration_cast<std::chrono::milliseconds>(now).count()};
              },
          .random_bytes =
              [](unsigned char* bytes, std::size_t count) {
                // At most 256 bytes at once come whole, says getrandom(2).
                for (std::size_t done = 0; done < count;) {
                  const ssize_t got = ::getrandom(bytes + done, std::min<std::size_t>(count - done, 256), 0);
                  if (got < 0 && errno != EINTR) throw std::runtime_error("the machine has no random bytes");
                  if (got > 0) done += static_cast<std::size_t>(got);
                }
              }};
}

Date machine_today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return Date::from_ymd(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday).value_or(Date{});
}

std::optional<entries::Written> end_of(std::optional<Date> known_on) {
  if (!known_on) return std::nullopt;
  return entries::Written{(known_on->day_number() + 1) * std::int64_t{86'400'000} - 1, ~0U};
}

Outcome has_begun(const book::Book& book, const std::string& path, Date today, std::optional<Date> known_on) {
  const auto all = book.entries();
  if (!all) return all.problem();
  if (all->empty()) return Done{};
  const Date first = all->front().happened;
  const auto known_at = end_of(known_on);
  const bool any = std::any_of(all->begin(), all->end(), [&](const entries::Entry& entry) {
    return entry.happened <= today && (!known_at || entry.written <= *known_at);
  });
  if (any) return Done{};  // all taken back since
  if (first > today)
    return bad_input(today.iso() + " lies before the book began on " + first.iso(), path,
                     "give a later --today");
  return bad_input("nothing was written yet on " + known_on->iso(), path, "give a later --known");
}

Outcome refresh(Session& session) {
  const auto all = session.book.entries();
  if (!all) return all.problem();
  session.standing = book::standing_entries(*all, session.today, end_of(session.known_on));
  session.first_said = first_said(*all);
  session.state = book::state_of(session.standing, session.today);
  const auto built_in = Tables::built_in();
  if (!built_in) return built_in.problem();
  session.tables = *built_in;
  session.faulty_overrides.clear();
  for (const entries::TableOverride& own : session.state.overrides) {
    // One that cannot be used must not shut the keeper out of the book.
    auto tables = session.tables.with(std::span(&own, 1));
    const Outcome reckoned = tables ? usable(*tables) : Outcome(tables.problem());
    if (reckoned)
      session.tables = *std::move(tables);
    else
      session.faulty_overrides.push_back("the override of " + own.table + " " + own.row +
                                         " is left out: " + reckoned.problem().what);
  }
  const auto notifiable = Notifiable::from(session.tables);
  if (!notifiable) return notifiable.problem();
  session.suspects = suspects_on(session.standing, session.today, *notifiable);
  if (session.state.first_date) return Done{};
  return has_begun(session.book, session.path, session.today, session.known_on);
}

Expected<OpenedBook> open_book(const std::string& path, const SessionOptions& options) {
  auto book =
      book::Book::open(path, {.read_only = options.read_only, .who = options.who}, machine_surroundings());
  if (!book) return book.problem();
  OpenedBook opened{*std::move(book), options.today.value_or(machine_today())};
  if (options.today) return opened;
  // A demo book has a today of its own, so that it tells the same story for ever.
  const std::string_view setting_kind = "setting";
  const auto settings = opened.book.entries_of(std::span(&setting_kind, 1));
  if (!settings) return settings.problem();
  for (const auto& entry : *settings) {
    const auto* setting = std::get_if<entries::Setting>(&entry.payload);
    if (!setting || setting->name != "today") continue;
    if (const auto fixed = Date::parse(setting->value)) opened.today = *fixed;
  }
  return opened;
}

Expected<Session> open_session(const std::string& path, const SessionOptions& options) {
  auto opened = open_book(path, options);
  if (!opened) return opened.problem();
  const unsigned cores = std::max(1U, std::thread::hardware_concurrency());
  Session session{.path = path,
                  .book = std::move(opened->book),
                  .today = opened->today,
                  .seed = options.seed,
                  .members = options.members,
                  .weather_members = options.weather_members,
                  .threads = options.threads > 0 ? options.threads : static_cast<int>(cores),
                  .known_on = options.known_on};
  if (const auto outcome = refresh(session); !outcome) return outcome.problem();
  return session;
}

Expected<ColonyId> colony_named(const book::State& state, std::string_view name) {
  if (const auto found = book::find_colony(state, name)) return *found;
  std::string namesakes;
  int count = 0;
  for (const auto& [id, colony] : state.colonies) {
    if (colony.began.name != name) continue;
    namesakes += (count++ == 0 ? "" : ", ") + id.text();
  }
  if (count > 1)
    return bad_input("several colonies are called '" + std::string(name) + "'", {},
                     "use a key: " + namesakes);
  return bad_input("there is no colony '" + std::string(name) + "' on " + state.as_of.iso(), {},
                   known_names(state.colonies, [](const book::ColonyState& c) { return c.began.name; }));
}

Expected<SiteId> site_named(const book::State& state, std::string_view name) {
  if (const auto found = book::find_site(state, name)) return *found;
  return bad_input("there is no site '" + std::string(name) + "' on " + state.as_of.iso(), {},
                   known_names(state.sites, [](const entries::Site& s) { return s.name; }));
}

}  // namespace beegarth::garth
