// A filled sheet keyed in at a page, and the weather ahead typed there.
#include "garth/desk/desk.hpp"
#include "garth/entry_json.hpp"
#include "garth/keep/remarks.hpp"

namespace beegarth::garth {

using nlohmann::json;

Expected<const SheetToKeyIn*> Desk::sheet_wished(const KeyInWish& wish) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  if (sheet_ && sheet_->first == wish) return &sheet_->second;
  const PlanAnswer* today = nullptr;
  if (wish.printed.value_or(wish.date) == session_.today) {
    const auto plan = planned(14);
    if (!plan) return plan.problem();
    today = *plan;
  }
  auto sheet = sheet_to_key_in(session_, wish, today);
  if (!sheet) return sheet.problem();
  sheet_.emplace(wish, *std::move(sheet));
  return &sheet_->second;
}

Expected<json> Desk::sheet_boxes(const KeyInWish& wish) {
  const auto sheet = sheet_wished(wish);
  if (!sheet) return sheet.problem();
  return sheet_to_key_in_json(**sheet);
}

Expected<json> Desk::key_in(const SheetFilledIn& filled_in) {
  const auto sheet = sheet_wished(filled_in.sheet);
  if (!sheet) return sheet.problem();
  const SheetToKeyIn asked = **sheet;  // what is kept makes the plan, and the sheet, anew
  const auto keyed = garth::key_in(session_, asked, filled_in.written, filled_in.keep);
  if (!keyed) return keyed.problem();
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  json entries = json::array();
  for (const auto& entry : keyed->entries) entries.push_back(shown_entry(entry, session_.state));
  const auto remarks = remarks_on(session_, keyed->entries);
  if (!remarks) return remarks.problem();
  return json{{"kept", keyed->kept}, {"entries", std::move(entries)}, {"remarks", remarks_json(*remarks)}};
}

Expected<json> Desk::week_ahead(const WeekTyped& typed) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto week = foretell(session_, typed.site, typed.days, typed.keep);
  if (!week) return week.problem();
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  json entries = json::array();
  for (const auto& entry : week->entries) entries.push_back(shown_entry(entry, session_.state));
  return json{{"kept", week->kept}, {"entries", std::move(entries)}};
}

}  // namespace beegarth::garth
