#include "belief/forecast.hpp"

#include <algorithm>
#include <functional>
#include <numeric>

#include "belief/colony_fit.hpp"
#include "belief/project.hpp"
#include "belief/smc.hpp"
#include "belief/writing.hpp"

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

// What the keeper would write at one look, by member.
class Notebook {
 public:
  Notebook(const Setting& setting, const Fitted& fitted, const Trace& trace, const LookToCome& look)
      : setting_(setting),
        fitted_(fitted),
        trace_(trace),
        look_(look),
        day_(look.date - setting.timeline.began) {}

  void write(std::vector<Predicted>& pages) const {
    const std::vector<double>& all = fitted_.weights;
    pages.push_back(page(Traced::bees, all, [&](Writer& writer, const Visible& there, std::size_t) {
      if (!there.alive) return 0.0;
      return look_.by_seams ? writer.seams(0.5) * there.dwelling.bees_per_seam : writer.bees();
    }));
    pages.push_back(page(Traced::capped_cells, all, [](Writer& writer, const Visible& there, std::size_t) {
      return there.alive ? writer.capped_cells() : 0.0;
    }));
    pages.push_back(page(Traced::stores_kg, all,
                         [](Writer& writer, const Visible&, std::size_t) { return writer.stores_kg(); }));
    pages.push_back(page(Traced::weight_kg, all, [this](Writer& writer, const Visible&, std::size_t member) {
      return writer.weighed(at(Traced::weight_kg, member));
    }));
    // Nobody washes bees of a dead colony: what a sample shows, it shows of a living one.
    const std::vector<double> living = weights_of_the_living();
    if (look_.examined > 0) pages.push_back(page(Traced::mites_per_100_bees, living, sampled()));
    if (look_.opened > 0) pages.push_back(page(Traced::infested_share, living, opened()));
  }

 private:
  using Draw = std::function<double(Writer&, const Visible&, std::size_t member)>;

  Draw sampled() const {
    entries::MiteCount count;
    count.method = look_.rolled ? entries::MiteMethod::sugar_roll : entries::MiteMethod::wash;
    count.bees = look_.examined;
    return [count](Writer& writer, const Visible&, std::size_t) {
      return 100.0 * writer.mites(count) / *count.bees;
    };
  }
  Draw opened() const {
    entries::MiteCount count;
    count.method = entries::MiteMethod::brood;
    count.cells = look_.opened;
    return [count](Writer& writer, const Visible&, std::size_t) {
      return static_cast<double>(writer.mites(count)) / *count.cells;
    };
  }

  double at(Traced quantity, std::size_t member) const { return trace_.row(quantity, day_)[member]; }

  // What the pages above ask for.
  Visible visible(std::size_t member) const {
    Visible there;
    there.alive = trace_.alive[trace_.at(day_, static_cast<int>(member))] > 0.5F;
    there.bees = at(Traced::bees, member);
    there.capped_cells = at(Traced::capped_cells, member);
    there.stores_kg = at(Traced::stores_kg, member);
    there.mites_on_adults = at(Traced::mites_per_100_bees, member) / 100 * there.bees;
    there.infested_share = at(Traced::infested_share, member);
    there.dwelling = dwelling_on(setting_, setting_.timeline.began + day_);
    return there;
  }

  Predicted page(Traced quantity, const std::vector<double>& weights, const Draw& draw) const {
    std::vector<double> values(weights.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
      Stream luck({.seed = setting_.seed,
                   .colony = setting_.colony,
                   .member = static_cast<std::uint32_t>(i),
                   .day = day_ * 16 + static_cast<int>(quantity) + 1,
                   .purpose = Purpose::observation});
      const Visible there = visible(i);
      const ObserverTraits ways = observer_of(fitted_.members, setting_, static_cast<int>(i));
      Writer writer(there, ways, setting_.errors, luck);
      values[i] = draw(writer, there, i);
    }
    const auto& [name, unit] = quantity_names[static_cast<std::size_t>(quantity)];
    return predicted(look_.date, std::string(name), std::string(unit), values, weights);
  }

  std::vector<double> weights_of_the_living() const {
    std::vector<double> weights = fitted_.weights;
    double sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
      if (trace_.alive[trace_.at(day_, static_cast<int>(i))] < 0.5F) weights[i] = 0;
      sum += weights[i];
    }
    if (sum <= 0) return fitted_.weights;
    for (double& weight : weights) weight /= sum;
    return weights;
  }

  const Setting& setting_;
  const Fitted& fitted_;
  const Trace& trace_;
  const LookToCome& look_;
  int day_;
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

Expected<Forecast> forecast_of(const ColonyFit& fit, const Forcing& forcing, const Options& options,
                               std::span<const LookToCome> looks) {
  for (const LookToCome& look : looks) {
    if (look.date < options.today || look.date > options.horizon) {
      return bad_input(
          look.date.iso() + " lies outside " + options.today.iso() + " to " + options.horizon.iso(), "looks",
          "ask for days within");
    }
  }
  const Fitted& fitted = fit.fitted;
  const Projected projected = project(*fit.setting, fitted, forcing, options.horizon);
  Forecast result;
  result.effective_sample_size = effective_sample_size(fitted.weights);
  for (const LookToCome& look : looks) {
    const int day = look.date - fit.timeline.began;
    for (std::size_t q = 0; q < traced_count; ++q) {
      const auto& [name, unit] = quantity_names[q];
      result.there.push_back(predicted(look.date, std::string(name), std::string(unit),
                                       doubles(projected.trace.row(static_cast<Traced>(q), day)),
                                       fitted.weights));
    }
    const auto alive =
        std::span(projected.trace.alive)
            .subspan(projected.trace.at(day, 0), static_cast<std::size_t>(projected.trace.members));
    result.there.push_back(predicted(look.date, "alive", "1", doubles(alive), fitted.weights));
    Notebook(*fit.setting, fitted, projected.trace, look).write(result.written);
  }
  return result;
}

Expected<Forecast> forecast(const History& history, const Forcing& forcing, const Tables& tables,
                            const Options& options, std::span<const LookToCome> looks) {
  const auto fit = fit_colony(history, forcing, tables, options);
  if (!fit) return fit.problem();
  return forecast_of(**fit, forcing, options, looks);
}

}  // namespace beegarth::belief
