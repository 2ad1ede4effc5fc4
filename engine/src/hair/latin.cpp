#include "hair/latin.h"

#include <cmath>
#include <utility>

#include "strandline/scenario.h"

namespace strandline {
namespace {

// splitmix64 (Steele, Lea, Flood 2014): a small generator whose stream is fixed by its seed.
std::uint64_t next(std::uint64_t& state) {
  std::uint64_t z = (state += 0x9e3779b97f4a7c15ULL);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

double ratio(double x, const double* p, const double* q, int n) {
  double a = p[n], b = q[n];
  for (int i = n - 1; i >= 0; --i) a = a * x + p[i], b = b * x + q[i];
  return a / b;
}

}  // namespace

std::vector<double> latin_column(int count, std::uint64_t dimension) {
  std::vector<double> column(count);
  for (int i = 0; i < count; ++i) column[i] = normal_quantile((i + 0.5) / count);
  std::uint64_t state = 0x5354524e44ULL ^ (dimension * 0xd1342543de82ef95ULL);
  next(state);
  for (int i = count - 1; i > 0; --i) std::swap(column[i], column[next(state) % (i + 1)]);
  return column;
}

double normal_quantile(double p) {
  static constexpr double a[] = {3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3,
                                 1.3731693765509461125e4, 4.5921953931549871457e4, 6.7265770927008700853e4,
                                 3.3430575583588128105e4, 2.5090809287301226727e3};
  static constexpr double b[] = {1.0,
                                 4.2313330701600911252e1,
                                 6.8718700749205790830e2,
                                 5.3941960214247511077e3,
                                 2.1213794301586595867e4,
                                 3.9307895800092710610e4,
                                 2.8729085735721942674e4,
                                 5.2264952788528545610e3};
  static constexpr double c[] = {1.42343711074968357734e0,  4.63033784615654529590e0, 5.76949722146069140550e0,
                                 3.64784832476320460504e0,  1.27045825245236838258e0, 2.41780725177450611770e-1,
                                 2.27238449892691845833e-2, 7.74545014278341407640e-4};
  static constexpr double d[] = {1.0,
                                 2.05319162663775882187e0,
                                 1.67638483018380384940e0,
                                 6.89767334985100004550e-1,
                                 1.48103976427480074590e-1,
                                 1.51986665636164571966e-2,
                                 5.47593808499534494600e-4,
                                 1.05075007164441684324e-9};
  static constexpr double e[] = {6.65790464350110377720e0,  5.46378491116411436990e0,  1.78482653991729133580e0,
                                 2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
                                 2.71155556874348757815e-5, 2.01033439929228813265e-7};
  static constexpr double f[] = {1.0,
                                 5.99832206555887937690e-1,
                                 1.36929880922735805310e-1,
                                 1.48753612908506148525e-2,
                                 7.86869131145613259100e-4,
                                 1.84631831751005468180e-5,
                                 1.42151175831644588870e-7,
                                 2.04426310338993978564e-15};
  const double q = p - 0.5;
  if (std::abs(q) <= 0.425) return q * ratio(0.180625 - q * q, a, b, 7);
  const double r = std::sqrt(-std::log(q < 0 ? p : 1 - p));
  const double x = r <= 5 ? ratio(r - 1.6, c, d, 7) : ratio(r - 5, e, f, 7);
  return q < 0 ? -x : x;
}

}  // namespace strandline
