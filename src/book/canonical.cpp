#include "book/canonical.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

#include "base/utf8.hpp"

namespace beegarth::book {
namespace {

constexpr int deepest = 16;

void write_string(std::string& out, std::string_view text) {
  out += '"';
  for (const char c : text) {
    switch (c) {
      case '"':
        out += "\\\"";
        break;
      case '\\':
        out += "\\\\";
        break;
      case '\b':
        out += "\\b";
        break;
      case '\t':
        out += "\\t";
        break;
      case '\n':
        out += "\\n";
        break;
      case '\f':
        out += "\\f";
        break;
      case '\r':
        out += "\\r";
        break;
      default:
        if (static_cast<unsigned char>(c) < 0x20) {
          constexpr std::string_view hex = "0123456789abcdef";
          out += "\\u00";
          out += hex[static_cast<unsigned char>(c) >> 4U];
          out += hex[static_cast<unsigned char>(c) & 15U];
        } else {
          out += c;
        }
    }
  }
  out += '"';
}

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

void write(std::string& out, const nlohmann::json& value);

void write_object(std::string& out, const nlohmann::json& object) {
  using Member = std::pair<std::string_view, const nlohmann::json*>;
  std::vector<Member> members;
  members.reserve(object.size());
  for (auto member = object.begin(); member != object.end(); ++member) {
    members.emplace_back(member.key(), &member.value());
  }
  std::sort(members.begin(), members.end(), [](const Member& a, const Member& b) {
    if (is_ascii(a.first) && is_ascii(b.first)) return a.first < b.first;
    return utf16_of(a.first) < utf16_of(b.first);
  });
  out += '{';
  for (const auto& [name, member] : members) {
    if (out.back() != '{') out += ',';
    write_string(out, name);
    out += ':';
    write(out, *member);
  }
  out += '}';
}

void write_array(std::string& out, const nlohmann::json& array) {
  out += '[';
  bool first = true;
  for (const nlohmann::json& item : array) {
    if (!std::exchange(first, false)) out += ',';
    write(out, item);
  }
  out += ']';
}

void write(std::string& out, const nlohmann::json& value) {
  switch (value.type()) {
    case nlohmann::json::value_t::object:
      return write_object(out, value);
    case nlohmann::json::value_t::array:
      return write_array(out, value);
    case nlohmann::json::value_t::string:
      return write_string(out, value.get_ref<const std::string&>());
    case nlohmann::json::value_t::boolean:
      out += value.get<bool>() ? "true" : "false";
      return;
    case nlohmann::json::value_t::null:
      out += "null";
      return;
    case nlohmann::json::value_t::number_integer:
    case nlohmann::json::value_t::number_unsigned:
    case nlohmann::json::value_t::number_float:
      out += canonical_number(value.get<double>());
      return;
    default:
      throw std::logic_error("no JSON value");
  }
}

// Notices what the parser itself lets pass.
struct Watch {
  std::vector<std::vector<std::string>> names;  // said so far in each object that is open
  std::string fault;

  bool operator()(int depth, nlohmann::json::parse_event_t event, const nlohmann::json& parsed) {
    using Event = nlohmann::json::parse_event_t;
    if (depth > deepest && fault.empty()) fault = "is nested too deeply";
    if (event == Event::object_start) names.emplace_back();
    if (event == Event::key && !names.empty()) names.back().push_back(parsed.get_ref<const std::string&>());
    if (event == Event::object_end && !names.empty()) {
      close(names.back());
      names.pop_back();
    }
    return fault.empty();
  }

  void close(std::vector<std::string>& said) {
    std::sort(said.begin(), said.end());
    const auto twice = std::adjacent_find(said.begin(), said.end());
    if (twice != said.end() && fault.empty()) fault = "says '" + *twice + "' twice";
  }
};

}  // namespace

// ECMAScript's Number::toString, which RFC 8785 section 3.2.2.3 prescribes: the shortest digits that read
// back to the same number, plain between 1e-7 and 1e21, else with an exponent.
std::string canonical_number(double value) {
  if (!std::isfinite(value)) throw std::invalid_argument("JSON has no such number");
  if (value == 0) return "0";  // -0 too
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::fabs(value),
                                 std::chars_format::scientific)
                       .ptr;
  const std::string_view text(buffer.data(), static_cast<std::size_t>(end - buffer.data()));
  const std::size_t e = text.find('e');
  std::string digits(1, text[0]);
  if (e > 2) digits += text.substr(2, e - 2);
  int exponent = 0;  // of the first digit
  const std::string_view power = text.substr(text[e + 1] == '+' ? e + 2 : e + 1);
  std::from_chars(power.data(), power.data() + power.size(), exponent);

  const std::size_t count = digits.size();
  std::string out = value < 0 ? "-" : "";
  if (exponent >= 21 || exponent < -6) {
    out += digits.substr(0, 1);
    if (count > 1) out += "." + digits.substr(1);
    return out + (exponent < 0 ? "e-" : "e+") + std::to_string(std::abs(exponent));
  }
  const auto distance = static_cast<std::size_t>(std::abs(exponent));
  if (exponent < 0) return out + "0." + std::string(distance - 1, '0') + digits;
  const std::size_t whole = distance + 1;
  if (count <= whole) return out + digits + std::string(whole - count, '0');
  return out + digits.substr(0, whole) + "." + digits.substr(whole);
}

std::string canonical(const nlohmann::json& value) {
  std::string out;
  write(out, value);
  return out;
}

Expected<nlohmann::json> parse_strict(std::string_view text, const std::string& where) {
  if (const auto bad = first_bad_utf8(text)) {
    return bad_input("is not UTF-8 at byte " + std::to_string(*bad + 1), where, "save it as UTF-8");
  }
  Watch watch;
  const auto look = [&](int depth, nlohmann::json::parse_event_t event, const nlohmann::json& parsed) {
    return watch(depth, event, parsed);
  };
  const auto noticed = [&] {
    return bad_input("the JSON " + watch.fault, where, "write it as the schema says");
  };
  try {
    nlohmann::json value = nlohmann::json::parse(text, look);
    if (!watch.fault.empty()) return noticed();
    return value;
  } catch (const nlohmann::json::parse_error& error) {
    if (!watch.fault.empty()) return noticed();
    return bad_input("is not JSON at byte " + std::to_string(error.byte), where,
                     "check the quotes, commas and brackets");
  } catch (const nlohmann::json::exception&) {
    return bad_input("holds a number that is out of range", where, "check the numbers");
  }
}

}  // namespace beegarth::book
