#include "strandline/wire/json.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace strandline::wire {
namespace {

std::string code_of(std::string_view text, const TextLimits& limits = {}) {
  const auto parsed = parse(text, limits);
  return parsed ? "" : parsed.error().at(0).code;
}

TEST(Parse, RefusesWhatIsNotJson) {
  for (const char* text : {"", "{", "{\"a\":}", "[1,2", "{\"a\" 1}", "tru", "{} {}", "\"\x01\""}) {
    EXPECT_EQ(code_of(text), "not_json") << text;
  }
}

TEST(Parse, RefusesWhatIsNoFiniteNumber) {
  for (const char* text : {"1e999", "[-1e999]", "{\"a\": NaN}", "{\"a\": Infinity}", "{\"a\": -Infinity}", "[nan]"}) {
    EXPECT_EQ(code_of(text), "not_a_number") << text;
  }
}

TEST(Parse, SaysLineAndColumn) {
  const auto parsed = parse("{\n  \"a\": 1,\n  \"b\": }\n");
  ASSERT_FALSE(parsed);
  EXPECT_EQ(parsed.error()[0].params.at("line"), "3");
}

TEST(Parse, RefusesRepeatedKeysWithTheirPlace) {
  const auto parsed = parse(R"({"a": [{"b": 1}, {"b": 1, "b": 2}]})");
  ASSERT_FALSE(parsed);
  EXPECT_EQ(parsed.error()[0], (Problem{"duplicate_key", "/a/1", {{"key", "b"}}}));
}

TEST(Parse, CountsDepth) {
  EXPECT_EQ(code_of(std::string(64, '[') + std::string(64, ']')), "");
  EXPECT_EQ(code_of(std::string(65, '[') + std::string(65, ']')), "too_deep");
  EXPECT_EQ(code_of(std::string(1 << 20, '[')), "too_deep");
}

TEST(Parse, CountsBytes) {
  EXPECT_EQ(code_of(std::string(4u << 20, ' ') + "1"), "document_too_large");
  EXPECT_EQ(code_of("[1]", {.bytes = 2}), "document_too_large");
}

TEST(Parse, KeepsTheOrderOfKeys) {
  EXPECT_EQ(print(*parse(R"({"b":1,"a":[true,null,"x"]})")), R"({"b":1,"a":[true,null,"x"]})");
}

// Unicode 15, table 3-7: well-formed UTF-8.
TEST(Utf8, FollowsTheTableOfWellFormedSequences) {
  for (const char* good : {"", "abc", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80",
                           "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
    EXPECT_EQ(find_invalid_utf8(good), std::string_view::npos) << good;
  }
  for (const char* bad : {"\x80", "\xC0\x80", "\xC1\xBF", "\xC2", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xE2\x82",
                          "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF", "\xC2\x41"}) {
    EXPECT_EQ(find_invalid_utf8(std::string("a") + bad), 1u);
  }
}

RC_GTEST_PROP(Parse, AnyBytesAreAnsweredNotThrown, (const std::string& text)) {
  const auto parsed = parse(text);
  if (!parsed) RC_ASSERT(parsed.error().size() == 1u);
}

RC_GTEST_PROP(Pointer, EscapesSoThatTheLibraryFindsTheValue, (const std::string& raw)) {
  const std::string key = find_invalid_utf8(raw) == std::string_view::npos ? raw : "k";
  Json value = Json::object();
  value[key] = 7;
  RC_ASSERT(value.at(Json::json_pointer(pointer("", key))) == 7);
}

}  // namespace
}  // namespace strandline::wire
