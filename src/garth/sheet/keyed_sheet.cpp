#include "garth/sheet/keyed_sheet.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include "garth/keep/keep.hpp"
#include "garth/plan/dwelling.hpp"
#include "garth/sheet/sheet_frames.hpp"
#include "garth/sheet/sheet_reading.hpp"

namespace beegarth::garth {

namespace {

std::optional<facts::Dwelling> dwelling_at(const book::State& state, const std::optional<ColonyId>& colony) {
  if (!colony) return {};
  const auto found = state.colonies.find(*colony);
  if (found == state.colonies.end()) return {};
  if (!state.hives.contains(found->second.hive)) return {};
  return home_of(state, found->second);
}

std::vector<BoxSet> not_among(std::vector<BoxSet> sets, const std::vector<BoxSet>& printed) {
  std::erase_if(sets, [&](const BoxSet& set) {
    return std::any_of(printed.begin(), printed.end(), [&](const BoxSet& one) { return one.key == set.key; });
  });
  return sets;
}

FrameToKeyIn frame_to_key_in(const SheetFrame& frame, const PlanAnswer& plan, const book::State& state,
                             const SiteId& site) {
  const facts::Need& first = *frame.needs.front();
  FrameToKeyIn row{.colony = first.colony};
  row.name = first.colony ? plan.names.of(*first.colony) : plan.names.of(site);
  row.row = "#" + std::to_string(frame.first_number) + " " + row.name;
  int number = frame.first_number;
  for (const facts::Need* need : frame.needs) row.jobs.push_back({number++, need->key, need->what});
  if (!has_boxes(frame)) return row;
  const auto dwelling = dwelling_at(state, first.colony);
  const facts::Dwelling* hive = dwelling ? &*dwelling : nullptr;
  row.printed = sets_of(frame.needs, hive);
  if (first.colony) row.others = not_among(every_set(hive), row.printed);
  row.printed.push_back(closing_set());
  return row;
}

struct Standing {
  int place = 0;
  std::string name;
  ColonyId colony;
};

// In the order in which they are reached.
std::vector<Standing> colonies_at(const book::State& state, const SiteId& site) {
  std::vector<Standing> list;
  for (const auto& [id, colony] : state.colonies) {
    const auto hive = state.hives.find(colony.hive);
    if (colony.ended || hive == state.hives.end() || hive->second.site != site) continue;
    list.push_back({hive->second.place.value_or(1000), colony.began.name, id});
  }
  std::sort(list.begin(), list.end(), [](const Standing& a, const Standing& b) {
    return std::tie(a.place, a.name, a.colony) < std::tie(b.place, b.name, b.colony);
  });
  return list;
}

// Such a name could be taken for a number of the sheet.
bool is_number(const std::string& name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char c) { return c >= '0' && c <= '9'; });
}

Expected<PlanAnswer> plan_of(const Session& then, Date date) {
  constexpr int days_of_a_sheet = 14;
  return plan_next_days(then, std::max(days_of_a_sheet, date - then.today + 1));
}

// ---- from boxes to entries ----
using Values = std::map<std::string, std::string>;

struct FilledFrame {
  const FrameToKeyIn* frame = nullptr;
  std::map<std::string, Values> by_set;
};

std::string place_of(const FrameToKeyIn& frame, const std::string& box) {
  return frame.row + "/" + box;
}

std::string trimmed(const std::string& text) {
  const auto from = text.find_first_not_of(" \t\r\n");
  if (from == std::string::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1);
}

const std::string* set_with(const FrameToKeyIn& frame, const std::string& box) {
  for (const auto* sets : {&frame.printed, &frame.others})
    for (const BoxSet& set : *sets)
      for (const auto& row : set.rows)
        for (const Box& one : row)
          if (one.name == box) return &set.key;
  return nullptr;
}

Expected<std::vector<FilledFrame>> filled_frames(const SheetToKeyIn& sheet,
                                                 const std::vector<WrittenBox>& written) {
  std::vector<FilledFrame> filled;
  for (const auto& frame : sheet.frames) filled.push_back({&frame, {}});
  for (const WrittenBox& one : written) {
    const std::string value = trimmed(one.value);
    if (value.empty()) continue;
    const auto frame = frame_named(sheet, one.row);
    if (!frame) return frame.problem();
    const Box* box = box_named(**frame, one.box);
    if (box == nullptr)
      return bad_input("there is no box '" + one.box + "' for " + (*frame)->name, one.where,
                       "the boxes are those of the printed sheet; --list shows them");
    Values& values =
        filled[static_cast<std::size_t>(*frame - sheet.frames.data())].by_set[*set_with(**frame, box->name)];
    if (!values.emplace(box->name, value).second)
      return bad_input("this box was filled in twice", place_of(**frame, box->name), "leave one of the two");
  }
  return filled;
}

struct PlacedDraft {
  const FrameToKeyIn* frame;
  DraftOfBoxes draft;
};

Expected<std::vector<PlacedDraft>> placed_drafts(const SheetToKeyIn& sheet,
                                                 const std::vector<FilledFrame>& filled) {
  std::vector<PlacedDraft> all;
  for (const FilledFrame& one : filled)
    for (const auto* sets : {&one.frame->printed, &one.frame->others})
      for (const BoxSet& set : *sets) {
        const auto values = one.by_set.find(set.key);
        if (values == one.by_set.end()) continue;
        auto drafts = drafts_of_set(set.key, *one.frame, sheet, values->second);
        if (!drafts) {
          Problem problem = drafts.problem();
          problem.where = place_of(*one.frame, problem.where);
          return problem;
        }
        for (auto& draft : *drafts) all.push_back({one.frame, std::move(draft)});
      }
  return all;
}

