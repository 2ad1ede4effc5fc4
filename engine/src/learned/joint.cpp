#include "learned/joint.h"

#include <cmath>

#include "generated/learning.h"
#include "strandline/levels.h"

namespace strandline::learned {

using Eigen::MatrixXd;
using Eigen::VectorXd;

double prior_sd(Whose whose, What what) {
  const Priors p;
  switch (whose) {
    case Whose::salon:
      return p.salon_sd;
    case Whose::colourist:
      return p.eye_sd;
    case Whose::range:
      return what == What::lift ? p.range_lift_sd : what == What::depth ? p.range_depth_sd : p.range_warmth_sd;
    case Whose::person:
      if (what == What::natural) return p.natural_level_sd;
      if (what == What::white) return p.white_share_sd;
      return what == What::lift ? p.person_lift_sd : what == What::depth ? p.person_depth_sd : p.person_warmth_sd;
  }
  return 0;
}

double& part(Effect& e, What what) { return what == What::lift ? e.lift : what == What::depth ? e.depth : e.warmth; }

void Joint::read(double seen, const VectorXd& by, double sd, int own, double own_sd) {
  const auto spread = [&] { return by.dot(covariance * by) + sd * sd; };
  if (std::pow(seen - by.dot(mean), 2) > Priors{}.gate_sd * Priors{}.gate_sd * spread()) {
    covariance.row(own).setZero(), covariance.col(own).setZero();
    covariance(own, own) = own_sd * own_sd;
    mean[own] = seen;
  }
  const VectorXd gain = covariance * by / spread();
  mean += gain * (seen - by.dot(mean));
  covariance -= gain * (covariance * by).transpose();
}

void Joint::read(const Response& response, int first_own, int eye) {
  const Priors p;
  VectorXd by = VectorXd::Zero(mean.size());
  if (const auto& natural = response.natural()) {
    const int own = first_own + static_cast<int>(What::natural);
    by[own] = 1, by[eye] = natural->measured ? 0 : 1;
    read(natural->level, by, natural->measured ? p.measured_level_sd : p.reading_left_sd, own, p.natural_level_sd);
  }
  if (const auto& white = response.white()) {
    const int own = first_own + static_cast<int>(What::white);
    by.setZero(), by[own] = 1;
    read(*white, by, Constants{}.reading_white_sd_percent / 100, own, p.white_share_sd);
  }
}

std::vector<Rows> rows_of(const std::vector<Seen>& zones, int& total) {
  std::vector<Rows> rows;
  total = 0;
  for (const Seen& z : zones) {
    rows.push_back({total, z.measured ? 3 : 1});
    total += rows.back().count;
  }
  return rows;
}

VectorXd compared(const std::vector<Lab>& colours, const std::vector<Rows>& rows, int total) {
  VectorXd v(total);
  for (size_t i = 0; i < rows.size(); ++i) {
    v[rows[i].first] = level_of_lightness(colours[i].l);
    if (rows[i].count > 1) v[rows[i].first + 1] = colours[i].a, v[rows[i].first + 2] = colours[i].b;
  }
  return v;
}

Local about(const Response& response, const std::vector<Rows>& rows, int total, const VectorXd& x,
            const std::string& colourist, const Place& place) {
  constexpr double kStep = 0.05, kEyeStep = 0.2;
  const Priors p;
  Effects effects;
  for (const std::string& range : response.ranges())
    for (const What what : {What::lift, What::depth, What::warmth}) {
      double& e = part(effects[range], what);
      for (const int i :
           {place(Whose::salon, "", what), place(Whose::range, range, what), place(Whose::person, "", what)})
        if (i >= 0) e += x[i];
    }
  const int eye_at = place(Whose::colourist, colourist, What::eye),
            natural_at = place(Whose::person, "", What::natural);
  const int white_at = place(Whose::person, "", What::white);
  const Response::Readings read_so{x[eye_at], x[natural_at], x[white_at]};
  const std::vector<ZoneDraws> as_read = response.read(read_so);
  Local local;
  local.expected = compared(response.after(as_read, effects), rows, total);
  local.by = MatrixXd::Zero(total, x.size());
  const bool any_measured = total > static_cast<int>(rows.size());
  MatrixXd visit = MatrixXd::Zero(total, 2);
  for (const std::string& range : response.ranges())
    for (const What what : {What::lift, What::depth, What::warmth}) {
      if (what == What::warmth && !any_measured) continue;
      Effects moved = effects;
      part(moved[range], what) += kStep;
      const VectorXd slope = (compared(response.after(as_read, moved), rows, total) - local.expected) / kStep;
      for (const int i :
           {place(Whose::salon, "", what), place(Whose::range, range, what), place(Whose::person, "", what)})
        if (i >= 0) local.by.col(i) += slope;
      if (what != What::warmth) visit.col(static_cast<int>(what)) += slope;
    }
  const auto slope_by = [&](const Response::Readings& moved, double step) -> VectorXd {
    return (compared(response.after(response.read(moved), effects), rows, total) - local.expected) / step;
  };
  const VectorXd read = slope_by({read_so.eye + kEyeStep, read_so.natural, read_so.white}, kEyeStep);
  local.by.col(eye_at) += read;
  if (response.natural())
    local.by.col(natural_at) += slope_by({read_so.eye, x[natural_at] + kEyeStep, read_so.white}, kEyeStep);
  if (response.white()) local.by.col(white_at) += slope_by({read_so.eye, read_so.natural, x[white_at] + kStep}, kStep);
  // A visit's own thickness and warmth, and what a reading leaves open, move all of its zones together.
  local.scatter = p.visit_sd * p.visit_sd * visit * visit.transpose() +
                  p.reading_left_sd * p.reading_left_sd * read * read.transpose();
  local.eye_only = VectorXd::Zero(total);
  for (const Rows& r : rows) {
    local.scatter(r.first, r.first) += p.model_level_sd * p.model_level_sd;
    if (r.count == 1) local.eye_only[r.first] = 1;
    for (int k = 1; k < r.count; ++k) local.scatter(r.first + k, r.first + k) += p.model_tone_sd * p.model_tone_sd;
  }
  return local;
}

}  // namespace strandline::learned
