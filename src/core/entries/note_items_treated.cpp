// What can be said of treatments: begun, described by the label, ended. Never a dose.
#include <algorithm>
#include <string_view>
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"
#include "entries/read_back.hpp"

namespace beegarth::entries {
namespace {

using Kind = TreatmentKind;

Write treated(Kind kind) {
  return [=](Said& said, const PatternMatch& m) {
    return add(said, Treatment{.colony = said.colony,
                               .kind = kind,
                               .days = m.numbers.empty() ? std::nullopt : Number(m.numbers[0])});
  };
}
// "2 amitraz strips in": the number is the amount as the keeper says it.
Write treated_with(Kind kind, const char* one, const char* many) {
  return [=](Said& said, const PatternMatch& m) {
    const std::string unit = m.numbers[0] == 1 ? one : many;
    return add(said, Treatment{.colony = said.colony,
                               .kind = kind,
                               .days = m.numbers.size() > 1 ? Number(m.numbers[1]) : std::nullopt,
                               .amount = plain_number(m.numbers[0]) + " " + unit});
  };
}
Write ended(Kind kind) {
  return [=](Said& said, const PatternMatch&) {
    return add(said, TreatmentEnded{.colony = said.colony, .kind = kind});
  };
}
bool is_strip(Kind kind) {
  return kind == Kind::formic || kind == Kind::thymol || kind == Kind::amitraz || kind == Kind::pyrethroid ||
         kind == Kind::hop_acids;
}
// "strips out": of the one treatment of that make which the book or this line has put on.
bool strips_out(Said& said, const PatternMatch&) {
  std::vector<Kind> on;
  const auto note = [&](Kind kind) {
    if (is_strip(kind) && std::find(on.begin(), on.end(), kind) == on.end()) on.push_back(kind);
  };
  for (const Kind kind : said.treatments_on) note(kind);
  for (const Payload& other : said.others) {
    if (const auto* treatment = std::get_if<Treatment>(&other)) note(treatment->kind);
  }
  return on.size() == 1 && add(said, TreatmentEnded{.colony = said.colony, .kind = on[0]});
}

Write label(Text Treatment::*field) {
  return [=](Said& said, const PatternMatch& m) {
    return change_last<Treatment>(said, [&](Treatment& t) { return put(t.*field, m.chosen[0]); });
  };
}
bool product(Said& said, const PatternMatch& m) {
  return change_last<Treatment>(said, [&](Treatment& t) { return put(t.product, m.chosen[0]); }) ||
         change_last<Feed>(said, [&](Feed& f) { return put(f.product, m.chosen[0]); });
}
bool withdrawal(Said& said, const PatternMatch& m) {
  return change_last<Treatment>(said, [&](Treatment& t) { return put(t.withdrawal_days, m.numbers[0]); });
}
Write supers_on(bool on) {
  return [=](Said& said, const PatternMatch&) {
    return change_last<Treatment>(said, [&](Treatment& t) { return put(t.supers_on, on); });
  };
}

constexpr const char* which_strips = "which treatment ends: amitraz, formic, thymol, ...?";

struct Strips {
  const char* name;
  Kind kind;
  const char* things;  // what goes in
  const char* one;
  const char* many;
};

}  // namespace

std::vector<Item> items_treated() {
  std::vector<Item> items{
      {"treated? with? oxalic acid? by? trickle for? #day?", treated(Kind::oxalic_trickle)},
      {"trickle with? oxalic acid?", treated(Kind::oxalic_trickle)},
      {"treated? with? oxalic acid? by? vapour", treated(Kind::oxalic_vapour)},
      {"vapour with? oxalic acid?", treated(Kind::oxalic_vapour)},
      {"oav", treated(Kind::oxalic_vapour)},
      unclear("treated with oxalic acid?", "trickled or as vapour?"),
      {"drone comb|brood removed|cut out?", treated(Kind::drone_comb_removed)},
      {"removed|cut out? drone comb|brood", treated(Kind::drone_comb_removed)},
      {"all brood removed|cut|taken out?", treated(Kind::brood_removed)},
      {"removed|cut|taken out? all the? brood", treated(Kind::brood_removed)},
      {"batch no|number? *", label(&Treatment::batch)},
      {"product *", product},
      {"supplier *", label(&Treatment::supplier)},
      {"amount ~", label(&Treatment::amount)},
      {"withdrawal #day", withdrawal},
      {"with super on", supers_on(true)},
      {"super were? on at the time", supers_on(true)},
      {"no super on", supers_on(false)},
      {"without super", supers_on(false)},
      asking("strip|pad|tray taken? out|off", strips_out, which_strips),
      asking("strip|pad|tray removed", strips_out, which_strips),
      asking("taken out the? strip|pad|tray", strips_out, which_strips),
      asking("taken the? strip|pad|tray out|off", strips_out, which_strips),
      asking("removed the? strip|pad|tray", strips_out, which_strips),
  };
  for (const Strips& each : {Strips{"formic acid?", Kind::formic, "pad|strip", "pad", "pads"},
                             Strips{"thymol", Kind::thymol, "gel|tray|strip", "tray", "trays"},
                             Strips{"amitraz", Kind::amitraz, "strip", "strip", "strips"},
                             Strips{"pyrethroid", Kind::pyrethroid, "strip", "strip", "strips"},
                             Strips{"hop acid?", Kind::hop_acids, "strip", "strip", "strips"}}) {
    const std::string_view name = each.name, things = each.things;
    const auto item = [&](std::initializer_list<std::string_view> parts, Write write) {
      std::string text;
      for (const std::string_view part : parts) text += part;
      items.emplace_back(text.c_str(), std::move(write));
    };
    item({name, " ", things, "? on|in|given|applied for? #day?"}, treated(each.kind));
    item({"added|given ", name, " ", things, "? on|in? for? #day?"}, treated(each.kind));
    item({"treated with? ", name, " ", things, "? for? #day?"}, treated(each.kind));
    item({"# ", name, " ", things, " on|in|given for? #day?"}, treated_with(each.kind, each.one, each.many));
    item({name, " # ", things, " on|in|given for? #day?"}, treated_with(each.kind, each.one, each.many));
    item({name, " ", things, "? taken? out|off"}, ended(each.kind));
    item({name, " ", things, "? removed"}, ended(each.kind));
    item({"removed|taken out? the? ", name, " ", things, "? out|off?"}, ended(each.kind));
  }
  return items;
}

}  // namespace beegarth::entries
