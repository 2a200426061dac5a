#include "duty/label.hpp"

#include <algorithm>
#include <cstdio>

#include "duty/best_before.hpp"

namespace beegarth::duty {
namespace {

// At a limit itself the sources disagree about 50 g; the larger figure satisfies both (docs/duty.md).
const char* figure_row(double net_weight_g, Rows& country) {
  if (net_weight_g < country.number("label_small_g")) return "label_figure_small_mm";
  if (net_weight_g <= country.number("label_middle_g")) return "label_figure_middle_mm";
  return net_weight_g <= country.number("label_large_g") ? "label_figure_large_mm" : "label_figure_bulk_mm";
}

struct Wanted {
  const char* fact;
  bool given;
  const char* words;
};

std::vector<Wanted> wanted_of(const Label& label) {
  return {{"name", label.name.has_value(), "what it is: honey, or a name that the law on honey reserves"},
          {"net_weight", true, "the net weight in grams, in figures of the height given here"},
          {"address", label.address.has_value(), "name and address of the one who packs or sells it"},
          {"origin", label.origin.has_value(), "the country or countries in which it was harvested"},
          {"best_before", label.best_before.has_value(), "a best-before date"},
          {"lot", label.lot.has_value(), "a lot mark, unless the best-before date has day, month and year"},
          {"infant_caution", label.infant_caution, "that honey is not for infants under twelve months"}};
}

std::string short_number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%g", value);
  return text;
}

// ---- the name ----
std::string small(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

bool has_word(const std::string& text, const std::string& word) {
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const auto end = at + word.size();
    if ((at == 0 || !is_letter(text[at - 1])) && (end == text.size() || !is_letter(text[end]))) return true;
  }
  return false;
}

// The first word of a list "heather, ling, clover" that stands in the text; empty where none does.
std::string word_in(const std::string& text, const std::string& list) {
  for (std::size_t from = 0; from < list.size();) {
    const auto end = std::min(list.find(", ", from), list.size());
    if (std::string word = list.substr(from, end - from); has_word(text, word)) return word;
    from = end + 2;
  }
  return {};
}

void find_faults_of_bakers(const Label& label, const std::string& name, Rows& honey, LabelAnswer& answer) {
  const std::string bakers = honey.words("label_bakers_name"), cooking = honey.words("label_bakers_words");
  const bool named = name.find(bakers) != std::string::npos;
  if (label.bakers && !named)
    answer.faults.push_back("this honey may be sold for cooking only, and the name is not " + bakers);
  if ((label.bakers || named) && !label.says_cooking_only && name.find(cooking) == std::string::npos)
    answer.faults.push_back("the words " + cooking + " are not close to the name");
}

void find_faults_of_name(const Label& label, Rows& honey, LabelAnswer& answer) {
  if (!label.name) return;
  const std::string name = small(*label.name);
  find_faults_of_bakers(label, name, honey, answer);
  const std::string dew = word_in(name, honey.words("label_honeydew_words")),
                    blossom = word_in(name, honey.words("label_blossom_words"));
  if (label.source == HoneySource::blossom && !dew.empty())
    answer.faults.push_back("the name says " + dew + ", and the honey is of blossom");
  if (label.source == HoneySource::honeydew && !blossom.empty())
    answer.faults.push_back("the name says " + blossom + ", and the honey is honeydew");
  const std::string plant = word_in(name, honey.words("label_plant_words"));
  if (!plant.empty() && !label.named_plant_share_pct)
    answer.faults.push_back("the name says " + plant + ", and how much of the honey is of it is not told");
}

void find_faults(const Label& label, Rows& country, LabelAnswer& answer) {
  if (label.figure_height_mm && *label.figure_height_mm < answer.figure_height_min_mm)
    answer.faults.push_back("the figures of the net weight are " + short_number(*label.figure_height_mm) +
                            " mm tall and must be " + short_number(answer.figure_height_min_mm) +
                            " mm or more");
  const double plant = country.number("label_named_plant_min_pct");
  if (label.named_plant_share_pct && *label.named_plant_share_pct < plant)
    answer.faults.push_back("a plant is named of which " + short_number(*label.named_plant_share_pct) +
                            " % of the honey is, and wholly or mainly is read as " + short_number(plant) +
                            " %");
}

}  // namespace

Expected<LabelAnswer> judge_label(const Label& label, const FactTable& table, const FactTable& honey_table) {
  Rows country(table), honey(honey_table);
  LabelAnswer answer;
  const char* row = figure_row(label.net_weight_g, country);
  answer.figure_height_min_mm = country.number(row);
  answer.figure_source = country.source(row);
  answer.lot_needed = country.asked("label_lot") == Asked::required;
  if (label.best_before) {
    const auto date = read_best_before(*label.best_before);
    if (!date) return date.problem();
    if (date->has_day()) answer.lot_needed = false;
  }
  for (const Wanted& wanted : wanted_of(label)) {
    const std::string key = "label_" + std::string(wanted.fact);
    Asked asked = country.asked(key);
    if (asked == Asked::required && wanted.fact == std::string_view("lot") && !answer.lot_needed)
      asked = Asked::no;
    if (asked == Asked::no) continue;
    answer.facts.push_back({wanted.fact, asked, wanted.given, wanted.words, country.source(key)});
    if (!wanted.given) (asked == Asked::required ? answer.missing : answer.advised).emplace_back(wanted.fact);
  }
  find_faults(label, country, answer);
  find_faults_of_name(label, honey, answer);
  answer.complete = answer.missing.empty() && answer.faults.empty();
  for (const Rows* rows : {&country, &honey})
    if (rows->fault()) return *rows->fault();
  return answer;
}

}  // namespace beegarth::duty
