#include "garth/check_book.hpp"

#include "garth/photos.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

Expected<book::VerifyReport> check_book(const std::string& path) {
  auto book = book::Book::open(path, {.read_only = true}, machine_surroundings());
  if (!book) return book.problem();
  auto report = book->verify();
  if (!report || !report->faults.empty() || report->entries == 0) return report;
  const auto session = open_session(path, {});
  if (!session) return session.problem();
  report->faults = faulty_photos(*session);
  return report;
}

nlohmann::json check_json(const book::VerifyReport& report) {
  return {{"entries", report.entries},
          {"sound", report.faults.empty()},
          {"faults", report.faults},
          {"head", report.head}};
}

}  // namespace beegarth::garth
