#include "belief/doubts.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "belief/densities.hpp"
#include "belief/explain.hpp"
#include "belief/pareto.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// A look somewhere: of which colony (index among the fits), and which observation there.
struct Look {
  std::size_t fit = 0;
  std::size_t observation = 0;
};

bool is_look(const Observation& seen) {
  const auto* look = std::get_if<entries::Inspection>(&seen.sight);
  if (look == nullptr || look->look == entries::Look::outside) return false;
  // One figure alone is a slip at most.
  const int figures = (look->seams || look->bees ? 1 : 0) + (look->brood_combs ? 1 : 0) +
                      (look->capped_cells ? 1 : 0) + (look->store_combs || look->stores_kg ? 1 : 0) +
                      (look->eggs ? 1 : 0) + (look->charged_cells ? 1 : 0);
  return figures >= 2;
}

const Observation& seen_at(std::span<const Standing> all, const Look& look) {
  return all[look.fit].fit->timeline.observations[look.observation];
}

// The days that a look may have been made on instead: a week, a fortnight, a month, a year off, or day and
// month exchanged.
std::vector<Date> other_dates(Date written, Date first, Date last) {
  std::vector<Date> dates;
  const auto add = [&](std::optional<Date> date) {
    if (date && *date != written && *date >= first && *date <= last) dates.push_back(*date);
  };
  for (const int days : {7, 14}) {
    add(written - days);
    add(written + days);
  }
  const int month = written.month();
  add(Date::from_ymd(written.year() - (month == 1 ? 1 : 0), month == 1 ? 12 : month - 1, written.day()));
  add(Date::from_ymd(written.year() + (month == 12 ? 1 : 0), month == 12 ? 1 : month + 1, written.day()));
  add(Date::from_ymd(written.year() - 1, month, written.day()));
  add(Date::from_ymd(written.year() + 1, month, written.day()));
  if (written.day() <= 12) add(Date::from_ymd(written.year(), written.day(), month));
  std::sort(dates.begin(), dates.end());
  dates.erase(std::unique(dates.begin(), dates.end()), dates.end());
  return dates;
}

// How likely a look would have been with one colony on one day, if `without` had not been seen there.
struct Question {
  Look look;
  std::size_t asked = 0;  // which colony
  Date on;
  std::optional<std::size_t> without;  // an observation of the colony that is asked
};

// Weights of the members as if one observation had not been seen.
std::vector<double> weights_without(const Fitted& fitted, std::optional<std::size_t> without) {
  if (!without) return fitted.weights;
  std::vector<double> ratios(fitted.weights.size());
  for (std::size_t i = 0; i < ratios.size(); ++i) {
    ratios[i] = std::log(std::max(fitted.weights[i], 1e-300)) - fitted.members.log_seen[*without][i];
  }
  return pareto_smoothed(ratios).weights;
}

// Answers questions about one colony, from a crowd of it, in the order of the days.
class Memory {
 public:
  Memory(std::span<const Standing> all, const Setting& setting, const Fitted& fitted)
      : all_(all), setting_(setting), fitted_(fitted) {}

  std::vector<double> answers(std::span<const Question> questions) const {
    std::vector<double> logs(questions.size(), minus_infinity);
    std::map<int, std::vector<std::size_t>> by_day;
    for (std::size_t q = 0; q < questions.size(); ++q)
      by_day[questions[q].on - setting_.timeline.began].push_back(q);
    const auto morning = [&](int day, const colony::Ensemble& ensemble) {
      const auto asked = by_day.find(day);
      if (asked == by_day.end()) return;
      const std::vector<Visible> there = all_visible(ensemble);
      for (const std::size_t q : asked->second) logs[q] = log_predicted(questions[q], there);
    };
    if (by_day.empty()) return logs;
    Members again = set_back(setting_, fitted_.members.coordinates, fitted_.members.luck);
    live_to(again, setting_, std::min(setting_.today, by_day.rbegin()->first), morning);
    morning(again.day, again.ensemble);
    return logs;
  }

 private:
  double log_predicted(const Question& question, std::span<const Visible> there) const {
    const Sight& sight = seen_at(all_, question.look).sight;
    const std::vector<double> weights = weights_without(fitted_, question.without);
    std::vector<double> logs;
    logs.reserve(there.size());
    for (std::size_t i = 0; i < there.size(); ++i) {
      const bool ready = there[i].charged_cells + there[i].sealed_cells >= 0.5;
      const ObserverTraits ways = observer_of(fitted_.members, setting_, static_cast<int>(i));
      logs.push_back(std::log(std::max(weights[i], 1e-300)) +
                     log_likelihood(sight, there[i], 0, ready, ways, setting_.errors));
    }
    return log_sum_exp(logs);
  }

  std::span<const Standing> all_;
  const Setting& setting_;
  const Fitted& fitted_;
};

