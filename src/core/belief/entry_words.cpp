#include "belief/entry_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "entries/fields.hpp"

namespace beegarth::belief {
namespace {

namespace e = entries;

std::string number(double x) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), std::abs(x) >= 1000 ? "%.0f" : "%.4g", x);
  return text.data();
}

// Lists what was said, "9 seams, 5 charged cells".
class Sayings {
 public:
  template <class Number>
  void add(const std::optional<Number>& value, const char* one, const char* several) {
    if (value) join(number(*value) + " " + (*value == Number{1} ? one : several));
  }
  void add(const std::optional<bool>& flag, const char* words) {
    if (flag) join((*flag ? "" : "no ") + std::string(words));
  }
  void join(const std::string& part) { text_ += (text_.empty() ? "" : ", ") + part; }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

std::string contents(const e::Inspection& p) {
  Sayings said;
  said.add(p.seams, "seam", "seams");
  said.add(p.bees, "bee", "bees");
  said.add(p.brood_combs, "comb with brood", "combs with brood");
  said.add(p.capped_cells, "capped cell", "capped cells");
  said.add(p.drone_cells, "capped drone cell", "capped drone cells");
  said.add(p.eggs, "eggs");
  said.add(p.open_brood, "open brood");
  said.add(p.capped_brood, "capped brood");
  said.add(p.queen, "queen seen");
  said.add(p.cups_with_egg, "cup with egg", "cups with egg");
  said.add(p.charged_cells, "charged cell", "charged cells");
  said.add(p.sealed_cells, "sealed cell", "sealed cells");
  said.add(p.store_combs, "comb of stores", "combs of stores");
  said.add(p.stores_kg, "kg of stores", "kg of stores");
  if (p.super_share) said.join("supers " + percent(*p.super_share) + " full");
  if (p.pollen)
    said.join(std::string(*p.pollen == e::Level::none ? "no" : e::word_for(*p.pollen)) + " pollen");
  said.add(p.drones, "drones");
  if (p.calm) said.join(*p.calm ? "calm" : "not calm");
  return said.text();
}

std::string contents(const e::MiteCount& p) {
  std::string text = (p.at_least.value_or(false) ? "at least " : "") + number(p.mites) + " mites";
  switch (p.method) {
    case e::MiteMethod::board:
      return text + " on the board in " + number(p.days.value_or(1)) +
             (p.days.value_or(1) == 1 ? " day" : " days");
    case e::MiteMethod::sugar_roll:
    case e::MiteMethod::wash:
      return text + " on " + number(p.bees.value_or(300)) + " bees";
    case e::MiteMethod::brood:
      return text + " in " + number(p.cells.value_or(100)) + " cells";
  }
  return text;
}

std::string contents_of(const e::Payload& payload) {
  if (const auto* look = std::get_if<e::Inspection>(&payload)) return contents(*look);
  if (const auto* count = std::get_if<e::MiteCount>(&payload)) return contents(*count);
  if (const auto* weight = std::get_if<e::Weight>(&payload)) {
    return number(weight->kg) + (weight->what == e::Weighed::stores ? " kg of stores" : " kg, whole hive");
  }
  if (const auto* crop = std::get_if<e::Harvest>(&payload)) return number(crop->kg) + " kg of honey";
  if (const auto* queen = std::get_if<e::Queen>(&payload)) return std::string(e::word_for(queen->event));
  if (const auto* ended = std::get_if<e::ColonyEnded>(&payload)) return std::string(e::word_for(ended->how));
  return {};
}

std::string cited(const FactTable& table, const char* key) {
  const FactRow* row = table.find(key);
  return row == nullptr ? std::string() : std::string(key) + ": " + row->source;
}

}  // namespace

std::string percent(double odds) {
  if (odds < 0.005) return "under 1 %";
  if (odds > 0.995) return "over 99 %";
  return number(std::round(100 * odds)) + " %";
}

std::string spoken_kind(const e::Entry& entry) {
  std::string kind(e::kind_name(entry.payload));
  std::replace(kind.begin(), kind.end(), '_', ' ');
  return kind;
}

std::string describe(const e::Entry& entry) {
  const std::string kind = spoken_kind(entry);
  const std::string said = contents_of(entry.payload);
  return kind + " of " + entry.happened.iso() + (said.empty() ? "" : " (" + said + ")");
}

std::vector<const char*> rows_behind(const Sight& sight) {
  if (const auto* look = std::get_if<e::Inspection>(&sight)) {
    std::vector<const char*> rows;
    if (look->seams) rows.push_back("seams_error");
    if (look->bees) rows.push_back("bees_error");
    if (look->brood_combs) rows.push_back("brood_combs_error");
    if (look->capped_cells) rows.push_back("capped_cells_error");
    if (look->eggs) rows.push_back("eggs_seen");
    if (look->queen) rows.push_back("queen_seen");
    if (look->charged_cells || look->sealed_cells || look->cups_with_egg) rows.push_back("cell_seen");
    if (look->stores_kg || look->store_combs) rows.push_back("stores_error");
    return rows;
  }
  if (const auto* count = std::get_if<e::MiteCount>(&sight)) {
    switch (count->method) {
      case e::MiteMethod::board:
        return {"board_size", "board_factor"};
      case e::MiteMethod::sugar_roll:
        return {"sample_size", "roll_recovery"};
      case e::MiteMethod::wash:
        return {"sample_size", "wash_recovery"};
      case e::MiteMethod::brood:
        return {"brood_sample_correlation"};
    }
  }
  if (std::holds_alternative<e::Weight>(sight)) return {"scale_error", "tare_kg"};
  if (std::holds_alternative<Taken>(sight)) return {"harvest_error"};
  return {};
}

void cite(std::vector<std::string>& sources, const FactTable& table, std::span<const char* const> keys) {
  for (const char* key : keys) {
    const std::string text = cited(table, key);
    if (!text.empty()) sources.push_back(text);
  }
}

}  // namespace beegarth::belief
