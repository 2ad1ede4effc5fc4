#include "strandline/line.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "evidence/line_trial.h"
#include "strandline/colour.h"
#include "strandline/levels.h"
#include "strandline/treatment.h"

namespace strandline::line {
namespace {

Shelf shelf() {
  Shelf s;
  Range range;
  range.id = range.maker = "r", range.cls = ProductClass::permanent;
  s.ranges = {range};
  for (int level = 3; level <= 8; ++level)
    for (const Tone tone : {Tone::natural, Tone::copper}) {
      Product p;
      p.id = std::to_string(level) + std::string(word(tone)), p.range = "r", p.cls = ProductClass::permanent;
      p.level = level, p.tone = tone;
      s.products.push_back(p);
    }
  return s;
}

TEST(Line, TwelveSwatchesTellSixtyShades) {
  std::vector<double> few, names;
  for (int maker = 0; maker < 7; ++maker) {
    const LineTrial trial = line_trial(maker, 12);
    few.push_back(trial.median), names.push_back(trial.by_name);
  }
  std::sort(few.begin(), few.end()), std::sort(names.begin(), names.end());
  EXPECT_LT(few[3], 3);
  EXPECT_LT(few[3], 0.7 * names[3]);
  EXPECT_LT(line_trial(0, 60).median, 1.5);
}

// Swatches all deeper than their names: the shades between come out deeper too.
TEST(Line, GoesWhereItsSwatchesGo) {
  Shelf s = shelf();
  for (const char* id : {"3natural", "5natural", "8natural"})
    for (Product& p : s.products)
      if (p.id == id) {
        Spectrum load = offered(p, s.ranges[0]);
        for (double& v : load) v *= 1.4;
        p.swatch = swatch_of_load(load);
      }
  const Shelf before = s;
  complete(s);
  for (size_t i = 0; i < s.products.size(); ++i) {
    const Product& p = s.products[i];
    EXPECT_EQ(p.offer.has_value(), !p.swatch) << p.id;
    if (p.offer) EXPECT_GT(mean(*p.offer), 1.1 * mean(offered(before.products[i], s.ranges[0]))) << p.id;
  }
}

TEST(Line, TwoSwatchesAreNoLine) {
  Shelf s = shelf();
  s.products[0].swatch = s.products[5].swatch = swatch_of({30, 5, 8});
  complete(s);
  for (const Product& p : s.products) EXPECT_FALSE(p.offer);
}

TEST(Line, AsksForWhatTellsMostAndNeverForWhatIsMeasured) {
  Shelf s = shelf();
  s.products[2].swatch = swatch_of({30, 5, 8});
  const auto next = measure_next(s, "r", 4);
  ASSERT_EQ(next.size(), 4u);
  for (const std::string& id : next) EXPECT_NE(id, s.products[2].id);
  EXPECT_EQ(measure_next(s, "r", 100).size(), 11u);
  EXPECT_TRUE(measure_next(s, "no range", 3).empty());
  // Each swatch makes the line surer.
  const auto one = sureness(s, "r");
  for (Product& p : s.products)
    if (p.id == next[0]) p.swatch = swatch_of({40, 8, 15});
  const auto two = sureness(s, "r");
  for (size_t i = 0; i < one.size(); ++i) EXPECT_LE(two[i].sd, one[i].sd + 1e-12);
}

TEST(Line, LabAloneMakesASwatchOfThatColour) {
  const Lab wanted{42, 9, 18};
  const Lab got = lab(swatch_of(wanted), weights(Light::daylight, Observer::cie_1964_10deg));
  EXPECT_LT(delta_e_2000(wanted, got), 0.2);
}

}  // namespace
}  // namespace strandline::line
