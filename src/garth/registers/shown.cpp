// A register as JSON, CSV, text for the terminal, and pages to print.
#include <algorithm>

#include "base/utf8.hpp"
#include "draw/draw.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {
namespace {

// RFC 4180: quoted where a comma, a quote or a line end stands in it. A cell that a spreadsheet would take
// for a formula is quoted by an apostrophe, so that a name can run nothing.
std::string csv_cell(const std::string& cell) {
  std::string text = cell;
  const bool number = !text.empty() && text.find_first_not_of("0123456789.-") == std::string::npos;
  if (!text.empty() && !number && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos)
    text.insert(0, "'");
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

std::string span_in_words(const Span& span) {
  if (!span.from && !span.to) return "the whole book";
  return (span.from ? "from " + span.from->iso() + " " : "") + (span.to ? "to " + span.to->iso() : "");
}

}  // namespace

nlohmann::json register_json(const Register& one) {
  nlohmann::json columns = nlohmann::json::array(), rows = nlohmann::json::array();
  for (const auto& column : one.columns) columns.push_back({{"key", column.key}, {"words", column.words}});
  for (const auto& row : one.rows) {
    nlohmann::json ids = nlohmann::json::array();
    for (const auto& id : row.entries) ids.push_back(id.text());
    nlohmann::json cells = nlohmann::json::object();
    for (std::size_t c = 0; c < one.columns.size(); ++c) cells[one.columns[c].key] = row.cells[c];
    rows.push_back({{"cells", std::move(cells)}, {"entries", std::move(ids)}});
  }
  return {{"name", one.name},        {"title", one.title},
          {"says", one.says},        {"columns", std::move(columns)},
          {"rows", std::move(rows)}, {"remarks", one.remarks}};
}

std::string register_csv(const Register& one) {
  std::string csv;
  for (std::size_t c = 0; c < one.columns.size(); ++c) csv += (c ? "," : "") + csv_cell(one.columns[c].key);
  csv += "\r\n";
  for (const auto& row : one.rows) {
    for (std::size_t c = 0; c < row.cells.size(); ++c) csv += (c ? "," : "") + csv_cell(row.cells[c]);
    csv += "\r\n";
  }
  return csv;
}

std::string register_text(const Register& one) {
  std::string text = one.title + ": " + one.says + "\n";
  for (const auto& row : one.rows) {
    text += "\n";
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      if (row.cells[c].empty()) continue;
      text += c == 0 ? row.cells[c] + "\n" : "  " + one.columns[c].words + ": " + row.cells[c] + "\n";
    }
  }
  if (one.rows.empty()) text += "\nnothing is entered\n";
  for (const auto& remark : one.remarks) text += "\n" + remark + "\n";
  return text;
}

std::string register_pdf(const Register& one, const Span& span, Date dated, scene::Paper paper) {
  constexpr double margin_mm = 12;
  scene::Pages pages(paper, margin_mm);
  const double width = pages.width_mm();
  const scene::Style title{.size_pt = 16, .bold = true}, plain{.size_pt = 9}, small{.size_pt = 7};
  pages.place(scene::paragraph(one.title, width, title, draw::text_height_mm));
  pages.place(
      scene::paragraph(one.says + "; " + span_in_words(span) + ".", width, plain, draw::text_height_mm));
  pages.place(scene::gap(3));
  std::vector<std::string> heading;
  std::vector<double> shares;
  for (const auto& column : one.columns) {
    heading.push_back(column.words);
    shares.push_back(column.share);
  }
  double sum = 0;
  for (const double share : shares) sum += share;
  for (double& share : shares) share /= sum;
  // One block a row, so that a long register breaks between rows and not across them.
  pages.place(scene::table(heading, {}, shares, width, small, draw::text_height_mm));
  for (const auto& row : one.rows) {
    for (const auto& part :
         scene::cut_row(row.cells, shares, width, pages.height_mm(), small, draw::text_height_mm))
      pages.place(scene::table({}, {part}, shares, width, small, draw::text_height_mm));
  }
  if (one.rows.empty())
    pages.place(scene::paragraph("Nothing is entered.", width, plain, draw::text_height_mm));
  for (const auto& remark : one.remarks) {
    pages.place(scene::gap(2));
    pages.place(scene::paragraph(remark, width, plain, draw::text_height_mm));
  }
  return draw::to_pdf({one.title, dated, std::move(pages).finished()});
}

}  // namespace beegarth::garth
