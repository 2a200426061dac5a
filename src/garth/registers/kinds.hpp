// Each register is built from the entries that count on the session's today. Private to the folder.
#pragma once

#include <map>

#include "garth/registers/register.hpp"

namespace beegarth::garth {

Expected<Register> medicines_register(const Session& session);
Expected<Register> feeding_register(const Session& session);
Expected<Register> movements_register(const Session& session);
Expected<Register> counts_register(const Session& session);
Expected<Register> harvest_register(const Session& session);
Expected<Register> extraction_register(const Session& session);
Expected<Register> lots_register(const Session& session);
Expected<Register> labels_register(const Session& session);
Expected<Register> yields_register(const Session& session);
Expected<Register> losses_register(const Session& session);
Expected<Register> costs_register(const Session& session);
Expected<Register> queens_register(const Session& session);
Expected<Register> kit_register(const Session& session);
Expected<Register> combs_register(const Session& session);
Expected<Register> wax_register(const Session& session);
Expected<Register> land_register(const Session& session);
Expected<Register> wild_register(const Session& session);

// ---- what several of them say ----
std::string colony_name(const Session& session, const ColonyId& id);
std::string site_name(const Session& session, const SiteId& id);
// The table of the country whose rules hold at the colony's site, or of the book's setting "country".
const FactTable& country_table(const Session& session, const std::optional<ColonyId>& colony);
std::string short_number(double value, int decimals = 1);  // "12.5"; no trailing zeros
std::string short_number(const std::optional<double>& value, int decimals = 1);
std::string yes_or_no(const std::optional<bool>& value);
std::string joined(const std::vector<std::string>& parts, std::string_view between = ", ");
std::string key_in_words(std::string_view key);  // "oxalic trickle"
// Where each colony stood, day by day: the site on the evening of `day`.
std::string place_of(const Session& session, const HiveId& hive);

}  // namespace beegarth::garth
