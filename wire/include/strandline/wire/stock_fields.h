// Movements of stock in JSON.
#pragma once

#include "strandline/wire/encode.h"
#include "strandline/wire/stock.h"
#include "strandline/wire/stock_view.h"
#include "strandline/wire/words.h"

namespace strandline::wire {

inline constexpr double kMoveMostG = 1e6;

template <>
struct Words<Moved> {
  static constexpr std::string_view name = "Moved";
  static constexpr WordList<Moved, 6> list{{{Moved::receive, "receive"},
                                            {Moved::use, "use"},
                                            {Moved::waste, "waste"},
                                            {Moved::count, "count"},
                                            {Moved::write_off, "write_off"},
                                            {Moved::undo, "undo"}}};
};

template <>
struct Fields<StockWish> {
  static constexpr std::string_view name = "StockWish";
  using W = StockWish;
  static constexpr auto list = std::make_tuple(
      field("what", &W::what, {.required = true}), field("product", &W::product, {.max_length = 60}),
      field("grams", &W::grams, {.min = -kMoveMostG, .max = kMoveMostG}),
      field("batch", &W::batch, {.max_length = 60, .note = "as printed; empty = not known"}),
      field("expires", &W::expires, {.date = true, .note = "YYYY-MM-DD; empty = not known"}),
      field("paid", &W::paid, {.min = 0, .max = 1e6, .note = "for all of it"}), field("reason", &W::reason),
      field("undoes", &W::undoes, {.max_length = 80, .note = "id of the movement that did not happen"}),
      field("seen", &W::seen, {.min = 0, .max = 1e9, .note = "movements of the product known to who counted"}));
};

template <>
struct Fields<StockLot> {
  static constexpr std::string_view name = "StockLot";
  using L = StockLot;
  static constexpr auto list =
      std::make_tuple(field("batch", &L::batch, {.max_length = 60}), field("expires", &L::expires, {.date = true}),
                      field("grams", &L::grams, {.min = -kMoveMostG, .max = kMoveMostG}));
};

template <>
struct Fields<StockMove> {
  static constexpr std::string_view name = "StockMove";
  using M = StockMove;
  static constexpr auto list = std::make_tuple(
      inlined(&M::wish), field("visit", &M::visit, {.max_length = 80}), field("bowl", &M::bowl, {.max_length = 20}),
      field("mix", &M::mix, {.min = 0, .max = 99}), field("lots", &M::lots, {.max_items = 200}),
      field("short_g", &M::short_g,
            {.min = -kMoveMostG, .max = kMoveMostG, .note = "went, though nobody had counted it in"}));
};

template <>
struct Words<StockIs> {
  static constexpr std::string_view name = "StockIs";
  static constexpr WordList<StockIs, 5> list{{{StockIs::not_counted, "not_counted"},
                                              {StockIs::enough, "enough"},
                                              {StockIs::low, "low"},
                                              {StockIs::none, "none"},
                                              {StockIs::short_of, "short_of"}}};
};

template <>
struct Fields<StockBatch> {
  static constexpr std::string_view name = "StockBatch";
  using B = StockBatch;
  static constexpr Rules always{.required = true};
  static constexpr auto list = std::make_tuple(field("batch", &B::batch, always), field("expires", &B::expires, always),
                                               field("grams", &B::grams, always), field("expired", &B::expired, always),
                                               field("soon", &B::soon, always), field("cost_per_g", &B::cost_per_g));
};

template <>
struct Fields<StockItem> {
  static constexpr std::string_view name = "StockItem";
  using I = StockItem;
  static constexpr Rules always{.required = true};
  static constexpr auto list = std::make_tuple(
      field("product", &I::product, always), field("name", &I::name, always), field("code", &I::code, always),
      field("barcode", &I::barcode, always), field("range", &I::range, always),
      field("range_name", &I::range_name, always), field("cls", &I::cls, always), field("package_g", &I::package_g),
      field("price_per_g", &I::price_per_g), field("is", &I::is, always), field("grams", &I::grams, always),
      field("short_g", &I::short_g, {.required = true, .note = "went, though nobody had counted it in"}),
      field("batches", &I::batches, always), field("seen", &I::seen, {.required = true, .note = "for who counts"}),
      field("counted_at", &I::counted_at, always), field("daily_g", &I::daily_g, always),
      field("days_left", &I::days_left), field("order_g", &I::order_g, {.required = true, .note = "whole packages"}));
};

template <>
struct Fields<StockView> {
  static constexpr std::string_view name = "StockView", verb = "stock";
  using V = StockView;
  static constexpr Rules always{.required = true};
  static constexpr auto list = std::make_tuple(
      field("shelf", &V::shelf, always), field("title", &V::title, always), field("currency", &V::currency, always),
      field("today", &V::today, always), field("items", &V::items, {.required = true, .max_items = 20000}));
};

}  // namespace strandline::wire
