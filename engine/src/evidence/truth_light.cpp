#include "evidence/truth_light.h"

#include <algorithm>
#include <cmath>

namespace strandline::truth {
namespace {

constexpr double kDepth = 2.2;
constexpr int kHalvings = 24;

const Weights& daylight() { return weights(strandline::Light::daylight, Observer::cie_1964_10deg); }

// The argument in [low, high] at which a falling function reaches `wanted`.
template <class F>
double falls_to(double wanted, double low, double high, F value) {
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = (low + high) / 2;
    (value(middle) > wanted ? low : high) = middle;
  }
  return (low + high) / 2;
}

// Power laws of the two melanins between 400 and 700 nm (public code after Jacques), 1 at 550 nm.
Spectrum power_law(double exponent) {
  Spectrum s;
  for (int b = 0; b < kBands; ++b) s[b] = std::pow(band_nm(b) / 550, exponent);
  return s;
}
const Spectrum& eumelanin() {
  static const Spectrum s = power_law(-3.33);
  return s;
}
const Spectrum& pheomelanin() {
  static const Spectrum s = power_law(-4.75);
  return s;
}

}  // namespace

Light::Light(Random& random) {
  floor_ = random.uniform(0.022, 0.027);
  power_ = random.uniform(0.47, 0.55);
  pheomelanin_ = std::clamp(random.normal(0.1, 0.05), 0.0, 0.3);
  slope_ = random.normal(75, 8);
  friele_ = random.uniform(0.08, 0.18);
  set_white(std::clamp(random.normal(71, 2.5), 62.0, 77.0), std::clamp(random.normal(13, 2.5), 7.0, 20.0));
}

Light Light::usual() {
  Light light;
  light.set_white(71, 13);
  return light;
}

void Light::set_white(double lightness, double yellowness) {
  for (int i = 0; i < 3; ++i) {
    white_ = falls_to(-lightness, 0, 1, [&](double w) { return white_ = w, -colour(Hair{}).l; });
    yellow_ = falls_to(-yellowness, 0, 1, [&](double y) { return yellow_ = y, -colour(Hair{}).b; });
  }
}

Spectrum Light::reflectance(const Hair& hair) const {
  Spectrum r;
  for (int b = 0; b < kBands; ++b) {
    const double nm = band_nm(b);
    const double sigma = hair.eumelanin * eumelanin()[b] + hair.pheomelanin * pheomelanin()[b] +
                         hair.intermediate * std::exp((550 - nm) / slope_) + hair.dye[b];
    const double white = white_ * std::exp(-yellow_ * hair.yellow * std::exp((550 - nm) / 65));
    r[b] = floor_ + (1 - floor_) * white * std::exp(-kDepth * std::pow(sigma, power_));
  }
  return r;
}

Lab Light::colour(const Hair& hair) const { return lab(reflectance(hair), daylight()); }

Lab Light::blend(const Hair& one, const Hair& other, double share) const {
  const Spectrum p = reflectance(one), q = reflectance(other);
  Spectrum r;
  for (int b = 0; b < kBands; ++b) {
    auto f = [&](double x) { return std::exp(-friele_ * (1 - x) * (1 - x) / (2 * x)); };
    const double ks = -std::log((1 - share) * f(p[b]) + share * f(q[b])) / friele_;
    r[b] = 1 + ks - std::sqrt(ks * ks + 2 * ks);
  }
  return lab(r, daylight());
}

Hair Light::natural(double lightness) const {
  auto of = [&](double amount) {
    Hair h;
    h.eumelanin = amount * (1 - pheomelanin_), h.pheomelanin = amount * pheomelanin_;
    return h;
  };
  return of(falls_to(lightness, 0, 20, [&](double amount) { return colour(of(amount)).l; }));
}

namespace {

// L* = 18.3 + 1.9 (n − 1) + 0.37 (n − 1)². Samples read as black, dark and light brown (1, 3, 5) were measured at 19.1,
// 22.4 and 32.6.
constexpr double kBlack = 18.3, kStep = 1.9, kGrowth = 0.37;

struct Offset {
  double hue_degrees, chroma;
};
// At L* 44; darker hair shows less of it.
constexpr Offset kOffsets[kWords] = {{0, 0}, {240, 5.5}, {292, 8}, {280, 2.5}, {78, 6}, {44, 9}, {8, 11}, {168, 5}};

}  // namespace

double Ladder::lightness(double level) const {
  const double n = level - 1;
  return kBlack + shift_ + kStep * n + kGrowth * n * std::abs(n);
}

double Ladder::level(double lightness) const {
  const double over = lightness - kBlack - shift_;
  if (over < 0) return 1 + over / kStep;
  return 1 + (-kStep + std::sqrt(kStep * kStep + 4 * kGrowth * over)) / (2 * kGrowth);
}

Lab toned(const Lab& natural, Word word) {
  const Offset& o = kOffsets[static_cast<int>(word)];
  const double size = o.chroma * std::clamp((natural.l - 14) / 30, 0.15, 1.2), hue = o.hue_degrees * M_PI / 180;
  return {natural.l, natural.a + size * std::cos(hue), natural.b + size * std::sin(hue)};
}

Word nearest_word(const Lab& natural, const Lab& seen) {
  Word best = Word::natural;
  double least = 1e9;
  for (int w = 0; w < kWords; ++w) {
    const Lab t = toned(natural, static_cast<Word>(w));
    const double off = std::hypot(seen.a - t.a, seen.b - t.b);
    if (off < least) least = off, best = static_cast<Word>(w);
  }
  return best;
}

}  // namespace strandline::truth
