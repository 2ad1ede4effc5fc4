// A whole line of sixty shades from twelve of them (knowledge/learning).
#include <algorithm>

#include "evidence/line_trial.h"
#include "evidence/rows.h"
#include "evidence/truth_line.h"
#include "strandline/colour.h"
#include "strandline/line.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

Shelf shelf_of(const std::vector<truth::LineShade>& line) {
  Shelf shelf;
  Range range;
  range.id = range.maker = "r", range.cls = ProductClass::permanent;
  shelf.ranges = {range};
  for (const truth::LineShade& s : line) {
    Product p;
    p.id = std::to_string(shelf.products.size()), p.range = "r", p.cls = ProductClass::permanent;
    p.level = s.level, p.tone = static_cast<Tone>(s.tone);
    shelf.products.push_back(p);
  }
  return shelf;
}

double median(std::vector<double> v) {
  const auto middle = v.begin() + static_cast<std::ptrdiff_t>(v.size() / 2);
  std::nth_element(v.begin(), middle, v.end());
  return *middle;
}

}  // namespace

LineTrial line_trial(int maker, int swatches) {
  constexpr std::uint64_t kSeed = 20261129;
  const auto line = truth::simulate_line(kSeed, maker);
  Shelf shelf = shelf_of(line);
  const Shelf by_name = shelf;
  for (const std::string& id : line::measure_next(shelf, "r", swatches)) {
    const auto i = static_cast<size_t>(std::stoi(id));
    shelf.products[i].swatch = line[i].measured;
  }
  line::complete(shelf);
  const Weights& daylight = weights(Light::daylight, Observer::cie_1964_10deg);
  std::vector<double> errors, names;
  for (size_t i = 0; i < line.size(); ++i) {
    const Product& p = shelf.products[i];
    const Lab truly = lab(line[i].swatch, daylight);
    const auto off = [&](const Product& q) {
      const Spectrum seen = q.swatch ? *q.swatch : line::swatch_of_load(offered(q, shelf.ranges[0]));
      return delta_e_2000(truly, lab(seen, daylight));
    };
    errors.push_back(off(p)), names.push_back(off(by_name.products[i]));
  }
  return {median(errors), median(names)};
}

void line_rows(Rows& rows) {
  constexpr int kMakers = 10, kFew = 12, kAll = 60;
  std::vector<double> few, all, names;
  for (int maker = 0; maker < kMakers; ++maker) {
    const LineTrial some = line_trial(maker, kFew);
    few.push_back(some.median), names.push_back(some.by_name);
    all.push_back(line_trial(maker, kAll).median);
  }
  const Basis source = simulated("ten simulated makers' lines of 60 shades, equations of their own, seed 20261129");
  rows.within("line.from_12_of_60.median_delta_e_2000", 0, 3, median(few), source);
  rows.within("line.from_12_of_60.worst_maker", 0, 4, *std::max_element(few.begin(), few.end()), source);
  rows.within("line.all_60.median_delta_e_2000", 0, 1.5, median(all), source);
  rows.within("line.names_alone_over_12_swatches", 1.5, 100, median(names) / median(few), source);
}

}  // namespace strandline