// Another way to read a look, with what must be asked to weigh it: log odds against "as written" are the
// answers of `then` less those of `as_written`.
struct Reading {
  Look look;
  Doubt doubt;
  double log_slip = 0;  // how rare such a slip is
  std::vector<Question> then, as_written;
};

class Doubter {
 public:
  Doubter(std::span<const Standing> all, const SlipOdds& slips, const ForEachIndex& each)
      : all_(all), slips_(slips), each_(each) {}

  std::vector<std::vector<Doubt>> doubts() const {
    std::vector<std::vector<Reading>> readings(all_.size());
    for (std::size_t f = 0; f < all_.size(); ++f) {
      const auto& observations = all_[f].fit->timeline.observations;
      for (std::size_t o = 0; o < observations.size(); ++o) {
        if (!is_look(observations[o])) continue;
        add_dates(readings[f], {f, o});
        add_colonies(readings[f], {f, o});
      }
    }
    const std::map<Asked, double> quick = quick_answers(readings);
    std::vector<std::vector<Doubt>> doubts(all_.size());
    each_(all_.size(), [&](std::size_t f) { doubts[f] = confirmed(readings[f], quick); });
    return doubts;
  }

 private:
  using Asked = std::array<std::size_t, 4>;  // look, colony asked, day
  static Asked key(const Question& q) {
    return {q.look.fit, q.look.observation, q.asked, static_cast<std::size_t>(q.on.day_number())};
  }

  void add_dates(std::vector<Reading>& readings, const Look& look) const {
    const Timeline& timeline = all_[look.fit].fit->timeline;
    const Observation& seen = seen_at(all_, look);
    const Date last = timeline.began + all_[look.fit].fit->setting->today;
    const auto dates = other_dates(seen.date, timeline.began, last);
    for (const Date date : dates) {
      Reading reading{look, {.entry = seen.entry, .meant = date}, 0, {}, {}};
      reading.log_slip = std::log(slips_.wrong_date / static_cast<double>(dates.size()));
      reading.then = {{look, look.fit, date, look.observation}};
      reading.as_written = {{look, look.fit, seen.date, look.observation}};
      readings.push_back(std::move(reading));
    }
  }

  void add_colonies(std::vector<Reading>& readings, const Look& look) const {
    const Observation& seen = seen_at(all_, look);
    const std::vector<std::size_t> mates = mates_on(look, seen.date);
    for (const std::size_t mate : mates) {
      Reading reading{look, {.entry = seen.entry, .other = all_[mate].fit->colony}, 0, {}, {}};
      reading.log_slip = std::log(slips_.mixed_up / static_cast<double>(mates.size()));
      const auto own = look_on(mate, seen.date);
      reading.then = {{look, mate, seen.date, own}};
      reading.as_written = {{look, look.fit, seen.date, look.observation}};
      if (own) {
        const Look theirs{mate, *own};
        reading.doubt.exchanged = true;
        reading.then.push_back({theirs, look.fit, seen.date, look.observation});
        reading.as_written.push_back({theirs, mate, seen.date, own});
      }
      readings.push_back(std::move(reading));
    }
  }

  // Followed on that day, at the same site, and among those that are always fitted together.
  std::vector<std::size_t> mates_on(const Look& look, Date date) const {
    std::vector<std::size_t> mates;
    if (all_[look.fit].site.empty()) return mates;
    for (std::size_t f = 0; f < all_.size(); ++f) {
      const ColonyFit& fit = *all_[f].fit;
      const bool there = f != look.fit && all_[f].site == all_[look.fit].site && fit.timeline.began <= date &&
                         (!fit.timeline.ended || *fit.timeline.ended > date);
      if (there) mates.push_back(f);
    }
    std::sort(mates.begin(), mates.end(), [&](std::size_t a, std::size_t b) {
      const ColonyFit& x = *all_[a].fit;
      const ColonyFit& y = *all_[b].fit;
      const std::size_t many = x.timeline.entries.size();
      return many != y.timeline.entries.size() ? many > y.timeline.entries.size() : x.colony < y.colony;
    });
    if (mates.size() > most_teachers - 1) mates.resize(most_teachers - 1);
    return mates;
  }

  std::optional<std::size_t> look_on(std::size_t f, Date date) const {
    const auto& observations = all_[f].fit->timeline.observations;
    for (std::size_t o = 0; o < observations.size(); ++o) {
      if (observations[o].date == date && is_look(observations[o])) return o;
    }
    return std::nullopt;
  }

