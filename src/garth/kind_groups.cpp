#include "garth/kind_groups.hpp"

#include <algorithm>
#include <array>

#include "entries/entry.hpp"

namespace beegarth::garth {
namespace {

constexpr std::string_view weather_group = "sky";

constexpr auto kinds_seen = std::to_array<GroupedKind>(
    {{"inspection"}, {"mite_count"}, {"weight"}, {"sign"}, {"sample"}, {"dead_colony"}});
constexpr auto kinds_done = std::to_array<GroupedKind>({{"feed"},
                                                        {"room"},
                                                        {"treatment"},
                                                        {"treatment_ended"},
                                                        {"swarmed"},
                                                        {"split", "into"},
                                                        {"unite"},
                                                        {"transfer"},
                                                        {"urgent"},
                                                        {"need_answered"}});
constexpr auto kinds_of_colonies = std::to_array<GroupedKind>({{"colony_began", "colony"},
                                                               {"colony_moved"},
                                                               {"colony_ended"},
                                                               {"queen"},
                                                               {"queen_began", "queen"},
                                                               {"queen_mated"},
                                                               {"score"},
                                                               {"stock_aim"},
                                                               {"quarantine"},
                                                               {"reported"},
                                                               {"cleared"}});
constexpr auto kinds_of_produce = std::to_array<GroupedKind>({{"harvest"},
                                                              {"extraction"},
                                                              {"lot", "lot"},
                                                              {"jars"},
                                                              {"wax"},
                                                              {"sale"},
                                                              {"purchase"},
                                                              {"medicine_disposed"}});
constexpr auto kinds_of_kit = std::to_array<GroupedKind>({{"hive", "hive"},
                                                          {"kit"},
                                                          {"part", "part"},
                                                          {"part_now"},
                                                          {"assembled"},
                                                          {"combs", "combs"},
                                                          {"combs_moved"},
                                                          {"build_step"}});
constexpr auto kinds_of_ground = std::to_array<GroupedKind>({{"site", "site"},
                                                             {"site_closed"},
                                                             {"land"},
                                                             {"ground_object", "object"},
                                                             {"stand", "stand"},
                                                             {"travel"}});
constexpr auto kinds_of_plants = std::to_array<GroupedKind>({{"patch", "patch"},
                                                             {"planted"},
                                                             {"plant_care"},
                                                             {"bloom"},
                                                             {"cut"},
                                                             {"forage"},
                                                             {"flower_watch"},
                                                             {"nest"}});
constexpr auto kinds_of_weather = std::to_array<GroupedKind>({{"weather"}, {"normals"}});
constexpr auto kinds_of_keeping = std::to_array<GroupedKind>({{"note"},
                                                              {"working_hours"},
                                                              {"keeper_rule"},
                                                              {"comparison"},
                                                              {"setting"},
                                                              {"table_override"},
                                                              {"photo", {}, false},
                                                              {"removed", {}, false}});

constexpr auto groups_of_kinds = std::to_array<KindGroup>({
    {"seen", "What was seen", kinds_seen},
    {"done", "What was done", kinds_done},
    {"colonies", "Colonies and queens", kinds_of_colonies},
    {"produce", "Honey, wax and money", kinds_of_produce},
    {"equipment", "Hives and kit", kinds_of_kit},
    {"ground", "Sites and ground", kinds_of_ground},
    {"plants", "Plants and wild bees", kinds_of_plants},
    {weather_group, "Weather", kinds_of_weather},
    {"keeping", "Notes, rules and settings", kinds_of_keeping},
});

bool group_has(const KindGroup& group, std::string_view kind) {
  return std::any_of(group.kinds.begin(), group.kinds.end(),
                     [&](const auto& one) { return one.kind == kind; });
}

}  // namespace

std::span<const KindGroup> kind_groups() {
  return groups_of_kinds;
}

bool is_kind_or_group(std::string_view wanted) {
  return wanted.empty() || wanted == notebook || entries::empty_payload(wanted) ||
         std::any_of(groups_of_kinds.begin(), groups_of_kinds.end(),
                     [&](const auto& group) { return group.name == wanted; });
}

bool kind_is_of(std::string_view kind, std::string_view wanted) {
  if (wanted.empty() || kind == wanted) return true;
  for (const KindGroup& group : groups_of_kinds) {
    if (wanted == notebook && group.name == weather_group) return !group_has(group, kind);
    if (group.name == wanted && group_has(group, kind)) return true;
  }
  return false;
}

}  // namespace beegarth::garth
