// JSON Schema (draft 2020-12) of one kind, from the same list of fields as everything else.
#include <string>

#include "book/book.hpp"
#include "book/canonical.hpp"
#include "entries/fields.hpp"

namespace beegarth::book {
namespace {

using nlohmann::json;

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};

// What a key is a key of: an annotation, for a form that offers the names in the book.
template <class T>
struct KeyOf {
  static constexpr const char* word = "";
};
template <class T>
struct KeyOf<std::optional<T>> : KeyOf<T> {};
#define BEEGARTH_KEY_OF(Key, what)            \
  template <>                                 \
  struct KeyOf<Key> {                         \
    static constexpr const char* word = what; \
  }
BEEGARTH_KEY_OF(SiteId, "site");
BEEGARTH_KEY_OF(HiveId, "hive");
BEEGARTH_KEY_OF(ColonyId, "colony");
BEEGARTH_KEY_OF(QueenId, "queen");
BEEGARTH_KEY_OF(PartId, "part");
BEEGARTH_KEY_OF(CombsId, "combs");
BEEGARTH_KEY_OF(LotId, "lot");
BEEGARTH_KEY_OF(PatchId, "patch");
BEEGARTH_KEY_OF(ObjectId, "object");
BEEGARTH_KEY_OF(EntryId, "entry");
#undef BEEGARTH_KEY_OF

struct Describer {
  json properties = json::object();
  json required = json::array();
  json order = json::array();  // in which a form would ask: an object of JSON has none

  void add(const char* name, json what, bool must) {
    properties[name] = std::move(what);
    order.push_back(name);
    if (must) required.push_back(name);
  }
  static json limited(const char* type, entries::Limits limits) {
    json what = {{"type", type}, {"minimum", limits.low}, {"maximum", limits.high}};
    if (*limits.unit != '\0') what["description"] = limits.unit;
    return what;
  }
  static json text_up_to(std::size_t most, bool must) {
    json what = {{"type", "string"}, {"maxLength", most}};
    if (must) what["minLength"] = 1;
    return what;
  }

  template <class T>
  static json key_of(bool must) {
    json what = text_up_to(100, must);
    what["x-key-of"] = KeyOf<T>::word;
    return what;
  }

  template <class T>
  void id(const char* name, const T&, bool must = false) {
    add(name, key_of<T>(must || IsOptional<T>::value), must);
  }
  template <class T>
  void text(const char* name, const T&, bool must = false) {
    add(name, text_up_to(20000, must), must);
  }
  template <class T>
  void number(const char* name, const T&, entries::Limits limits) {
    add(name, limited("number", limits), !IsOptional<T>::value);
  }
  template <class T>
  void count(const char* name, const T&, entries::Limits limits) {
    add(name, limited("integer", limits), !IsOptional<T>::value);
  }
  template <class T>
  void flag(const char* name, const T&) {
    add(name, {{"type", "boolean"}}, false);
  }
  void date(const char* name, const std::optional<Date>&) {
    add(name, {{"type", "string"}, {"format", "date"}}, false);
  }
  template <class E>
  void choice(const char* name, const E&) {
    add(name, {{"enum", entries::Words<E>::list}}, true);
  }
  template <class E>
  void choice(const char* name, const std::optional<E>&) {
    add(name, {{"enum", entries::Words<E>::list}}, false);
  }
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>&) {
    add(name, {{"type", "array"}, {"items", key_of<Id<T>>(true)}, {"maxItems", 200}}, false);
  }
  void words(const char* name, const std::vector<std::string>&) {
    add(name, {{"type", "array"}, {"items", {{"enum", entries::signs_of_health}}}}, false);
  }
};

}  // namespace

std::string schema_json(std::string_view kind) {
  const auto payload = entries::empty_payload(kind);
  if (!payload) return {};
  Describer describer;
  entries::visit_fields_of(describer, *payload);
  return canonical({{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                    {"title", std::string(kind)},
                    {"type", "object"},
                    {"properties", std::move(describer.properties)},
                    {"required", std::move(describer.required)},
                    {"additionalProperties", false},
                    {"x-order", std::move(describer.order)}});
}

}  // namespace beegarth::book
