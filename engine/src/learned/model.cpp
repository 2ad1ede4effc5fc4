#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <utility>

#include "generated/learning.h"
#include "learned/joint.h"

namespace strandline::learned {

using Eigen::MatrixXd;
using Eigen::VectorXd;

Model::Model() : state_(std::make_unique<State>()) {}
Model::Model(const Model& other) : state_(std::make_unique<State>(*other.state_)) {}
Model::Model(Model&& other) noexcept : state_(std::move(other.state_)) {}
Model& Model::operator=(Model other) noexcept {
  state_ = std::move(other.state_);
  return *this;
}
Model::~Model() = default;

int Model::State::index_of(const Key& key) const {
  const auto found = places.find(key);
  return found == places.end() ? -1 : found->second;
}

void Model::State::add(const Key& key) {
  if (index_of(key) >= 0) return;
  const auto n = static_cast<Eigen::Index>(keys.size());
  places[key] = static_cast<int>(n);
  keys.push_back(key);
  mean.conservativeResize(n + 1);
  mean[n] = 0;
  covariance.conservativeResize(n + 1, n + 1);
  covariance.row(n).setZero(), covariance.col(n).setZero();
  covariance(n, n) = std::pow(prior_sd(key.whose, key.what), 2);
}

Model::State::Person Model::State::person(const std::string& id) const {
  const auto n = static_cast<Eigen::Index>(keys.size());
  const auto found = id.empty() ? people.end() : people.find(id);
  Person p{MatrixXd::Zero(kOwn, n), VectorXd::Zero(kOwn), MatrixXd::Zero(kOwn, kOwn)};
  if (found == people.end()) {
    for (int i = 0; i < kOwn; ++i) p.left(i, i) = std::pow(prior_sd(Whose::person, static_cast<What>(i)), 2);
    p.base[static_cast<int>(What::natural)] = Priors{}.natural_level;
    p.base[static_cast<int>(What::white)] = Priors{}.white_share;
  } else {
    // What came to be shared since says nothing of this person yet.
    p.of_shared.leftCols(found->second.of_shared.cols()) = found->second.of_shared;
    p.base = found->second.base, p.left = found->second.left;
  }
  return p;
}

Joint Model::State::joint(const std::string& id) const {
  const Person p = person(id);
  const auto n = mean.size();
  Joint j{VectorXd(n + kOwn), MatrixXd(n + kOwn, n + kOwn)};
  j.mean << mean, p.of_shared * mean + p.base;
  const MatrixXd across = covariance * p.of_shared.transpose();
  j.covariance.topLeftCorner(n, n) = covariance;
  j.covariance.topRightCorner(n, kOwn) = across;
  j.covariance.bottomLeftCorner(kOwn, n) = across.transpose();
  j.covariance.bottomRightCorner(kOwn, kOwn) = p.of_shared * across + p.left;
  return j;
}

void Model::State::keep(const std::string& id, const Joint& j) {
  const auto n = mean.size();
  mean = j.mean.head(n);
  covariance = j.covariance.topLeftCorner(n, n);
  if (id.empty()) return;
  Person p;
  p.of_shared = covariance.ldlt().solve(j.covariance.topRightCorner(n, kOwn)).transpose();
  p.base = j.mean.tail(kOwn) - p.of_shared * mean;
  p.left = j.covariance.bottomRightCorner(kOwn, kOwn) - p.of_shared * j.covariance.topRightCorner(n, kOwn);
  const double drift = std::pow(Priors{}.person_drift_sd, 2);
  for (int i = 0; i < kOwn; ++i) {
    // Never wider again than somebody who was not seen yet.
    const double most = std::pow(prior_sd(Whose::person, static_cast<What>(i)), 2);
    p.left(i, i) = std::max(p.left(i, i), std::min(most, p.left(i, i) + drift));
  }
  people[id] = std::move(p);
}

void Model::State::ready_for(const Outcome& outcome) {
  add({Whose::salon, "", What::lift}), add({Whose::salon, "", What::depth});
  add({Whose::colourist, outcome.who.colourist, What::eye});
  for (const Step& step : outcome.steps)
    for (const What what : {What::lift, What::depth, What::warmth})
      add({Whose::range, range_key(outcome.shelf, step.formula.range), what});
}

Model::State Model::State::of(const std::string& who) const {
  State out{keys, places, mean, covariance, {}, {}};
  if (const auto found = people.find(who); found != people.end()) out.people.insert(*found);
  return out;
}

std::vector<Factor> Model::factors() const {
  std::vector<Factor> out;
  for (size_t i = 0; i < state_->keys.size(); ++i) {
    const auto k = static_cast<Eigen::Index>(i);
    out.push_back({state_->keys[i].whose, state_->keys[i].id, state_->keys[i].what, state_->mean[k],
                   std::sqrt(std::max(0.0, state_->covariance(k, k))),
                   prior_sd(state_->keys[i].whose, state_->keys[i].what)});
  }
  return out;
}

std::vector<Factor> Model::factors(const std::string& id) const {
  std::vector<Factor> out;
  if (id.empty() || !state_->people.contains(id)) return out;
  const Joint j = state_->joint(id);
  for (const What what : {What::lift, What::depth, What::warmth, What::natural, What::white}) {
    const auto k = state_->mean.size() + static_cast<int>(what);
    out.push_back({Whose::person, id, what, j.mean[k], std::sqrt(std::max(0.0, j.covariance(k, k))),
                   prior_sd(Whose::person, what)});
  }
  return out;
}

Effect Model::effect(const std::string& range, const std::string& id) const {
  Effect e;
  const VectorXd own = state_->people.contains(id) ? VectorXd(state_->joint(id).mean.tail(kOwn)) : VectorXd::Zero(kOwn);
  for (const What what : {What::lift, What::depth, What::warmth}) {
    for (const Key& key : {Key{Whose::salon, "", what}, Key{Whose::range, range, what}})
      if (const int i = state_->index_of(key); i >= 0) part(e, what) += state_->mean[i];
    part(e, what) += own[static_cast<int>(what)];
  }
  return e;
}

int Model::results(const std::string& range) const {
  const auto found = state_->tallies.find(range);
  return found == state_->tallies.end() ? 0 : found->second.learned;
}

double Model::within(const std::string& range) const {
  const auto found = state_->tallies.find(range);
  if (found == state_->tallies.end() || found->second.learned == 0) return 0;
  return static_cast<double>(found->second.within) / found->second.learned;
}

Shelf as_known(Shelf shelf, const Model& model, const std::string& person) {
  for (Range& range : shelf.ranges) {
    const Effect e = model.effect(range_key(shelf, range.id), person);
    for (Product& p : shelf.products)
      if (p.range == range.id) apply_to(p, range, e);
    apply_to(range, e);
  }
  return shelf;
}

}  // namespace strandline::learned
