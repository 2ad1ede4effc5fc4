#include <cmath>
#include <set>

#include "strandline/predict.h"

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

void check_range(const Range& r, const std::string& path, Checker& c) {
  c.within(r.reference.developer_percent, 0, 12, "percent_out_of_range", path + "/reference/developer_percent");
  c.within(r.reference.ratio, 0, 10, "ratio_out_of_range", path + "/reference/ratio");
  c.within(r.reference.minutes, 1, 240, "minutes_out_of_range", path + "/reference/minutes");
  for (size_t i = 0; i < r.ratios.size(); ++i)
    c.within(r.ratios[i], 0, 10, "ratio_out_of_range", path + "/ratios/" + std::to_string(i));
  for (size_t i = 0; i < r.developer_percents.size(); ++i)
    c.within(r.developer_percents[i], 0, 12, "percent_out_of_range", path + "/developer_percents/" + std::to_string(i));
  c.within(r.minutes.min, 0, 240, "minutes_out_of_range", path + "/minutes/min");
  c.within(r.minutes.target, r.minutes.min, 240, "minutes_out_of_range", path + "/minutes/target");
  c.within(r.minutes.max, r.minutes.target, 240, "minutes_out_of_range", path + "/minutes/max");
  c.within(r.alkaline_lift, 0, 5, "lift_out_of_range", path + "/alkaline_lift");
  c.within(r.corrector_max_share, 0, 1, "share_out_of_range", path + "/corrector_max_share");
}

void check_product(const Product& p, const Shelf& shelf, const std::string& path, Checker& c) {
  if (!p.range.empty() && !find_range(shelf, p.range))
    c.problems.push_back({"unknown_range", path + "/range", {{"range", p.range}}});
  if (p.swatch)
    for (int b = 0; b < kBands; ++b)
      c.within((*p.swatch)[b], 0, 1, "reflectance_out_of_range", path + "/swatch/" + std::to_string(b));
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
