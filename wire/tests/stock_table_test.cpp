// Delivery notes and counts as they are pasted, and CSV back.
#include "strandline/wire/stock_table.h"

#include <gtest/gtest.h>

namespace strandline::wire {
namespace {

StockView shelf() {
  StockView view;
  StockItem seven, eight, bare;
  seven.product = "tint-7", seven.code = "K7", seven.barcode = "0400", seven.name = "7 \"copper\"",
  seven.package_g = 60;
  seven.seen = 3, seven.is = StockIs::enough, seven.grams = 60;
  seven.batches = {{"L1", "2027-05-31", 60, false, false, 0.15}};
  eight = seven, eight.product = "tint-8", eight.code = "K8", eight.barcode = "", eight.is = StockIs::not_counted;
  bare.product = "bare", bare.code = "K8";
  view.items = {seven, eight, bare};
  return view;
}

TEST(StockTable, ReadsADeliveryNoteInItsOwnWords) {
  const auto lines = read_stock_table(
      "Code;Packungen;Charge;Verwendbar "
      "bis;Preis\nk7;3;L9;2028-01-31;\"27,60\"\nK9;1;;;\nK8;1;;;\nK7;drei;;;\nK7;;;;\n",
      Moved::receive, shelf());
  ASSERT_TRUE(lines) << lines.error()[0].code;
  ASSERT_EQ(lines->size(), 5u);
  const StockWish& first = *(*lines)[0].move;
  EXPECT_EQ(first.product, "tint-7");
  EXPECT_EQ(first.grams, 180);
  EXPECT_EQ(first.batch, "L9");
  EXPECT_EQ(first.expires, "2028-01-31");
  EXPECT_EQ(first.paid, 27.6);
  const char* why[] = {"unknown_product", "several_products", "not_a_number_here", "grams_missing"};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_FALSE((*lines)[i + 1].move);
    EXPECT_EQ((*lines)[i + 1].problems[0].code, why[i]) << i;
  }
  EXPECT_EQ((*lines)[4].line, 6);
}

TEST(StockTable, ACountKnowsWhatItSaw) {
  const auto lines =
      read_stock_table("barcode,grams,batch,expires\n0400,55,L1,2027-05-31\n0400,5,L2,\n0400,6,L2,\n0400,0,L3,soon\n",
                       Moved::count, shelf());
  ASSERT_TRUE(lines);
  EXPECT_EQ((*lines)[0].move->seen, 3);
  EXPECT_EQ((*lines)[1].move->seen, 4);  // after the first
  EXPECT_EQ((*lines)[2].problems[0].code, "line_twice");
  EXPECT_EQ((*lines)[3].problems[0].code, "bad_date");
}

TEST(StockTable, WithoutHeadingsNothingIsGuessed) {
  EXPECT_EQ(read_stock_table("K7;60", Moved::receive, shelf()).error()[0].code, "no_stock_heading");
  EXPECT_TRUE(read_stock_table("", Moved::receive, shelf())->empty());
  EXPECT_EQ(read_stock_table(std::string(2u << 20, 'x'), Moved::receive, shelf()).error()[0].code,
            "document_too_large");
  EXPECT_EQ(answer_stock_table({{"text", 1}, {"what", "count"}}, shelf()).error()[0].code, "bad_request");
  EXPECT_EQ(answer_stock_table({{"text", ""}, {"what", "use"}}, shelf()).error()[0].code, "bad_request");
}

TEST(StockTable, WhatIsPrintedIsReadAgain) {
  const std::string csv = print_stock(shelf());
  EXPECT_NE(csv.find("tint-7,K7,0400,\"7 \"\"copper\"\"\",L1,2027-05-31,60,0.15\r\n"), std::string::npos) << csv;
  const auto lines = read_stock_table(csv, Moved::count, shelf());
  ASSERT_TRUE(lines);
  EXPECT_EQ((*lines)[0].move->grams, 60);
  EXPECT_FALSE((*lines)[1].move);  // nobody counted it: an empty cell is no number
}

}  // namespace
}  // namespace strandline::wire
