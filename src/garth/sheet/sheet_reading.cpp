#include "garth/sheet/sheet_reading.hpp"

#include <algorithm>
#include <optional>

#include "entries/fields.hpp"
#include "garth/imports/written_values.hpp"

namespace beegarth::garth {

namespace {

using Values = WrittenValues;
using Drafts = Expected<std::vector<DraftOfBoxes>>;

struct Reading {
  const FrameToKeyIn& frame;
  const SheetToKeyIn& sheet;
  Boxes boxes;
  std::vector<DraftOfBoxes> drafts;

  ColonyId colony() const { return frame.colony.value_or(ColonyId()); }
  void add(entries::Payload payload, std::string first_box, std::map<std::string, std::string> fields = {},
           std::optional<Date> happened = {}) {
    drafts.push_back({{.happened = happened.value_or(sheet.date), .payload = std::move(payload)},
                      std::move(fields),
                      std::move(first_box)});
  }
  void note(std::string text, std::string box) {
    entries::Note note{.text = std::move(text), .colony = frame.colony};
    if (!frame.colony) note.site = sheet.site;
    add(std::move(note), box, {{"text", box}});
  }
};

// ---- one set ----
std::vector<std::string> signs_in(Boxes& boxes, bool& none) {
  std::vector<std::string> signs;
  const std::string said = boxes.text("health signs").value_or("");
  for (std::size_t from = 0; from <= said.size() && !said.empty();) {
    const std::size_t comma = std::min(said.find(',', from), said.size());
    std::string word = plain_word(said.substr(from, comma - from));
    from = comma + 1;
    while (word.starts_with(' ')) word.erase(0, 1);
    while (word.ends_with(' ')) word.pop_back();
    if (word.empty()) continue;
    if (word == "none") {
      none = true;
      continue;
    }
    std::string key = word;
    std::replace(key.begin(), key.end(), ' ', '_');
    const auto& known = entries::signs_of_health;
    if (std::find(known.begin(), known.end(), key) == known.end()) {
      std::string all;
      for (const auto sign : known) all += ", " + plain_word(std::string(sign));
      boxes.blame("health signs", "there is no sign '" + word + "'",
                  "write none, or of these, with commas between" + all);
    }
    signs.push_back(std::move(key));
  }
  if (none && !signs.empty())
    boxes.blame("health signs", "it says none and names a sign too", "write one of the two");
  return signs;
}

// A look that counts combs of brood or cells has been through every comb; one that found eggs may have ended
// at the second.
void read_look(Reading& reading) {
  Boxes& boxes = reading.boxes;
  entries::Inspection look{.colony = reading.colony()};
  look.look = boxes.any({"brood combs", "cups with egg", "open cells", "sealed cells"})
                  ? entries::Look::full
                  : entries::Look::quick;
  look.seams = boxes.number("seams of bees");
  look.brood_combs = boxes.number("brood combs");
  look.eggs = boxes.flag("eggs");
  look.queen = boxes.flag("queen");
  look.cups_with_egg = boxes.whole("cups with egg");
  look.charged_cells = boxes.whole("open cells");
  look.sealed_cells = boxes.whole("sealed cells");
  look.store_combs = boxes.number("store combs");
  look.super_share = boxes.share("supers full");
  look.calm = boxes.flag("calm");
  bool none = false;
  look.signs = signs_in(boxes, none);
  if (none) look.remark = "no signs of ill health seen";
  reading.add(std::move(look), "",
              {{"seams", "seams of bees"},
               {"brood_combs", "brood combs"},
               {"cups_with_egg", "cups with egg"},
               {"charged_cells", "open cells"},
               {"sealed_cells", "sealed cells"},
               {"store_combs", "store combs"},
               {"super_share", "supers full"},
               {"signs", "health signs"}});
}

void read_board(Reading& reading) {
  Boxes& boxes = reading.boxes;
  const auto in = boxes.day("board in"), out = boxes.day("board out");
  const auto mites = boxes.whole("mites");
  const auto share = boxes.share("share counted");
  if (in && !boxes.any({"board out", "mites", "share counted"})) {
    reading.note("board put in on " + in->iso(), "board in");
    return;
  }
  if (!mites) boxes.blame("mites", "the mites are missing", "write how many lay on the board, 0 for none");
  if (!in)
    boxes.blame("board in", "the day on which the board went in is missing", "mites are counted a day");
  if (!out) boxes.blame("board out", "the day on which the board came out is missing", "write its date");
  if (boxes.fault()) return;
  if (*out <= *in) boxes.blame("board out", "the board came out before it had lain a day", "see both dates");
  if (*out > reading.sheet.date)
    boxes.blame("board out", "the board came out after the day of the sheet", "see both dates");
  entries::MiteCount count{.colony = reading.colony(), .mites = *mites};
  count.days = *out - *in;
  count.board_share = share;
  reading.add(count, "mites", {{"mites", "mites"}, {"days", "board in"}, {"board_share", "share counted"}},
              *out);
}

void read_sample(Reading& reading) {
  Boxes& boxes = reading.boxes;
  const std::string how = plain_word(boxes.text("wash or roll").value_or(""));
  if (how != "wash" && how != "roll")
    boxes.blame("wash or roll", "it is not said whether it was a wash or a roll", "write wash or roll");
  const auto mites = boxes.whole("mites"), bees = boxes.whole("bees");
  if (!mites) boxes.blame("mites", "the mites are missing", "write how many there were, 0 for none");
  if (!bees) boxes.blame("bees", "the bees of the sample are missing", "write how many were examined");
  entries::MiteCount count{
      .colony = reading.colony(),
      .method = how == "roll" ? entries::MiteMethod::sugar_roll : entries::MiteMethod::wash,
      .mites = mites.value_or(0)};
  count.bees = bees;
  reading.add(count, "mites", {{"mites", "mites"}, {"bees", "bees"}});
}

std::optional<int> put_on_and_off(Boxes& boxes, const char* on_box, const char* off_box) {
  const auto on = boxes.whole(on_box), off = boxes.whole(off_box);
  if (!on && !off) return {};
  return on.value_or(0) - off.value_or(0);
}

void read_room(Reading& reading) {
  Boxes& boxes = reading.boxes;
  entries::Room room{.colony = reading.colony()};
  room.brood_combs = put_on_and_off(boxes, "brood combs put on", "brood combs taken off");
  room.super_combs = put_on_and_off(boxes, "super combs put on", "super combs taken off");
  room.undrawn = boxes.whole("undrawn");
  if (!room.brood_combs && !room.super_combs)
    boxes.blame("brood combs put on", "it is not said how many combs went on or off", "write the number");
  const std::string brood =
      boxes.any({"brood combs put on"}) ? "brood combs put on" : "brood combs taken off";
  const std::string super =
      boxes.any({"super combs put on"}) ? "super combs put on" : "super combs taken off";
  reading.add(room, room.brood_combs ? brood : super,
              {{"brood_combs", brood}, {"super_combs", super}, {"undrawn", "undrawn"}});
}

void read_feed(Reading& reading) {
  Boxes& boxes = reading.boxes;
  entries::Feed feed{.colony = reading.colony()};
  const auto kg = boxes.number("kg given");
  if (!kg) boxes.blame("kg given", "the weight of the feed is missing", "write kg");
  feed.kg = kg.value_or(0);
  feed.sugar_pct = boxes.number("sugar");
  feed.form = boxes.needed<entries::FeedForm>("syrup or fondant", "it is not said what was fed");
  reading.add(feed, "kg given", {{"kg", "kg given"}, {"sugar_pct", "sugar"}, {"form", "syrup or fondant"}});
}

void read_treatment(Reading& reading) {
  Boxes& boxes = reading.boxes;
  entries::Treatment treatment{.colony = reading.colony()};
  treatment.kind =
      boxes.needed<entries::TreatmentKind>("kind of treatment", "the kind of treatment is missing");
  treatment.product = boxes.text("product");
  treatment.batch = boxes.text("batch");
  treatment.amount = boxes.text("amount");
  treatment.days = boxes.number("days on");
  treatment.withdrawal_days = boxes.number("withdrawal");
  if (const auto brood = boxes.flag("brood")) treatment.remark = *brood ? "with brood" : "without brood";
  reading.add(treatment, "kind of treatment",
              {{"kind", "kind of treatment"},
               {"product", "product"},
               {"batch", "batch"},
               {"amount", "amount"},
               {"days", "days on"},
               {"withdrawal_days", "withdrawal"}});
}

void read_taken_out(Reading& reading) {
  entries::TreatmentEnded ended{.colony = reading.colony()};
  ended.kind = reading.boxes.needed<entries::TreatmentKind>("taken out", "it is not said what came out");
  reading.add(ended, "taken out", {{"kind", "taken out"}});
}

void read_heft(Reading& reading) {
  Boxes& boxes = reading.boxes;
  const auto left = boxes.number("left"), right = boxes.number("right");
  if (left.has_value() != right.has_value())
    boxes.blame(left ? "right" : "left", "only one side was weighed",
                "write the other side, or by feel; the two sides together are the weight of the hive");
  if (left && right)
    reading.add(entries::Weight{.colony = reading.colony(), .kg = *left + *right}, "left", {{"kg", "left"}});
  const auto feel = boxes.text("by feel");
  if (!feel) return;
  const std::string word = plain_word(*feel);
  if (word != "light" && word != "fair" && word != "heavy")
    boxes.blame("by feel", "'" + *feel + "' is none of light, fair, heavy", "write one of the three");
  entries::Inspection look{.colony = reading.colony(), .look = entries::Look::outside};
  look.remark = "hefted by feel: " + word;
  reading.add(std::move(look), "by feel");
}

// What lay in a dead hive is a form of its own; the sheet has room for the first of it only.
void read_dead(Reading& reading) {
  Boxes& boxes = reading.boxes;
  const auto dead = boxes.flag("dead");
  const auto combs = boxes.number("combs of stores left");
  const auto sampled = boxes.flag("sample taken");
  const auto cause = boxes.text("likely cause");
  if (!dead) boxes.blame("dead", "it is not said whether it is dead", "write yes or no");
  if (dead && !*dead) {
    if (cause || combs || sampled.value_or(false))
      boxes.blame("dead", "it lives, and yet the boxes for a dead one are filled in",
                  "empty them, or write yes");
    entries::Inspection look{.colony = reading.colony(), .look = entries::Look::outside};
    look.remark = "it lives";
    reading.add(std::move(look), "dead");
    return;
  }
  reading.add(entries::ColonyEnded{.colony = reading.colony(), .how = entries::Ending::died, .cause = cause},
              "dead", {{"cause", "likely cause"}});
  if (combs) {
    entries::DeadColony found{.colony = reading.colony()};
    found.remark = "combs of stores left: " + *boxes.text("combs of stores left");
    reading.add(std::move(found), "combs of stores left");
  }
  if (sampled.value_or(false)) reading.add(entries::Sample{.colony = reading.colony()}, "sample taken");
}

struct AnswerRead {
  entries::NeedAnswered::Answer answer = entries::NeedAnswered::Answer::done;
  std::optional<Date> until;
};

std::optional<AnswerRead> answer_in(Boxes& boxes) {
  using Answer = entries::NeedAnswered::Answer;
  const auto said = boxes.text("answer");
  if (!said) return {};
  const std::string word = plain_word(*said);
  if (word == "done") return AnswerRead{Answer::done, {}};
  if (word == "not done") return AnswerRead{Answer::skipped, {}};
  if (word == "rained off") return AnswerRead{Answer::rained_off, {}};
  constexpr std::string_view put_off = "put off until ";
  if (word.starts_with(put_off)) {
    const auto until = Date::parse(std::string_view(word).substr(put_off.size()));
    if (until) return AnswerRead{Answer::put_off, *until};
    boxes.blame("answer", until.problem().what, until.problem().remedy);
    return {};
  }
  boxes.blame("answer", "'" + *said + "' is no answer",
              "write done, not done, rained off, or put off until and a date like 2026-06-05");
  return {};
}

void read_closing(Reading& reading) {
  const auto answer = answer_in(reading.boxes);
  if (answer && answer->until && *answer->until <= reading.sheet.date)
    reading.boxes.blame("answer", "it is put off until a day that is not after the visit", "see the date");
  if (answer)
    for (const SheetJob& job : reading.frame.jobs)
      reading.add(entries::NeedAnswered{.need = job.need, .answer = answer->answer, .until = answer->until},
                  "answer");
  if (const auto text = reading.boxes.text("notes")) reading.note(*text, "notes");
}

}  // namespace

Drafts drafts_of_set(const std::string& set, const FrameToKeyIn& frame, const SheetToKeyIn& sheet,
                     const Values& values) {
  if (values.empty()) return std::vector<DraftOfBoxes>{};
  static const std::map<std::string, void (*)(Reading&)> readers{
      {"look", read_look}, {"board", read_board},         {"sample", read_sample},       {"room", read_room},
      {"feed", read_feed}, {"treatment", read_treatment}, {"taken out", read_taken_out}, {"heft", read_heft},
      {"dead", read_dead}, {"closing", read_closing}};
  Reading reading{frame, sheet, Boxes(values), {}};
  readers.at(set)(reading);
  if (reading.boxes.fault()) return *reading.boxes.fault();
  for (auto& one : reading.drafts)
    if (one.first_box.empty()) one.first_box = values.begin()->first;
  return std::move(reading.drafts);
}

}  // namespace beegarth::garth
