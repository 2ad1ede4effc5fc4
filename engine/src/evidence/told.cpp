#include "evidence/told.h"

#include "generated/constants.h"

namespace strandline {
namespace {

ColourOrigin origin_of(truth::Past past) {
  if (past == truth::Past::tinted) return ColourOrigin::tinted;
  return past == truth::Past::lightened ? ColourOrigin::lightened : ColourOrigin::natural;
}

Tone tone_of(truth::Word word) { return static_cast<Tone>(word); }
static_assert(static_cast<int>(truth::Word::violet) == static_cast<int>(Tone::violet) &&
              static_cast<int>(truth::Word::green) == static_cast<int>(Tone::green) && truth::kWords == kTones);

}  // namespace

Head head_of(const truth::Known& k) {
  const Constants c;
  Span s;
  s.id = "span";
  s.from_cm = k.from_cm, s.to_cm = k.to_cm;
  s.porosity = {k.porosity, c.reading_porosity_sd};
  s.resistance = k.resistance;
  Population pigmented;
  pigmented.share = {1 - k.white_share, 0};
  pigmented.level = {k.level, c.reading_level_sd};
  pigmented.tone = tone_of(k.tone);
  pigmented.origin = origin_of(k.past);
  if (k.past != truth::Past::natural) pigmented.natural_level = {k.natural_level, c.reading_level_sd};
  s.populations = {pigmented};
  if (k.white_share > 0) {
    Population white;
    white.kind = FibreKind::white;
    white.share = {k.white_share, c.reading_white_sd_percent / 100};
    s.populations.push_back(white);
  }
  Head head;
  head.areas.resize(1);
  head.areas[0].id = "area";
  head.areas[0].spans = {s};
  return head;
}

Kit kit_of(const truth::Bowl& b) {
  Range r;
  r.id = r.maker = "r";
  Product shade, developer;
  shade.id = "s", shade.range = "r", shade.swatch = b.swatch;
  switch (b.cls) {
    case truth::BowlClass::permanent:
      r.cls = ProductClass::permanent, r.reference = ReferenceProcess{6, 1, 35}, r.alkaline_lift = 1;
      break;
    case truth::BowlClass::demi:
      r.cls = ProductClass::demi, r.reference = ReferenceProcess{1.5, 2, 20}, r.alkaline_lift = 0.15;
      break;
    case truth::BowlClass::lightener:
      r.cls = ProductClass::lightener, shade.swatch.reset();
      break;
    case truth::BowlClass::remover:
      r.cls = ProductClass::remover, shade.swatch.reset();
      break;
  }
  shade.cls = r.cls;
  developer.id = "d", developer.cls = ProductClass::developer, developer.peroxide_percent = b.bottle_percent;
  Kit kit;
  kit.shelf.ranges = {r};
  kit.shelf.products = {shade, developer};
  kit.formula.range = "r";
  kit.formula.parts = {{"s", 30}, {"d", 30 * b.ratio}};
  kit.formula.minutes = b.minutes;
  return kit;
}

Result<BowlChemistry> bowl_of(const truth::Bowl& b) {
  const Kit kit = kit_of(b);
  return chemistry(kit.formula, kit.shelf);
}

}  // namespace strandline
