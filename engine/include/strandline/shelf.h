// What the salon owns: ranges with their rules, shades and what each is known by, developers, everything beside them.
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

// A process with one bowl. That of a range is its usual one, by which its swatches were made and its names are kept; a
// bowl is predicted relative to it.
struct ReferenceProcess {
  double developer_percent = 6;  // hydrogen peroxide in the bottle, % w/w
  double ratio = 1;              // grams of developer per gram of colour; 0 = used as it is
  double minutes = 35;
};

struct Range {
  std::string id, maker, name;
  ProductClass cls = ProductClass::permanent;
  std::optional<ReferenceProcess> reference;  // absent: as is usual for the class
  std::vector<double> ratios;                 // the only ones allowed
  std::vector<double> developer_percents;     // bottle strengths allowed
  MinuteWindow minutes;
  double level_min = 1, level_max = 10;
  std::optional<double> base_level_min;  // high-lift: natural level from which it may be used
  bool bottle_blends = false;            // two neighbouring bottles may be mixed in 1.5 % steps
  bool scalp_allowed = true;
  std::optional<Consistency> consistency;  // absent: as is usual for the class
  std::optional<double> alkaline_lift;     // pH factor on lightening, permanent tint = 1; absent: usual for the class
  double mix_life_min = 60;
  double mix_warn_min = 30;
  double corrector_max_share = 0.25;  // of the colour part
};

// What a shade's colour is known by, most certain first.
enum class KnownBy {
  white_hair,   // a swatch measured on white hair by the range's reference process
  stated_hair,  // a swatch measured on other hair, which is stated with the process
  name          // its level and tone word alone: what the range's class promises by such a name
};
inline constexpr int kKnownBy = 3;

// The hair a swatch was made on, as it was read before, and the process where it was not the range's reference.
struct SwatchHair {
  double level = 0;  // 1…10
  Tone tone = Tone::natural;
  ColourOrigin origin = ColourOrigin::natural;
  std::optional<double> natural_level = {};  // under a colour; absent = as `level`
  double porosity = 1;                       // 0 low … 3 very high
  std::optional<ReferenceProcess> process = {};
};

// One thing on the shelf that goes into or beside a bowl.
struct Product {
  std::string id, range, name;
  ProductClass cls = ProductClass::permanent;
  double level = 0;  // by its name; 0 where it has none
  Tone tone = Tone::natural;
  std::optional<KnownBy> known_by;      // absent = by what is given: see known_by()
  std::optional<Spectrum> swatch;       // colour products: reflectance measured, 31 bands, 0…1
  std::optional<SwatchHair> swatch_on;  // absent = white hair by the range's reference process
  std::optional<Spectrum> offer;        // found once by learn(); never read from a document
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

// The range's own, else the usual of the class (knowledge/uptake/promise.json, common practice).
ReferenceProcess reference(const Range&);
double alkaline_lift(const Range&);

// Does a bowl get colour from products of this class, clear among them?
bool has_colour(const Product& product);
// What is said, or by what is given: a swatch on stated hair, a swatch on white hair, else the name.
KnownBy known_by(const Product& product);

const Range* find_range(const Shelf&, std::string_view id);
const Product* find_product(const Shelf&, std::string_view id);

}  // namespace strandline
