#include "spectra.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "strandline/optics.h"

namespace strandline::calibrate {
namespace {

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

struct Point {
  double eumelanin, pheomelanin, floor;
};

// The bed under another geometry: what comes from inside is scaled, what the surface returns is the instrument's own.
Spectrum modelled(const Point& p, const Pigments& pigments) {
  Fibre f;
  f.eumelanin = std::exp(p.eumelanin), f.pheomelanin = std::exp(p.pheomelanin);
  Spectrum r = reflectance(optical_depth(f, pigments));
  const double own = reflectance(tau_at_floor);
  for (double& v : r) v = p.floor + (v - own) * (1 - p.floor) / (1 - own);
  return r;
}

Eigen::Vector3d colour(const Spectrum& r) {
  const Lab c = lab(r, daylight());
  return {c.l, c.a, c.b};
}

std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> out;
  std::stringstream in(line);
  for (std::string cell; std::getline(in, cell, ',');) out.push_back(cell);
  return out;
}

double number(const std::string& text, const std::string& where) {
  size_t used = 0;
  double v = 0;
  try {
    v = std::stod(text, &used);
  } catch (const std::exception&) {
    used = 0;
  }
  if (used == 0) throw std::runtime_error(where + ": \"" + text + "\" is not a number");
  return v;
}

// Residuals over the bands in relative terms, so that dark hair counts as much as light.
Eigen::VectorXd residuals(const Eigen::Vector3d& x, const Spectrum& measured, const Pigments& pigments) {
  const Spectrum r = modelled({x[0], x[1], x[2]}, pigments);
  Eigen::VectorXd e(kBands);
  for (int b = 0; b < kBands; ++b) e[b] = std::cbrt(std::max(r[b], 1e-6)) - std::cbrt(std::max(measured[b], 1e-6));
  return e;
}

Eigen::Vector3d descend(Eigen::Vector3d x, const Spectrum& measured, const Pigments& pigments) {
  double damping = 1e-2;
  Eigen::VectorXd e = residuals(x, measured, pigments);
  for (int step = 0; step < 200 && damping < 1e9; ++step) {
    Eigen::MatrixXd j(kBands, 3);
    for (int k = 0; k < 3; ++k) {
      Eigen::Vector3d up = x, down = x;
      const double h = k == 2 ? 1e-6 : 1e-4;
      up[k] += h, down[k] -= h;
      j.col(k) = (residuals(up, measured, pigments) - residuals(down, measured, pigments)) / (2 * h);
    }
    Eigen::Matrix3d normal = j.transpose() * j;
    normal.diagonal() *= 1 + damping;
    normal.diagonal().array() += 1e-9;
    Eigen::Vector3d next = x - normal.ldlt().solve(j.transpose() * e);
    // Floors that have been met: 0 to 0.025.
    next[2] = std::clamp(next[2], 0.0, 0.025);
    next[0] = std::clamp(next[0], -9.0, 2.0), next[1] = std::clamp(next[1], -9.0, 2.0);
    const Eigen::VectorXd left = residuals(next, measured, pigments);
    if (left.squaredNorm() < e.squaredNorm())
      x = next, e = left, damping = std::max(1e-9, damping / 4);
    else
      damping *= 5;
  }
  return x;
}

}  // namespace

std::vector<MeasuredSpectrum> read_spectra(const std::string& path) {
  std::ifstream in(path);
  if (!in) throw std::runtime_error(path + ": cannot be read");
  std::string line;
  std::getline(in, line);
  const std::vector<std::string> head = cells(line);
  if (head.size() < 2) throw std::runtime_error(path + ": line 1 names no samples");
  std::vector<std::vector<double>> columns(head.size());
  for (int n = 2; std::getline(in, line); ++n) {
    const std::vector<std::string> row = cells(line);
    if (row.empty()) continue;
    const std::string where = path + ": line " + std::to_string(n);
    if (row.size() != head.size()) throw std::runtime_error(where + " has " + std::to_string(row.size()) + " cells");
    for (size_t i = 0; i < row.size(); ++i) columns[i].push_back(number(row[i], where));
  }
  std::vector<MeasuredSpectrum> out;
  for (size_t i = 1; i < head.size(); ++i) {
    const auto r = resampled(columns[0], columns[i]);
    if (!r) throw std::runtime_error(path + ": the wavelengths do not cover 400 to 700 nm");
    out.push_back({head[i], *r});
  }
  return out;
}

SpectrumFit fit_spectrum(const MeasuredSpectrum& measured, const Constants& constants) {
  const Pigments p = pigments(constants);
  Eigen::Vector3d best = Eigen::Vector3d::Zero();
  double least = 1e300;
  for (double eu : {-3.0, -1.0, 0.5})
    for (double ph : {-4.0, -1.0, 0.5}) {
      const Eigen::Vector3d x = descend({eu, ph, 0.0145}, measured.reflectance, p);
      const double e = residuals(x, measured.reflectance, p).squaredNorm();
      if (e < least) least = e, best = x;
    }
  SpectrumFit f{measured.name, std::exp(best[0]), std::exp(best[1]), best[2], 0};
  f.delta_e = (colour(modelled({best[0], best[1], best[2]}, p)) - colour(measured.reflectance)).norm();
  return f;
}

void print_spectra(const std::vector<SpectrumFit>& fits, std::FILE* out) {
  std::fprintf(out, "\n%-24s %8s %12s %12s %8s\n", "Measured spectra", "dE*ab", "eumelanin %", "pheomelanin %",
               "floor");
  double sum = 0;
  for (const SpectrumFit& f : fits) {
    std::fprintf(out, "%-24s %8.2f %12.3f %12.3f %8.4f\n", f.name.c_str(), f.delta_e, f.eumelanin, f.pheomelanin,
                 f.floor);
    sum += f.delta_e;
  }
  std::fprintf(out, "mean %.2f over %zu\n", sum / static_cast<double>(fits.size()), fits.size());
}

}  // namespace strandline::calibrate
