#include "predict.h"

#include <cmath>
#include <functional>
#include <map>
#include <stdexcept>

namespace strandline::calibrate {
namespace {

struct At {
  const Problem& problem;
  const Eigen::VectorXd& x;
  const Hair& hair;
  const Datum& datum;
  double found(const std::string& key) const {
    const size_t i = problem.index(key);
    return value(problem.parameters[i], x[static_cast<Eigen::Index>(i)]);
  }
  double at(size_t i) const { return datum.at.at(i); }
};

using Values = std::vector<double>;

Values three(const Lab& c) { return {c.l, c.a, c.b}; }

Values natural_hair(const At& a) { return three(a.hair.colour(a.hair.melanin(a.found(sample_key(a.datum))))); }
Values white_hair(const At& a) { return three(a.hair.colour(Fibre{})); }
Values level_lightness(const At& a) { return {a.hair.lightness(static_cast<int>(a.at(0)))}; }

Values melanin_at_level(const At& a) { return {std::log(a.found(amount_key(static_cast<int>(a.at(0)))))}; }

Values melanin_step(const At& a) {
  const int n = static_cast<int>(a.at(0));
  return {std::log(a.found(amount_key(n)) / a.found(amount_key(n + 1)))};
}

// at: natural level, shade, % in the bottle.
Values tint_level(const At& a) {
  return {a.hair.level(a.hair.colour(a.hair.tinted(a.hair.natural(a.at(0)), a.at(1), a.at(2))).l)};
}

// at: the first nine columns of knowledge/calibration/practice.json.
Values practice(const At& a) {
  constexpr ProductClass classes[] = {ProductClass::permanent, ProductClass::demi, ProductClass::lightener,
                                      ProductClass::high_lift};
  const Fibre f = a.hair.of(static_cast<Hair::Kind>(static_cast<int>(a.at(0))), a.at(1), a.at(2));
  const ProductClass cls = classes[static_cast<int>(a.at(3))];
  return {a.hair.level(a.hair.colour(a.hair.after(f, {cls, a.at(4), a.at(5), a.at(6), a.at(7), a.at(8)})).l)};
}

Values lightened_lab(const At& a) {
  return three(a.hair.colour(a.hair.exposed(a.hair.natural(a.at(0)), a.found(sample_key(a.datum)))));
}

// at: start level, level reached.
Values hue_at_level(const At& a) { return {lch(a.hair.colour(a.hair.lightened_to(a.at(0), a.at(1)))).h}; }

// at: start level, % in the bottle, ratio, minutes.
Values lightener_level(const At& a) {
  return {a.hair.level(a.hair.colour(a.hair.after_lightener(a.hair.natural(a.at(0)), a.at(1), a.at(2), a.at(3))).l)};
}

// at: start level, % in the bottle, ratio, minutes, minutes of the whole course.
Values lightening_course(const At& a) {
  auto gain = [&](double minutes) {
    const Fibre f = a.hair.after_lightener(a.hair.natural(a.at(0)), a.at(1), a.at(2), minutes);
    return a.hair.level(a.hair.colour(f).l) - a.at(0);
  };
  return {gain(a.at(3)) / gain(a.at(4))};
}

// at: start level, % and sessions of the first, % and sessions of the second. The unknown length of a session is the
// one that brings the first to level 9.5 (19 of 20).
Values sessions(const At& a) {
  const double reached = 9.5, alpha = a.hair.constants().lift_order;
  const Fibre start = a.hair.natural(a.at(0));
  auto level = [&](double exposure) { return a.hair.level(a.hair.colour(a.hair.exposed(start, exposure)).l); };
  double low = 0, high = 30;
  for (int i = 0; i < 45; ++i) {
    const double middle = (low + high) / 2;
    (level(middle) < reached ? low : high) = middle;
  }
  const double ratio = std::pow(a.at(3) / a.at(1), alpha) * a.at(4) / a.at(2);
  return {level(high) - level(high * ratio)};
}

// at: % in the bowl, minutes, 1 for a lightener.
Values diffusion_ratio(const At& a) {
  BowlChemistry bowl;
  bowl.cls = a.at(2) > 0 ? ProductClass::lightener : ProductClass::permanent;
  bowl.peroxide_percent = a.at(0);
  bowl.minutes = a.at(1);
  const Treatment t = treatment(bowl, 5, 15, a.hair.constants());
  return {t.wear * std::log(a.hair.constants().porosity_diffusion_factor)};
}

Values time_exponent(const At& a) { return {a.hair.constants().lift_time_exponent}; }

// at: level of the shade. Its offer is the reference mix of a shade twice as light in amount, doubled.
Values saturation(const At& a) {
  const Spectrum tau = optical_depth(a.hair.natural(a.at(0)), pigments(a.hair.constants()));
  double sum = 0;
  for (double t : tau) sum += t;
  const double offer = sum / kBands;
  return {1 / (1 + offer / a.hair.constants().capacity_tau)};
}

// at: minutes.
Values uptake_share(const At& a) {
  const double radius = a.hair.constants().fibre_diameter_um / 2 * 1e-6;
  return {cylinder_uptake(a.hair.constants().diffusivity_permanent * a.at(0) * 60 / (radius * radius))};
}

const std::map<std::string, std::function<Values(const At&)>>& kinds() {
  static const std::map<std::string, std::function<Values(const At&)>> k = {{"natural_hair", natural_hair},
                                                                            {"white_hair", white_hair},
                                                                            {"level_lightness", level_lightness},
                                                                            {"melanin_at_level", melanin_at_level},
                                                                            {"melanin_step", melanin_step},
                                                                            {"tint_level", tint_level},
                                                                            {"practice", practice},

                                                                            {"lightened_lab", lightened_lab},
                                                                            {"hue_at_level", hue_at_level},
                                                                            {"lightener_level", lightener_level},
                                                                            {"sessions", sessions},
                                                                            {"lightening_course", lightening_course},
                                                                            {"diffusion_ratio", diffusion_ratio},
                                                                            {"time_exponent", time_exponent},
                                                                            {"saturation", saturation},
                                                                            {"uptake_share", uptake_share}};
  return k;
}

}  // namespace

Hair hair_at(const Problem& problem, const Eigen::VectorXd& x) {
  Constants c;
  std::array<double, kLevels> amounts{};
  for (size_t i = 0; i < problem.parameters.size(); ++i) {
    const Parameter& p = problem.parameters[i];
    if (p.file.empty()) continue;
    for (const ConstantInfo& info : constant_infos)
      if (p.key == info.key) c.*info.member = value(p, x[static_cast<Eigen::Index>(i)]);
  }
  // Outside these ends the closed form has no meaning; the fit may try such points on its way.
  c.pheomelanin_share = std::clamp(c.pheomelanin_share, 0.0, 0.9);
  c.oxidised_rate_ratio = std::clamp(c.oxidised_rate_ratio, 0.01, 0.95);
  c.oxidised_yield = std::clamp(c.oxidised_yield, 0.0, 1.0);
  for (int n = 1; n <= kLevels; ++n) {
    const size_t i = problem.index(amount_key(n));
    amounts[n - 1] = value(problem.parameters[i], x[static_cast<Eigen::Index>(i)]);
  }
  return {c, amounts};
}

std::vector<double> predicted(const Problem& problem, const Eigen::VectorXd& x, const Hair& hair, const Datum& d) {
  const auto kind = kinds().find(d.what);
  if (kind == kinds().end()) throw std::runtime_error(d.id + ": nothing is known of \"" + d.what + "\"");
  std::vector<double> v = kind->second({problem, x, hair, d});
  if (v.size() != d.values.size()) throw std::runtime_error(d.id + ": has the wrong count of values");
  if (!d.school.empty())
    for (double& level : v) level += x[static_cast<Eigen::Index>(problem.index(school_key(d.school)))];
  return v;
}

Eigen::VectorXd residuals(const Problem& problem, const Eigen::VectorXd& x) {
  const Hair hair = hair_at(problem, x);
  std::vector<double> r;
  for (const Datum& d : problem.data) {
    const std::vector<double> p = predicted(problem, x, hair, d);
    for (size_t i = 0; i < p.size(); ++i) r.push_back((p[i] - d.values[i]) / d.sds[i]);
  }
  for (size_t i = 0; i < problem.parameters.size(); ++i) {
    const Parameter& p = problem.parameters[i];
    r.push_back((x[static_cast<Eigen::Index>(i)] - internal(p, p.prior)) / p.sd);
  }
  return Eigen::Map<Eigen::VectorXd>(r.data(), static_cast<Eigen::Index>(r.size()));
}

}  // namespace strandline::calibrate
