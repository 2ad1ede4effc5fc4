// What stock and handed-in visits tell over some weeks, and the house's rules of price.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/wire/json.h"

namespace strandline::wire {

struct ReportWeek {
  std::string week;  // its Monday
  double use_g = 0, waste_g = 0, cost = 0;
};

struct ReportPerson {
  std::string by;  // id; empty = nobody signed in
  int visits = 0;
  double use_g = 0, waste_g = 0, waste_share = 0;  // of what was mixed
};

struct ReportBowl {
  std::string visit, bowl, at;
  double use_g = 0, waste_g = 0;
};

struct ReportProduct {
  std::string product, name;
  double use_g = 0, waste_g = 0, written_off_g = 0, received_g = 0, cost = 0;
};

struct PricePoint {
  std::string product, at;
  double per_g = 0;
};

struct ReportVisit {
  std::string visit, at, by;
  std::optional<double> planned_min, real_min;
  std::optional<double> price;  // the middle of what was agreed
  double cost = 0;              // of what was mixed, as far as it is known
};

struct ReportRange {
  std::string range, name;
  int zones = 0;
  double mean_off = 0, mean_abs = 0, within_half = 0, same_tone = 0;  // levels, reached − foreseen; shares
};

struct ReportCause {
  std::string cause;
  int visits = 0;
};

struct StockReport {
  std::string shelf, currency, from, until;  // civil dates, both included
  double use_g = 0, waste_g = 0, written_off_g = 0, received_g = 0;
  double cost = 0;       // of what was used, thrown away and written off, where it is known what was paid
  double no_cost_g = 0;  // of these, whose price nobody knows
  double paid = 0;       // for what was received
  std::vector<ReportWeek> weeks;
  std::vector<ReportPerson> people;
  std::vector<ReportBowl> bowls;  // the most wasteful first
  std::vector<ReportProduct> products;
  std::vector<PricePoint> prices;
  std::vector<ReportVisit> visits;
  std::vector<ReportRange> ranges;
  int redone = 0;
  std::vector<ReportCause> causes;
};

enum class PriceBy { result, time, cls };

struct ClassPrice {
  std::string cls;
  double price = 0;
};

// What a visit costs the client, before anybody changes it by hand.
struct PriceRules {
  PriceBy by = PriceBy::time;
  double base = 0;                  // of every visit
  double per_hour = 0;              // by time, and of a correction
  double per_level = 0;             // by result: for each level that the zone moved most is moved
  std::vector<ClassPrice> classes;  // by class: of each class that is mixed
  double products_times = 0;        // what was paid for the products, so many times
  double correction_levels = 0;     // from so many levels on it is a correction, by time at least; 0 = never
  double round_to = 0;              // up to a multiple of this; 0 = not
  double spread_share = 0;          // the upper end of the range above the lower
};

struct PriceAsked {
  double minutes = 0, levels = 0, cost = 0;
  std::vector<std::string> classes;
  bool redo = false;  // a visit that does an earlier one again costs nothing
};

struct Price {
  double from = 0, to = 0;
  std::string why;  // "result", "time", "cls", "correction", "redo", "no_rules"
};

Json answer_json(const StockReport& report);
Json prices_json(const PriceRules& rules);
Result<PriceRules> read_price_rules(const Json& json);
Result<PriceAsked> read_price_asked(const Json& json);
Json price_json(const Price& price);

}  // namespace strandline::wire
