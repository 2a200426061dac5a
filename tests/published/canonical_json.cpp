// Canonical JSON, ids and hashes against the standards that define them. The standards' values stand here
// from memory: no copy of them was at hand.
#include <gtest/gtest.h>

#include <cstdint>
#include <cstring>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "book/canonical.hpp"
#include "book/clock.hpp"
#include "book/sha256.hpp"

namespace beegarth::book {
namespace {

double from_bits(std::uint64_t bits) {
  double value = 0;
  std::memcpy(&value, &bits, sizeof value);
  return value;
}

std::string hex_of(std::string_view bytes) {
  std::string hex;
  for (const char c : bytes) {
    hex += "0123456789abcdef"[static_cast<unsigned char>(c) >> 4U];
    hex += "0123456789abcdef"[static_cast<unsigned char>(c) & 15U];
  }
  return hex;
}

struct NumberCase {
  std::uint64_t bits;
  const char* text;
};

// RFC 8785 (JSON Canonicalization Scheme), Appendix B "Number Serialization Samples": IEEE 754 bits and JSON
// text.
TEST(CanonicalJson, numbers_are_written_as_in_appendix_b_of_rfc_8785) {
  const std::vector<NumberCase> cases = {
      {0x0000000000000000, "0"},
      {0x8000000000000000, "0"},
      {0x0000000000000001, "5e-324"},
      {0x8000000000000001, "-5e-324"},
      {0x7fefffffffffffff, "1.7976931348623157e+308"},
      {0xffefffffffffffff, "-1.7976931348623157e+308"},
      {0x4340000000000000, "9007199254740992"},
      {0xc340000000000000, "-9007199254740992"},
      {0x4430000000000000, "295147905179352830000"},
      {0x44b52d02c7e14af5, "9.999999999999997e+22"},
      {0x44b52d02c7e14af6, "1e+23"},
      {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
      {0x444b1ae4d6e2ef4e, "999999999999999700000"},
      {0x444b1ae4d6e2ef4f, "999999999999999900000"},
      {0x444b1ae4d6e2ef50, "1e+21"},
      {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
      {0x3eb0c6f7a0b5ed8d, "0.000001"},
      {0x41b3de4355555553, "333333333.3333332"},
      {0x41b3de4355555554, "333333333.33333325"},
      {0x41b3de4355555555, "333333333.3333333"},
      {0x41b3de4355555556, "333333333.3333334"},
      {0x41b3de4355555557, "333333333.33333343"},
      {0xbecbf647612f3696, "-0.0000033333333333333333"},
      {0x43143ff3c1cb0959, "1424953923781206.2"},
  };
  for (const NumberCase& sample : cases) EXPECT_EQ(canonical_number(from_bits(sample.bits)), sample.text);
}

TEST(CanonicalJson, what_is_no_number_in_appendix_b_of_rfc_8785_is_refused) {
  EXPECT_THROW(canonical_number(from_bits(0x7fffffffffffffff)), std::invalid_argument);
  EXPECT_THROW(canonical_number(from_bits(0x7ff0000000000000)), std::invalid_argument);
}

// RFC 8785 section 3.2.2 (input) and 3.2.4 (the UTF-8 bytes expected).
TEST(CanonicalJson, the_sample_of_section_3_2_gives_its_published_bytes) {
  const auto value = parse_strict(R"({
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  })",
                                  "");
  ASSERT_TRUE(value);
  EXPECT_EQ(hex_of(canonical(*value)),
            "7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b33333333333333"
            "33332e33"
            "3333333333332c31652b33302c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac245c753030"
            "30665c6e"
            "4127425c225c5c5c5c5c222f227d");
}

// RFC 8785 section 3.2.3: names sorted by UTF-16 code units, not by code points.
TEST(CanonicalJson, the_names_of_section_3_2_3_come_in_their_published_order) {
  const auto value = parse_strict(R"({
    "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
    "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
  })",
                                  "");
  ASSERT_TRUE(value);
  const std::string text = canonical(*value);
  std::size_t last = 0;
  for (const char* name : {"Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis",
                           "Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh"}) {
    const std::size_t at = text.find(name);
    ASSERT_NE(at, std::string::npos) << name;
    EXPECT_GT(at, last) << name;
    last = at;
  }
}

// RFC 9562 appendix A.6, the example of a version 7 UUID: 2022-02-22T19:22:22Z, rand_a CC3, rand_b
// 18C4DC0C0C07398F.
TEST(EntryIds, the_example_of_rfc_9562_comes_out) {
  const std::string random("\0\0\0\0\0\0\0\0\x18\xc4\xdc\x0c\x0c\x07\x39\x8f", 16);
  const Surroundings surroundings{
      [] { return std::int64_t{0}; },
      [&](unsigned char* bytes, std::size_t count) { std::memcpy(bytes, random.data(), count); }};
  EXPECT_EQ(new_entry_id({0x017f22e279b0, 0xcc3}, surroundings).text(),
            "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
}

// FIPS 180-2 appendix B.1: the message "abc".
TEST(Hash, sha_256_of_abc_is_the_published_one) {
  EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

}  // namespace
}  // namespace beegarth::book
