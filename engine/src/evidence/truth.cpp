#include "evidence/truth.h"

#include <algorithm>
#include <cmath>

#include "evidence/truth_bed.h"
#include "evidence/truth_chemistry.h"
#include "evidence/truth_random.h"
#include "generated/tables.h"

namespace strandline::truth {
namespace {

// The trade's scale: L* of natural hair by level, straight lines between.
double lightness_of(double level) {
  const auto& rows = tables::level_anchors;
  size_t i = 1;
  while (i + 1 < rows.size() && level > rows[i][0]) ++i;
  const double w = (level - rows[i - 1][0]) / (rows[i][0] - rows[i - 1][0]);
  return rows[i - 1][1] + w * (rows[i][1] - rows[i - 1][1]);
}

Known bowl(Random& random) {
  Known k;
  const double pick = random.uniform(0, 1);
  k.kind = pick < 0.65 ? Kind::tint : pick < 0.85 ? Kind::lightener : Kind::demi;
  const bool at_scalp = random.uniform(0, 1) < 0.5;
  k.from_cm = at_scalp ? 0 : 5, k.to_cm = at_scalp ? 2 : 15;
  if (k.kind == Kind::tint) {
    k.bottle_percent = 3 * (1 + std::floor(random.uniform(0, 4)));
    k.minutes = random.uniform(25, 45);
  } else if (k.kind == Kind::lightener) {
    k.bottle_percent = 3 * (1 + std::floor(random.uniform(0, 3)));
    k.ratio = 2, k.minutes = random.uniform(15, 45);
  } else {
    k.bottle_percent = 1.5, k.ratio = 2, k.minutes = random.uniform(10, 20);
  }
  return k;
}

// A neutral brown whose swatch on the range's white hair has the L* of `level`.
Spectrum dye_of_shade(double level, const Bed& bed, const Hair& substrate, Random& random) {
  const double efold = random.normal(150, 25), tilt = random.normal(0, 0.08);
  Spectrum shape;
  for (int b = 0; b < kBands; ++b) {
    const double nm = band_nm(b);
    shape[b] = std::exp(-(nm - 550) / efold) * (1 + tilt * (nm - 550) / 150);
  }
  const double wanted = lightness_of(level) + random.normal(0, 0.8);
  double low = 0, high = 20;
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    Hair dyed = substrate;
    for (int b = 0; b < kBands; ++b) dyed.dye[b] = middle * shape[b];
    (bed.colour(dyed.depth()).l > wanted ? low : high) = middle;
  }
  for (double& d : shape) d *= low;
  return shape;
}

}  // namespace

Case simulate(std::uint64_t seed, int index) {
  Random random(seed, index);
  Case c;
  c.known = bowl(random);
  const Nature nature(random);
  const Bed bed(random), swatch_bed(random);

  // The head as it is.
  const double level = random.uniform(2, 8);
  Hair pigmented = nature.hair(bed, lightness_of(level)), white = nature.white();
  const double white_share = random.uniform(0, 1) < 0.3 ? 0 : random.uniform(0.1, 0.9);
  const double porosity = random.uniform(0.7, 1.6);

  // As it is read: this reader's bias is anywhere within half a level, and no two readings agree.
  c.known.level = level + random.uniform(-0.5, 0.5) + random.normal(0, 0.2);
  c.known.white_share = white_share > 0 ? std::clamp(white_share + random.normal(0, 0.07), 0.02, 0.98) : 0;
  c.known.porosity = porosity + random.normal(0, 0.3);
  const double m = std::clamp(nature.blend_m() + random.uniform(-0.06, 0.06), 0.06, 0.4);
  c.before = bed.blend(pigmented.depth(), white.depth(), white_share, m);

  // What the bowl does.
  const Chemistry chemistry(random, c.known);
  Spectrum dye{};
  if (c.known.kind != Kind::lightener) {
    const double shade = std::min(10.0, std::floor(level) + std::floor(random.uniform(0, 5)));
    dye = dye_of_shade(shade, swatch_bed, nature.typical_white(), random);
    Hair swatch = nature.typical_white();
    swatch.dye = dye;
    c.known.swatch = swatch_bed.reflectance(swatch.depth());
  }
  for (Hair* hair : {&pigmented, &white}) chemistry.treat(*hair, dye, porosity);
  c.after = bed.blend(pigmented.depth(), white.depth(), white_share, m);
  return c;
}

}  // namespace strandline::truth
