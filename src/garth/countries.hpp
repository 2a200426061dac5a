// Whose law holds: the country as the keeper writes it, and the table of its duties.
#pragma once

#include <string>
#include <string_view>

namespace beegarth::garth {

// "England" has tables/duty_england; a country without a table of its own has the careful general one.
std::string duty_table_of(std::string_view country);

}  // namespace beegarth::garth
