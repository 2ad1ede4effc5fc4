#include <gtest/gtest.h>

#include "strandline/wire/measured.h"
#include "strandline/wire/shelf_document.h"

namespace strandline::wire {
namespace {

Json shelf() {
  return *parse(R"({"title": "Own", "ranges": [{"id": "r", "maker": "Maker", "name": "Line", "cls": "permanent",
    "ratios": [1], "developer_percents": [6], "minutes": {"min": 30, "target": 35, "max": 40}}],
    "products": [
      {"id": "a", "range": "r", "code": "X1", "name": "6 natural", "cls": "permanent", "level": 6, "tone": "natural", "package_g": 60},
      {"id": "b", "range": "r", "code": "X2", "name": "7 copper", "cls": "permanent", "level": 7, "tone": "copper", "package_g": 60},
      {"id": "c", "range": "r", "code": "X3", "name": "7 copper", "cls": "permanent", "level": 8, "tone": "copper", "package_g": 60}]})");
}

TEST(Swatches, GoToTheShadeThatIsCalledSo) {
  const auto answer = answer_swatches({{"document", shelf()},
                                       {"range", "r"},
                                       {"text", "name;L*;a*;b*\nx1;38;6;12\n7 copper;45;15;25\nnobody;40;1;1\n"}});
  ASSERT_TRUE(answer) << answer.error()[0].code;
  // Two are called "7 copper": which of them is meant is not guessed.
  EXPECT_EQ((*answer)["matched"], Json::array({"a"}));
  EXPECT_EQ((*answer)["unmatched"], Json::array({"7 copper", "nobody"}));
  const Json& product = (*answer)["document"]["products"][0];
  EXPECT_EQ(product["known_by"], "white_hair");
  ASSERT_EQ(product["swatch"].size(), 31u);
  EXPECT_TRUE(read_shelf_document((*answer)["document"]));
  EXPECT_EQ((*answer)["next"].size(), 2u);
  EXPECT_FALSE((*answer)["document"]["products"][1].contains("swatch"));
}

TEST(Swatches, EmptyTextAsksWhatToMeasureFirst) {
  const auto answer = answer_swatches({{"document", shelf()}, {"range", "r"}, {"text", " \n"}});
  ASSERT_TRUE(answer);
  EXPECT_EQ((*answer)["document"], shelf());
  EXPECT_EQ((*answer)["next"].size(), 3u);
}

TEST(Swatches, SayWhatIsWrong) {
  EXPECT_EQ(answer_swatches(Json::object()).error()[0].code, "missing_key");
  EXPECT_EQ(answer_swatches({{"document", shelf()}, {"range", "no"}, {"text", ""}}).error()[0].code, "unknown_range");
  EXPECT_EQ(answer_swatches({{"document", shelf()}, {"range", "r"}, {"text", "x\ny"}}).error()[0].code,
            "table_no_heading");
}

TEST(MeasuredAnswer, TellsTypedLabAndFiles) {
  const auto typed = answer_measured({{"text", "54 8 19"}});
  ASSERT_TRUE(typed);
  EXPECT_EQ((*typed)["samples"][0]["lab"]["b"], 19);
  const auto file = answer_measured({{"text", "name;L*;a*;b*\nx;38;6;12\n"}});
  ASSERT_TRUE(file);
  EXPECT_EQ((*file)["samples"][0]["name"], "x");
  EXPECT_NEAR((*file)["samples"][0]["level"].get<double>(), 6, 0.3);
  EXPECT_EQ(answer_measured({{"text", 3}}).error()[0].code, "wrong_type");
}

}  // namespace
}  // namespace strandline::wire
