#include "invented.h"

#include <algorithm>
#include <cmath>

#include "strandline/fibre.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline::scoreboard {
namespace {

double bell(int b, double peak, double sd) {
  const double x = (band_nm(b) - peak) / sd;
  return std::exp(-x * x / 2);
}

// White hair with a brown and three bands; the brown is halved in until L* is the wanted one.
Spectrum swatch(double lightness, double yellow, double red, double blue) {
  const Spectrum keratin = optical_depth(white_fibre(), pigments(Constants{}));
  auto dyed = [&](double amount) {
    Spectrum tau = keratin;
    for (int b = 0; b < kBands; ++b)
      tau[b] += amount * (std::exp(-(band_nm(b) - 550) / 200) + yellow * bell(b, 440, 42) + red * bell(b, 515, 40) +
                          blue * bell(b, 605, 46));
    return reflectance(tau);
  };
  double low = 0, high = 12;
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    const Lab seen = lab(dyed(middle), weights(Light::daylight, Observer::cie_1964_10deg));
    (seen.l > lightness ? low : high) = middle;
  }
  return dyed((low + high) / 2);
}

// Yellow, red and blue beside the brown that a tone word stands for.
struct Bands {
  double yellow, red, blue;
};
Bands bands_of(Tone tone) {
  switch (tone) {
    case Tone::ash:
      return {0, 0.05, 0.45};
    case Tone::violet:
      return {0, 0.5, 0.4};
    case Tone::beige:
      return {0.2, 0.2, 0.15};
    case Tone::gold:
      return {0.7, 0.1, 0};
    case Tone::copper:
      return {0.7, 0.7, 0};
    case Tone::red:
      return {0.2, 1.3, 0};
    case Tone::green:
      return {0.4, 0, 0.6};
    default:
      return {0.05, 0.05, 0.05};
  }
}

Population fibres(FibreKind kind, double share, double level) {
  Population p;
  p.name = kind == FibreKind::white ? "white" : "pigmented";
  p.kind = kind;
  p.share = {share, std::min(0.05, share / 3)};
  p.level = {level, 0.35};
  return p;
}

Span span(const std::string& id, double from, double to, double white, double level, double porosity) {
  Span s;
  s.id = id;
  s.from_cm = from;
  s.to_cm = to;
  s.populations.push_back(fibres(FibreKind::pigmented, 1 - white, level));
  if (white > 0) s.populations.push_back(fibres(FibreKind::white, white, 10));
  s.porosity = {porosity, 0.3};
  return s;
}

constexpr Tone kWished[] = {Tone::natural, Tone::natural, Tone::ash, Tone::beige, Tone::gold, Tone::copper, Tone::red};

ZoneAim wish(const std::string& zone, double level, Tone tone) {
  ZoneAim w;
  w.zone = zone;
  w.level = std::clamp(level, level_lowest, level_highest);
  w.tone = tone;
  return w;
}

}  // namespace

double Seeded::uniform(double low, double high) {
  state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
  return low + (high - low) * static_cast<double>(state_ >> 11) * 0x1p-53;
}

Shelf invented_shelf(int shades, const std::vector<double>& strengths, const std::vector<double>& ratios) {
  Seeded random(1);
  Shelf s;
  s.id = "invented";
  s.invented = true;
  Range r;
  r.id = r.name = "tint";
  r.maker = "nobody (invented)";
  r.reference = ReferenceProcess{6, ratios.front(), 35};
  r.ratios = ratios;
  r.developer_percents = strengths;
  r.minutes = {25, 35, 45};
  s.ranges.push_back(r);
  auto add = [&](Product p) {
    p.name = p.id;
    p.stock_g = 1000;
    p.price_per_g = 0.1;
    p.fully_declared = true;
    s.products.push_back(p);
  };
  for (int i = 0; i < shades; ++i) {
    Product p;
    p.id = "shade-" + std::to_string(i);
    p.range = "tint";
    const bool corrector = i % 20 == 19;
    p.cls = corrector ? ProductClass::corrector : ProductClass::permanent;
    p.level = corrector ? 0 : 1 + i % 10;
    p.tone = static_cast<Tone>(i / 10 % kTones);
    Bands own = bands_of(p.tone);
    for (double* band : {&own.yellow, &own.red, &own.blue}) *band *= (corrector ? 8 : 1) * random.uniform(0.6, 1.4);
    p.swatch =
        swatch(lightness_of_level(corrector ? 6 : p.level) + random.uniform(-1.5, 1.5), own.yellow, own.red, own.blue);
    add(p);
  }
  for (double percent : strengths) {
    Product d;
    d.id = "developer-" + std::to_string(percent);
    d.cls = ProductClass::developer;
    d.peroxide_percent = percent;
    add(d);
  }
  return s;
}

Wanted invented_zone(std::uint64_t seed) {
  Seeded random(100 + seed);
  const double level = random.uniform(3, 9), white = seed % 4 == 0 ? 0 : random.uniform(0.05, 0.9);
  Area a;
  a.id = "crown";
  a.kind = AreaKind::crown;
  a.scalp_cm2 = 200;
  a.spans = {span("regrowth", 0, 1.8, white, level, random.uniform(0.6, 2))};
  const double wanted = level + random.uniform(-2, 1.5);
  return {{{}, {a}}, {wish("*", wanted, kWished[random.below(std::size(kWished))])}};
}

Wanted invented_head(std::uint64_t seed) {
  Seeded random(500 + seed);
  const double level = random.uniform(3.5, 8), white = random.uniform(0, 0.6), last = level + random.uniform(-1, 1);
  Wanted w;
  const AreaKind kinds[] = {AreaKind::front_hairline, AreaKind::temples, AreaKind::top, AreaKind::crown,
                            AreaKind::nape};
  const char* names[] = {"front hairline", "temples", "top", "crown", "nape"};
  for (int i = 0; i < 5; ++i) {
    Area a;
    a.id = names[i];
    a.kind = kinds[i];
    a.scalp_cm2 = random.uniform(60, 200);
    const double own = std::clamp(white + random.uniform(-0.25, 0.25), 0.0, 0.95);
    Span lengths =
        span("lengths", 1.8, 20, 0, std::clamp(last + random.uniform(0, 0.8), 1.0, 10.0), random.uniform(0.8, 2.2));
    lengths.populations[0].origin = ColourOrigin::tinted;
    a.spans = {
        span("regrowth", 0, 1.8, own < 0.03 ? 0 : own, level + random.uniform(-0.4, 0.4), random.uniform(0.6, 1.4)),
        lengths};
    w.head.areas.push_back(a);
  }
  const Tone tone = kWished[random.below(std::size(kWished))];
  const double wanted = last + random.uniform(-1.2, 0.6);
  w.wishes.push_back(wish("*", wanted, tone));
  if (seed % 3 == 0)
    for (const char* area : names) w.wishes.push_back(wish(std::string(area) + "/lengths", wanted + 0.5, tone));
  return w;
}

}  // namespace strandline::scoreboard
