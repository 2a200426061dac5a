// What needs an answer at once, samples sent away, and the inspector.
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

Write urgent(Urgency what) {
  return [=](Said& said, const PatternMatch&) {
    Urgent entry{.what = what};
    if (!said.colony.empty()) entry.colony = said.colony;
    if (!said.site.empty()) entry.site = said.site;
    return add(said, entry);
  };
}

SampleOf sample_of(const std::string& word) {
  return word == "bee"     ? SampleOf::bees
         : word == "brood" ? SampleOf::brood
         : word == "comb"  ? SampleOf::comb
         : word == "honey" ? SampleOf::honey
                           : SampleOf::debris;
}
bool sent(Said& said, const PatternMatch& m) {
  if (said.colony.empty()) return false;
  return add(said, Sample{.colony = said.colony,
                          .of = sample_of(m.chosen[0]),
                          .sent_to = m.chosen.size() > 1 ? Text(m.chosen[1]) : std::nullopt});
}
bool reference(Said& said, const PatternMatch& m) {
  return change_last<Sample>(said, [&](Sample& s) { return put(s.reference, m.chosen[0]); });
}
Write result(Finding finding) {
  return [=](Said& said, const PatternMatch& m) {
    if (said.colony.empty()) return false;
    return add(said, Sample{.colony = said.colony,
                            .of = sample_of(m.chosen[0]),
                            .finding = finding,
                            .result = m.chosen.size() > 1 ? Text(m.chosen[1]) : std::nullopt});
  };
}
bool cleared(Said& said, const PatternMatch& m) {
  return !said.colony.empty() && add(said, Cleared{.colony = said.colony, .by = m.chosen[0]});
}
bool quarantine_lifted(Said& said, const PatternMatch&) {
  return !said.colony.empty() && add(said, Quarantine{.colony = said.colony, .lifted = true});
}
bool reported(Said& said, const PatternMatch& m) {
  if (said.site.empty()) return false;
  const std::string what = m.chosen[0] == "american"   ? "american_foulbrood"
                           : m.chosen[0] == "european" ? "european_foulbrood"
                                                       : m.chosen[0];
  return add(said, Reported{.site = said.site, .what = what, .to = m.chosen[1]});
}

}  // namespace

std::vector<Item> items_of_trouble() {
  return {
      {"hive? blown|knocked over", urgent(Urgency::blown_over)},
      {"urgent|bad robbing", urgent(Urgency::robbing)},
      {"robbing urgent|badly", urgent(Urgency::robbing)},
      {"being robbed out", urgent(Urgency::robbing)},
      {"spraying notice|today|nearby|now|next-door?", urgent(Urgency::spraying)},
      {"site? flooded", urgent(Urgency::flood)},
      {"hive? stolen", urgent(Urgency::theft)},
      {"sample of =bee|brood|comb|honey|debris sent|posted", sent},
      {"sample of =bee|brood|comb|honey|debris sent|posted to the? ~", sent},
      {"sent|posted a? sample of =bee|brood|comb|honey|debris", sent},
      {"sent|posted a? sample of =bee|brood|comb|honey|debris to the? ~", sent},
      {"=bee|brood|comb|honey|debris sample sent|posted", sent},
      {"=bee|brood|comb|honey|debris sample sent|posted to the? ~", sent},
      {"ref|reference *", reference},
      {"=bee|brood|comb|honey|debris sample result? nothing found", result(Finding::nothing_found)},
      {"=bee|brood|comb|honey|debris sample result? clear|clean", result(Finding::nothing_found)},
      {"=bee|brood|comb|honey|debris sample result? found ~", result(Finding::found)},
      unclear("sample", "of what: bees, brood, comb, honey or debris?"),
      {"^ cleared by the? ~", cleared},
      {"^ =inspector cleared it? $", cleared},
      {"^ quarantine lifted|over $", quarantine_lifted},
      {"^ reported =american|european foulbrood to the? ~", reported},
  };
}

}  // namespace beegarth::entries
