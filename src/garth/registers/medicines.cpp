// Medicines bought, given and disposed of, each with the date until which the record is kept.
#include <algorithm>
#include <cmath>
#include <tuple>

#include "duty/medicine_record.hpp"
#include "entries/fields.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

bool is_medicine(entries::TreatmentKind kind) {
  return kind != entries::TreatmentKind::drone_comb_removed && kind != entries::TreatmentKind::brood_removed;
}

// One giving to several colonies on a day is one row.
struct Giving {
  Date date;
  entries::Treatment first;
  std::string who;
  std::vector<ColonyId> colonies;
  std::vector<EntryId> entries;
  std::optional<Date> ended;
};

bool same_giving(const Giving& giving, const Entry& entry, const entries::Treatment& treatment) {
  const auto facts = [](const entries::Treatment& t) {
    return std::tie(t.kind, t.product, t.batch, t.amount, t.supplier, t.withdrawal_days, t.days, t.supers_on);
  };
  return giving.date == entry.happened && giving.who == entry.who && facts(giving.first) == facts(treatment);
}

std::vector<Giving> givings_of(const Session& session) {
  std::vector<Giving> givings;
  for (const Entry& entry : session.standing) {
    if (const auto* given = std::get_if<entries::Treatment>(&entry.payload);
        given && is_medicine(given->kind)) {
      auto at = std::find_if(givings.begin(), givings.end(),
                             [&](const auto& one) { return same_giving(one, entry, *given); });
      if (at == givings.end()) {
        givings.push_back({.date = entry.happened, .first = *given, .who = entry.who});
        at = givings.end() - 1;
      }
      at->colonies.push_back(given->colony);
      at->entries.push_back(entry.id);
    } else if (const auto* ended = std::get_if<entries::TreatmentEnded>(&entry.payload)) {
      for (Giving& one : givings) {
        const bool there =
            std::find(one.colonies.begin(), one.colonies.end(), ended->colony) != one.colonies.end();
        if (!there || one.first.kind != ended->kind || one.ended) continue;
        one.ended = entry.happened;
        one.entries.push_back(entry.id);
      }
    }
  }
  return givings;
}

std::optional<Date> end_of(const Giving& giving) {
  if (giving.ended) return giving.ended;
  if (!giving.first.days) return std::nullopt;
  return giving.date + static_cast<int>(std::ceil(*giving.first.days));
}

std::string iso(const std::optional<Date>& date) {
  return date ? date->iso() : std::string();
}

struct Names {
  std::vector<std::string> keys, shown;
};
Names names_of_colonies(const Session& session, const std::vector<ColonyId>& colonies) {
  Names names;
  for (const ColonyId& id : colonies) {
    names.keys.push_back(id.text());
    names.shown.push_back(colony_name(session, id));
  }
  return names;
}

class Writer {
 public:
  explicit Writer(const Session& session) : session_(session) {}

  Outcome given(const Giving& giving) {
    const entries::Treatment& t = giving.first;
    const Names colonies = names_of_colonies(session_, giving.colonies);
    duty::MedicineRecord record{.kind = duty::RecordKind::giving,
                                .date = giving.date,
                                .ended = end_of(giving),
                                .product = t.product,
                                .batch = t.batch,
                                .amount = t.amount,
                                .supplier = t.supplier,
                                .colonies = colonies.keys,
                                .supers_on = t.supers_on.value_or(false)};
    if (t.withdrawal_days) record.withdrawal_days = static_cast<int>(std::ceil(*t.withdrawal_days));
    const auto answer = duty::judge_record(record, country_table(session_, giving.colonies.front()));
    if (!answer) return answer.problem();
    rows.push_back({giving.date,
                    {giving.date.iso(), "given",
                     t.product.value_or("not said (" + key_in_words(entries::word_for(t.kind)) + ")"),
                     t.batch.value_or(""), t.amount.value_or(""), joined(colonies.shown), iso(record.ended),
                     iso(answer->withdrawal_end), t.supplier.value_or(""), giving.who,
                     iso(answer->keep_until), key_in_words(joined(answer->missing))},
                    giving.entries});
    return Done{};
  }

  Outcome bought(const Entry& entry, const entries::Purchase& purchase) {
    duty::MedicineRecord record{.kind = duty::RecordKind::purchase,
                                .date = entry.happened,
                                .product = purchase.description,
                                .batch = purchase.batch,
                                .amount = purchase.amount};
    record.supplier = purchase.supplier;
    const bool no_address = purchase.supplier && !purchase.supplier_address;
    if (no_address) record.supplier.reset();  // the law asks for name and address
    return other(entry, record, "bought", purchase.supplier.value_or(""), no_address);
  }
  Outcome disposed(const Entry& entry, const entries::MedicineDisposed& disposal) {
    const duty::MedicineRecord record{.kind = duty::RecordKind::disposal,
                                      .date = entry.happened,
                                      .product = disposal.product,
                                      .batch = disposal.batch,
                                      .amount = disposal.amount,
                                      .how_and_where = disposal.how};
    return other(entry, record, "disposed of: " + disposal.how, "");
  }

  std::vector<RegisterRow> rows;

 private:
  Outcome other(const Entry& entry, const duty::MedicineRecord& record, const std::string& what,
                const std::string& supplier, bool only_address_missing = false) {
    auto answer = duty::judge_record(record, country_table(session_, std::nullopt));
    if (!answer) return answer.problem();
    if (only_address_missing)
      std::replace(answer->missing.begin(), answer->missing.end(), std::string("supplier"),
                   std::string("address of the supplier"));
    rows.push_back({entry.happened,
                    {entry.happened.iso(), what, record.product.value_or(""), record.batch.value_or(""),
                     record.amount.value_or(""), "", "", "", supplier, entry.who, iso(answer->keep_until),
                     key_in_words(joined(answer->missing))},
                    {entry.id}});
    return Done{};
  }

  const Session& session_;
};

}  // namespace

Expected<Register> medicines_register(const Session& session) {
  Register out;
  out.columns = {{"date", "date", 1.1},
                 {"what", "what", 0.9},
                 {"product", "product", 1.4},
                 {"batch", "batch", 0.8},
                 {"amount", "amount as written", 1.2},
                 {"colonies", "colonies", 1.5},
                 {"ended", "ended", 1.1},
                 {"withdrawal_until", "withdrawal until", 1.1},
                 {"supplier", "supplier", 1.1},
                 {"who", "who", 0.8},
                 {"keep_until", "keep until", 1.1},
                 {"missing", "still missing", 1.2}};
  Writer writer(session);
  for (const Giving& giving : givings_of(session)) {
    if (Outcome written = writer.given(giving); !written) return written.problem();
  }
  for (const Entry& entry : session.standing) {
    const auto* purchase = std::get_if<entries::Purchase>(&entry.payload);
    if (purchase && purchase->what == entries::Goods::medicine) {
      if (Outcome written = writer.bought(entry, *purchase); !written) return written.problem();
    }
    if (const auto* disposal = std::get_if<entries::MedicineDisposed>(&entry.payload)) {
      if (Outcome written = writer.disposed(entry, *disposal); !written) return written.problem();
    }
  }
  out.rows = std::move(writer.rows);
  std::stable_sort(out.rows.begin(), out.rows.end(),
                   [](const auto& a, const auto& b) { return a.date < b.date; });
  out.remarks = {
      "Read the label first; it and the law of the place decide. Keep the proofs of purchase with this "
      "register."};
  return out;
}

}  // namespace beegarth::garth