  // Every colony is asked once, by weights alone.
  std::map<Asked, double> quick_answers(const std::vector<std::vector<Reading>>& readings) const {
    std::vector<std::map<Asked, Question>> asked(all_.size());
    for (const auto& of_fit : readings) {
      for (const Reading& reading : of_fit) {
        for (const auto* side : {&reading.then, &reading.as_written}) {
          for (const Question& question : *side) asked[question.asked].emplace(key(question), question);
        }
      }
    }
    std::vector<std::vector<double>> answers(all_.size());
    each_(all_.size(), [&](std::size_t f) {
      std::vector<Question> questions;
      for (const auto& [k, question] : asked[f]) questions.push_back(question);
      answers[f] = Memory(all_, *all_[f].fit->setting, all_[f].fit->fitted).answers(questions);
    });
    std::map<Asked, double> known;
    for (std::size_t f = 0; f < all_.size(); ++f) {
      std::size_t q = 0;
      for (const auto& [k, question] : asked[f]) known[k] = answers[f][q++];
    }
    return known;
  }

  template <class Answer>
  static double log_odds(const Reading& reading, const Answer& answer) {
    double sum = reading.log_slip;
    for (const Question& question : reading.then) sum += answer(question);
    for (const Question& question : reading.as_written) sum -= answer(question);
    return sum;
  }

  // Weights alone flatter what was written: its members were made to agree with it. What looks odd by them is
  // asked again of crowds that never saw the looks in question.
  std::vector<Doubt> confirmed(const std::vector<Reading>& readings,
                               const std::map<Asked, double>& quick) const {
    constexpr double odd = 0.01;           // odds by weights that are worth a second fit
    constexpr std::size_t most_looks = 3;  // of a colony, the oddest first
    std::map<std::size_t, std::pair<double, const Reading*>> by_look;  // the likeliest reading of each
    for (const Reading& reading : readings) {
      const double log = log_odds(reading, [&](const Question& q) { return quick.at(key(q)); });
      const auto [at, first] = by_look.try_emplace(reading.look.observation, log, &reading);
      if (!first && log > at->second.first) at->second = {log, &reading};
    }
    std::vector<std::pair<double, const Reading*>> worth;
    for (const auto& [look, best] : by_look) {
      if (best.first > std::log(odd)) worth.push_back(best);
    }
    std::stable_sort(worth.begin(), worth.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    if (worth.size() > most_looks) worth.resize(most_looks);
    std::vector<Doubt> doubts;
    for (const auto& [log, reading] : worth) {
      Refits refits(all_);
      Doubt doubt = reading->doubt;
      doubt.odds = std::exp(log_odds(*reading, [&](const Question& q) { return refits.answer(q); }));
      if (doubt.odds >= sure) doubts.push_back(doubt);
    }
    return doubts;
  }

  // Crowds fitted without one look each.
  class Refits {
   public:
    explicit Refits(std::span<const Standing> all) : all_(all) {}
    double answer(Question question) {
      const Setting& setting = *all_[question.asked].fit->setting;
      if (!question.without)
        return Memory(all_, setting, all_[question.asked].fit->fitted).answers({&question, 1})[0];
      auto& again = fits_[{question.asked, *question.without}];
      Setting without = setting;
      without.without = question.without;
      if (!again) again = fit_to_entries(without);
      question.without.reset();  // it has not seen it
      return Memory(all_, without, *again).answers({&question, 1})[0];
    }

   private:
    std::span<const Standing> all_;
    std::map<std::pair<std::size_t, std::size_t>, std::optional<Fitted>> fits_;
  };

  std::span<const Standing> all_;
  SlipOdds slips_;
  const ForEachIndex& each_;
};

}  // namespace

Expected<SlipOdds> read_slip_odds(const FactTable& observation) {
  SlipOdds slips;
  for (const auto& [key, to] : {std::pair("wrong_date", &slips.wrong_date), {"mixed_up", &slips.mixed_up}}) {
    const auto value = observation.value(key);
    if (!value) return value.problem();
    if (*value <= 0 || *value >= 0.5)
      return bad_input("the share of looks must lie between 0 and 0.5", observation.name() + ": " + key,
                       "correct the row");
    *to = *value;
  }
  return slips;
}

std::vector<std::vector<Doubt>> doubts_about(std::span<const Standing> all, const SlipOdds& slips,
                                             const ForEachIndex& each) {
  return Doubter(all, slips, each).doubts();
}

facts::Reason told(const Doubt& doubt, const ColonyFit& fit, const std::string& other_name) {
  const entries::Entry& entry = fit.timeline.entries[doubt.entry];
  std::string text = describe(entry);
  if (doubt.meant) {
    text += " fits this colony badly and would fit " + doubt.meant->iso() + ": was the date meant so?";
  } else {
    text += " fits " + other_name + " on that day better" +
            (doubt.exchanged ? ", and what was written of " + other_name + " fits this one" : std::string()) +
            ": were they mixed up?";
  }
  return {std::move(text), {entry.id}, {}};
}

}  // namespace beegarth::belief
