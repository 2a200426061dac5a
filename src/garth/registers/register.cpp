#include "garth/registers/register.hpp"

#include <algorithm>
#include <array>

#include "garth/registers/kinds.hpp"

namespace beegarth::garth {
namespace {

constexpr auto kinds = std::to_array<RegisterKind>({
    {"medicines", "Medicines", "What was bought, given and disposed of, and until when each record is kept",
     medicines_register},
    {"feeding", "Feeding", "What each colony was fed, and from what source", feeding_register},
    {"movements", "Movements", "Where colonies came from and went to, day by day", movements_register},
    {"counts", "Colonies by site", "How many colonies stood at each site at the end of each month",
     counts_register},
    {"harvest", "Harvest", "Every crop, and whether it is for people", harvest_register},
    {"extraction", "Extraction", "Where, when and by whom honey was got out of its combs, and how cleanly",
     extraction_register},
    {"lots", "Lots", "Each lot of honey back to its combs, colonies and their treatments", lots_register},
    {"labels", "Labels", "What the label of each lot's jars must carry, and what is missing",
     labels_register},
    {"yields", "Yields", "Honey taken and food given, by colony and year", yields_register},
    {"losses", "Losses", "Colonies that died or absconded, and what was found", losses_register},
    {"costs", "Costs", "What was paid and what came in", costs_register},
    {"queens", "Queens", "Queens with mother, mating, mark, colony and scores", queens_register},
    {"kit", "Kit", "Parts and the state each is in", kit_register},
    {"combs", "Combs", "Batches of comb with age and place, and whether their honey is for people",
     combs_register},
    {"wax", "Wax", "Combs melted, wax in and foundation out", wax_register},
    {"land", "Land", "What was agreed about each site: owner, gate, rent and insurance", land_register},
    {"wild", "Wild pollinators", "Flower watches and nests, on ground left wild and elsewhere",
     wild_register},
});

bool within(const RegisterRow& row, const Span& span) {
  if (!row.date) return true;
  return (!span.from || *row.date >= *span.from) && (!span.to || *row.date <= *span.to);
}

}  // namespace

std::span<const RegisterKind> register_kinds() {
  return kinds;
}

Expected<Register> register_of(const Session& session, std::string_view name, const Span& span) {
  if (span.from && span.to && *span.from > *span.to)
    return bad_input("the span ends before it begins", "--from", "swap the two days");
  const auto at = std::find_if(kinds.begin(), kinds.end(), [&](const auto& one) { return one.name == name; });
  if (at == kinds.end()) {
    std::vector<std::string> names;
    names.reserve(kinds.size());
    for (const auto& one : kinds) names.emplace_back(one.name);
    return bad_input("there is no register '" + std::string(name.substr(0, 60)) + "'", "NAME",
                     "use one of: " + joined(names));
  }
  auto built = at->build(session);
  if (!built) return built.problem();
  built->name = at->name;
  built->title = at->title;
  built->says = at->says;
  std::erase_if(built->rows, [&](const auto& row) { return !within(row, span); });
  return built;
}

}  // namespace beegarth::garth
