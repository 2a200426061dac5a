#include "garth/tables/countries.hpp"

#include <algorithm>

namespace beegarth::garth {

std::string duty_table_of(std::string_view said) {
  std::string country(said);
  std::transform(country.begin(), country.end(), country.begin(), [](unsigned char c) {
    return static_cast<char>(c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c);
  });
  const bool known = country == "england" || country == "wales" || country == "scotland";
  return known ? "duty_" + country : std::string(general_duty_table);
}

}  // namespace beegarth::garth
