// Gauss–Newton on the joint mean and covariance (M17).
#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "generated/learning.h"
#include "learned/joint.h"
#include "strandline/levels.h"

namespace strandline::learned {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double kNinety = 1.6448536269514722;  // nine tenths lie within so many standard deviations

// How a result itself scatters: the eye, what it names rounded to half levels, or the instrument.
VectorXd told_variance(const std::vector<Seen>& zones, const std::vector<Rows>& rows, int total) {
  const Priors p;
  VectorXd v(total);
  for (size_t i = 0; i < rows.size(); ++i) {
    const Rows& r = rows[i];
    const double sd = zones[i].measured ? p.measured_level_sd : p.judged_sd;
    const bool rounded = !zones[i].measured && !zones[i].as_predicted;
    v[r.first] = sd * sd + (rounded ? p.named_step * p.named_step / 12 : 0);  // evenly anywhere within the step
    for (int k = 1; k < r.count; ++k) v[r.first + k] = p.measured_tone_sd * p.measured_tone_sd;
  }
  return v;
}

// As far off for three numbers as `gate` is for one: the same share of true results lies beyond (chi squared).
double gate_squared(int rows) {
  constexpr double kMoreForTwo = 2.6;
  const double one = Priors{}.gate_sd * Priors{}.gate_sd;
  return one + kMoreForTwo * (rows - 1);
}

}  // namespace

Result<std::vector<Said>> Model::expected(const Outcome& outcome) const {
  Outcome asked = outcome;
  asked.zones.clear();
  for (const Step& step : outcome.steps)
    for (const std::string& zone : step.zones)
      if (std::none_of(asked.zones.begin(), asked.zones.end(), [&](const Seen& s) { return s.zone == zone; }))
        asked.zones.push_back({zone, 0, {}});
  State here = state_->of(outcome.who.person);
  return Response::of(asked).map([&](const Response& response) { return here.take(asked, response); });
}

Result<std::vector<Said>> Model::take(const Outcome& outcome) {
  return Response::of(outcome).map([&](const Response& response) { return state_->take(outcome, response); });
}

std::vector<Said> Model::State::take(const Outcome& outcome, const Response& response) {
  ready_for(outcome);
  const auto n = static_cast<int>(keys.size());
  const auto place = [&](Whose whose, const std::string& id, What what) {
    if (whose == Whose::person) return n + static_cast<int>(what);
    return index_of({whose, id, what});
  };
  const int eye_at = place(Whose::colourist, outcome.who.colourist, What::eye);
  int total = 0;
  const std::vector<Seen>& zones = response.zones();
  const std::vector<Rows> rows = rows_of(zones, total);
  Joint before = joint(outcome.who.person);
  if (zones.empty()) return {};
  before.read(response, n, eye_at);

  // As judged: with the eye of whoever judges. What is as predicted was not named, but held against the prediction.
  const auto judged = [&](Local& local, const VectorXd& x) {
    for (size_t i = 0; i < zones.size(); ++i)
      if (zones[i].as_predicted) local.eye_only[rows[i].first] = 0;
    local.expected += local.eye_only * x[eye_at];
    local.by.col(eye_at) += local.eye_only;
  };

  Local local = about(response, rows, total, before.mean, outcome.who.colourist, place);
  VectorXd seen(total);
  for (size_t i = 0; i < zones.size(); ++i) {
    const Seen& z = zones[i];
    const int r = rows[i].first;
    seen[r] = z.measured ? level_of_lightness(z.measured->l) : z.level;
    if (z.measured) seen[r + 1] = z.measured->a, seen[r + 2] = z.measured->b;
    // No difference was told: whatever would have been named by the same half level teaches no offset.
    const double same = Priors{}.named_step / 2;
    if (z.as_predicted && !z.measured) seen[r] = std::clamp(local.expected[r], z.level - same, z.level + same);
  }
  const VectorXd untaught = compared(response.after(response.read({}), {}), rows, total);
  const MatrixXd truly = local.by * before.covariance * local.by.transpose() + local.scatter;
  std::vector<Said> said;
  for (size_t i = 0; i < zones.size(); ++i) {
    Said s;
    s.outcome = outcome.id, s.zone = zones[i].zone, s.ranges = response.ranges_on(zones[i].zone);
    s.measured = zones[i].measured.has_value();
    const int r = rows[i].first;
    s.untaught = untaught[r], s.expected = local.expected[r], s.seen = seen[r];
    const double half = kNinety * std::sqrt(truly(r, r));
    s.low = s.expected - half, s.high = s.expected + half;
    said.push_back(std::move(s));
  }

  judged(local, before.mean);
  MatrixXd noise = local.scatter;
  noise.diagonal() += told_variance(zones, rows, total);
  const MatrixXd spread = local.by * before.covariance * local.by.transpose() + noise;
  std::vector<int> kept;
  for (size_t i = 0; i < rows.size(); ++i) {
    const auto block = Eigen::seqN(rows[i].first, rows[i].count);
    const VectorXd off = (seen - local.expected)(block);
    const double squared = off.dot(spread(block, block).ldlt().solve(off));
    said[i].surprise = std::sqrt(std::max(0.0, squared));
    said[i].set_aside = squared > gate_squared(rows[i].count);
    if (!said[i].set_aside)
      for (int k = 0; k < rows[i].count; ++k) kept.push_back(rows[i].first + k);
  }
  for (size_t i = 0; i < said.size(); ++i) {
    if (said[i].set_aside) continue;
    const double half = kNinety * std::sqrt(spread(rows[i].first, rows[i].first));
    const bool within = std::abs(seen[rows[i].first] - local.expected[rows[i].first]) <= half;
    for (const std::string& range : said[i].ranges) ++tallies[range].learned, tallies[range].within += within;
  }

  // Gauss–Newton: the response about where the last turn came to, the distance from before never forgotten.
  Joint after = before;
  constexpr int kTurns = 2;
  constexpr double kStraight = 0.03;  // so near the response is a straight line
  for (int turn = 0; turn < kTurns && !kept.empty(); ++turn) {
    if (turn > 0) {
      if ((after.mean - before.mean).cwiseAbs().maxCoeff() < kStraight) break;
      local = about(response, rows, total, after.mean, outcome.who.colourist, place);
      judged(local, after.mean);
    }
    const MatrixXd by = local.by(kept, Eigen::all);
    const MatrixXd cross = before.covariance * by.transpose();
    const MatrixXd gain = (by * cross + noise(kept, kept)).ldlt().solve(cross.transpose()).transpose();
    after.mean = before.mean + gain * ((seen - local.expected)(kept)-by * (before.mean - after.mean));
    after.covariance = before.covariance - gain * cross.transpose();
  }
  after.covariance = (after.covariance + after.covariance.transpose()).eval() / 2;
  keep(outcome.who.person, after);
  return said;
}

}  // namespace strandline::learned