bool shows_life(const entries::Payload& payload) {
  const auto* look = std::get_if<entries::Inspection>(&payload);
  return look != nullptr && (look->seams.value_or(0) > 0 || look->eggs.value_or(false) ||
                             look->queen.value_or(false) || look->calm.has_value());
}

// A frame that says "dead" and shows a living colony too has one of the two in the wrong row.
std::optional<Problem> dead_and_alive(const std::vector<PlacedDraft>& placed) {
  for (const PlacedDraft& dead : placed) {
    if (!std::holds_alternative<entries::ColonyEnded>(dead.draft.draft.payload)) continue;
    for (const PlacedDraft& look : placed)
      if (look.frame == dead.frame && shows_life(look.draft.draft.payload))
        return bad_input("it is dead, and yet bees were seen in it", place_of(*dead.frame, "dead"),
                         "see both rows: one of the two belongs to another hive or day");
  }
  return std::nullopt;
}

// What may not be kept is told with the row and the box that it was read from.
Problem in_its_box(const PlacedDraft& placed, Problem problem) {
  const auto box = placed.draft.box_of_field.find(problem.where);
  problem.where =
      place_of(*placed.frame, box == placed.draft.box_of_field.end() ? placed.draft.first_box : box->second);
  return problem;
}

}  // namespace

SheetToKeyIn sheet_to_key_in(const PlanAnswer& plan, const book::State& state, const SiteId& site, Date date,
                             Date printed) {
  SheetToKeyIn sheet{.site = site, .site_name = plan.names.of(site), .date = date, .printed = printed};
  std::set<ColonyId> told;
  for (const auto& visit : plan.plan.visits) {
    if (visit.site != site || visit.date != date) continue;
    sheet.planned = true;
    for (const SheetFrame& frame : frames_of(visit)) {
      sheet.frames.push_back(frame_to_key_in(frame, plan, state, site));
      if (sheet.frames.back().colony) told.insert(*sheet.frames.back().colony);
    }
    break;  // one sheet for a site and day
  }
  for (const Standing& one : colonies_at(state, site)) {
    if (told.contains(one.colony)) continue;
    const auto dwelling = dwelling_at(state, one.colony);
    const std::string name = one.name.empty() ? one.colony.text() : one.name;
    sheet.frames.push_back({.row = is_number(name) ? "colony " + name : name,
                            .name = name,
                            .colony = one.colony,
                            .jobs = {},
                            .printed = {closing_set(false)},
                            .others = every_set(dwelling ? &*dwelling : nullptr)});
  }
  return sheet;
}

Expected<SheetToKeyIn> sheet_to_key_in(const Session& session, const KeyInWish& wish,
                                       const PlanAnswer* today) {
  if (wish.date > session.today)
    return bad_input("the day of the sheet, " + wish.date.iso() + ", is still to come", "date",
                     "key in what was written on a day that has been");
  const Date printed = wish.printed.value_or(wish.date);
  if (printed > wish.date)
    return bad_input("the sheet was printed after its own day", "printed", "see both dates");
  if (wish.date - printed > 27)
    return bad_input("no plan reaches from " + printed.iso() + " to " + wish.date.iso(), "printed",
                     "a plan has up to 28 days");
  if (printed == session.today && !session.known_on) {
    const auto site = site_named(session.state, wish.site);
    if (!site) return site.problem();
    if (today != nullptr) return sheet_to_key_in(*today, session.state, *site, wish.date, printed);
    const auto plan = plan_of(session, wish.date);
    if (!plan) return plan.problem();
    return sheet_to_key_in(*plan, session.state, *site, wish.date, printed);
  }
  SessionOptions options{.today = printed,
                         .seed = session.seed,
                         .members = session.members,
                         .weather_members = session.weather_members,
                         .threads = session.threads};
  // A day of printing that was said is one on which less was known; without it, the plan as it follows now.
  if (wish.printed && *wish.printed < session.today) options.known_on = wish.printed;
  const auto then = open_session(session.path, options);
  if (!then) return bad_input(then.problem().what, wish.printed ? "printed" : "date", "give another day");
  const auto site = site_named(then->state, wish.site);
  if (!site) return site.problem();
  const auto plan = plan_of(*then, wish.date);
  if (!plan) return plan.problem();
  return sheet_to_key_in(*plan, then->state, *site, wish.date, printed);
}

Expected<KeyedIn> key_in(Session& session, const SheetToKeyIn& sheet, const std::vector<WrittenBox>& written,
                         bool keep) {
  const auto filled = filled_frames(sheet, written);
  if (!filled) return filled.problem();
  const auto placed = placed_drafts(sheet, *filled);
  if (!placed) return placed.problem();
  if (placed->empty()) return bad_input("nothing is filled in", "the sheet", "an empty box makes no entry");
  if (const auto both = dead_and_alive(*placed)) return *both;
  std::vector<book::Draft> drafts;
  for (const auto& one : *placed) drafts.push_back(one.draft.draft);
  const auto all = session.book.entries();
  if (!all) return all.problem();
  if (const auto objection = objection_to(*all, drafts, session.tables))
    return in_its_box((*placed)[objection->draft], objection->problem);
  KeyedIn answer;
  if (!keep) {
    for (const auto& draft : drafts)
      answer.entries.push_back({.happened = draft.happened, .payload = draft.payload});
    return answer;
  }
  auto kept = garth::keep(session, drafts);
  if (!kept) return kept.problem();
  answer.entries = *std::move(kept);
  answer.kept = true;
  if (const Outcome outcome = refresh(session); !outcome) return outcome.problem();
  return answer;
}

}  // namespace beegarth::garth
