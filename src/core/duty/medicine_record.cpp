#include "duty/medicine_record.hpp"

#include <array>
#include <utility>

#include "duty/years.hpp"

namespace beegarth::duty {
namespace {

using Given = std::pair<const char*, bool>;

std::vector<Given> given_by(const MedicineRecord& r) {
  switch (r.kind) {
    case RecordKind::purchase:
      return {{"product", r.product.has_value()},   {"batch", r.batch.has_value()},
              {"date", r.date.has_value()},         {"amount", r.amount.has_value()},
              {"supplier", r.supplier.has_value()}, {"proof", r.proof_kept}};
    case RecordKind::giving:
      return {{"product", r.product.has_value()},
              {"batch", r.batch.has_value()},
              {"date", r.date.has_value()},
              {"amount", r.amount.has_value()},
              {"withdrawal", r.withdrawal_days.has_value()},
              {"colonies", !r.colonies.empty()}};
    case RecordKind::disposal:
      break;
  }
  return {{"product", r.product.has_value()},
          {"batch", r.batch.has_value()},
          {"date", r.date.has_value()},
          {"amount", r.amount.has_value()},
          {"how_and_where", r.how_and_where.has_value()}};
}

constexpr std::array<const char*, 3> prefixes{"purchase_", "giving_", "disposal_"};

void list_facts(const MedicineRecord& record, Rows& country, RecordAnswer& answer) {
  for (const auto& [fact, given] : given_by(record)) {
    const std::string key = prefixes[static_cast<std::size_t>(record.kind)] + std::string(fact);
    const Asked asked = country.asked(key);
    if (asked == Asked::no) continue;
    answer.facts.push_back({fact, asked, given, country.source(key)});
    if (!given) (asked == Asked::required ? answer.missing : answer.advised).emplace_back(fact);
  }
}

// What was on the hive during the treatment is never for people; else the label's days count from the last
// one.
void judge_honey(const MedicineRecord& record, RecordAnswer& answer) {
  if (record.kind != RecordKind::giving) return;
  answer.honey_may_be_offered = false;
  if (record.honey_taken && record.date && *record.honey_taken < *record.date) {
    answer.honey_may_be_offered = true;
    answer.honey_why = "it was taken before the medicine was given";
  } else if (record.supers_on) {
    answer.honey_why = "boxes for people were on the hive while it was treated: their honey is for bees only";
  } else if (!answer.withdrawal_end) {
    answer.honey_why = "no honey until the date and the withdrawal on the label are written down";
  } else if (!record.honey_taken) {
    answer.honey_may_be_offered.reset();
    answer.honey_why =
        "say when the honey was taken; none that is taken before " +
        (*record.withdrawal_days == 0 ? answer.withdrawal_end->iso() : (*answer.withdrawal_end + 1).iso());
  } else {
    // No day is no wait: the honey of that very day may go. Whole days are over only when the last of them
    // is.
    answer.honey_may_be_offered = *record.withdrawal_days == 0 ? *record.honey_taken >= *answer.withdrawal_end
                                                               : *record.honey_taken > *answer.withdrawal_end;
    answer.honey_why = *answer.honey_may_be_offered ? "the withdrawal on the label was over when it was taken"
                                                    : "it was taken while the withdrawal on the label ran";
  }
}

}  // namespace

Expected<RecordAnswer> judge_record(const MedicineRecord& record, const FactTable& table) {
  if (record.date && record.ended && *record.ended < *record.date)
    return bad_input("the treatment ended before it began", "ended", "mend one of the two dates");
  Rows country(table);
  RecordAnswer answer;
  answer.law = country.words("record_law");
  list_facts(record, country, answer);
  const double years = country.number("record_keep_years");
  if (years < 0 || years > 100)
    country.fail("the value is no number of years to keep", "record_keep_years", "give 0 to 100");
  if (country.fault()) return *country.fault();
  if (!record.date) {
    judge_honey(record, answer);
    return answer;
  }
  const Date last = record.ended.value_or(*record.date);
  answer.keep_until = years_after(last, years);
  if (!answer.keep_until)
    return bad_input("the record would be kept beyond the calendar", record.ended ? "ended" : "date",
                     "give an everyday date");
  if (record.kind == RecordKind::giving && record.withdrawal_days)
    answer.withdrawal_end = last + *record.withdrawal_days;
  judge_honey(record, answer);
  return answer;
}

}  // namespace beegarth::duty
