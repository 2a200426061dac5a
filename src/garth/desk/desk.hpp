// A book held open while a page looks at it. Each answer is worked out once and kept until the book changes.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "garth/photos.hpp"
#include "garth/plan/plan.hpp"
#include "garth/plan/week_ahead.hpp"
#include "garth/registers/register.hpp"
#include "garth/search.hpp"
#include "garth/session.hpp"
#include "garth/sheet/keyed_sheet.hpp"

namespace beegarth::garth {

// An entry as it was filled in: `payload` is JSON text, not yet read.
struct FilledIn {
  std::string kind;
  std::string payload;
  Date happened;
  std::optional<double> hour;
  std::optional<EntryId> corrects;
};

// A span of days, and the day as on whose evening the book is asked.
struct RegisterWish {
  Span span;
  std::optional<Date> known;
};

enum class BookForm { jsonl, zip, geojson, calendar };

enum class PlanForm { lines, packing, calendar, gpx };

// A sheet with what was written in it.
struct SheetFilledIn {
  KeyInWish sheet;
  std::vector<WrittenBox> written;
  bool keep = false;
};

// The weather of the days ahead as it was typed.
struct WeekTyped {
  std::string site;  // key or name, or "all"
  std::vector<DayAhead> days;
  bool keep = false;
};

// A keeper's own CSV, of which a first mapping is wanted.
struct FileToDraft {
  std::string name;
  std::string text;
  std::string kind;  // of entry, one for each row
};

// A file that is tried, or brought in.
struct FileBroughtIn {
  std::string name;
  std::string text;
  std::string form;  // csv, geojson, calendar, jsonl
  std::string map;   // TOML; empty: none
  bool keep = false;
};

// Ways of acting that are held side by side, in the words of a note.
struct Supposing {
  std::vector<std::string> ways;
  std::optional<Date> until;  // absent: next spring
};

// Not for several threads at once; the answers have the shapes of src/http/openapi.json.
class Desk {
 public:
  explicit Desk(Session session) : session_(std::move(session)) {}

  Expected<std::string> version();
  Expected<nlohmann::json> book();
  Expected<nlohmann::json> plan(int days);
  Expected<std::string> plan_as(PlanForm form, int days);
  Expected<nlohmann::json> own_week(const std::vector<work::OwnJob>& own, int days);
  Expected<nlohmann::json> colonies();
  Expected<nlohmann::json> outlook(std::string_view colony);
  Expected<nlohmann::json> doubts();
  Expected<nlohmann::json> suppose(std::string_view colony, const Supposing& supposing);
  Expected<nlohmann::json> note(std::string_view line, bool keep);
  Expected<nlohmann::json> answer_need(std::string_view key, std::string_view answer,
                                       std::optional<Date> until = {});

  // ---- the book itself: desk_entries.cpp ----
  Expected<nlohmann::json> entry(std::string_view id);
  Expected<nlohmann::json> entries(const EntrySearch& search, std::optional<Date> known = {});
  Expected<nlohmann::json> enter(const FilledIn& filled_in);
  Expected<nlohmann::json> take_back(std::string_view id, std::string_view reason);
  Expected<nlohmann::json> kinds();
  static nlohmann::json registers();
  Expected<nlohmann::json> register_shown(std::string_view name, const RegisterWish& wish);
  Expected<std::string> register_as_csv(std::string_view name, const RegisterWish& wish);
  Expected<std::string> register_as_pdf(std::string_view name, const RegisterWish& wish);

  // ---- the book in other forms, queens, photos, checklists: desk_forms.cpp ----
  Expected<std::string> exported(BookForm form);
  Expected<nlohmann::json> lines();
  Expected<std::string> pedigree();  // an SVG picture
  Expected<nlohmann::json> add_photo(const PhotoWish& wish, std::string_view bytes);
  Expected<PhotoBytes> photo(std::string_view id);
  Expected<nlohmann::json> checklists();

  // ---- a filled sheet and a typed forecast come in: desk_sheet.cpp ----
  Expected<nlohmann::json> sheet_boxes(const KeyInWish& wish);
  Expected<nlohmann::json> key_in(const SheetFilledIn& filled_in);
  Expected<nlohmann::json> week_ahead(const WeekTyped& week);

  // ---- a file comes in, the book is checked and shown as it stood: desk_import.cpp ----
  static nlohmann::json maps();
  static Expected<nlohmann::json> draft_map(const FileToDraft& file);
  Expected<nlohmann::json> bring_in(const FileBroughtIn& file);
  Expected<nlohmann::json> transfer_ways(std::string_view colony, std::string_view into);
  Expected<nlohmann::json> check();
  Expected<nlohmann::json> as_it_stood(std::optional<Date> date);  // absent: the session's today

  Expected<std::string> sheet(Date date, std::string_view site);
  static nlohmann::json calcs();
  Expected<nlohmann::json> calc(std::string_view name, std::string_view input);

 private:
  Outcome look_again();  // drops what was worked out when another hand wrote to the book
  Expected<const PlanAnswer*> planned(int days);
  Expected<const Session*> known_on(Date day);
  Expected<Register> register_known(std::string_view name, const RegisterWish& wish);
  Expected<nlohmann::json> kept(const book::Draft& draft);
  Expected<const SheetToKeyIn*> sheet_wished(const KeyInWish& wish);

  Session session_;
  std::string head_;
  std::optional<PlanAnswer> plan_;
  int plan_days_ = 0;
  std::optional<nlohmann::json> doubts_;
  std::optional<Session> then_;                              // the book as it was known on a day
  std::optional<std::pair<KeyInWish, SheetToKeyIn>> sheet_;  // the last sheet that was keyed in
};

}  // namespace beegarth::garth
