#include "colony/mite_counts.hpp"

#include <array>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

namespace beegarth::colony {
namespace {

constexpr std::array<const char*, 12> months{"jan", "feb", "mar", "apr", "may", "jun",
                                             "jul", "aug", "sep", "oct", "nov", "dec"};

std::string month_key(const char* head, int month) {
  return std::string(head) + months[static_cast<std::size_t>(month - 1)];
}

}  // namespace

Interval poisson_interval(int count, double scale) {
  const double k = count;
  const double low = count == 0 ? 0.0 : boost::math::gamma_p_inv(k, 0.025);
  return {low * scale, k * scale, boost::math::gamma_p_inv(k + 1, 0.975) * scale};
}

double apiary_count_error(double mites, double k, int colonies) {
  return std::sqrt((1 / mites + 1 / k) / colonies);
}

Expected<BoardTotal> total_from_board(double per_day, BoardRule rule, Date date, double latitude_deg,
                                      const FactTable& mites) {
  std::string key = "board_flat_300";
  if (rule == BoardRule::flat_100) key = "board_flat_100";
  if (rule == BoardRule::season_factors) key = month_key("board_season_", northern_month(date, latitude_deg));
  const FactRow* row = mites.find(key);
  if (row == nullptr) return bad_input("there is no row '" + key + "'", mites.name(), "add it with a source");
  return BoardTotal{per_day * row->value, row->source};
}

Verdict manual_rule(double per_day, int month, const FactTable& mites) {
  const FactRow* limit = mites.find(month_key("manual_limit_", month));
  if (limit == nullptr) return Verdict::no_limit_for_this_month;
  return per_day > limit->value ? Verdict::treat : Verdict::below;
}

Verdict breeders_rule(double per_day, int month, const FactTable& mites) {
  const FactRow* treat = mites.find(month_key("breeders_treat_", month));
  if (treat == nullptr) return Verdict::no_limit_for_this_month;
  if (per_day > treat->value) return Verdict::treat;
  const FactRow* watch = mites.find(month_key("breeders_watch_", month));
  return watch != nullptr && per_day >= watch->value ? Verdict::watch : Verdict::below;
}

}  // namespace beegarth::colony
