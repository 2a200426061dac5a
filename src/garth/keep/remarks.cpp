#include "garth/keep/remarks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "duty/treatment_gate.hpp"
#include "entries/fields.hpp"
#include "garth/beliefs/believe.hpp"
#include "garth/ledgers/dead_colony.hpp"
#include "garth/ledgers/hive_figures.hpp"
#include "garth/plan/status.hpp"
#include "garth/tables/countries.hpp"
#include "work/words.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

std::optional<duty::TreatmentClass> class_of(entries::TreatmentKind kind) {
  using duty::TreatmentClass;
  using entries::TreatmentKind;
  switch (kind) {
    case TreatmentKind::thymol:
      return TreatmentClass::thymol;
    case TreatmentKind::formic:
      return TreatmentClass::formic;
    case TreatmentKind::amitraz:
      return TreatmentClass::amitraz;
    case TreatmentKind::pyrethroid:
      return TreatmentClass::pyrethroid;
    case TreatmentKind::oxalic_trickle:
      return TreatmentClass::oxalic_trickle;
    case TreatmentKind::oxalic_vapour:
      return TreatmentClass::oxalic_vapour;
    default:
      return std::nullopt;  // no gate is known for the others
  }
}

// The colony as the book has it on the day of the entry, without the entry itself.
std::optional<book::ColonyState> colony_before(const Session& session, const ColonyId& id,
                                               const Entry& entry) {
  const auto found = session.state.colonies.find(id);
  if (found == session.state.colonies.end()) return std::nullopt;
  book::ColonyState colony = found->second;
  std::erase_if(colony.history,
                [&](const Entry& one) { return one.happened > entry.happened || one.id == entry.id; });
  return colony;
}

// The highest and the mean of the days from `from` on: as typed or forecast, else the month's normals.
struct Warmth {
  std::optional<double> highest_C, mean_C;
};
Warmth warmth_of(const Session& session, const SiteId& site, Date from, int days) {
  Warmth warmth;
  double sum = 0;
  int means = 0;
  for (const Entry& entry : session.state.weather) {
    const auto* day = std::get_if<entries::Weather>(&entry.payload);
    if (day == nullptr || (day->site != site && day->site.text() != "all")) continue;
    if (entry.happened < from || entry.happened >= from + std::max(1, days) || !day->temperature_max_C)
      continue;
    warmth.highest_C = std::max(warmth.highest_C.value_or(*day->temperature_max_C), *day->temperature_max_C);
    if (!day->temperature_min_C) continue;
    sum += (*day->temperature_max_C + *day->temperature_min_C) / 2;
    ++means;
  }
  if (means > 0) warmth.mean_C = sum / means;
  if (warmth.highest_C) return warmth;
  for (const entries::Normals& month : session.state.normals) {
    if (month.month != from.month() || (month.site != site && month.site.text() != "all")) continue;
    warmth = {month.temperature_max_C, (month.temperature_max_C + month.temperature_min_C) / 2};
  }
  return warmth;
}

std::optional<bool> brood_lately(const book::ColonyState& colony, Date day) {
  constexpr int says_something_days = 14;
  std::optional<bool> brood;
  for (const Entry& entry : colony.history) {
    const auto* look = std::get_if<entries::Inspection>(&entry.payload);
    if (look != nullptr && look->brood_combs && day - entry.happened <= says_something_days)
      brood = *look->brood_combs > 0;
  }
  return brood;
}

class Remarks {
 public:
  Remarks(const Session& session, std::span<const Entry> told, const FigureRules& rules)
      : session_(session), told_(told), rules_(rules) {}

  Outcome tell(const Entry& entry) {
    tell_untimely(entry);
    tell_twice(entry);
    tell_figures(entry);
    return std::visit([&](const auto& payload) { return of(entry, payload); }, entry.payload);
  }
  std::vector<Remark> list() && { return std::move(list_); }

 private:
  Outcome of(const Entry& entry, const entries::Treatment& treatment) {
    const auto kind = class_of(treatment.kind);
    const auto colony = colony_before(session_, treatment.colony, entry);
    if (!kind || !colony) return Done{};
    const FactTable& facts = session_.tables["colony"];
    const std::string key(duty::treatment_keys.at(static_cast<std::size_t>(*kind)));
    const auto usual_days = facts.value("treat_" + key + "_days");
    if (!usual_days) return usual_days.problem();
    const auto days = static_cast<int>(treatment.days.value_or(*usual_days));
    const Warmth warmth = warmth_of(session_, site_of_colony(session_.state, *colony), entry.happened, days);
    duty::GateQuestion question{.kind = *kind,
                                .day_max_C = warmth.highest_C,
                                .day_mean_C = warmth.mean_C,
                                .brood = brood_lately(*colony, entry.happened)};
    const auto status = status_of(session_, treatment.colony, *colony);
    question.supers_on =
        treatment.supers_on.value_or(false) || (status.supers_on && status.supers_on->value > 0);
    const auto answer = duty::treatment_gate(question, session_.tables["work"], facts);
    if (!answer) return answer.problem();
    for (const auto& reason : answer->reasons) {
      if (reason.verdict == duty::GateVerdict::ok) continue;
      add(entry, *colony,
          (reason.verdict == duty::GateVerdict::refuse ? "the usual rules speak against it: " : "mind: ") +
              reason.words,
          reason.source);
    }
    return Done{};
  }

