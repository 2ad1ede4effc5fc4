#include <cmath>
#include <cstdio>

#include "concave_fit.h"
#include "knowledge_file.h"
#include "lightness.h"
#include "produce.h"

namespace strandline::fibre_bed {

namespace {

constexpr double kHighestM = 0.30;  // the curve must stay concave for every blend constant up to this
constexpr int kTerms = 7;
const char* kSource =
    "computed: light transport in a bed of parallel fibres, index 1.55, packing 0.5, tilt sd 0.08 rad, light "
    "at 8 degrees, all that returns";

// Standard deviation of the variants about the reference, by optical depth.
double spread(const std::vector<std::vector<Value>>& curves, size_t i) {
  double sum = 0;
  for (size_t v = 1; v < curves.size(); ++v) sum += std::pow(curves[v][i].value - curves[0][i].value, 2);
  return std::sqrt(sum / static_cast<double>(curves.size() - 1));
}

void write_curve(const Output& out, const std::vector<Variant>& beds, const std::vector<std::vector<Value>>& curves) {
  TableFile file{"reflectance_curve",
                 "Reflectance of a thick bed of fibres by optical depth, with its spread over packings, tilts and tops",
                 "optical depth across one fibre diameter; reflectance",
                 kSource,
                 out.command,
                 {"tau", "reflectance", "standard_error", "spread"},
                 {}};
  for (size_t v = 1; v < beds.size(); ++v) file.columns.push_back(beds[v].name);
  const auto tau = curve_depths();
  for (size_t i = 0; i < tau.size(); ++i) {
    std::vector<double> row{tau[i], curves[0][i].value, curves[0][i].error, spread(curves, i)};
    for (size_t v = 1; v < beds.size(); ++v) row.push_back(curves[v][i].value);
    file.rows.push_back(row);
  }
  write_file(out.folder + "/reflectance_curve.json", to_json(file));
}

ConcaveCurve fit(const std::vector<Value>& curve) {
  const auto tau = curve_depths();
  std::vector<CurvePoint> points;
  for (size_t i = 0; i < tau.size(); ++i) {
    // R falls from 1 like the root of tau, which no smooth curve follows: the first point only says where it
    // comes from.
    const double error = i == 0 ? 0.2 : std::max(0.001, curve[i].error / curve[i].value);
    points.push_back({tau[i], curve[i].value, error});
  }
  return fit_concave(points, stearns_noechel_offset(kHighestM), kTerms);
}

}  // namespace

void produce_curve(const Output& out) {
  const auto beds = variants();
  std::vector<std::vector<Value>> curves;
  for (size_t v = 0; v < beds.size(); ++v) curves.push_back(study_curve(beds[v].bed, v == 0 ? 6e5 : 8e4, out.effort));
  write_curve(out, beds, curves);
  const ConcaveCurve f = fit(curves[0]);
  TableFile terms{"reflectance_cubes",
                  "R(tau) of a thick bed: 1/(R + c) = reflectance_e_inf - sum alpha max(0, 1 - tau/kappa)^3, "
                  "c = 0.01(1-M)/M at M = 0.30",
                  "optical depth across one fibre diameter; 1",
                  kSource,
                  out.command,
                  {"kappa", "alpha"},
                  {}};
  for (size_t j = 0; j < f.kappa.size(); ++j) terms.rows.push_back({f.kappa[j], f.alpha[j]});
  write_file(out.folder + "/reflectance_cubes.json", to_json(terms));
  write_file(
      out.folder + "/reflectance_e_inf.json",
      to_json(ConstantsFile{"Floor of R(tau): 1/(R + c) of fibres that let no light out again",
                            out.command,
                            {{"reflectance_e_inf", f.e_inf, 0, "1",
                              std::string(kSource) + "; moves all of the curve, so it has no spread of its own"}}}));
  const auto tau = curve_depths();
  std::printf("%9s %9s %9s %9s %7s %10s\n", "tau", "R", "s.e.", "spread", "L*", "fit off, %");
  double worst = 0;
  for (size_t i = 0; i < tau.size(); ++i) {
    const double r = curves[0][i].value, off = 100 * (f.reflectance(tau[i]) / r - 1);
    if (tau[i] >= 0.002 && tau[i] <= 10) worst = std::max(worst, std::abs(off));
    std::printf("%9.4f %9.5f %9.5f %9.5f %7.2f %10.2f\n", tau[i], r, curves[0][i].error, spread(curves, i),
                lightness(r), off);
  }
  std::printf("fit of %zu terms: worst %.2f %% for 0.002 <= tau <= 10; R(0) of the fit %.3f\n", f.kappa.size(), worst,
              f.reflectance(0));
}

}  // namespace strandline::fibre_bed
