#include "garth/demo.hpp"

#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <memory>
#include <stdexcept>
#include <system_error>
#include <utility>
#include <vector>

#include "almanac/generator.hpp"
#include "base/random.hpp"
#include "book/book.hpp"
#include "book/state.hpp"
#include "garth/calc/calc.hpp"
#include "garth/embedded.hpp"

namespace beegarth::garth {
namespace {

// A clock and random bytes that are the same on every machine, so that the demo's entry ids are too.
book::Surroundings demo_surroundings(std::int64_t start_ms, std::uint64_t seed) {
  const auto clock = std::make_shared<std::int64_t>(start_ms);
  const auto stream = std::make_shared<Stream>(StreamKey{.seed = seed, .purpose = Purpose::demo});
  return {.utc_ms = [clock] { return (*clock)++; },
          .random_bytes =
              [stream](unsigned char* bytes, std::size_t count) {
                for (std::size_t i = 0; i < count; ++i)
                  bytes[i] = static_cast<unsigned char>(stream->word() >> 24);
              }};
}

std::string_view entries_file() {
  for (const EmbeddedFile& file : embedded_files()) {
    if (file.path == "demo/entries.jsonl") return file.bytes;
  }
  throw std::logic_error("the demo is not compiled in");
}

Expected<std::vector<book::Draft>> written_drafts() {
  std::vector<book::Draft> drafts;
  const std::string_view bytes = entries_file();
  std::size_t at = 0;
  for (int line = 1; at < bytes.size(); ++line) {
    const std::size_t end = std::min(bytes.find('\n', at), bytes.size());
    const std::string where = "demo/entries.jsonl:" + std::to_string(line);
    const auto row = parse_json(bytes.substr(at, end - at), where);
    if (!row) return row.problem();
    const auto date = Date::parse(row->at("date").get<std::string>());
    if (!date) return bad_input(date.problem().what, where);
    auto payload =
        book::payload_from_json(row->at("kind").get<std::string>(), row->at("payload").dump(), where);
    if (!payload) return payload.problem();
    drafts.push_back({.happened = *date, .payload = *std::move(payload)});
    at = end + 1;
  }
  return drafts;
}

struct Demo {
  Date today;
  Date first;
  facts::MonthlyNormals normals;  // of the first site; the others follow it
};

Demo facts_of(const std::vector<book::Draft>& drafts) {
  Demo demo{.first = drafts.front().happened};
  SiteId base_site;
  for (const auto& draft : drafts) {
    if (const auto* setting = std::get_if<entries::Setting>(&draft.payload);
        setting && setting->name == "today") {
      demo.today = Date::parse(setting->value).value();
    }
    if (const auto* n = std::get_if<entries::Normals>(&draft.payload)) {
      if (base_site.empty()) base_site = n->site;
      if (n->site != base_site) continue;
      demo.normals.months[static_cast<std::size_t>(n->month - 1)] = {
          n->temperature_min_C, n->temperature_max_C, n->rain_mm, n->rain_days, n->wind_m_s.value_or(3)};
    }
  }
  return demo;
}

double rounded(double value) {
  return std::round(value * 10) / 10;
}

// One sky over all three sites: each differs from the first by the difference of their normals.
std::vector<book::Draft> invented_weather(const std::vector<book::Draft>& drafts, std::uint64_t seed) {
  const Demo demo = facts_of(drafts);
  const auto sky = almanac::continue_weather(almanac::weather_from_normals(demo.normals), {}, demo.first,
                                             demo.today - 1, demo.first, 1, seed);
  std::vector<book::Draft> weather;
  for (const auto& day : sky.front()) {
    for (const auto& draft : drafts) {
      const auto* n = std::get_if<entries::Normals>(&draft.payload);
      if (!n || n->month != day.date.month()) continue;
      const auto& base = demo.normals.months[static_cast<std::size_t>(n->month - 1)];
      const double low = rounded(day.temperature_min_C + n->temperature_min_C - base.temperature_min_C);
      const double high =
          std::max(low, rounded(day.temperature_max_C + n->temperature_max_C - base.temperature_max_C));
      weather.push_back({.happened = day.date,
                         .payload = entries::Weather{
                             .site = n->site,
                             .temperature_min_C = low,
                             .temperature_max_C = high,
                             .rain_mm = rounded(day.rain_mm),
                             .wind_m_s = rounded(day.wind_m_s * n->wind_m_s.value_or(3) / base.wind_m_s),
                             .invented = true}});
    }
  }
  return weather;
}

// Closed again when it returns.
Expected<int> write_entries(const std::string& path, const std::vector<book::Draft>& drafts,
                            book::Surroundings surroundings) {
  auto book =
      book::Book::open(path, {.create = true, .who = "Maren Tollick (invented)"}, std::move(surroundings));
  if (!book) return book.problem();
  const auto kept = book->append(drafts);
  if (!kept) return kept.problem();
  return static_cast<int>(kept->size());
}

}  // namespace

Expected<int> write_demo(const std::string& path, std::uint64_t seed) {
  auto drafts = written_drafts();
  if (!drafts) return drafts.problem();
  const auto weather = invented_weather(*drafts, seed);
  drafts->insert(drafts->end(), weather.begin(), weather.end());
  std::stable_sort(drafts->begin(), drafts->end(),
                   [](const auto& a, const auto& b) { return a.happened < b.happened; });
  const std::int64_t start_ms = drafts->front().happened.day_number() * std::int64_t{86'400'000};
  if (path.empty()) return Problem{ProblemKind::wrong_use, "the book has no name", "BOOK", "give a path"};
  if (std::filesystem::exists(path))
    return Problem{ProblemKind::storage, "there is something here already", path, "name another file"};
  // Whole or not there: it gets its name when every entry is in it.
  const std::string making = path + "." + std::to_string(::getpid()) + ".making";
  const auto count = write_entries(making, *drafts, demo_surroundings(start_ms, seed));
  std::error_code error;
  if (count) std::filesystem::rename(making, path, error);
  if (!count || error) {
    std::error_code ignored;
    for (const char* tail : {"", "-wal", "-shm"}) std::filesystem::remove(making + tail, ignored);
  }
  if (!count) {  // told by the name that was given
    Problem problem = count.problem();
    for (std::string* text : {&problem.what, &problem.where, &problem.remedy})
      if (const std::size_t at = text->find(making); at != std::string::npos)
        text->replace(at, making.size(), path);
    return problem;
  }
  if (error)
    return Problem{ProblemKind::storage, "the book cannot be put in place: " + error.message(), path, ""};
  return *count;
}

}  // namespace beegarth::garth
