#include "garth/keep/objection.hpp"

#include <string_view>
#include <utility>

namespace beegarth::garth {
namespace {

constexpr std::string_view draft_mark = "draft-";
constexpr std::string_view entry_word = "entry ";

// "entry draft-3" becomes what the fourth draft is called.
std::string with_names(std::string text, const std::function<std::string(std::size_t)>& name) {
  const std::string mark = std::string(entry_word) + std::string(draft_mark);
  for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark, at)) {
    std::size_t end = at + mark.size(), number = 0;
    for (; end < text.size() && text[end] >= '0' && text[end] <= '9'; ++end)
      number = number * 10 + static_cast<std::size_t>(text[end] - '0');
    const std::string words = name(number);
    text.replace(at, end - at, words);
    at += words.size();
  }
  return text;
}

}  // namespace

EntryId draft_id(std::size_t draft) {
  return EntryId(std::string(draft_mark) + std::to_string(draft));
}

Problem told(const Objection& objection, const std::function<std::string(std::size_t)>& name) {
  Problem problem = objection.problem;
  const std::string own = name(objection.draft);
  const std::string rest = with_names(problem.where, name);
  problem.where = own;
  if (!rest.empty() && rest != own) problem.where += (own.empty() ? "" : ", ") + rest;
  return problem;
}

Problem told(const Objection& objection, std::size_t given) {
  return told(objection, [given](std::size_t draft) {
    if (given < 2) return std::string();
    return "entry " + std::to_string(draft + 1) + " of the " + std::to_string(given) + " given";
  });
}

}  // namespace beegarth::garth
