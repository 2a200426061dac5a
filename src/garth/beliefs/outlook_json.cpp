#include "garth/beliefs/outlook_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "garth/beliefs/believe.hpp"
#include "garth/plan/plan_json.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

constexpr std::array<const char*, 7> level_names{"5", "10", "25", "50", "75", "90", "95"};

double four_decimals(double share) {
  return std::round(share * 10000) / 10000;
}

json event_json(const facts::EventOutlook& event) {
  json course = json::array();
  for (const auto& point : event.course) {
    course.push_back({{"by", point.by.iso()},
                      {"value", four_decimals(point.odds.value)},
                      {"low", four_decimals(point.odds.low)},
                      {"high", four_decimals(point.odds.high)}});
  }
  return {{"event", event_words(event.kind)},
          {"definition", event.definition},
          {"course", std::move(course)},
          {"why", reasons_json(event.why)}};
}

std::string percent_column(double share) {
  const double pct = share * 100;
  if (pct > 0 && pct < 1) return "<1 %";
  if (pct > 99 && pct < 100) return ">99 %";
  return fmt::format("{:.0f} %", pct);
}

// The middle line of the fan of one quantity on the day asked for.
const std::array<double, 7>* on(const facts::Outlook& outlook, std::string_view quantity, Date date) {
  for (const auto& fan : outlook.fans) {
    if (fan.quantity != quantity) continue;
    const auto at = std::find(fan.dates.begin(), fan.dates.end(), date);
    if (at != fan.dates.end()) return &fan.levels[static_cast<std::size_t>(at - fan.dates.begin())];
  }
  return nullptr;
}

// What the entries taught of every coordinate, the best known first.
constexpr double learnt_beyond_chance = 0.05;

std::string learnt_text(const std::vector<facts::Learnt>& learnt) {
  std::vector<facts::Learnt> order = learnt;
  std::stable_sort(order.begin(), order.end(), [](const facts::Learnt& a, const facts::Learnt& b) {
    return a.contraction > b.contraction;
  });
  struct Group {
    const char* words;
    double from;
    std::string list;
  };
  std::array<Group, 3> groups{{{"half or more of what was unknown", 0.5, {}},
                               {"a tenth or more", 0.1, {}},
                               {"hardly anything, taken as usual", -1e9, {}}}};
  for (const facts::Learnt& one : order) {
    const auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& g) {
      // Chance alone shows some learning in a small crowd: only what is beyond it is told as learnt.
      return one.contraction >= g.from && (g.from < 0 || one.contraction_low >= learnt_beyond_chance);
    });
    group->list += (group->list.empty() ? "" : "; ") + one.parameter;
    if (group != groups.end() - 1) {
      group->list += fmt::format(" {} ({} to {})", percent_column(one.contraction),
                                 percent_column(one.contraction_low), percent_column(one.contraction_high));
    }
  }
  std::string text = "  learnt from the entries\n";
  for (const Group& group : groups) {
    if (!group.list.empty()) text += fmt::format("    {}: {}\n", group.words, group.list);
  }
  return text +
         "    learnt together: how well mites breed, how many are carried in and how many are found on the "
         "board; counts tell the product of the three, not the parts\n";
}

}  // namespace

json fan_json(const facts::Fan& fan) {
  json dates = json::array();
  for (const Date date : fan.dates) dates.push_back(date.iso());
  json levels = json::object();
  for (std::size_t l = 0; l < level_names.size(); ++l) {
    json values = json::array();
    for (const auto& day : fan.levels) values.push_back(std::round(day[l] * 1000) / 1000);
    levels[level_names[l]] = std::move(values);
  }
  return {{"quantity", fan.quantity},
          {"unit", fan.unit},
          {"dates", std::move(dates)},
          {"levels", std::move(levels)}};
}

std::string_view event_words(facts::EventKind kind) {
  switch (kind) {
    case facts::EventKind::out_of_room:
      return "out of room";
    case facts::EventKind::swarm_preparation:
      return "swarm preparation";
    case facts::EventKind::stores_short:
      return "stores short";
    case facts::EventKind::queen_trouble:
      return "queen trouble";
    case facts::EventKind::supers_full:
      return "supers full";
    case facts::EventKind::surplus:
      return "honey to take";
    case facts::EventKind::death:
      return "death of the colony";
    case facts::EventKind::small_for_winter:
      return "too small for the winter";
    case facts::EventKind::winter_mites:
      return "too many mites for the winter bees";
  }
  return "";
}

