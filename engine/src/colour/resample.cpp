#include <algorithm>
#include <cmath>
#include <vector>

#include "strandline/spectrum.h"

namespace strandline {
namespace {

constexpr double kSameNm = 1e-6;

bool rises(std::span<const double> nm) {
  for (double v : nm)
    if (!std::isfinite(v)) return false;
  for (std::size_t i = 1; i < nm.size(); ++i)
    if (!(nm[i] > nm[i - 1])) return false;
  return true;
}

bool even(std::span<const double> nm) {
  const double step = (nm.back() - nm.front()) / static_cast<double>(nm.size() - 1);
  for (std::size_t i = 0; i < nm.size(); ++i)
    if (std::abs(nm.front() + step * static_cast<double>(i) - nm[i]) > 1e-3 * step) return false;
  return true;
}

// Two more points at each end, CIE 167:2005 table.
std::vector<double> extended(std::span<const double> v) {
  constexpr double outer[6] = {884, -1960, 3033, -2648, 1080, -180}, inner[6] = {508, -540, 488, -367, 144, -24};
  const std::size_t n = v.size();
  double before2 = 0, before1 = 0, after1 = 0, after2 = 0;
  for (int k = 0; k < 6; ++k) {
    before2 += outer[k] * v[k] / 209, before1 += inner[k] * v[k] / 209;
    after2 += outer[k] * v[n - 1 - k] / 209, after1 += inner[k] * v[n - 1 - k] / 209;
  }
  std::vector<double> e{before2, before1};
  e.insert(e.end(), v.begin(), v.end());
  e.push_back(after1), e.push_back(after2);
  return e;
}

// r[0…5] are six points in a row, t in [0, 1] lies between r[2] and r[3].
double sprague(const double* r, double t) {
  const double a1 = 2 * r[0] - 16 * r[1] + 16 * r[3] - 2 * r[4];
  const double a2 = -r[0] + 16 * r[1] - 30 * r[2] + 16 * r[3] - r[4];
  const double a3 = -9 * r[0] + 39 * r[1] - 70 * r[2] + 66 * r[3] - 33 * r[4] + 7 * r[5];
  const double a4 = 13 * r[0] - 64 * r[1] + 126 * r[2] - 124 * r[3] + 61 * r[4] - 12 * r[5];
  const double a5 = -5 * r[0] + 25 * r[1] - 50 * r[2] + 50 * r[3] - 25 * r[4] + 5 * r[5];
  return r[2] + t * (a1 + t * (a2 + t * (a3 + t * (a4 + t * a5)))) / 24;
}

}  // namespace

std::optional<Spectrum> resampled(std::span<const double> nm, std::span<const double> values) {
  const std::size_t n = nm.size();
  if (n < 2 || values.size() != n || !rises(nm)) return std::nullopt;
  if (nm[0] - (nm[1] - nm[0]) > kFirstNm || nm[n - 1] + (nm[n - 1] - nm[n - 2]) < kLastNm) return std::nullopt;

  const bool smooth = n >= 6 && even(nm);
  const std::vector<double> wide = smooth ? extended(values) : std::vector<double>{};
  Spectrum out{};
  for (int k = 0; k < kBands; ++k) {
    const double at = std::clamp(band_nm(k), nm.front(), nm.back());
    const auto above = std::upper_bound(nm.begin(), nm.end(), at);
    const std::size_t i = std::min(static_cast<std::size_t>(above - nm.begin()), n - 1) - 1;
    const double t = (at - nm[i]) / (nm[i + 1] - nm[i]);
    if (at - nm[i] < kSameNm)
      out[k] = values[i];
    else if (nm[i + 1] - at < kSameNm)
      out[k] = values[i + 1];
    else
      out[k] = smooth ? sprague(&wide[i], t) : values[i] + t * (values[i + 1] - values[i]);
  }
  return out;
}

}  // namespace strandline
