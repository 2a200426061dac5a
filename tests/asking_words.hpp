// Words that ask a keeper for what a rule of the book refuses.
#pragma once

#include <regex.h>

#include <cctype>
#include <map>
#include <stdexcept>
#include <string>

namespace beegarth::own_rules {

inline const std::map<std::string, std::string> asking_words{
    {"no_clipping", "\\bclip"},
    {"no_cutting_of_cells",
     "leave one (good )?cell|take (the others|all cells|them) down|[Tt]aking cells down|cells down"},
    {"no_sugar", "\\bsugar|[Ss]yrup|[Ff]ondant"},
    {"no_synthetic_strips", "\\bstrips?\\b"},
    {"no_organic_acids", "\\b[Aa]cids?\\b|[Oo]xalic|[Ff]ormic|vapour"},
    {"no_artificial_swarms",
     "split the|part it|part her|parting|nucleus box|late nuclei|nucleus with the old"},
    {"no_uniting", "\\b[Uu]nit(e|ed|ing)\\b"},
    {"no_queens_bought", "bought queen|buy a queen"},
    {"no_drone_comb_cut", "drone comb"},
    {"swarms_let_go", "look for queen cells|part it|part her|leave one good cell"},
};

// `text` without what asks for nothing: "no syrup", and the sugar of a roll that counts mites.
inline std::string without_denials(std::string text) {
  for (const char* words : {"No syrup", "no syrup", "No sugar", "no sugar", "sugar roll"}) {
    const std::string denial(words);
    for (std::size_t at = 0; (at = text.find(denial, at)) != std::string::npos;) {
      const bool begins_a_word = at == 0 || std::isalnum(static_cast<unsigned char>(text[at - 1])) == 0;
      if (begins_a_word)
        text.erase(at, denial.size());
      else
        ++at;
    }
  }
  return text;
}

// The first such words in `text`; empty where nothing is asked for. POSIX, extended: that of the standard
// library takes a minute here under the sanitizers.
inline std::string asked_in(const std::string& text, const std::string& rule) {
  regex_t pattern;
  if (regcomp(&pattern, asking_words.at(rule).c_str(), REG_EXTENDED) != 0) throw std::logic_error(rule);
  const std::string asked = without_denials(text);
  regmatch_t found;
  const bool asks = regexec(&pattern, asked.c_str(), 1, &found, 0) == 0;
  regfree(&pattern);
  if (!asks) return {};
  const auto begin = static_cast<std::size_t>(found.rm_so), end = static_cast<std::size_t>(found.rm_eo);
  return asked.substr(begin, end - begin);
}

}  // namespace beegarth::own_rules