json outlook_json(const facts::Outlook& outlook, const book::State& state) {
  json fans = json::array();
  for (const auto& fan : outlook.fans) fans.push_back(fan_json(fan));
  json seen = json::array();
  for (const auto& mark : outlook.seen) {
    seen.push_back({{"date", mark.date.iso()},
                    {"quantity", mark.quantity},
                    {"value", mark.value},
                    {"entry", mark.entry.text()}});
  }
  json events = json::array();
  for (const auto& event : outlook.events) events.push_back(event_json(event));
  json learnt = json::array();
  for (const auto& l : outlook.learnt) {
    learnt.push_back({{"parameter", l.parameter},
                      {"prior_sd", l.prior_sd},
                      {"posterior_sd", l.posterior_sd},
                      {"contraction", std::round(l.contraction * 1000) / 1000},
                      {"contraction_low", std::round(l.contraction_low * 1000) / 1000},
                      {"contraction_high", std::round(l.contraction_high * 1000) / 1000}});
  }
  json answer{{"colony", outlook.colony.text()},
              {"today", outlook.today.iso()},
              {"members", outlook.members},
              {"effective_sample_size", std::round(outlook.effective_sample_size * 10) / 10},
              {"alive", std::round(outlook.alive * 10000) / 10000},
              {"fans", std::move(fans)},
              {"seen", std::move(seen)},
              {"events", std::move(events)},
              {"learnt", std::move(learnt)},
              {"remarks", reasons_json(outlook.remarks)}};
  const auto colony = state.colonies.find(outlook.colony);
  if (colony != state.colonies.end()) answer["name"] = colony->second.began.name;
  return answer;
}

namespace {

// A week, two and four from today, the end of the winter where that lies between, and the last day.
std::vector<std::size_t> rows_told(const std::vector<facts::OddsByDate>& course, const book::State& state) {
  const std::size_t last = course.size() - 1;
  const double latitude = state.sites.empty() ? 52 : state.sites.begin()->second.latitude_deg;
  const auto winter = static_cast<std::size_t>(winter_end(course.front().by, latitude) - course.front().by);
  std::vector<std::size_t> rows{7, 14, 28};
  if (winter > 28) rows.push_back(winter);
  std::erase_if(rows, [&](std::size_t row) { return row >= last; });
  rows.push_back(last);
  return rows;
}

}  // namespace

std::string outlook_text(const facts::Outlook& outlook, const book::State& state) {
  const auto colony = state.colonies.find(outlook.colony);
  const std::string name = colony == state.colonies.end() ? outlook.colony.text() : colony->second.began.name;
  std::string text = fmt::format("{} · believed on {} · alive {} · {} members, effective {:.0f}\n", name,
                                 outlook.today.iso(), percent_column(outlook.alive), outlook.members,
                                 outlook.effective_sample_size);
  for (const auto& fan : outlook.fans) {
    if (const auto* level = on(outlook, fan.quantity, outlook.today)) {
      const int digits = (*level)[3] < 20 ? 1 : 0;
      text += fmt::format("  {:<22} {:>9.{}f}   80 % between {:.{}f} and {:.{}f} {}\n", fan.quantity,
                          (*level)[3], digits, (*level)[1], digits, (*level)[5], digits, fan.unit);
    }
  }
  for (const auto& event : outlook.events) {
    if (event.course.empty()) continue;
    text += fmt::format("  {}\n", event_words(event.kind));
    for (const std::size_t at : rows_told(event.course, state)) {
      const auto& point = event.course[at];
      text += fmt::format("    by {}  {:>5}  ({} to {})\n", point.by.iso(), percent_column(point.odds.value),
                          percent_column(point.odds.low), percent_column(point.odds.high));
    }
    text += fmt::format("    means: {}\n", event.definition);
    for (const auto& reason : event.why) text += fmt::format("    why: {}\n", reason.text);
  }
  if (!outlook.learnt.empty()) text += learnt_text(outlook.learnt);
  for (const auto& remark : outlook.remarks) text += fmt::format("  note: {}\n", remark.text);
  return text;
}

}  // namespace beegarth::garth
