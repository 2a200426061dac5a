#include "belief/forecast.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "belief/filter.hpp"
#include "belief/project.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

Predicted predicted(Date date, std::string quantity, std::string unit, std::span<const double> values,
                    std::span<const double> weights) {
  Predicted p{date, std::move(quantity), std::move(unit), {}, {}};
  for (const int i : ascending_order(values)) {
    p.values.push_back(values[static_cast<std::size_t>(i)]);
    p.weights.push_back(weights[static_cast<std::size_t>(i)]);
  }
  return p;
}

std::vector<double> doubles(std::span<const float> row) {
  return {row.begin(), row.end()};
}

// What a keeper would write of a true value: with the ways of the observer and an error of its own for every
// member.
class Writer {
 public:
  Writer(const Setting& setting, const Members& members) : setting_(setting) {
    for (int i = 0; i < setting.members; ++i) observers_.push_back(observer_of(members, setting, i));
  }

  bool writes(Traced quantity) const {
    return quantity == Traced::bees || quantity == Traced::capped_cells || quantity == Traced::stores_kg ||
           quantity == Traced::weight_kg;
  }

  double write(Traced quantity, double there, std::size_t member, int day) const {
    const ObservationErrors& e = setting_.errors;
    const ObserverTraits& o = observers_[member];
    Stream error({.seed = setting_.seed,
                  .colony = setting_.colony,
                  .member = static_cast<std::uint32_t>(member),
                  .day = day * 16 + static_cast<int>(quantity),
                  .purpose = Purpose::observation});
    switch (quantity) {
      case Traced::bees:
        return offset_error(there * o.bees_factor, e.seams_error,
                            e.floor_seams * setting_.dwelling.bees_per_seam, error);
      case Traced::capped_cells:
        return offset_error(there * o.brood_factor, e.capped_cells_error, e.floor_cells, error);
      case Traced::stores_kg:
        return offset_error(there * o.stores_factor, e.stores_error, e.floor_stores, error);
      case Traced::weight_kg:
        return there + e.scale_error * error.normal();
      default:
        return there;
    }
  }

 private:
  static double offset_error(double expected, double sd, double floor, Stream& error) {
    return std::max(0.0, (expected + floor) * std::exp(sd * error.normal()) - floor);
  }

  const Setting& setting_;
  std::vector<ObserverTraits> observers_;
};

}  // namespace

double Predicted::quantile(double level) const {
  std::vector<int> order(values.size());
  std::iota(order.begin(), order.end(), 0);
  return weighted_quantile(values, weights, order, level);
}

double Predicted::mean() const {
  return std::inner_product(values.begin(), values.end(), weights.begin(), 0.0);
}

Expected<Forecast> forecast(const History& history, const Forcing& forcing, const Tables& tables,
                            const Options& options, std::span<const Date> dates) {
  const auto fit_to_ask = check_request(history, forcing, options);
  if (!fit_to_ask) return fit_to_ask.problem();
  for (const Date date : dates) {
    if (date < options.today || date > options.horizon) {
      return bad_input(date.iso() + " lies outside " + options.today.iso() + " to " + options.horizon.iso(),
                       "dates", "ask for days within");
    }
  }
  const Timeline timeline = lay_out(history, options.today);
  const auto setting = make_setting(history, forcing, timeline, tables, options);
  if (!setting) return setting.problem();
  const Fitted fitted = fit_to_entries(*setting);
  const Projected projected = project(*setting, fitted, forcing, options.horizon);
  const Writer writer(*setting, fitted.members);
  Forecast result;
  result.effective_sample_size = effective_sample_size(fitted.weights);
  for (const Date date : dates) {
    const int day = date - history.began;
    for (std::size_t q = 0; q < traced_count; ++q) {
      const auto quantity = static_cast<Traced>(q);
      const auto& [name, unit] = quantity_names[q];
      std::vector<double> values = doubles(projected.trace.row(quantity, day));
      result.there.push_back(predicted(date, std::string(name), std::string(unit), values, fitted.weights));
      if (!writer.writes(quantity)) continue;
      for (std::size_t i = 0; i < values.size(); ++i) values[i] = writer.write(quantity, values[i], i, day);
      result.written.push_back(predicted(date, std::string(name), std::string(unit), values, fitted.weights));
    }
    const auto alive =
        std::span(projected.trace.alive)
            .subspan(projected.trace.at(day, 0), static_cast<std::size_t>(projected.trace.members));
    result.there.push_back(predicted(date, "alive", "1", doubles(alive), fitted.weights));
  }
  return result;
}

}  // namespace beegarth::belief
