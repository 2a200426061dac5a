// The record of a medicine: what it must say, how long it is kept, and when honey may be offered again.
// Amounts are what the keeper wrote; nothing here works out a dose.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "duty/rows.hpp"

namespace beegarth::duty {

enum class RecordKind { purchase, giving, disposal };

struct MedicineRecord {
  RecordKind kind = RecordKind::giving;
  std::optional<Date> date;   // bought, first given, or disposed of
  std::optional<Date> ended;  // giving: the day on which strips or trays came off
  std::optional<std::string> product, batch, amount;
  std::optional<std::string> supplier;  // name and address
  bool proof_kept = false;              // of purchase
  std::optional<int> withdrawal_days;   // by the label
  std::vector<std::string> colonies;
  std::optional<std::string> how_and_where;  // of disposal
  bool supers_on = false;                    // boxes for people were on the hive while it was treated
  std::optional<Date> honey_taken;
};

struct RecordFact {
  std::string fact;  // "batch"
  Asked asked = Asked::no;
  bool given = false;
  std::string source;
};

struct RecordAnswer {
  std::vector<RecordFact> facts;     // that are asked for
  std::vector<std::string> missing;  // required and not given
  std::vector<std::string> advised;  // good practice and not given
  std::optional<Date> keep_until;    // the record itself; unknown without a date
  std::optional<Date> withdrawal_end;
  std::optional<bool> honey_may_be_offered;  // of a giving
  std::string honey_why;
  std::string law;
};

// `country` is tables/duty_<country>.toml.
Expected<RecordAnswer> judge_record(const MedicineRecord& record, const FactTable& country);

}  // namespace beegarth::duty
