// Words that ask a keeper for what a rule of the book refuses.
#pragma once

#include <map>
#include <regex>
#include <string>

namespace beegarth::own_rules {

inline const std::map<std::string, std::string> asking_words{
    {"no_clipping", "\\bclip"},
    {"no_cutting_of_cells",
     "leave one (good )?cell|take (the others|all cells|them) down|[Tt]aking cells down|cells down"},
    {"no_sugar", "\\bsugar(?! roll)|[Ss]yrup|[Ff]ondant"},
    {"no_synthetic_strips", "\\bstrips?\\b"},
    {"no_organic_acids", "\\b[Aa]cids?\\b|[Oo]xalic|[Ff]ormic|vapour"},
    {"no_artificial_swarms",
     "split the|part it|part her|parting|nucleus box|late nuclei|nucleus with the old"},
    {"no_uniting", "\\b[Uu]nit(e|ed|ing)\\b"},
    {"no_queens_bought", "bought queen|buy a queen"},
    {"no_drone_comb_cut", "drone comb"},
    {"swarms_let_go", "look for queen cells|part it|part her|leave one good cell"},
};

// The first such words in `text`; empty where nothing is asked for. "No syrup" asks for none.
inline std::string asked_in(const std::string& text, const std::string& rule) {
  const std::string asked = std::regex_replace(text, std::regex("\\b[Nn]o (syrup|sugar)"), "");
  std::smatch found;
  return std::regex_search(asked, found, std::regex(asking_words.at(rule))) ? found.str() : "";
}

}  // namespace beegarth::own_rules