  Outcome of(const Entry& entry, const entries::Feed& feed) {
    const auto colony = colony_before(session_, feed.colony, entry);
    if (!colony) return Done{};
    const FactTable& work = session_.tables["work"];
    const auto site = site_of_colony(session_.state, *colony);
    if (feed.form == entries::FeedForm::syrup) {
      const FactRow* least = work.find("syrup_temperature_min_C");
      const FactRow* from = work.find("fondant_first_month");
      const FactRow* to = work.find("fondant_last_month");
      const auto stands = session_.state.sites.find(site);
      const int month = northern_month(
          entry.happened, stands == session_.state.sites.end() ? 52 : stands->second.latitude_deg);
      constexpr int days_to_take_it_down = 7;
      const auto warmest = warmth_of(session_, site, entry.happened, days_to_take_it_down).highest_C;
      if (month >= from->value || month <= to->value)
        add(entry, *colony,
            "the usual rules speak against syrup at this time of year: bees cannot take or ripen it in the "
            "cold; "
            "fondant over the cluster instead",
            from->source);
      else if (warmest && *warmest < least->value)
        add(entry, *colony,
            "the usual rules speak against syrup now: its days reach " + work::number_text(*warmest, 0) +
                " C at most, and bees leave it below about " + work::number_text(least->value, 0) + " C",
            least->source);
    }
    const auto status = status_of(session_, feed.colony, *colony);
    if (feed.form != entries::FeedForm::comb && status.supers_on && status.supers_on->value > 0)
      add(entry, *colony, "boxes for people are on: what is on the hive during feeding is never for people",
          "house rule on feeding");
    return Done{};
  }

  Outcome of(const Entry& entry, const entries::DeadColony& dead) {
    const auto colony = colony_before(session_, dead.colony, entry);
    if (!colony) return Done{};
    tell_steps(entry, *colony);
    return tell_causes(entry, *colony, dead);
  }

  Outcome of(const Entry& entry, const entries::ColonyEnded& ended) {
    const auto colony = colony_before(session_, ended.colony, entry);
    if (!colony || ended.how != entries::Ending::died) return Done{};
    const entries::DeadColony* found = nullptr;
    for (const Entry& one : colony->history)
      if (const auto* dead = std::get_if<entries::DeadColony>(&one.payload)) found = dead;
    tell_steps(entry, *colony);
    if (found != nullptr) return tell_causes(entry, *colony, *found);
    add(entry, *colony,
        "enter what was found in the hive (dead_colony), and it is said what it most likely died of",
        "house rule on dead hives");
    return Done{};
  }

  Outcome of(const Entry&, const entries::Setting& setting) {
    if (setting.name == "country") tell_country("country", setting.value);
    return Done{};
  }
  Outcome of(const Entry&, const entries::Site& site) {
    if (site.country) tell_country(site.name, *site.country);
    return Done{};
  }

  template <class Other>
  Outcome of(const Entry&, const Other&) {
    return Done{};
  }

  // Kept all the same: days are written down late and books are put right.
  void tell_untimely(const Entry& entry) {
    const auto found = session_.state.colonies.find(entries::colony_of(entry.payload));
    if (found == session_.state.colonies.end()) return;
    const book::ColonyState& colony = found->second;
    if (entry.happened > session_.today)
      add(entry, colony,
          "the day lies after today (" + session_.today.iso() +
              "): until then it counts for nothing; is it right?",
          std::string(rule_on_days));
    if (colony.ended_on && entry.happened > *colony.ended_on)
      add(entry, colony,
          "the colony ended on " + colony.ended_on->iso() +
              ": nothing later changes what is believed; right "
              "colony, right day?",
          std::string(rule_on_days));
    if (entry.happened < colony.began_on)
      add(entry, colony,
          "the colony began on " + colony.began_on.iso() +
              ": nothing earlier is weighed; right colony, right day?",
          std::string(rule_on_days));
  }

