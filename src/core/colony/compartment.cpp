#include "colony/compartment.hpp"

#include <algorithm>
#include <cmath>

namespace beegarth::colony {
namespace {

constexpr int steps_per_day = 50;

// The positive root of m J^2 + (m + s - a) J - a = 0.
double ratio(double a, double s, double m) {
  const double b = m + s - a;
  return (-b + std::sqrt(b * b + 4 * m * a)) / (2 * m);
}

Bees slope(const ForagerBalance& b, Bees x) {
  const double n = x.hive + x.foragers;
  if (n <= 0) return {};
  const double recruited = x.hive * (b.recruit_max_per_day - b.social_inhibition_per_day * x.foragers / n);
  return {b.laying_per_day * n / (b.half_laying_bees + n) - recruited,
          recruited - b.forager_loss_per_day * x.foragers};
}

Bees moved(Bees x, Bees by, double step) {
  return {x.hive + by.hive * step, x.foragers + by.foragers * step};
}

Bees runge_kutta(const ForagerBalance& b, Bees x, double step) {
  const Bees k1 = slope(b, x);
  const Bees k2 = slope(b, moved(x, k1, step / 2));
  const Bees k3 = slope(b, moved(x, k2, step / 2));
  const Bees k4 = slope(b, moved(x, k3, step));
  return {
      std::max(x.hive + step / 6 * (k1.hive + 2 * k2.hive + 2 * k3.hive + k4.hive), 0.0),
      std::max(x.foragers + step / 6 * (k1.foragers + 2 * k2.foragers + 2 * k3.foragers + k4.foragers), 0.0)};
}

FedState slope(const FedColony& c, const FedState& x) {
  const double bees = x.hive + x.foragers;
  const double fed = x.food_g * x.food_g;
  const double short_of = c.half_laying_food_g * c.half_laying_food_g;
  const double reared =
      c.laying_per_day * fed / (fed + short_of) * x.hive / (x.hive + c.half_laying_hive_bees);
  const double recruited =
      bees > 0 ? x.hive * (c.recruit_max_per_day + c.recruit_hungry_per_day * short_of / (short_of + fed) -
                           c.social_inhibition_per_day * x.foragers / bees)
               : 0;
  const double emerging = c.emerging_per_day * x.brood;
  return {emerging - recruited, recruited - c.forager_loss_per_day * x.foragers, reared - emerging,
          c.collected_g_per_forager * x.foragers - c.eaten_g_per_bee * bees - c.eaten_g_per_brood * x.brood};
}

FedState moved(const FedState& x, const FedState& by, double times) {
  return {x.hive + times * by.hive, x.foragers + times * by.foragers, x.brood + times * by.brood,
          std::max(0.0, x.food_g + times * by.food_g)};
}

FedState runge_kutta(const FedColony& c, const FedState& x, double step) {
  const FedState k1 = slope(c, x);
  const FedState k2 = slope(c, moved(x, k1, step / 2));
  const FedState k3 = slope(c, moved(x, k2, step / 2));
  const FedState k4 = slope(c, moved(x, k3, step));
  const auto mean = [](double a, double b, double d, double e) { return (a + 2 * b + 2 * d + e) / 6; };
  return moved(
      x,
      {mean(k1.hive, k2.hive, k3.hive, k4.hive), mean(k1.foragers, k2.foragers, k3.foragers, k4.foragers),
       mean(k1.brood, k2.brood, k3.brood, k4.brood), mean(k1.food_g, k2.food_g, k3.food_g, k4.food_g)},
      step);
}

}  // namespace

double foragers_per_hive_bee(const ForagerBalance& b) {
  return ratio(b.recruit_max_per_day, b.social_inhibition_per_day, b.forager_loss_per_day);
}

Bees balance_of(const ForagerBalance& b) {
  const double j = foragers_per_hive_bee(b);
  const double bees = b.laying_per_day * (1 + j) / (b.forager_loss_per_day * j) - b.half_laying_bees;
  if (bees <= 0) return {};
  return {bees / (1 + j), bees * j / (1 + j)};
}

std::optional<double> critical_forager_loss(const ForagerBalance& b) {
  const double growth = b.laying_per_day / b.half_laying_bees;
  const double a = b.recruit_max_per_day;
  const double s = b.social_inhibition_per_day;
  if (a <= growth) return std::nullopt;
  return growth / 2 * (a + s + std::sqrt((a - s) * (a - s) + 4 * growth * s)) / (a - growth);
}

double onset_age_days(const ForagerBalance& b) {
  return 1 / (b.forager_loss_per_day * foragers_per_hive_bee(b));
}

std::vector<Bees> course_of(const ForagerBalance& b, Bees start, int days) {
  std::vector<Bees> course{start};
  for (int day = 0; day < days; ++day) {
    for (int step = 0; step < steps_per_day; ++step) start = runge_kutta(b, start, 1.0 / steps_per_day);
    course.push_back(start);
  }
  return course;
}

std::optional<double> days_until_below(const ForagerBalance& b, Bees start, double bees, int days) {
  double before = start.hive + start.foragers;
  if (before < bees) return 0;
  for (int step = 0; step < days * steps_per_day; ++step) {
    start = runge_kutta(b, start, 1.0 / steps_per_day);
    const double now = start.hive + start.foragers;
    if (now < bees) return (step + (before - bees) / (before - now)) / steps_per_day;
    before = now;
  }
  return std::nullopt;
}

std::vector<FedState> course_of(const FedColony& c, FedState start, int days) {
  std::vector<FedState> course{start};
  for (int day = 0; day < days; ++day) {
    for (int step = 0; step < steps_per_day; ++step) start = runge_kutta(c, start, 1.0 / steps_per_day);
    course.push_back(start);
  }
  return course;
}

FedBalance balance_of(const FedColony& c) {
  const double m = c.forager_loss_per_day;
  const double j = ratio(c.recruit_max_per_day, c.social_inhibition_per_day, m);
  FedBalance b;
  b.hive = std::max(c.laying_per_day / (m * j) - c.half_laying_hive_bees, 0.0);
  b.foragers = j * b.hive;
  b.brood = m * b.foragers / c.emerging_per_day;
  b.surplus_g_per_day = c.collected_g_per_forager * b.foragers - c.eaten_g_per_bee * (b.hive + b.foragers) -
                        c.eaten_g_per_brood * b.brood;
  return b;
}

std::optional<double> self_sufficient_loss(FedColony c) {
  // Surplus per hive bee, J (c - gA - gB m / phi) - gA, falls with m: J falls and the bracket falls.
  const auto surplus = [&](double m) {
    const double j = ratio(c.recruit_max_per_day, c.social_inhibition_per_day, m);
    return j * (c.collected_g_per_forager - c.eaten_g_per_bee -
                c.eaten_g_per_brood * m / c.emerging_per_day) -
           c.eaten_g_per_bee;
  };
  double low = 1e-6;
  double high = 10;
  if (surplus(low) <= 0 || surplus(high) >= 0) return std::nullopt;
  for (int i = 0; i < 200; ++i) {
    const double middle = (low + high) / 2;
    (surplus(middle) > 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

}  // namespace beegarth::colony
