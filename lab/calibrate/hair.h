// The engine's own equations at one point of the fit: constants, a level scale, what a bowl does.
#pragma once

#include <array>
#include <map>

#include "problem.h"
#include "strandline/colour.h"
#include "strandline/fibre.h"
#include "strandline/treatment.h"

namespace strandline::calibrate {

class Hair {
 public:
  // `amounts` = % w/w melanin of natural hair of levels 1…10.
  Hair(const Constants& constants, const std::array<double, kLevels>& amounts);

  const Constants& constants() const { return c_; }
  Lab colour(const Fibre& fibre) const;
  // Total melanin split by the one share of pheomelanin.
  Fibre melanin(double percent) const;
  // Natural hair of a level 1…10; between levels the logarithm of the amount is interpolated.
  Fibre natural(double level) const;
  double lightness(int level) const { return lightness_[level - 1]; }
  // The level that an L* reads as, on this scale; extended linearly at both ends.
  double level(double lightness) const;

  // Hair of a row of knowledge/calibration/practice.json: as grown, white, tinted or lightened to this level. What was
  // tinted grew at the level it shows, what was lightened at 6.
  enum class Kind { natural, white, tinted, lightened };
  Fibre of(Kind kind, double level, double porosity) const;
  // A bowl of a neutral shade known by its name; `shade` 0 = no dye. `clear_share` of the colour part is clear.
  struct Bowl {
    ProductClass cls = ProductClass::permanent;
    double shade = 0, clear_share = 0, percent = 6, ratio = 1, minutes = 35;
  };
  Fibre after(const Fibre& fibre, const Bowl& bowl) const;
  // Fibre after a neutral shade of level `shade` with developer of `percent` in the bottle at 1:1 for full time.
  Fibre tinted(const Fibre& fibre, double shade, double percent) const;
  // Fibre after a lightener with developer of `percent` in the bottle, `ratio` g per g of powder, for `minutes`.
  Fibre after_lightener(const Fibre& fibre, double percent, double ratio, double minutes) const;
  // Fibre after this exposure.
  Fibre exposed(const Fibre& fibre, double exposure) const;
  // Natural hair of `start`, exposed until it is as light as natural hair of `level`.
  Fibre lightened_to(double start, double level) const;

 private:
  const Spectrum& promised(ProductClass cls, double shade) const;
  Constants c_;
  Pigments pigments_;
  std::array<double, kLevels> amounts_, lightness_{};
  mutable std::map<double, Fibre> tinted_;                             // by level, likewise
  mutable std::map<std::pair<ProductClass, double>, Spectrum> loads_;  // by class and shade, solved once
};

}  // namespace strandline::calibrate
