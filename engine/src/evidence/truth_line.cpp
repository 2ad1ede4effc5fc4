#include "evidence/truth_line.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "evidence/truth_light.h"
#include "evidence/truth_shade.h"

namespace strandline::truth {

std::vector<LineShade> simulate_line(std::uint64_t seed, int maker) {
  constexpr std::array kTones = {Word::natural, Word::ash, Word::beige, Word::gold, Word::copper, Word::red};
  Random own(seed, maker);
  const Light hair = Light::usual();
  const Ladder ladder;
  // The maker's ways: deeper or lighter than named, more so at one end, each tone stronger or weaker, browns of one
  // cast.
  const double deeper = own.normal(0.3, 0.35), slope = own.normal(0, 0.06), cast = own.normal(150, 18);
  std::array<double, kTones.size()> strength{}, offset{};
  for (double& s : strength) s = own.lognormal(1, 0.25);
  for (double& o : offset) o = own.normal(0, 0.15);
  std::vector<LineShade> line;
  for (size_t t = 0; t < kTones.size(); ++t)
    for (int level = 1; level <= 10; ++level) {
      LineShade s;
      s.level = level, s.tone = kTones[t];
      Random shade(seed * 31 + 7, maker * 1000 + static_cast<int>(t) * 20 + level);
      const double named = level + deeper + slope * (level - 5.5) + offset[t] + shade.normal(0, 0.08);
      Hair h;
      h.dye = shade_like(named, s.tone, shade.normal(cast, 4), strength[t] * shade.lognormal(1, 0.05), hair, ladder);
      s.swatch = hair.reflectance(h);
      const double scale = shade.lognormal(1, 0.01);
      for (int b = 0; b < kBands; ++b) s.measured[b] = std::max(0.001, scale * s.swatch[b] + shade.normal(0, 0.0015));
      line.push_back(s);
    }
  return line;
}

}  // namespace strandline::truth
