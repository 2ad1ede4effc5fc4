#include "strandline/line.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "generated/learning.h"
#include "strandline/existing.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/treatment.h"

namespace strandline::line {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;
using learned::Priors;

// How alike two shades of one maker go astray: all together, nearby levels, one tone, one tone at nearby levels.
double alike(const Product& p, const Product& q) {
  const Priors c;
  const double x = (p.level - q.level) / c.line_level_reach;
  const double near = std::exp(-x * x / 2);
  const double tone = p.tone == q.tone ? 1 : 0;
  const auto square = [](double v) { return v * v; };
  return square(c.line_all_sd) + square(c.line_level_sd) * near + square(c.line_tone_sd) * tone +
         square(c.line_tone_level_sd) * tone * near;
}

double own_variance() { return Priors{}.line_shade_sd * Priors{}.line_shade_sd; }
double noise() { return Priors{}.line_swatch_sd * Priors{}.line_swatch_sd; }

bool measured(const Product& p) { return p.swatch && !p.swatch_on; }

// Shades with a level whose colour a name says too.
std::vector<const Product*> shades(const Shelf& shelf, const std::string& range) {
  std::vector<const Product*> out;
  for (const Product& p : shelf.products)
    if (p.range == range && has_colour(p) && p.cls != ProductClass::clear && p.level > 0) out.push_back(&p);
  return out;
}

Spectrum by_name(Product p, const Range& range) {
  p.swatch.reset(), p.swatch_on.reset(), p.offer.reset();
  return offered(p, range);
}

MatrixXd between(const std::vector<const Product*>& rows, const std::vector<const Product*>& columns) {
  MatrixXd k(rows.size(), columns.size());
  for (size_t i = 0; i < rows.size(); ++i)
    for (size_t j = 0; j < columns.size(); ++j)
      k(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) = alike(*rows[i], *columns[j]);
  return k;
}

// Covariance of measured swatches with what each shade has of its own.
MatrixXd of_measured(const std::vector<const Product*>& known) {
  MatrixXd k = between(known, known);
  k.diagonal().array() += own_variance() + noise();
  return k;
}

// Below this a load says nothing of a ratio (optical depth).
constexpr double kTrace = 0.05;

}  // namespace

void complete(Shelf& shelf) {
  for (const Range& range : shelf.ranges) {
    std::vector<const Product*> known, unknown;
    for (const Product* p : shades(shelf, range.id)) {
      if (measured(*p))
        known.push_back(p);
      else if (!p->swatch && !p->offer)
        unknown.push_back(p);
    }
    if (static_cast<int>(known.size()) < least_swatches || unknown.empty()) continue;
    MatrixXd ratio(known.size(), kBands);
    for (size_t i = 0; i < known.size(); ++i) {
      const Spectrum load = offered(*known[i], range), promise = by_name(*known[i], range);
      for (int b = 0; b < kBands; ++b)
        ratio(static_cast<Eigen::Index>(i), b) = std::log((load[b] + kTrace) / (promise[b] + kTrace));
    }
    const MatrixXd guess = between(unknown, known) * of_measured(known).ldlt().solve(ratio);
    for (size_t i = 0; i < unknown.size(); ++i) {
      Spectrum offer = by_name(*unknown[i], range);
      for (int b = 0; b < kBands; ++b)
        offer[b] = std::max(0.0, (offer[b] + kTrace) * std::exp(guess(static_cast<Eigen::Index>(i), b)) - kTrace);
      for (Product& p : shelf.products)
        if (&p == unknown[i]) p.offer = offer;
    }
  }
}

std::vector<Sure> sureness(const Shelf& shelf, const std::string& range) {
  const std::vector<const Product*> all = shades(shelf, range);
  std::vector<const Product*> known;
  for (const Product* p : all)
    if (measured(*p)) known.push_back(p);
  const MatrixXd across = between(all, known);
  const MatrixXd solved = known.empty() ? MatrixXd() : MatrixXd(of_measured(known).ldlt().solve(across.transpose()));
  std::vector<Sure> out;
  for (size_t i = 0; i < all.size(); ++i) {
    const auto k = static_cast<Eigen::Index>(i);
    const double before = alike(*all[i], *all[i]) + own_variance();
    const double told = known.empty() ? 0 : across.row(k).dot(solved.col(k));
    const double left = measured(*all[i]) ? noise() : std::max(0.0, before - told);
    out.push_back({all[i]->id, measured(*all[i]), std::sqrt(left), std::sqrt(before)});
  }
  return out;
}

// One after another: the one that leaves least doubt of the whole line.
std::vector<std::string> measure_next(const Shelf& shelf, const std::string& range, int count) {
  const std::vector<const Product*> all = shades(shelf, range);
  MatrixXd left = between(all, all);
  left.diagonal().array() += own_variance();
  std::vector<bool> taken(all.size());
  const auto observe = [&](size_t i) {
    const auto k = static_cast<Eigen::Index>(i);
    const VectorXd column = left.col(k);
    left -= column * column.transpose() / (column[k] + noise());
    taken[i] = true;
  };
  for (size_t i = 0; i < all.size(); ++i)
    if (measured(*all[i])) observe(i);
  std::vector<std::string> out;
  while (static_cast<int>(out.size()) < count) {
    double most = 0;
    size_t best = all.size();
    for (size_t i = 0; i < all.size(); ++i) {
      if (taken[i]) continue;
      const auto k = static_cast<Eigen::Index>(i);
      const double tells = left.col(k).squaredNorm() / (left(k, k) + noise());
      if (tells > most) most = tells, best = i;
    }
    if (best == all.size()) break;
    out.push_back(all[best]->id);
    observe(best);
  }
  return out;
}

Spectrum swatch_of_load(const Spectrum& load) {
  Fibre f = white_fibre();
  f.dye = saturated(load);
  return reflectance(optical_depth(f, pigments(Constants{})));
}

Spectrum swatch_of(const Lab& lab) {
  const Pigments p = pigments(Constants{});
  return reflectance(optical_depth(dyed_to(white_fibre(), lab, p), p));
}

}  // namespace strandline::line
