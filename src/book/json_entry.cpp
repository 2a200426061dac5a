#include "book/json_entry.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "base/utf8.hpp"
#include "book/book.hpp"
#include "book/canonical.hpp"
#include "book/sha256.hpp"

namespace beegarth::book {
namespace {

using nlohmann::json;

bool is_hex(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); });
}

bool is_hash(std::string_view text) {
  return text.size() == 64 && is_hex(text);
}

// RFC 9562: 8-4-4-4-12 hex digits, here always small letters and version 7.
bool is_uuid7(std::string_view text) {
  if (text.size() != 36) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool dash = i == 8 || i == 13 || i == 18 || i == 23;
    if (dash != (text[i] == '-') || (!dash && !is_hex(text.substr(i, 1)))) return false;
  }
  return text[14] == '7' && std::string_view("89ab").find(text[19]) != std::string_view::npos;
}

json frame_of(const entries::Entry& entry) {
  json out = {
      {"id", entry.id.text()},
      {"kind", std::string(entries::kind_name(entry.payload))},
      {"happened", entry.happened.iso()},
      {"written", {{"utc", Instant{entry.written.utc_ms, 0}.rfc3339()}, {"counter", entry.written.counter}}},
      {"who", entry.who},
      {"device", entry.device},
      {"payload", json_of(entry.payload)}};
  if (entry.happened_hour) out["happened_hour"] = *entry.happened_hour;
  if (entry.supersedes) out["supersedes"] = entry.supersedes->text();
  return out;
}

json linked(const Link& link) {
  json out = frame_of(link.entry);
  out["sequence"] = link.sequence;
  out["previous"] = link.previous;
  return out;
}

constexpr auto names =
    std::to_array<std::string_view>({"device", "happened", "happened_hour", "hash", "id", "kind", "payload",
                                     "previous", "sequence", "supersedes", "who", "written"});

// Takes members out of the object and notes the first that is missing or of the wrong sort.
struct Members {
  const json& object;
  const std::string& where;
  std::optional<Problem> fault;

  const json* find(const char* name, bool required = true) {
    const auto member = object.find(name);
    if (member != object.end()) return &*member;
    if (required) say(name, "is missing");
    return nullptr;
  }
  std::string text(const char* name, bool required = true) {
    const json* member = find(name, required);
    if (!member) return {};
    if (!member->is_string()) return say(name, "is not text"), std::string();
    return member->get<std::string>();
  }
  std::int64_t whole(const char* name) {
    const json* member = find(name);
    if (!member) return 0;
    const bool fits =
        member->is_number_integer() && member->get<double>() >= 0 && member->get<double>() <= 4294967295.0;
    if (!fits) return say(name, "is not a whole number from 0 to 4294967295"), 0;
    return member->get<std::int64_t>();
  }
  void say(const std::string& name, const std::string& what) {
    if (!fault) fault = bad_input(name + " " + what, where, "restore the line as it was exported");
  }
};

entries::Written written_from(Members& members) {
  const json* member = members.find("written");
  if (!member || !member->is_object() || member->size() != 2) {
    members.say("written", "is not an object of utc and counter");
    return {};
  }
  Members inside{*member, members.where, {}};
  const auto utc = Instant::parse_rfc3339(inside.text("utc"));
  const auto counter = static_cast<std::uint32_t>(inside.whole("counter"));
  if (inside.fault) members.say("written", "is not an object of utc and counter");
  if (!utc || Instant{utc->utc_ms, 0}.rfc3339() != inside.text("utc")) {
    members.say("written.utc", "is no instant in UTC");
    return {};
  }
  return {utc->utc_ms, counter};
}

}  // namespace

std::string entry_json(const entries::Entry& entry) {
  return canonical(frame_of(entry));
}

std::string hash_of(const Link& link) {
  return sha256_hex(canonical(linked(link)));
}

std::string line_of(const Link& link) {
  json out = linked(link);
  out["hash"] = link.hash;
  return canonical(out);
}

Outcome check_frame(const entries::Entry& entry, const std::string& where) {
  const auto bad = [&](const std::string& what, const std::string& remedy) {
    return bad_input(what, where, remedy);
  };
  if (!is_uuid7(entry.id.text()))
    return bad("id is no version 7 UUID in small letters", "keep the id as it was written");
  if (entry.supersedes && !is_uuid7(entry.supersedes->text()))
    return bad("supersedes is no entry id", "name an entry");
  if (entry.who.empty() || entry.who.size() > 100)
    return bad("who is empty or longer than 100 bytes", "give a short name");
  if (entry.device.empty() || entry.device.size() > 100)
    return bad("device is empty or longer than 100 bytes", "give a short name");
  if (first_bad_utf8(entry.who) || first_bad_utf8(entry.device))
    return bad("who or device is not UTF-8", "write it as UTF-8");
  if (entry.who.find('\0') != std::string::npos || entry.device.find('\0') != std::string::npos) {
    return bad("who or device holds a zero byte", "remove it");
  }
  if (entry.written.utc_ms < 0 || entry.written.utc_ms > latest_written_ms) {
    return bad("was written outside the years 1970 to 2199", "check the clock of that device");
  }
  if (entry.happened_hour && !(*entry.happened_hour >= 0 && *entry.happened_hour <= 24)) {
    return bad("happened_hour is not within 0 to 24", "give a local hour");
  }
  return Done{};
}

Expected<Link> link_from_line(std::string_view line, const std::string& where) {
  const auto object = parse_strict(line, where);
  if (!object) return object.problem();
  if (!object->is_object()) return bad_input("is not a JSON object", where, "give one entry a line");
  for (auto member = object->begin(); member != object->end(); ++member) {
    if (std::find(names.begin(), names.end(), member.key()) == names.end()) {
      return bad_input("an entry has no field '" + member.key() + "'", where, "remove it");
    }
  }
  Members members{*object, where, {}};
  Link link;
  link.entry.id = EntryId(members.text("id"));
  const std::string kind = members.text("kind");
  const auto happened = Date::parse(members.text("happened"));
  if (const json* hour = members.find("happened_hour", false)) {
    if (!hour->is_number()) members.say("happened_hour", "is not a number");
    if (hour->is_number()) link.entry.happened_hour = hour->get<double>();
  }
  link.entry.written = written_from(members);
  link.entry.who = members.text("who");
  link.entry.device = members.text("device");
  if (members.find("supersedes", false)) link.entry.supersedes = EntryId(members.text("supersedes"));
  link.sequence = members.whole("sequence");
  link.previous = members.text("previous");
  link.hash = members.text("hash");
  const json* payload = members.find("payload");
  if (!happened) members.say("happened", "is no date");
  if (!is_hash(link.previous)) members.say("previous", "is not 64 hex digits");
  if (!is_hash(link.hash)) members.say("hash", "is not 64 hex digits");
  if (link.sequence < 1) members.say("sequence", "does not count from 1");
  if (members.fault) return *members.fault;

  link.entry.happened = *happened;
  auto read = payload_from(kind, *payload, where);
  if (!read) return read.problem();
  link.entry.payload = *std::move(read);
  if (const auto sound = check_frame(link.entry, where); !sound) return sound.problem();
  return link;
}

}  // namespace beegarth::book
