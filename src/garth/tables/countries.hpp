// Whose law holds: the country as the keeper writes it, and the table of its duties.
#pragma once

#include <string>
#include <string_view>

namespace beegarth::garth {

inline constexpr std::string_view general_duty_table = "duty_general";
inline constexpr std::string_view countries_with_a_table = "England, Wales and Scotland";

// "England" has tables/duty_england; a country without a table of its own has the careful general one.
std::string duty_table_of(std::string_view country);

}  // namespace beegarth::garth
