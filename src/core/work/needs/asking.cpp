#include "work/needs/asking.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <stdexcept>

namespace beegarth::work {

namespace {

const char* const unit_of_loss = "kg honey equivalent";

double odds_at(const facts::EventOutlook& event, Date date) {
  double value = 0;
  for (const auto& one : event.course) {
    if (one.by > date) break;
    value = one.odds.value;
  }
  return value;
}

}  // namespace

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

double Asking::fact(const char* key) const {
  const FactRow* row = table.find(key);
  if (row == nullptr) throw std::logic_error("table " + table.name() + " has no row " + key);
  return row->value;
}

int Asking::minutes(const char* key) const {
  return static_cast<int>(std::lround(fact(key)));
}

std::string Asking::source(const char* key) const {
  const FactRow* row = table.find(key);
  return row == nullptr ? std::string(key) : "tables/work " + row->key + ": " + row->source;
}

int Asking::kit(const char* word) const {
  int count = 0;
  for (const auto& [name, owned] : input.kit)
    if (lower(name).find(word) != std::string::npos) count += owned;
  return count;
}

int Asking::month(Date date) const {
  return northern_month(date, site.latitude_deg);
}

bool Asking::opening_season(Date date) const {
  return month(date) >= 3 && month(date) <= 10;
}

// Where the keeper gave no reckoning: from August on (common practice in temperate country).
bool Asking::main_flow_over(Date date) const {
  if (site.nectar_by_month.size() != 12) return month(date) >= 8;
  if (month(date) < 7) return false;  // a gap in June ends no swarming
  const auto best = std::max_element(site.nectar_by_month.begin(), site.nectar_by_month.end());
  const int best_month = static_cast<int>(best - site.nectar_by_month.begin()) + 1;
  const double now = site.nectar_by_month[static_cast<std::size_t>(date.month() - 1)];
  const int since = (date.month() - best_month + 12) % 12;
  return *best > 0 && since > 0 && since < 6 && now < 0.5 * *best;
}

bool Asking::dearth(Date date) const {
  if (site.nectar_by_month.size() != 12 || month(date) < 4 || month(date) > 9) return false;
  const double best = *std::max_element(site.nectar_by_month.begin(), site.nectar_by_month.end());
  return best > 0 &&
         site.nectar_by_month[static_cast<std::size_t>(date.month() - 1)] < fact("dearth_share") * best;
}

const facts::EventOutlook* Asking::event(facts::EventKind kind) const {
  if (outlook == nullptr) return nullptr;
  for (const auto& one : outlook->events)
    if (one.kind == kind && !one.course.empty()) return &one;
  return nullptr;
}

std::optional<facts::Odds> Asking::odds_by(facts::EventKind kind, Date date) const {
  const auto* found = event(kind);
  if (found == nullptr) return std::nullopt;
  std::optional<facts::Odds> odds;
  for (const auto& one : found->course)
    if (one.by <= date) odds = one.odds;
  return odds ? odds : found->course.front().odds;
}

std::optional<double> Asking::median_of(const char* quantity, Date date) const {
  if (outlook == nullptr) return std::nullopt;
  constexpr std::size_t median = 3;  // facts::fan_levels
  for (const auto& fan : outlook->fans) {
    if (fan.quantity != quantity) continue;
    for (std::size_t i = 0; i < fan.dates.size() && i < fan.levels.size(); ++i)
      if (fan.dates[i] == date && std::isfinite(fan.levels[i][median])) return fan.levels[i][median];
  }
  return std::nullopt;
}

std::string Asking::ways_left(const std::vector<Way>& ways, const char* last) const {
  std::vector<std::string> left;
  for (const Way& way : ways)
    if (std::all_of(way.asks.begin(), way.asks.end(), [&](facts::Deed deed) { return will(deed); }))
      left.push_back(way.words);
  std::string text;
  for (std::size_t i = 0; i < left.size(); ++i)
    text += (i == 0 ? "" : i + 1 == left.size() ? " " + std::string(last) + " " : ", ") + left[i];
  return text;
}

facts::Need Asking::need(const std::string& kind, std::string what) const {
  facts::Need need;
  need.key = kind + "/" + (colony != nullptr ? colony->colony.text() : site.site.text());
  need.what = std::move(what);
  need.site = site.site;
  if (colony != nullptr) need.colony = colony->colony;
  need.earliest = need.best = input.today;
  need.latest = last_day();
  need.loss.from = input.today;
  need.loss.by_day.assign(static_cast<std::size_t>(std::max(1, input.days)), 0.0);
  need.loss.unit = unit_of_loss;
  if (site_suspect && colony != nullptr && !colony->suspect)
    need.cautions.push_back("A colony at " + site.name +
                            " is suspect: nothing leaves that site; suit and tools are cleaned.");
  return need;
}

void Asking::tell_odds(facts::Need& need, facts::EventKind kind, const char* words, Date first,
                       Date second) const {
  const auto* found = event(kind);
  if (found == nullptr) return;
  const Date horizon = found->course.back().by;
  Date told = first - 1;
  for (const Date date : {std::min(first, horizon), std::min(second, horizon)}) {
    if (date <= told) continue;
    told = date;
    if (const auto odds = odds_by(kind, date)) need.odds.push_back({words, date, *odds});
  }
  constexpr std::size_t most_reasons = 3;  // the heaviest first; the rest stand in the outlook
  for (std::size_t i = 0; i < found->why.size() && i < most_reasons; ++i) need.why.push_back(found->why[i]);
}

facts::Reason because(std::string text, std::vector<EntryId> entries, std::vector<std::string> sources) {
  return {std::move(text), std::move(entries), std::move(sources)};
}

facts::LossCurve loss_from_odds(const Asking& asking, facts::EventKind kind, double price, double saved) {
  facts::LossCurve loss{asking.input.today, {}, 0, unit_of_loss};
  const auto* event = asking.event(kind);
  const double end = event == nullptr ? 0 : event->course.back().odds.value;
  const double come = event == nullptr ? 0 : std::min(end, odds_at(*event, asking.input.today));
  for (int day = 0; day < std::max(1, asking.input.days); ++day) {
    const double by = event == nullptr ? 0 : std::min(end, odds_at(*event, asking.input.today + day));
    const double harmed = come * std::min(1.0, (day + 1) / asking.fact("harm_days"));
    loss.by_day.push_back(price * ((1 - saved) * end + saved * (harmed + by - come)));
  }
  loss.never = price * end;
  return loss;
}

facts::LossCurve loss_when_late(const Asking& asking, Date due, double days_to_full, double price) {
  facts::LossCurve loss{asking.input.today, {}, 0, unit_of_loss};
  const auto late = [&](int day) {
    const int days = asking.input.today + day - due;
    return price * std::clamp(days / std::max(1.0, days_to_full), 0.0, 1.0);
  };
  for (int day = 0; day < std::max(1, asking.input.days); ++day) loss.by_day.push_back(late(day));
  // Left undone, it is met a plan's length later at the soonest.
  loss.never = std::max(late(2 * std::max(1, asking.input.days)), loss.by_day.back());
  return loss;
}

}  // namespace beegarth::work
