// What is fitted and to what: constants with their priors, data with their sources.
#pragma once

#include <Eigen/Dense>
#include <string>
#include <vector>

#include "generated/constants.h"

namespace strandline::calibrate {

// One number to find. `x` of the fit is its logarithm where `log` is set; `sd` is then that of the logarithm.
struct Parameter {
  std::string key, unit, source, file;  // no file: a nuisance (amount of melanin of a sample, exposure of a step)
  double prior = 0, sd = 0;
  bool log = false;
};

struct Datum {
  std::string id, what, unit, source;
  std::string school;  // empty, or whose rule this is: all data of one school share an offset (school_key)
  std::vector<double> at, values, sds;
};

struct Problem {
  std::vector<Parameter> parameters;
  std::vector<Datum> data;
  // Position of a parameter by key; throws std::out_of_range with the key.
  size_t index(const std::string& key) const;
};

// Reads priors.json and data.json of `folder` and adds the nuisance parameters that the data need. Throws
// std::runtime_error that says which file and entry is wrong.
Problem read_problem(const std::string& folder);

// Physical value of parameter `i` at `x` and back.
double value(const Parameter& p, double x);
double internal(const Parameter& p, double value);
Eigen::VectorXd prior_point(const Problem& problem);

inline constexpr int kLevels = 10;
std::string amount_key(int level);
// Nuisance parameters named after their datum.
std::string sample_key(const Datum& datum);
// What a school's levels lie above the truth, in levels; one number for all its rules.
std::string school_key(const std::string& school);

}  // namespace strandline::calibrate
