#include <algorithm>
#include <cmath>
#include <set>

#include "strandline/levels.h"
#include "strandline/predict.h"
#include "strandline/promise.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

struct Checker {
  Problems problems;
  void within(double v, double low, double high, const char* code, const std::string& path) {
    if (!(v >= low && v <= high))
      problems.push_back(
          {code, path, {{"value", std::to_string(v)}, {"min", std::to_string(low)}, {"max", std::to_string(high)}}});
  }
};

void check_process(const ReferenceProcess& p, const std::string& path, Checker& c) {
  c.within(p.developer_percent, 0, 12, "percent_out_of_range", path + "/developer_percent");
  c.within(p.ratio, 0, 10, "ratio_out_of_range", path + "/ratio");
  c.within(p.minutes, 1, 240, "minutes_out_of_range", path + "/minutes");
}

void check_range(const Range& r, const std::string& path, Checker& c) {
  check_process(reference(r), path + "/reference", c);
  for (size_t i = 0; i < r.ratios.size(); ++i)
    c.within(r.ratios[i], 0, 10, "ratio_out_of_range", path + "/ratios/" + std::to_string(i));
  for (size_t i = 0; i < r.developer_percents.size(); ++i)
    c.within(r.developer_percents[i], 0, 12, "percent_out_of_range", path + "/developer_percents/" + std::to_string(i));
  c.within(r.minutes.min, 0, 240, "minutes_out_of_range", path + "/minutes/min");
  c.within(r.minutes.target, r.minutes.min, 240, "minutes_out_of_range", path + "/minutes/target");
  c.within(r.minutes.max, r.minutes.target, 240, "minutes_out_of_range", path + "/minutes/max");
  c.within(alkaline_lift(r), 0, 5, "lift_out_of_range", path + "/alkaline_lift");
  c.within(r.corrector_max_share, 0, 1, "share_out_of_range", path + "/corrector_max_share");
}

// What a shade says it is known by, against what is given with it.
void check_known(const Product& p, const Shelf& shelf, const std::string& path, Checker& c) {
  auto problem = [&](const char* code, const char* key) {
    c.problems.push_back({code, path + key, {{"product", p.id}}});
  };
  if (!has_colour(p)) {
    if (p.known_by) problem("known_by_without_colour", "/known_by");
    if (p.swatch) problem("known_by_without_colour", "/swatch");
    if (p.swatch_on) problem("known_by_without_colour", "/swatch_on");
    return;
  }
  const KnownBy by = known_by(p);
  if (by == KnownBy::name) {
    if (p.swatch) problem("swatch_besides_name", "/swatch");
    if (!p.swatch && p.swatch_on) problem("swatch_missing", "/swatch_on");
    if (p.cls != ProductClass::clear && !names_colour(p.cls, p.level, p.tone))
      problem("name_is_no_colour", p.level > 0 ? "/tone" : "/level");
    return;
  }
  if (!p.swatch) problem("swatch_missing", "/known_by");
  if (by == KnownBy::white_hair && p.swatch_on) problem("swatch_hair_besides_white", "/swatch_on");
  if (by != KnownBy::stated_hair) return;
  if (!p.swatch_on) return problem("swatch_hair_missing", "/known_by");
  const SwatchHair& hair = *p.swatch_on;
  const size_t before = c.problems.size();
  c.within(hair.level, level_lowest, level_highest, "level_out_of_range", path + "/swatch_on/level");
  if (hair.natural_level)
    c.within(*hair.natural_level, level_lowest, level_highest, "level_out_of_range", path + "/swatch_on/natural_level");
  c.within(hair.porosity, 0, 3, "porosity_out_of_range", path + "/swatch_on/porosity");
  if (hair.process) check_process(*hair.process, path + "/swatch_on/process", c);
  const Range* range = find_range(shelf, p.range);
  if (!p.swatch || !range || c.problems.size() > before) return;
  // A shade only takes light: hair that came out lighter everywhere than it would without colour was not this hair.
  const Spectrum offer = offered(p, *range);
  if (p.cls != ProductClass::clear && std::all_of(offer.begin(), offer.end(), [](double v) { return v <= 0; }))
    problem("swatch_lighter_than_its_hair", "/swatch");
}

void check_product(const Product& p, const Shelf& shelf, const std::string& path, Checker& c) {
  if (!p.range.empty() && !find_range(shelf, p.range))
    c.problems.push_back({"unknown_range", path + "/range", {{"range", p.range}}});
  if (p.swatch)
    for (int b = 0; b < kBands; ++b)
      c.within((*p.swatch)[b], 0, 1, "reflectance_out_of_range", path + "/swatch/" + std::to_string(b));
  check_known(p, shelf, path, c);
  if (p.level != 0) c.within(p.level, 1, 12, "level_out_of_range", path + "/level");
  c.within(p.peroxide_percent, 0, 12, "percent_out_of_range", path + "/peroxide_percent");
  c.within(p.stock_g, 0, 1e6, "grams_out_of_range", path + "/stock_g");
  c.within(p.package_g, 0, 1e5, "grams_out_of_range", path + "/package_g");
  c.within(p.price_per_g, 0, 1e4, "price_out_of_range", path + "/price_per_g");
  c.within(p.density, 0.1, 5, "density_out_of_range", path + "/density");
}

template <class T>
void check_ids(const std::vector<T>& all, const std::string& path, Checker& c) {
  std::set<std::string> seen;
  for (size_t i = 0; i < all.size(); ++i) {
    const std::string here = path + "/" + std::to_string(i) + "/id";
    if (all[i].id.empty())
      c.problems.push_back({"name_missing", here, {}});
    else if (!seen.insert(all[i].id).second)
      c.problems.push_back({"name_used_twice", here, {{"name", all[i].id}}});
  }
}

}  // namespace

Problems check(const Shelf& shelf) {
  Checker c;
  if (shelf.products.empty()) c.problems.push_back({"shelf_is_empty", "/shelf/products", {}});
  constexpr size_t kRangesMost = 64, kProductsMost = 2000;
  if (shelf.ranges.size() > kRangesMost || shelf.products.size() > kProductsMost)
    c.problems.push_back({"shelf_too_large", "/shelf", {{"max", std::to_string(kProductsMost)}}});
  check_ids(shelf.ranges, "/shelf/ranges", c);
  check_ids(shelf.products, "/shelf/products", c);
  for (size_t i = 0; i < shelf.ranges.size(); ++i)
    check_range(shelf.ranges[i], "/shelf/ranges/" + std::to_string(i), c);
  for (size_t i = 0; i < shelf.products.size(); ++i)
    check_product(shelf.products[i], shelf, "/shelf/products/" + std::to_string(i), c);
  return c.problems;
}

}  // namespace strandline
