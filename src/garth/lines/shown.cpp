// The lines of a book as JSON and as text.
#include <fmt/format.h>

#include "garth/lines/book_lines.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

json queen_json(const BookLines& book, std::size_t i) {
  const lines::Queen& queen = book.pedigree.queen(i);
  json row{{"queen", queen.id.text()},         {"name", book.names[i]},
           {"line", book.pedigree.line(i)},    {"living", queen.living},
           {"inbreeding", book.inbreeding[i]}, {"scores", json::object()}};
  if (queen.mother) row["mother"] = queen.mother->text();
  if (const auto mother = book.pedigree.mother(i)) row["mother_name"] = book.names[*mother];
  for (const auto& trait : book.traits) {
    const auto& one = trait.queens[i];
    json score{{"estimate", one.estimate}, {"reliability", one.reliability}, {"scores", one.scores}};
    if (one.standard_error) score["standard_error"] = *one.standard_error;
    row["scores"][trait.trait] = std::move(score);
  }
  return row;
}

std::string cross_name(const BookLines& book, const lines::Cross& cross) {
  return book.names[book.question.virgins[cross.virgin]] + " with " + book.question.sets[cross.set].name;
}

}  // namespace

json lines_json(const BookLines& book) {
  json queens = json::array(), traits = json::array(), crosses = json::array(), chosen = json::array();
  for (std::size_t i = 0; i < book.pedigree.size(); ++i) queens.push_back(queen_json(book, i));
  for (const auto& trait : book.traits)
    traits.push_back({{"trait", trait.trait}, {"scores", trait.scores}, {"plainly", trait.plainly}});
  json answer{{"queens", std::move(queens)}, {"traits", std::move(traits)}};
  if (!book.remarks.empty()) answer["remarks"] = book.remarks;
  if (!book.advice) return answer;
  for (const auto& cross : book.advice->crosses)
    crosses.push_back({{"cross", cross_name(book, cross)},
                       {"daughters_inbreeding", cross.inbreeding},
                       {"score", cross.score},
                       {"within_limit", cross.allowed},
                       {"reasons", cross.reasons}});
  if (book.advice->choice)
    for (const std::size_t place : book.advice->choice->crosses)
      chosen.push_back(cross_name(book, book.advice->crosses[place]));
  answer["matings"] = {{"crosses", std::move(crosses)},
                       {"chosen", std::move(chosen)},
                       {"reasons", book.advice->reasons},
                       {"inbreeding_limit", book.question.inbreeding_limit}};
  return answer;
}

std::string lines_text(const BookLines& book) {
  if (book.pedigree.size() == 0) return "no queen is entered; see queen_began and queen_mated\n";
  std::string text;
  for (std::size_t i = 0; i < book.pedigree.size(); ++i) {
    const lines::Queen& queen = book.pedigree.queen(i);
    text += fmt::format(
        "{:<18} line {:<14} {} inbreeding {:.3f}{}\n", book.names[i], book.pedigree.line(i),
        queen.mother ? "daughter of " + book.names[*book.pedigree.mother(i)] + "," : "of unknown mother,",
        book.inbreeding[i], queen.living ? "" : ", dead");
    for (const auto& trait : book.traits) {
      const auto& one = trait.queens[i];
      text += fmt::format("  {}: {:+.2f}{}, reliability {:.2f}\n", trait.trait, one.estimate,
                          one.standard_error ? fmt::format(" ± {:.2f}", *one.standard_error) : "",
                          one.reliability);
    }
  }
  for (const auto& trait : book.traits) text += trait.trait + ": " + trait.plainly + "\n";
  for (const auto& remark : book.remarks) text += remark + "\n";
  if (!book.advice) return text;
  text += fmt::format("Matings (daughters' inbreeding at most {}):\n", book.question.inbreeding_limit);
  for (const auto& reason : book.advice->reasons) text += "  " + reason + "\n";
  return text;
}

}  // namespace beegarth::garth
