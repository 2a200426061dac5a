#include "garth/plan/transfer_ways.hpp"

#include <fmt/format.h>

namespace beegarth::garth {

namespace {

using nlohmann::json;

const entries::Hive* hive_called(const book::State& state, std::string_view name) {
  const entries::Hive* found = nullptr;
  for (const auto& [id, hive] : state.hives) {
    if (id.text() == name) return &hive;
    if (hive.name == name) found = &hive;
  }
  return found;
}

Expected<work::CombHome> told_home(const entries::Hive& hive) {
  if (const auto home = comb_home_of(hive)) return *home;
  return bad_input(
      "the hive '" + hive.name + "' does not say how its combs hang, how long and how deep they are",
      "hive " + hive.hive.text(), "enter it again with combs_hang, comb_length_mm and comb_depth_mm");
}

// Of the last look that counted them.
std::optional<double> seams_seen(const book::ColonyState& colony) {
  std::optional<double> seams;
  for (const entries::Entry& entry : colony.history)
    if (const auto* look = std::get_if<entries::Inspection>(&entry.payload); look != nullptr && look->seams)
      seams = look->seams;
  return seams;
}

std::optional<Problem> suspect_on_the_way(const Session& session, const ColonyId& colony,
                                          const HiveId& into) {
  const SuspectColony* suspect = session.suspects.at(colony);
  if (suspect == nullptr) suspect = session.suspects.at(into);
  if (suspect == nullptr) return std::nullopt;
  return bad_input("nothing moves to or from what is suspect: " + suspect->signs.front().text() + " on " +
                       suspect->signs.front().seen.iso(),
                   "entry " + suspect->signs.front().entry.text(), "wait until the inspector has cleared it");
}

std::string name_of_who_lives_in(const book::State& state, const HiveId& hive) {
  for (const auto& [id, colony] : state.colonies)
    if (!colony.ended && colony.hive == hive) return colony.began.name;
  return {};
}

json range_json(const work::Range& range) {
  return {{"low", range.low}, {"value", range.value}, {"high", range.high}};
}

std::string plain(std::string_view way) {
  std::string text(way);
  for (char& c : text)
    if (c == '_') c = ' ';
  return text;
}

}  // namespace

std::optional<work::CombHome> comb_home_of(const entries::Hive& hive) {
  if (!hive.combs_hang || !hive.comb_length_mm || !hive.comb_depth_mm) return std::nullopt;
  const bool horizontal = hive.form == entries::HiveForm::horizontal;
  return work::CombHome{.form = horizontal ? facts::HiveForm::horizontal : facts::HiveForm::upright,
                        .frames = *hive.combs_hang == entries::CombsHang::frames,
                        .movable = *hive.combs_hang != entries::CombsHang::fixed,
                        .bar_mm = *hive.comb_length_mm,
                        .depth_mm = *hive.comb_depth_mm,
                        .stackable = hive.can_super.value_or(!horizontal)};
}

Expected<TransferWays> transfer_ways_of(const Session& session, std::string_view colony,
                                        std::string_view into) {
  const auto id = colony_named(session.state, colony);
  if (!id) return id.problem();
  const book::ColonyState& stock = session.state.colonies.at(*id);
  const auto from = session.state.hives.find(stock.hive);
  if (stock.ended || from == session.state.hives.end())
    return bad_input("'" + stock.began.name + "' lives in no hive", "COLONY", "name one that does");
  const entries::Hive* to = hive_called(session.state, into);
  if (to == nullptr)
    return bad_input("there is no hive '" + std::string(into.substr(0, 60)) + "'", "--into",
                     "enter the hive first");
  if (const auto why = suspect_on_the_way(session, *id, to->hive)) return *why;
  const auto old_home = told_home(from->second), new_home = told_home(*to);
  for (const auto* home : {&old_home, &new_home})
    if (!*home) return home->problem();
  work::TransferQuestion question{
      .from = *old_home, .to = *new_home, .date = session.today, .seams = seams_seen(stock)};
  if (const auto site = session.state.sites.find(from->second.site); site != session.state.sites.end())
    question.latitude_deg = site->second.latitude_deg;
  auto ways = work::ways_of_transfer(question, session.tables["transfers"]);
  if (!ways) return ways.problem();
  return TransferWays{stock.began.name, from->second.name, to->name,
                      name_of_who_lives_in(session.state, to->hive), *std::move(ways)};
}

json transfer_ways_json(const std::vector<work::TransferWayTold>& ways) {
  json list = json::array();
  for (const work::TransferWayTold& told : ways) {
    json way{{"way", told.way},
             {"possible", told.against.empty()},
             {"against", told.against},
             {"brood_kept", range_json(told.brood_kept)},
             {"setback_days", range_json(told.setback_days)},
             {"days", told.days},
             {"minutes", told.minutes},
             {"needs", told.needs},
             {"cautions", told.cautions},
             {"sources", told.sources}};
    if (told.brood_lost_cells) way["brood_lost_cells"] = range_json(*told.brood_lost_cells);
    list.push_back(std::move(way));
  }
  return list;
}

json transfer_ways_json(const TransferWays& told) {
  return {{"colony", told.colony},
          {"from", told.from},
          {"into", told.into},
          {"lives_there", told.lives_there},
          {"ways", transfer_ways_json(told.ways)}};
}

std::string transfer_ways_text(const TransferWays& told) {
  std::string text = told.colony + " from " + told.from + " into " + told.into + ":\n";
  if (!told.lives_there.empty()) text += told.lives_there + " lives there now.\n";
  for (const work::TransferWayTold& way : told.ways) {
    if (!way.against.empty()) {
      text += fmt::format("\n{}: no\n", plain(way.way));
      for (const auto& why : way.against) text += "  " + why + "\n";
      continue;
    }
    text += fmt::format(
        "\n{}: brood kept {:.0f} % ({:.0f} to {:.0f}), set back {:.0f} days ({:.0f} to {:.0f}), "
        "{:.0f} minutes of work{}\n",
        plain(way.way), 100 * way.brood_kept.value, 100 * way.brood_kept.low, 100 * way.brood_kept.high,
        way.setback_days.value, way.setback_days.low, way.setback_days.high, way.minutes,
        way.days <= 1 ? std::string(" in a day") : fmt::format(" over {:.0f} days", way.days));
    for (const auto& need : way.needs) text += "  take: " + need + "\n";
    for (const auto& caution : way.cautions) text += "  care: " + caution + "\n";
  }
  return text +
         "\nAll figures are from memory or common practice: no trial that compares the ways was found.\n";
}

}  // namespace beegarth::garth
