// What is inside one fibre, and what a treatment does to it (M1, M6–M9, M16).
#pragma once

#include <array>

#include "generated/constants.h"
#include "strandline/spectrum.h"

namespace strandline {

// M1. What adds up is optical depth across one fibre: τ(λ) = τ_ker + m_eu·ê + m_ph·p̂ + m_ox·ô + dye.
struct Fibre {
  double eumelanin = 0;    // % w/w
  double pheomelanin = 0;  // % w/w
  double oxidised = 0;     // % w/w, the warm intermediate of lightening
  double yellow_lost = 0;  // 0…1 of the yellow of keratin, taken by lightening
  Spectrum dye{};          // optical depth of every colorant on the fibre, ≥ 0
  double porosity = 1;     // 0 low · 1 average · 2 high · 3 very high
  double resistance = 0;   // 0…1, white hair that takes badly
};

// Optical depth per % w/w of the three pigments, of bare keratin, and of its yellow part alone (knowledge/pigments).
struct Pigments {
  Spectrum eumelanin, pheomelanin, oxidised, keratin, yellow;
};
Pigments pigments(const Constants& constants);
Spectrum optical_depth(const Fibre& fibre, const Pigments& pigments);

// How much more (or less) a colorant seems to absorb at a band in one head's bed of fibres than in the average bed,
// around 550 nm; 1 at the nominal constants.
double bed_warmth(int band, const Constants& constants);

// One treatment as the fibre feels it. Everything is a rate on the same state, no class is a special case.
struct Treatment {
  double exposure = 0;           // k_e·H: eumelanin left = exp(−exposure) (M6)
  double dye_exposure = 0;       // optical depth of existing dye left = exp(−dye_exposure) (M9)
  Spectrum load{};               // dye offered, as optical depth on average white hair after the reference process (M8)
  double fourier = 0;            // D·t/a² on average hair (M7)
  double fourier_reference = 0;  // of the reference process: uptake 1 by definition
  double shown_on_melanin = 1;   // share of the load that shows on a fibre full of melanin; 1 on one without (M18)
  double melanin_scale = 0.08;   // how much melanin, % w/w, is full of it
  double wear = 0;               // condition spent (M16)
  double softening = 0;          // resistance of white hair left = exp(−softening)
};

// M7. Fraction of the final uptake of a cylinder with constant surface concentration after dimensionless time
// Fo = D·t/a² ≥ 0 (Crank, The Mathematics of Diffusion, eq. 5.23). 0…1, increasing.
double cylinder_uptake(double fourier);

// M18. Share of a deposit that shows on this fibre, in (0, 1]: falls from 1 with the melanin and with the dye that are
// there already, continuously, so that a trace of either changes a trace.
double shown(const Fibre& fibre, const Treatment& treatment, const Constants& constants);
// How much of the offered load this fibre takes and shows, 1 = average white hair by the reference process; ≥ 0. By the
// melanin and dye before the bowl.
double uptake(const Fibre& fibre, const Treatment& treatment, const Constants& constants);
// Band factors of a damaged fibre's preferences (blue and violet grabbed, gold and red shed); 1 at porosity ≤ 1.
Spectrum selectivity(const Fibre& fibre, const Constants& constants);

// M6 and M9: the fibre after the chemistry, without the new dye. Closed form in the exposure; porous hair feels more of
// it.
Fibre lightened(const Fibre& fibre, const Treatment& treatment, const Constants& constants);
// The whole treatment: lightened, then dyed with these band preferences; softer and more porous for the next.
Fibre treated(const Fibre& fibre, const Treatment& treatment, const Spectrum& preference, const Constants& constants);

}  // namespace strandline
