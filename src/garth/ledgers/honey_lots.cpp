// What a lot holds by its harvests and its jars, and what speaks against offering it.
#include "garth/ledgers/honey.hpp"

namespace beegarth::garth {

std::vector<std::string> HoneyLedger::faults_of(const LotId& lot) const {
  std::vector<std::string> faults;
  bool any = false;
  for (const CropFrom& crop : crops) {
    if (crop.harvest.lot != lot) continue;
    any = true;
    if (crop.fault)
      faults.push_back("the crop of " + crop.date.iso() + " from " + crop.harvest.colony.text() + ": " +
                       *crop.fault);
  }
  if (!any) faults.emplace_back("no harvest is entered for it");
  if (any && holds_too_much(jarred_kg(lot), held_kg(lot)))
    faults.push_back("its jars hold " + kg_in_words(jarred_kg(lot)) + " and its harvests " +
                     kg_in_words(held_kg(lot)));
  return faults;
}

double HoneyLedger::held_kg(const LotId& lot) const {
  double kg = 0;
  for (const CropFrom& crop : crops) {
    if (crop.harvest.lot == lot && !crop.outdone_by) kg += crop.harvest.kg;
  }
  return kg;
}

double HoneyLedger::jarred_kg(const LotId& lot) const {
  double kg = 0;
  if (const auto filled = jars.find(lot); filled != jars.end()) {
    for (const entries::Jars& one : filled->second) kg += one.jars * one.net_g / 1000;
  }
  return kg;
}

bool holds_too_much(double jarred_kg, double held_kg) {
  return jarred_kg > held_kg + 0.001;
}

std::string kg_in_words(double kg) {
  std::string text = std::to_string(kg);  // six decimals
  text.erase(text.size() - 3);            // to the gram
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text + " kg";
}

}  // namespace beegarth::garth
