// The queens of the book: lines, inbreeding, scores, matings; the pedigree drawn.
#include <iostream>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"
#include "draw/draw.hpp"
#include "garth/files.hpp"
#include "garth/lines/book_lines.hpp"
#include "garth/lines/pedigree_drawing.hpp"

namespace beegarth::cli {

int lines_command(const Call& call) {
  const bool svg = call.out.ends_with(".svg"), pdf = call.out.ends_with(".pdf");
  if (!call.out.empty() && !svg && !pdf)
    return report(
        {ProblemKind::wrong_use, "a pedigree is drawn as .svg or .pdf", "--out", "name the file so"});
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto lines = garth::lines_of(*session);
  if (!lines) return report(lines.problem());
  if (call.out.empty()) {
    if (call.json)
      std::cout << garth::lines_json(*lines).dump(2) << '\n';
    else
      std::cout << garth::lines_text(*lines);
    return 0;
  }
  const auto drawing = garth::pedigree_drawing(lines->pedigree, "Queens of the book", session->today);
  if (!drawing) return report(drawing.problem());
  const std::string bytes = svg ? draw::to_svg(drawing->pages.front()) : draw::to_pdf(*drawing);
  const Outcome written = garth::write_file(call.out, bytes);
  return written ? 0 : report(written.problem());
}

}  // namespace beegarth::cli
