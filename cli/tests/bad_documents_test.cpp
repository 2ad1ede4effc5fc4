// Documents that must be refused: exit code 2, a list with place and remedy, nothing else.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <fstream>
#include <iterator>
#include <random>

#include "run_helper.h"
#include "strandline/wire/json.h"

namespace strandline::cli {
namespace {

using wire::Json;

std::string text_of(const std::string& file) {
  std::ifstream in(file);
  return {std::istreambuf_iterator<char>(in), {}};
}

const std::string& good() {
  static const std::string text = text_of(demo("half_white_three_to_seven"));
  return text;
}

std::string with(const char* pointer, Json value) {
  Json document = *wire::parse(good());
  document[Json::json_pointer(pointer)] = std::move(value);
  return wire::print(document);
}

// Refused by `verb` with this code at this place, in both spellings.
void expect_refused(const std::string& text, const std::string& code, const std::string& path,
                    const char* verb = "assess") {
  const Ran got = ran({verb, "-", "--json"}, text);
  EXPECT_EQ(got.code, refused) << got.out.substr(0, 400);
  const auto answer = wire::parse(got.out);
  ASSERT_TRUE(answer) << got.out.substr(0, 400);
  bool found = false;
  for (const Json& p : (*answer)["problems"]) found = found || (p["code"] == code && p["path"] == path);
  EXPECT_TRUE(found) << "wanted " << code << " at " << path << ", got " << got.out.substr(0, 400);
  EXPECT_NE(got.err.find(path.empty() ? "whole document" : path), std::string::npos);
  EXPECT_TRUE(ran({verb, "-"}, text).out.empty());
}

TEST(BadDocuments, LevelFourteen) {
  expect_refused(with("/head/areas/0/spans/0/level", 14), "out_of_range", "/head/areas/0/spans/0/level");
}

TEST(BadDocuments, WhiteOfMoreThanAll) {
  expect_refused(with("/head/areas/0/spans/0/white_percent", 130), "out_of_range",
                 "/head/areas/0/spans/0/white_percent");
}

TEST(BadDocuments, SharesOverOne) {
  const Json spans = *wire::parse(R"([{"id": "cropped", "to_cm": 6, "populations": [
    {"kind": "pigmented", "share": 0.8, "level": 3}, {"kind": "white", "share": 0.8}]}])");
  expect_refused(with("/head/areas/0/spans", spans), "shares_do_not_add_up", "/head/areas/0/spans/0/populations");
}

TEST(BadDocuments, MissingZone) {
  expect_refused(with("/aims/0/zone", "no such/zone"), "unknown_zone", "/aims/0/zone", "plan");
}

TEST(BadDocuments, UnknownShade) {
  const Json aims = *wire::parse(R"([{"zone": "*", "shade": "nothing like it"}])");
  expect_refused(with("/aims", aims), "unknown_shade", "/aims/0/shade", "plan");
}

TEST(BadDocuments, EmptyShelf) {
  const Ran got = ran({"plan", "-", "--json"}, with("/shelf", *wire::parse(R"({"ranges": [], "products": []})")));
  EXPECT_EQ(got.code, refused);
  EXPECT_NE(got.out.find("\"path\": \"/shelf"), std::string::npos) << got.out;
}

TEST(BadDocuments, NegativeGrams) {
  Json document = *wire::parse(text_of(demo("my_own_bowls")));
  document["bowls"][0]["parts"][0]["grams"] = -5;
  expect_refused(wire::print(document), "out_of_range", "/bowls/0/parts/0/grams", "predict");
}

TEST(BadDocuments, NotANumber) {
  std::string text = good();
  text.replace(text.find("\"level\": 3"), 10, "\"level\": NaN");
  expect_refused(text, "not_a_number", "");
  text.replace(text.find("NaN"), 3, "1e999");
  expect_refused(text, "not_a_number", "");
}

TEST(BadDocuments, TenMegabytesOfNoise) {
  std::mt19937_64 random(7);
  std::string noise(10u << 20, ' ');
  for (char& c : noise) c = static_cast<char>(random());
  expect_refused(noise, "document_too_large", "");
}

TEST(BadDocuments, InvalidUtf8) {
  std::string text = good();
  text.replace(text.find("\"id\": \"") + 7, 1, "\xFF");
  expect_refused(text, "invalid_utf8", "");
}

TEST(BadDocuments, EveryProblemOnTheErrorStreamHasARemedy) {
  const Ran got = ran({"assess", "-"}, with("/head/areas/0/spans/0/level", 14));
  EXPECT_NE(got.err.find("Correct the number"), std::string::npos) << got.err;
  EXPECT_NE(got.err.find("nothing was written"), std::string::npos);
}

TEST(BadDocuments, AMissingFileIsNotTheDocumentsFault) {
  const Ran got = ran({"assess", "/no/such/file.json"});
  EXPECT_EQ(got.code, failed);
  EXPECT_NE(got.err.find("/no/such/file.json"), std::string::npos);
}

// One value of a good document replaced by an odd one, a key renamed, or bytes overwritten.
std::string mutated(std::mt19937& random) {
  Json document = *wire::parse(good());
  const Json flat = document.flatten();
  const auto pick = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random); };
  auto place = flat.begin();
  std::advance(place, static_cast<std::ptrdiff_t>(pick(flat.size())));
  static const char* odd[] = {"null",  "-1", "0",  "1e308", "-1e308", "5e-324", "\"\"",
                              "\"*\"", "[]", "{}", "true",  "[[[]]]", "1e17"};
  document[Json::json_pointer(place.key())] = *wire::parse(odd[pick(std::size(odd))]);
  std::string text = wire::print(document);
  if (pick(3) == 0) {
    for (std::size_t i = 0; i < 1 + pick(4); ++i) text[pick(text.size())] = static_cast<char>(pick(256));
  }
  return text;
}

RC_GTEST_PROP(BadDocuments, MutatedOnesAreAnsweredOrRefused, (unsigned seed)) {
  std::mt19937 random(seed);
  const std::string text = mutated(random);
  const Ran got = ran({"assess", "-", "--json"}, text);
  RC_ASSERT(got.code == done || got.code == refused);
  const auto answer = wire::parse(got.out, {.bytes = 64u << 20});
  RC_ASSERT(answer.has_value());
  RC_ASSERT(answer->contains("problems") == (got.code == refused));
}

}  // namespace
}  // namespace strandline::cli
