// An agreement about the land, or an insurance, runs out: seen to from home some weeks before.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

struct Term {
  const char* kind;
  const char* what;
  const char* told;  // "the agreement"
  const char* price;
};

Needs of_term(const Asking& asking, const std::optional<LandTerm>& term, const Term& words) {
  if (!term) return {};
  const Date until = term->until.date;
  const int lead = asking.minutes("land_lead_days");
  constexpr int asked_for_days = 365;  // an end that nobody mended in a year is how things are
  if (until - asking.last_day() > lead || asking.input.today - until > asked_for_days) return {};
  const bool over = until < asking.input.today;
  const std::string ends =
      (over ? " ended on " : " ends on ") + day_and_month_text(until) + " " + std::to_string(until.year());
  facts::Need need = asking.need(words.kind, words.what + std::string(" at ") + asking.site.name + ": it" +
                                                 ends + (term->with.empty() ? "" : " (" + term->with + ")"));
  need.key += "/" + std::to_string(until.year());
  need.at_home = true;
  need.clock = facts::Clock::any;
  need.minutes = asking.minutes("stock_minutes");
  need.loss = loss_when_late(asking, until - lead / 2, lead, asking.fact(words.price));
  need.why.push_back(because(std::string(words.told) + ends, {term->until.entry},
                             {asking.source("land_lead_days"), asking.source(words.price)}));
  return {need};
}

}  // namespace

Needs land_terms(const Asking& asking) {
  Needs needs =
      of_term(asking, asking.site.agreement,
              {"agreement-ends", "renew the agreement about the land", "the agreement", "agreement_kg"});
  for (facts::Need& need :
       of_term(asking, asking.site.insurance,
               {"insurance-ends", "renew the insurance", "the insurance", "insurance_kg"}))
    needs.push_back(std::move(need));
  return needs;
}

}  // namespace beegarth::work