  // A swarm or a crop told again for the same day takes from the bees twice.
  void tell_twice(const Entry& entry) {
    const bool counts_twice = std::holds_alternative<entries::Swarmed>(entry.payload) ||
                              std::holds_alternative<entries::Harvest>(entry.payload);
    const auto found = session_.state.colonies.find(entries::colony_of(entry.payload));
    if (!counts_twice || found == session_.state.colonies.end()) return;
    const bool again = std::any_of(session_.standing.begin(), session_.standing.end(), [&](const Entry& one) {
      return one.id != entry.id && one.happened == entry.happened && one.written <= entry.written &&
             entries::kind_name(one.payload) == entries::kind_name(entry.payload) &&
             entries::colony_of(one.payload) == entries::colony_of(entry.payload);
    });
    if (again)
      add(entry, found->second, "there is one of this kind on that day already: was it entered twice?",
          "house rule on figures");
  }

  // What cannot be was refused at the door; what can hardly be is kept, and said.
  void tell_figures(const Entry& entry) {
    const auto found = session_.state.colonies.find(entries::colony_of(entry.payload));
    if (found == session_.state.colonies.end() || !has_figures(entry.payload)) return;
    const auto later = std::find_if(session_.standing.begin(), session_.standing.end(),
                                    [&](const Entry& one) { return one.happened > entry.happened; });
    const std::span<const Entry> until(session_.standing.begin(), later);
    std::vector<book::Draft> not_yet_kept;
    for (const Entry& one : told_) {
      const bool kept =
          std::any_of(until.begin(), until.end(), [&](const Entry& it) { return it.id == one.id; });
      if (!kept) not_yet_kept.push_back({.happened = one.happened, .payload = one.payload});
    }
    const book::State then = book::state_of(until, entry.happened);
    for (const Figure& figure :
         figures_in(entry.payload, entry.happened, until, not_yet_kept, then, rules_)) {
      if (figure.amount <= figure.credible) continue;
      add(entry, found->second, figure.said + ", and " + figure.holds + ": kept all the same; is it right?",
          "house rule on figures");
    }
  }

  void tell_country(const std::string& about, const std::string& country) {
    if (country.empty() || country == "general" || duty_table_of(country) != general_duty_table) return;
    list_.push_back({about,
                     "no table has the law of '" + country + "': the careful general one is used (" +
                         std::string(countries_with_a_table) + " have their own)",
                     "tables/" + std::string(general_duty_table)});
  }

  void tell_steps(const Entry& entry, const book::ColonyState& colony) {
    int number = 0;
    std::string words = "at once";
    for (const std::string& step : steps_at_a_dead_hive()) words += fmt::format(" {}. {}", ++number, step);
    add(entry, colony, std::move(words), "common practice at a dead hive");
  }

  Outcome tell_causes(const Entry& entry, const book::ColonyState& colony, const entries::DeadColony& dead) {
    const auto causes = causes_of_death(dead, session_.tables["dead_colony"]);
    if (!causes) return causes.problem();
    constexpr std::size_t most_told = 3;
    std::string words = "by what was found it died of";
    for (std::size_t i = 0; i < std::min(causes->size(), most_told); ++i) {
      const CauseOfDeath& cause = causes->at(i);
      words += fmt::format("{} {} ({}", i == 0 ? "" : ", or", cause.words, work::percent_text(cause.share));
      if (!cause.speaks_for.empty()) words += fmt::format("; {}", fmt::join(cause.speaks_for, ", "));
      words += ")";
    }
    add(entry, colony, words + ": read the shares as an order", "tables/dead_colony");
    return Done{};
  }

  void add(const Entry& entry, const book::ColonyState& colony, std::string words, std::string source) {
    std::string kind(entries::kind_name(entry.payload));
    std::replace(kind.begin(), kind.end(), '_', ' ');
    list_.push_back({colony.began.name + ", " + kind + " of " + entry.happened.iso(), std::move(words),
                     std::move(source)});
  }

  const Session& session_;
  std::span<const Entry> told_;
  const FigureRules& rules_;
  std::vector<Remark> list_;
};

}  // namespace

std::string Remark::text() const {
  return about + (about.empty() ? "" : ": ") + words + (source.empty() ? "" : " (" + source + ")");
}

Expected<std::vector<Remark>> remarks_on(const Session& session, std::span<const Entry> told) {
  const auto rules = FigureRules::from(session.tables);
  if (!rules) return rules.problem();
  Remarks remarks(session, told, *rules);
  for (const Entry& entry : told)
    if (const Outcome outcome = remarks.tell(entry); !outcome) return outcome.problem();
  return std::move(remarks).list();
}

nlohmann::json remarks_json(const std::vector<Remark>& remarks) {
  nlohmann::json list = nlohmann::json::array();
  for (const Remark& remark : remarks) list.push_back(remark.text());
  return list;
}

}  // namespace beegarth::garth
