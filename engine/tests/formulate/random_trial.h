// Heads, wishes and shelves at random, extreme ones among them, for tests that attack the search.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "engine/tests/support.h"
#include "formulate/choose.h"
#include "mix/habits.h"

namespace strandline::testing_support {

// A sanitizer slows each trial down so much that it gets a few of them.
#ifdef STRANDLINE_SANITIZED
inline constexpr bool kSlowed = true;
#else
inline constexpr bool kSlowed = false;
#endif

struct Trial {
  Head head;
  Shelf shelf;
  std::vector<Target> targets;
  double doubt = 1;
};

inline Spectrum random_swatch(std::mt19937_64& random, double strength) {
  std::uniform_real_distribution<double> u(0, 1);
  Spectrum tau;
  const double centre = 400 + 300 * u(random), width = 30 + 150 * u(random), flat = 0.3 * u(random);
  for (int b = 0; b < kBands; ++b) {
    const double off = (band_nm(b) - centre) / width;
    tau[static_cast<size_t>(b)] = strength * (flat + std::exp(-off * off)) * std::exp(0.3 * (u(random) - 0.5));
  }
  return reflectance(tau);
}

// `zones` regrowths side by side, each with its own hair.
inline Trial random_trial(unsigned seed, int shades, int zones = 1) {
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> u(0, 1);
  Trial t;
  const double doubts[] = {0, 1, 1, 2, 4};
  t.doubt = doubts[seed % 5];
  for (int z = 0; z < zones; ++z) {
    const double whites[] = {0, 0.95, 1, 0, 0};
    const double white_share = (seed + z) % 5 < 3 ? whites[(seed + z) % 3] : u(random);
    Span s = span("regrowth", 0, 1 + 3 * u(random), white_share, 1 + 9 * u(random));
    if (white_share >= 1) s.populations = {white(1)};
    s.porosity = {3 * u(random), 0.3};
    s.resistance = u(random);
    t.head.areas.push_back(area("area " + std::to_string(z), AreaKind::other, 100 + 50 * z, {s}));
  }
  t.shelf = small_shelf(0);
  t.shelf.ranges[0].developer_percents = {3, 6};
  if (seed % 6 == 5) t.shelf.ranges[0].cls = ProductClass::demi, t.shelf.ranges[0].minutes = {3, 20, 30};  // five times
  for (int i = 0; i < shades; ++i) {
    Product p;
    p.id = "shade-" + std::to_string(i);
    p.range = "tint";
    p.name = p.id;
    p.level = 1 + std::floor(10 * u(random));
    p.tone = static_cast<Tone>(static_cast<int>(8 * u(random)) % kTones);
    if (seed % 4 == 0 && i % 4 == 3) p.cls = i % 8 == 3 ? ProductClass::corrector : ProductClass::clear;
    p.swatch = random_swatch(random, i == 0 ? 0.001 : std::exp(3 * u(random) - 2.5));
    p.stock_g = 500;
    p.price_per_g = 0.1;
    t.shelf.products.push_back(p);
  }
  ZoneAim wish;
  wish.zone = "*";
  if (seed % 3 == 0)
    wish.lab = Lab{15 + 70 * u(random), -30 + 90 * u(random), -45 + 110 * u(random)};
  else
    wish.level = 1 + 9 * u(random), wish.tone = static_cast<Tone>(static_cast<int>(8 * u(random)) % kTones);
  t.targets = *aim(t.head, {wish}, t.shelf);
  return t;
}

struct Prepared {
  Prepared(const Trial& trial, int scenarios)
      : draws(draw(trial.head, scenarios, trial.doubt)), domain(strandline::domain(trial.shelf, policy)) {
    const auto refs = zones(trial.head);
    for (size_t i = 0; i < refs.size(); ++i) {
      SearchZone z;
      z.area = refs[i].area, z.span = refs[i].span, z.draws = &draws.zones[i], z.target = &trial.targets[i];
      z.price = zone_loss(trial.targets[i], 1);
      z.weight = 1 + 0.5 * static_cast<double>(i);
      z.white = white_share(draws.zones[i]);
      z.needed_percent = 3;
      total_weight += z.weight;
      search_zones.push_back(z);
    }
  }
  FormulaPolicy policy;
  Draws draws;
  Domain domain;
  std::vector<SearchZone> search_zones;
  double total_weight = 0;
};

}  // namespace strandline::testing_support
