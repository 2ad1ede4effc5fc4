// What the salon owns: ranges with their rules, shades with their swatches, developers, and everything beside them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/head.h"
#include "strandline/law.h"
#include "strandline/spectrum.h"

namespace strandline {

enum class ProductClass {
  permanent,
  high_lift,
  demi,
  lightener,
  clear,
  corrector,
  direct,
  developer,
  filler,
  remover,
  pre_treatment,
  after_treatment,
  home_care
};

struct MinuteWindow {
  double min = 0, target = 0, max = 0;
};

// How a mix leaves the bowl: a cream is brushed on, a liquid poured.
enum class Consistency { cream, liquid };

// The process by which a range's swatches were made; a bowl is predicted relative to it.
struct ReferenceProcess {
  double developer_percent = 6;  // hydrogen peroxide in the bottle, % w/w
  double ratio = 1;              // grams of developer per gram of colour; 0 = used as it is
  double minutes = 35;
};

// Measured results this salon has of a range; a likelihood is shown as a number only where there are any.
struct RangeResults {
  int measured = 0;
  bool simulated = false;  // invented together with the range, and said so
};

struct Range {
  std::string id, maker, name;
  ProductClass cls = ProductClass::permanent;
  ReferenceProcess reference;
  std::vector<double> ratios;              // the only ones allowed
  std::vector<double> developer_percents;  // bottle strengths allowed
  MinuteWindow minutes;
  double level_min = 1, level_max = 10;
  std::optional<double> base_level_min;  // high-lift: natural level from which it may be used
  bool bottle_blends = false;            // two neighbouring bottles may be mixed in 1.5 % steps
  bool scalp_allowed = true;
  std::optional<Consistency> consistency;  // absent: as is usual for the class
  double alkaline_lift = 1;                // class and pH factor on lightening, permanent tint = 1
  double mix_life_min = 60;
  double mix_warn_min = 30;
  double corrector_max_share = 0.25;  // of the colour part
  RangeResults results;
};

// One thing on the shelf that goes into or beside a bowl.
struct Product {
  std::string id, range, name;
  ProductClass cls = ProductClass::permanent;
  double level = 0;  // of the swatch; 0 where it has none
  Tone tone = Tone::natural;
  // Colour products: reflectance of the swatch, 31 bands, on white hair by the range's reference process.
  std::optional<Spectrum> swatch;
  double peroxide_percent = 0;          // developers
  std::vector<law::Declared> declared;  // regulated substances the maker names
  bool fully_declared = false;
  double stock_g = 0;
  double package_g = 60;
  double price_per_g = 0;
  double density = 1;
};

struct Shelf {
  std::string id, title, currency = "EUR";
  bool invented = false;
  std::vector<Range> ranges;
  std::vector<Product> products;
};

// The range's own, else the usual: demi, filler, remover and treatments are liquids, all else is a cream (common
// practice).
Consistency consistency(const Range&);

const Range* find_range(const Shelf&, std::string_view id);
const Product* find_product(const Shelf&, std::string_view id);

}  // namespace strandline
