#include "garth/plan/treatment_weather.hpp"

#include <algorithm>
#include <array>
#include <numeric>
#include <optional>

#include "duty/treatment_gate.hpp"
#include "work/words.hpp"

namespace beegarth::garth {
namespace {

using duty::TreatmentClass;

struct Class {
  TreatmentClass kind;
  const char* words;
  std::optional<facts::Deed> refused_as;
};
constexpr std::array<Class, 3> of_the_season{
    {{TreatmentClass::thymol, "thymol", std::nullopt},
     {TreatmentClass::formic, "formic acid", facts::Deed::organic_acids},
     {TreatmentClass::amitraz, "strips", facts::Deed::synthetic_strips}}};
constexpr std::array<Class, 2> of_winter{
    {{TreatmentClass::oxalic_trickle, "oxalic acid trickled", facts::Deed::organic_acids},
     {TreatmentClass::oxalic_vapour, "oxalic acid as vapour", facts::Deed::organic_acids}}};

bool is_of_kind(const facts::Need& need, const std::string& kind) {
  return need.key.rfind(kind + "/", 0) == 0;
}

struct Days {
  double highest_C, mean_C;
};
// The days of the plan from `from` on on which it works; nothing where the weather is not known.
std::optional<Days> days_from(const work::SiteStatus& site, int from, int count) {
  const auto& highest = site.day_max_C;
  const auto size = static_cast<int>(highest.size());
  const int first = std::clamp(from, 0, std::max(0, size - 1));
  const int last = std::min(size, first + std::max(1, count));
  if (first >= last || static_cast<int>(site.day_mean_C.size()) < last) return std::nullopt;
  return Days{
      *std::max_element(highest.begin() + first, highest.begin() + last),
      std::accumulate(site.day_mean_C.begin() + first, site.day_mean_C.begin() + last, 0.0) / (last - first)};
}

std::optional<bool> brood_there(const work::NeedsInput& input, const ColonyId& colony) {
  constexpr std::size_t median = 3;  // facts::fan_levels
  for (const auto& outlook : input.outlooks) {
    if (outlook.colony != colony) continue;
    for (const auto& fan : outlook.fans)
      for (std::size_t i = 0; i < fan.dates.size() && i < fan.levels.size(); ++i)
        if (fan.quantity == "brood_cells" && fan.dates[i] == input.today) return fan.levels[i][median] >= 1;
  }
  return std::nullopt;
}

// What the gate says of one class, in a few words.
struct Said {
  std::string words;
  std::vector<std::string> sources;
  bool against = false;
};

Expected<Said> ask_the_gate(const Class& one, const facts::Need& need, const work::NeedsInput& input,
                            const work::SiteStatus& site, const Tables& tables) {
  const std::string key(duty::treatment_keys.at(static_cast<std::size_t>(one.kind)));
  const auto days_on = tables["colony"].value("treat_" + key + "_days");
  if (!days_on) return days_on.problem();
  const auto days = days_from(site, need.best - input.today, static_cast<int>(*days_on));
  duty::GateQuestion question{.kind = one.kind, .supers_on = false};  // they come off first
  if (days) {
    question.day_max_C = days->highest_C;
    question.day_mean_C = days->mean_C;
  }
  if (need.colony) question.brood = brood_there(input, *need.colony);
  const auto answer = duty::treatment_gate(question, tables["work"], tables["colony"]);
  if (!answer) return answer.problem();
  Said said{one.words, {}, answer->verdict == duty::GateVerdict::refuse};
  if (days)
    said.words += " (days of up to " + work::number_text(days->highest_C, 0) + " C, mean " +
                  work::number_text(days->mean_C, 0) + " C)";
  std::string reasons;
  for (const auto& reason : answer->reasons) {
    if (reason.verdict == duty::GateVerdict::ok) continue;
    reasons += (reasons.empty() ? "" : "; ") +
               std::string(reason.verdict == duty::GateVerdict::refuse ? "not now, " : "mind, ") +
               reason.words;
    said.sources.push_back(reason.source);
  }
  said.words += ": " + (reasons.empty() ? "nothing seen against it" : reasons);
  return said;
}

template <class Classes>
Outcome judge(facts::Need& need, const Classes& classes, const work::NeedsInput& input,
              const work::SiteStatus& site, const Tables& tables) {
  facts::Reason why;
  bool asked = false, all_against = true;
  for (const Class& one : classes) {
    if (one.refused_as && input.refused.contains(*one.refused_as)) continue;
    const auto said = ask_the_gate(one, need, input, site, tables);
    if (!said) return said.problem();
    asked = true;
    all_against = all_against && said->against;
    why.text += (why.text.empty() ? "by forecast and season: " : ". ") + said->words;
    why.sources.insert(why.sources.end(), said->sources.begin(), said->sources.end());
  }
  if (!asked) return Done{};
  why.text += ". The label decides";
  if (all_against) need.held = "the days to come suit no kind that is left: " + why.text;
  need.cautions.push_back("B" + why.text.substr(1) +
                          ".");  // read in the morning as well as among the reasons
  need.why.push_back(std::move(why));
  return Done{};
}

}  // namespace

Outcome judge_treatments(std::vector<facts::Need>& needs, const work::NeedsInput& input,
                         const Tables& tables) {
  for (facts::Need& need : needs) {
    const auto site = std::find_if(input.sites.begin(), input.sites.end(),
                                   [&](const auto& one) { return one.site == need.site; });
    if (site == input.sites.end() || !need.held.empty()) continue;
    Outcome judged = Done{};
    if (is_of_kind(need, "treat")) judged = judge(need, of_the_season, input, *site, tables);
    if (is_of_kind(need, "winter-treatment")) judged = judge(need, of_winter, input, *site, tables);
    if (!judged) return judged;
  }
  return Done{};
}

}  // namespace beegarth::garth
