// Reports and prices in JSON.
#pragma once

#include "strandline/wire/encode.h"
#include "strandline/wire/stock_report.h"
#include "strandline/wire/words.h"

namespace strandline::wire {

inline constexpr Rules report_always{.required = true};
inline constexpr Rules report_list{.required = true, .max_items = 100000};
inline constexpr Rules a_price{.min = 0, .max = 1e6};

template <>
struct Fields<ReportWeek> {
  static constexpr std::string_view name = "ReportWeek";
  using W = ReportWeek;
  static constexpr auto list =
      std::make_tuple(field("week", &W::week, report_always), field("use_g", &W::use_g, report_always),
                      field("waste_g", &W::waste_g, report_always), field("cost", &W::cost, report_always));
};

template <>
struct Fields<ReportPerson> {
  static constexpr std::string_view name = "ReportPerson";
  using P = ReportPerson;
  static constexpr auto list =
      std::make_tuple(field("by", &P::by, report_always), field("visits", &P::visits, report_always),
                      field("use_g", &P::use_g, report_always), field("waste_g", &P::waste_g, report_always),
                      field("waste_share", &P::waste_share, report_always));
};

template <>
struct Fields<ReportBowl> {
  static constexpr std::string_view name = "ReportBowl";
  using B = ReportBowl;
  static constexpr auto list =
      std::make_tuple(field("visit", &B::visit, report_always), field("bowl", &B::bowl, report_always),
                      field("at", &B::at, report_always), field("use_g", &B::use_g, report_always),
                      field("waste_g", &B::waste_g, report_always));
};

template <>
struct Fields<ReportProduct> {
  static constexpr std::string_view name = "ReportProduct";
  using P = ReportProduct;
  static constexpr auto list =
      std::make_tuple(field("product", &P::product, report_always), field("name", &P::name, report_always),
                      field("use_g", &P::use_g, report_always), field("waste_g", &P::waste_g, report_always),
                      field("written_off_g", &P::written_off_g, report_always),
                      field("received_g", &P::received_g, report_always), field("cost", &P::cost, report_always));
};

template <>
struct Fields<PricePoint> {
  static constexpr std::string_view name = "PricePoint";
  using P = PricePoint;
  static constexpr auto list =
      std::make_tuple(field("product", &P::product, report_always), field("at", &P::at, report_always),
                      field("per_g", &P::per_g, report_always));
};

template <>
struct Fields<ReportVisit> {
  static constexpr std::string_view name = "ReportVisit";
  using V = ReportVisit;
  static constexpr auto list = std::make_tuple(field("visit", &V::visit, report_always),
                                               field("at", &V::at, report_always), field("by", &V::by, report_always),
                                               field("planned_min", &V::planned_min), field("real_min", &V::real_min),
                                               field("price", &V::price), field("cost", &V::cost, report_always));
};

template <>
struct Fields<ReportRange> {
  static constexpr std::string_view name = "ReportRange";
  using R = ReportRange;
  static constexpr auto list = std::make_tuple(
      field("range", &R::range, report_always), field("name", &R::name, report_always),
      field("zones", &R::zones, report_always),
      field("mean_off", &R::mean_off, {.required = true, .note = "levels, reached less foreseen"}),
      field("mean_abs", &R::mean_abs, report_always), field("within_half", &R::within_half, report_always),
      field("same_tone", &R::same_tone, report_always));
};

template <>
struct Fields<ReportCause> {
  static constexpr std::string_view name = "ReportCause";
  static constexpr auto list = std::make_tuple(field("cause", &ReportCause::cause, report_always),
                                               field("visits", &ReportCause::visits, report_always));
};

template <>
struct Fields<StockReport> {
  static constexpr std::string_view name = "StockReport", verb = "stock-report";
  using R = StockReport;
  static constexpr auto list =
      std::make_tuple(field("shelf", &R::shelf, report_always), field("currency", &R::currency, report_always),
                      field("from", &R::from, report_always), field("until", &R::until, report_always),
                      field("use_g", &R::use_g, report_always), field("waste_g", &R::waste_g, report_always),
                      field("written_off_g", &R::written_off_g, report_always),
                      field("received_g", &R::received_g, report_always), field("cost", &R::cost, report_always),
                      field("no_cost_g", &R::no_cost_g, {.required = true, .note = "whose price nobody knows"}),
                      field("paid", &R::paid, report_always), field("weeks", &R::weeks, report_list),
                      field("people", &R::people, report_list), field("bowls", &R::bowls, report_list),
                      field("products", &R::products, report_list), field("prices", &R::prices, report_list),
                      field("visits", &R::visits, report_list), field("ranges", &R::ranges, report_list),
                      field("redone", &R::redone, report_always), field("causes", &R::causes, report_list));
};

template <>
struct Words<PriceBy> {
  static constexpr std::string_view name = "PriceBy";
  static constexpr WordList<PriceBy, 3> list{
      {{PriceBy::result, "result"}, {PriceBy::time, "time"}, {PriceBy::cls, "cls"}}};
};

template <>
struct Fields<ClassPrice> {
  static constexpr std::string_view name = "ClassPrice";
  static constexpr auto list =
      std::make_tuple(field("cls", &ClassPrice::cls, {.required = true, .max_length = 40}),
                      field("price", &ClassPrice::price, {.required = true, .min = 0, .max = 1e6}));
};

template <>
struct Fields<PriceRules> {
  static constexpr std::string_view name = "PriceRules";
  using P = PriceRules;
  static constexpr auto list = std::make_tuple(
      field("by", &P::by, report_always), field("base", &P::base, a_price), field("per_hour", &P::per_hour, a_price),
      field("per_level", &P::per_level, a_price), field("classes", &P::classes, {.max_items = 20}),
      field("products_times", &P::products_times, {.min = 0, .max = 20}),
      field("correction_levels", &P::correction_levels, {.min = 0, .max = 10, .note = "0 = never"}),
      field("round_to", &P::round_to, {.min = 0, .max = 1000}),
      field("spread_share", &P::spread_share, {.min = 0, .max = 2}));
};

template <>
struct Fields<PriceAsked> {
  static constexpr std::string_view name = "PriceAsked";
  using P = PriceAsked;
  static constexpr auto list =
      std::make_tuple(field("minutes", &P::minutes, {.required = true, .min = 0, .max = 1440}),
                      field("levels", &P::levels, {.min = 0, .max = 10, .note = "of the zone that moves most"}),
                      field("cost", &P::cost, {.min = 0, .max = 1e6, .note = "paid for what is mixed"}),
                      field("classes", &P::classes, {.max_items = 20}), field("redo", &P::redo));
};

template <>
struct Fields<Price> {
  static constexpr std::string_view name = "Price", verb = "price";
  static constexpr auto list =
      std::make_tuple(field("from", &Price::from, report_always), field("to", &Price::to, report_always),
                      field("why", &Price::why, report_always));
};

}  // namespace strandline::wire
