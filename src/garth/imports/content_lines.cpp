#include "garth/imports/content_lines.hpp"

#include <algorithm>
#include <utility>

#include "base/utf8.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t deepest = 16;

bool is_name_character(char c) {
  return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
}
char capital(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - ('a' - 'A')) : c;
}
bool is_control(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte < 0x20 && c != '\t') || byte == 0x7f;
}

struct Unfolded {
  std::string text;
  std::size_t line;
};

// A line end with a blank or tab behind it is none (3.1).
std::vector<Unfolded> unfolded(std::string_view bytes) {
  std::vector<Unfolded> lines;
  std::size_t number = 0;
  while (!bytes.empty()) {
    ++number;
    const std::size_t end = std::min(bytes.find('\n'), bytes.size());
    std::string_view line = bytes.substr(0, end);
    bytes.remove_prefix(std::min(end + 1, bytes.size()));
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    const bool goes_on = !line.empty() && (line.front() == ' ' || line.front() == '\t');
    if (goes_on && !lines.empty())
      lines.back().text += line.substr(1);
    else
      lines.push_back({std::string(line), number});
  }
  while (!lines.empty() && lines.back().text.empty()) lines.pop_back();
  return lines;
}

class LineReader {
 public:
  LineReader(const Unfolded& line, const std::string& file)
      : text_(line.text), line_(line.line), file_(file) {}

  Expected<ContentLine> read() {
    ContentLine out;
    out.line = line_;
    if (std::any_of(text_.begin(), text_.end(), is_control)) return refuse("a control character in the line");
    out.name = name();
    if (out.name.empty()) return refuse("a line without a name");
    while (peek() == ';') {
      ++at_;
      ContentLine::Parameter parameter{name(), {}};
      if (parameter.name.empty() || peek() != '=') return refuse("a parameter without a name or '='");
      do {
        ++at_;  // '=' or ','
        auto value = parameter_value();
        if (!value) return refuse("a quote that does not close");
        parameter.values.push_back(*std::move(value));
      } while (peek() == ',');
      out.parameters.push_back(std::move(parameter));
    }
    if (peek() != ':') return refuse("no colon behind the name of the line");
    out.value = text_.substr(at_ + 1);
    return out;
  }

 private:
  char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }
  std::string name() {
    std::string name;
    while (at_ < text_.size() && is_name_character(text_[at_])) name += capital(text_[at_++]);
    return name;
  }
  std::optional<std::string> parameter_value() {
    std::string value;
    if (peek() == '"') {
      const std::size_t close = text_.find('"', at_ + 1);
      if (close == std::string::npos) return std::nullopt;
      value = text_.substr(at_ + 1, close - at_ - 1);
      at_ = close + 1;
      return value;
    }
    while (at_ < text_.size() && std::string_view("\";:,").find(text_[at_]) == std::string_view::npos)
      value += text_[at_++];
    return value;
  }
  Problem refuse(const char* what) const {
    return bad_input(std::string("that is no iCalendar line: ") + what, file_ + ":" + std::to_string(line_),
                     "export the calendar again (RFC 5545, .ics)");
  }

  const std::string& text_;
  std::size_t line_;
  const std::string& file_;
  std::size_t at_ = 0;
};

}  // namespace

const std::string* ContentLine::parameter(std::string_view wanted) const {
  for (const Parameter& one : parameters) {
    if (one.name == wanted && !one.values.empty()) return &one.values.front();
  }
  return nullptr;
}

const ContentLine* CalendarComponent::find(std::string_view wanted) const {
  const auto at =
      std::find_if(lines.begin(), lines.end(), [&](const auto& one) { return one.name == wanted; });
  return at == lines.end() ? nullptr : &*at;
}

Expected<std::vector<ContentLine>> content_lines(std::string_view bytes, const std::string& file) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  std::vector<ContentLine> lines;
  for (const Unfolded& each : unfolded(bytes)) {
    // After unfolding, because a fold may stand within a character (3.1).
    if (!is_utf8(each.text))
      return bad_input("the line is not UTF-8", file + ":" + std::to_string(each.line),
                       "save the calendar as UTF-8");
    auto line = LineReader(each, file).read();
    if (!line) return line.problem();
    lines.push_back(*std::move(line));
  }
  return lines;
}

Expected<std::vector<CalendarComponent>> calendar_components(std::string_view bytes,
                                                             const std::string& file) {
  auto lines = content_lines(bytes, file);
  if (!lines) return lines.problem();
  const auto refuse = [&](std::size_t line, const std::string& what) {
    return bad_input(what, file + ":" + std::to_string(line), "export the calendar again (RFC 5545, .ics)");
  };
  std::vector<CalendarComponent> calendars, open;
  for (ContentLine& line : *lines) {
    std::string name = line.value;
    std::transform(name.begin(), name.end(), name.begin(), capital);
    if (line.name == "BEGIN") {
      if (open.empty() && name != "VCALENDAR")
        return refuse(line.line, "a calendar begins with BEGIN:VCALENDAR");
      if (open.size() == deepest) return refuse(line.line, "too many components inside each other");
      open.push_back({name, line.line, {}, {}});
    } else if (open.empty()) {
      return refuse(line.line, "a calendar begins with BEGIN:VCALENDAR");
    } else if (line.name == "END") {
      if (open.back().name != name)
        return refuse(line.line, "END:" + name + " where " + open.back().name + " of line " +
                                     std::to_string(open.back().line) + " is open");
      CalendarComponent done = std::move(open.back());
      open.pop_back();
      (open.empty() ? calendars : open.back().parts).push_back(std::move(done));
    } else {
      open.back().lines.push_back(std::move(line));
    }
  }
  if (!open.empty()) return refuse(open.back().line, open.back().name + " has no end: the file was cut off");
  if (calendars.empty()) return refuse(1, "there is no calendar in the file");
  return calendars;
}

std::string plain_text(std::string_view value) {
  std::string text;
  for (std::size_t i = 0; i < value.size(); ++i) {
    const bool escape = value[i] == '\\' && i + 1 < value.size();
    if (!escape) {
      text += value[i];
      continue;
    }
    ++i;
    text += value[i] == 'n' || value[i] == 'N' ? '\n' : value[i];
  }
  return text;
}

}  // namespace beegarth::garth
