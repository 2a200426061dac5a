#include "duty/treatment_gate.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

#include "duty/rows.hpp"

namespace beegarth::duty {
namespace {

std::string degrees(double value) {
  char text[32];
  std::snprintf(text, sizeof text, value == std::floor(value) ? "%.0f C" : "%.1f C", value);
  return text;
}

class Gate {
 public:
  Gate(const GateQuestion& question, const FactTable& work, const FactTable& colony)
      : question_(question), work_(work), colony_(colony) {}

  void thymol() {
    const double highest = work_.number("thymol_highest_C"), best_low = work_.number("thymol_best_low_C");
    const double best_high = work_.number("thymol_best_high_C"), weak = work_.number("thymol_weak_mean_C");
    if (const auto max = question_.day_max_C) {
      if (*max > highest)
        refuse("days of more than " + degrees(highest) + " are too hot for thymol", "thymol_highest_C");
      else if (*max > best_high)
        warn("above " + degrees(best_high) +
                 " thymol comes off fast: bees may hang out and stop the queen laying",
             "thymol_best_high_C");
      else if (*max < best_low)
        warn("below day maxima of " + degrees(best_low) + " thymol works slowly", "thymol_best_low_C");
    }
    if (question_.day_mean_C && *question_.day_mean_C < weak)
      warn("below a mean of " + degrees(weak) + " thymol is weak", "thymol_weak_mean_C");
    if (!question_.day_max_C && !question_.day_mean_C) not_told("day_max_C");
    if (!question_.day_mean_C) not_told("day_mean_C");
    supers_off();
  }

  void formic() {
    const double low = work_.number("formic_day_max_low_C"), high = work_.number("formic_day_max_high_C");
    const double danger = work_.number("formic_danger_C");
    const double counted = colony_.number("treat_formic_temperature_min_C");
    if (const auto max = question_.day_max_C) {
      if (*max >= danger)
        refuse("from " + degrees(danger) + " in the first days formic acid endangers queen and brood",
               "formic_danger_C");
      else if (*max > high)
        refuse("days of more than " + degrees(high) + " are too hot for formic acid",
               "formic_day_max_high_C");
      else if (*max < low)
        refuse("days that stay below " + degrees(low) + " are too cold for formic acid",
               "formic_day_max_low_C");
      else if (*max < counted)
        add(GateVerdict::warn,
            "below " + degrees(counted) + " the colony's reckoning counts on no effect of it",
            colony_.source("treat_formic_temperature_min_C"));
    } else {
      not_told("day_max_C");
    }
    if (question_.supers_on == true)
      add(GateVerdict::warn, "boxes for people are on: only where the label of this very product allows it",
          "supplier article on formic acid: one of few classes that some labels allow with supers on");
    if (!question_.supers_on) not_told("supers_on");
  }

  void strips() {
    supers_off();
    if (question_.kind == TreatmentClass::amitraz)
      return add(GateVerdict::ok,
                 "not in a flow; it stays on for weeks, as the label says, and comes off on its day",
                 "regulator's notice on amitraz: not in a flow, no supers; the weeks from memory");
    add(GateVerdict::warn, "mites that resist pyrethroids are common: test first, and count after",
        "official leaflet on managing varroa (2005): resistance is tested");
  }

  void oxalic() {
    const FactRow& row = work_.row("oxalic_temperature_min_C");
    const double careful = row.high.value_or(row.value);
    if (!question_.day_max_C)
      not_told("day_max_C");
    else if (*question_.day_max_C < row.value)
      refuse("days that stay below " + degrees(row.value) + " are too cold for oxalic acid", row.key);
    else if (*question_.day_max_C < careful)
      warn("some labels ask for " + degrees(careful), row.key);
    if (!question_.brood) not_told("brood");
    if (question_.brood == true)
      add(GateVerdict::warn,
          "capped brood shelters mites: once with brood reaches about 60 % of them, above 90 % without",
          "Apidologie 2015, 10.1007/s13592-015-0405-7, introduction");
    supers_off();
  }

  Expected<GateAnswer> answer() && {
    if (work_.fault()) return *work_.fault();
    if (colony_.fault()) return *colony_.fault();
    for (const GateReason& reason : answer_.reasons)
      answer_.verdict = std::max(answer_.verdict, reason.verdict);
    answer_.first =
        "read the label first: it decides how, when and whether, and only a product authorised for bees in "
        "your "
        "country may be used";
    answer_.cautions = {
        "Acids and vapour burn skin, eyes and lungs: goggles, acid gloves, the mask the label asks for, "
        "upwind, "
        "water at hand.",
        "Never under- or overrun what the label says; count mites before and after, and write the record.",
        "What was on the hive during treatment is not for people, unless the label says so."};
    return std::move(answer_);
  }

 private:
  void add(GateVerdict verdict, std::string words, std::string source) {
    answer_.reasons.push_back({verdict, std::move(words), std::move(source)});
  }
  void refuse(std::string words, std::string_view row) {
    add(GateVerdict::refuse, std::move(words), work_.source(row));
  }
  void warn(std::string words, std::string_view row) {
    add(GateVerdict::warn, std::move(words), work_.source(row));
  }
  void not_told(const char* what) { answer_.not_told.emplace_back(what); }
  void supers_off() {
    if (!question_.supers_on) not_told("supers_on");
    if (question_.supers_on == true)
      add(GateVerdict::refuse, "boxes for people are on: take them off first",
          "trade: treatment windows by class, supers off");
  }

  const GateQuestion& question_;
  Rows work_, colony_;
  GateAnswer answer_;
};

}  // namespace

Expected<GateAnswer> treatment_gate(const GateQuestion& question, const FactTable& work,
                                    const FactTable& colony) {
  Gate gate(question, work, colony);
  switch (question.kind) {
    case TreatmentClass::thymol:
      gate.thymol();
      break;
    case TreatmentClass::formic:
      gate.formic();
      break;
    case TreatmentClass::amitraz:
    case TreatmentClass::pyrethroid:
      gate.strips();
      break;
    case TreatmentClass::oxalic_trickle:
    case TreatmentClass::oxalic_vapour:
      gate.oxalic();
      break;
  }
  return std::move(gate).answer();
}

Expected<GateReason> authorised_in(TreatmentClass kind, const FactTable& table) {
  Rows country(table);
  const std::string key = "authorised_" + std::string(treatment_keys[static_cast<std::size_t>(kind)]);
  const int said = country.one_of(key, 2);
  const std::string source = country.source(key), to_look_up = country.words("medicines_authority");
  if (country.fault()) return *country.fault();
  if (said == 0)
    return GateReason{GateVerdict::refuse,
                      "no product of this class is authorised for bees here: ask " + to_look_up, source};
  if (said == 2)
    return GateReason{
        GateVerdict::warn,
        "whether a product of this class is authorised for bees here is not known: ask " + to_look_up,
        source};
  return GateReason{GateVerdict::ok,
                    "authorised here as a class; look the very product up with " + to_look_up, source};
}

}  // namespace beegarth::duty
