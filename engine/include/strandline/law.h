// Law arithmetic: peroxide strengths, mass balance of a mix, and the limits on what touches the head.
//
// Percentages are by weight (w/w) unless the name says wv (gram per 100 mL). Mass balance is exact for w/w
// only; by volume it holds only where percentages are w/v. The limits are those of Regulation (EC) 1223/2009
// Annex III as kept in knowledge/law; a passed check says that no listed limit is exceeded by what was
// declared, and nothing more. Every function refuses negative, infinite and not-a-number input with a Problem
// that names the argument.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/result.h"

namespace strandline::law {

// ---- Peroxide strength
// -------------------------------------------------------------------------------------------

// State at which the released oxygen is measured: 0 degrees C and 1 atm (22.414 L/mol) or 1 bar (22.711
// L/mol).
enum class GasState { one_atm, one_bar };

// "n volumes" = one litre gives n litres of O2: 2 H2O2 -> 2 H2O + O2. Volumes 0 or more; result in % w/v.
Result<double> volume_to_percent_wv(double volumes, GasState state);
Result<double> percent_wv_to_volume(double percent_wv, GasState state);

// What the trade writes on the bottle: 10/20/30/40 volumes as 3/6/9/12 % (common practice).
Result<double> trade_percent(double volumes);

// % w/v = % w/w × density [g/mL]; density above 0.
Result<double> percent_wv_from_ww(double percent_ww, double density_g_per_ml);

// ---- Mixing by mass balance
// --------------------------------------------------------------------------------------

struct Portion {
  double amount = 0;   // gram (or any one unit for all portions), 0 or more
  double percent = 0;  // strength of this portion, any one unit for all portions
};

// Strength of the mix: sum(amount × percent) / sum(amount). At least one amount above 0.
Result<double> blend(const std::vector<Portion>& portions);

struct Dilution {
  double concentrate = 0;
  double diluent = 0;
};

// How much of a stock and of a diluent without active makes `amount` at `wanted`; 0 <= wanted <= stock, stock
// > 0. Water in a cream developer is outside most product instructions.
Result<Dilution> dilute(double stock_percent, double wanted_percent, double amount);

struct Alligation {
  double weaker_parts = 0;    // stronger - wanted
  double stronger_parts = 0;  // wanted - weaker
};

// Parts of two strengths that reach a third; weaker < stronger and wanted within them.
Result<Alligation> alligate(double weaker_percent, double stronger_percent, double wanted_percent);

// Planned grams with part `index` weighed as `weighed`: all parts scaled so that the ratio holds.
// planned[index] > 0.
Result<std::vector<double>> scale_to_weighed(const std::vector<double>& planned, std::size_t index, double weighed);

// Total mass split by ratio parts, e.g. 100 g at {1, 1.5} = {40, 60}.
Result<std::vector<double>> split_by_ratio(double total, const std::vector<double>& ratio);

// ---- Salts
// -------------------------------------------------------------------------------------------------------

// Grams of the entry's reference (the free base; for auxiliaries what the limit is counted as) in one gram of
// `form`
// ("free_base", "sulfate", "hydrochloride", "dihydrochloride", "tetrahydrochloride", …). Absent when not
// tabulated.
std::optional<double> reference_per_gram(std::string_view entry, std::string_view form);

// ---- Limits
// ------------------------------------------------------------------------------------------------------

// What the mix is used for. Thioglycolates and alkaline straighteners have one limit for the public and one
// for the trade.
enum class Use {
  oxidative_dye,
  non_oxidative_dye,
  lightener,
  waving_general,
  waving_professional,
  straightening_general,
  straightening_professional,
  rinse_off_hair,
  leave_on_hair,
  skin,
  nail_hardener
};

// One substance that the maker declares in a product. Give the CAS number, or the entry number with a name.
struct Declared {
  std::string cas;
  std::string entry;
  std::string name;
  std::optional<double> percent;  // w/w in that product, 0…100; absent = present, amount not declared
  std::string basis;              // form the percentage is counted as; empty = the form that the CAS number names
};

// One product in the bowl. Peroxide is given by itself; declare under `declared` only what releases more of
// it.
struct Ingredient {
  std::string id;
  double grams = 0;
  std::optional<double> peroxide_percent;  // w/w as H2O2; absent = unknown, 0 = none
  std::vector<Declared> declared;
  bool fully_declared = false;  // the maker's list of regulated substances is complete
};

using Composition = std::vector<Ingredient>;

// Peroxide on the head: sum(percent × grams) / sum(grams) over all parts, water and colour included.
// The inner value is absent when a part above 0 g has an unknown strength.
Result<std::optional<double>> on_head_peroxide(const Composition& composition);

enum class Status {
  within,              // proven at or under the limit
  over,                // proven above it
  unknown_percentage,  // neither can be proven from what is declared
  not_permitted_use,   // listed, but with no limit for this use
  not_listed           // no entry known here: says nothing about the substance
};

// One entry (for group entries 8 and 9: one substance of it).
struct LimitResult {
  std::string entry;
  std::string substance;
  std::optional<double> on_head_percent;  // in the basis `as`; absent when it cannot be worked out
  double at_least = 0;                    // lower bound of the same
  std::optional<double> cap;
  std::string as;  // what cap and percentage are counted as
  Status status = Status::unknown_percentage;
  bool nitrosamine_conditions = false;
};

// A rule over several entries: the sum of actual over permitted (8, 9, 9a), or a total (212 with 213, only
// when both are present). `scope_doubtful` = an entry whose place in the rule is not known (8a) is in the
// bowl too and not counted.
struct SumResult {
  std::string rule;
  std::vector<std::string> entries;
  std::optional<double> total;
  double at_least = 0;
  double max = 1;
  Status status = Status::unknown_percentage;
  bool scope_doubtful = false;
};

struct LimitReport {
  std::vector<LimitResult> entries;  // in the order of the list, then unlisted substances by name
  std::vector<SumResult> sums;
  std::vector<std::string> not_fully_declared;  // ids of ingredients above 0 g
  // Worst of all: over or not permitted, then unknown, then within. A part that is not fully declared makes
  // it unknown.
  Status overall = Status::within;
};

Result<LimitReport> check_limits(const Composition& composition, Use use);

}  // namespace strandline::law
