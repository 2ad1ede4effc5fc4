#include "problem.h"

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>

namespace strandline::calibrate {
namespace {

nlohmann::json read(const std::string& path) {
  std::ifstream in(path);
  if (!in) throw std::runtime_error(path + ": cannot be read");
  try {
    return nlohmann::json::parse(in);
  } catch (const nlohmann::json::exception& e) {
    throw std::runtime_error(path + ": " + e.what());
  }
}

Parameter parameter(const nlohmann::json& j) {
  Parameter p;
  p.key = j.at("key"), p.unit = j.at("unit"), p.source = j.at("source"), p.file = j.at("file");
  p.prior = j.at("value"), p.sd = j.at("sd");
  p.log = j.value("spread", "") == "log";
  if (!(p.sd > 0) || (p.log && !(p.prior > 0)))
    throw std::runtime_error(p.key + ": needs sd > 0, and value > 0 in log");
  return p;
}

Datum datum(const nlohmann::json& j) {
  Datum d;
  d.id = j.at("id"), d.what = j.at("what"), d.unit = j.at("unit"), d.source = j.at("source");
  d.school = j.value("school", "");
  d.at = j.at("at").get<std::vector<double>>();
  d.values = j.at("values").get<std::vector<double>>();
  d.sds = j.at("sds").get<std::vector<double>>();
  if (d.values.empty() || d.values.size() != d.sds.size())
    throw std::runtime_error(d.id + ": as many sds as values are needed");
  for (double s : d.sds)
    if (!(s > 0)) throw std::runtime_error(d.id + ": an sd is not above 0");
  return d;
}

// A row of the practice table: what was done, the level expected, how far colourists differ.
Datum cell(const nlohmann::json& row, const std::string& source) {
  const auto all = row.get<std::vector<double>>();
  constexpr size_t kDone = 9, kColumns = 11;
  if (all.size() != kColumns || !(all[kDone + 1] > 0)) throw std::runtime_error("practice.json: a row is not a cell");
  Datum d;
  d.what = "practice", d.unit = "levels", d.source = source;
  d.at.assign(all.begin(), all.begin() + kDone);
  d.values = {all[kDone]}, d.sds = {all[kDone + 1]};
  d.id = "practice";
  for (double v : d.at) d.id += "." + nlohmann::json(v).dump();
  return d;
}

Parameter nuisance(const std::string& key, double prior, double sd, const std::string& unit) {
  return {key, unit, "wide, found by the fit", "", prior, sd, true};
}

}  // namespace

std::string amount_key(int level) { return "melanin_level_" + std::to_string(level); }
std::string sample_key(const Datum& d) { return (d.what == "natural_hair" ? "melanin." : "exposure.") + d.id; }

std::string school_key(const std::string& school) { return "school." + school; }

size_t Problem::index(const std::string& key) const {
  for (size_t i = 0; i < parameters.size(); ++i)
    if (parameters[i].key == key) return i;
  throw std::out_of_range("no parameter " + key);
}

Problem read_problem(const std::string& folder) {
  Problem problem;
  try {
    const nlohmann::json priors = read(folder + "/priors.json"), data = read(folder + "/data.json"),
                         cells = read(folder + "/practice.json");
    for (const auto& j : priors.at("constants")) problem.parameters.push_back(parameter(j));
    for (const auto& j : data.at("data")) problem.data.push_back(datum(j));
    for (const auto& row : cells.at("rows")) problem.data.push_back(cell(row, cells.at("source")));
  } catch (const nlohmann::json::exception& e) {
    throw std::runtime_error(folder + ": " + e.what());
  }
  // A trial on the computed curve; the prior is wide and the anchors carry the information.
  constexpr double trial[kLevels] = {2.3, 1.3, 0.87, 0.54, 0.34, 0.23, 0.15, 0.087, 0.043, 0.016};
  constexpr double kWide = 1.5;
  for (int level = 1; level <= kLevels; ++level)
    problem.parameters.push_back(nuisance(amount_key(level), trial[level - 1], kWide, "% w/w"));
  for (const Datum& d : problem.data) {
    if (d.what == "natural_hair") problem.parameters.push_back(nuisance(sample_key(d), 0.8, kWide, "% w/w"));
    if (d.what == "lightened_lab") problem.parameters.push_back(nuisance(sample_key(d), 3, kWide, "exposure"));
  }
  // Schools name levels up to one apart and judge lift by their own habits (docs/model.md, where schools differ): the
  // cells of one rule err together, and what they share says nothing about hair.
  constexpr double kSchoolsApart = 0.35;
  std::set<std::string> schools;
  for (const Datum& d : problem.data)
    if (!d.school.empty() && schools.insert(d.school).second)
      problem.parameters.push_back(
          {school_key(d.school), "levels", "shared by all cells of one school", "", 0, kSchoolsApart, false});
  return problem;
}

double value(const Parameter& p, double x) { return p.log ? std::exp(x) : x; }
double internal(const Parameter& p, double v) { return p.log ? std::log(v) : v; }

Eigen::VectorXd prior_point(const Problem& problem) {
  Eigen::VectorXd x(problem.parameters.size());
  for (size_t i = 0; i < problem.parameters.size(); ++i)
    x[static_cast<Eigen::Index>(i)] = internal(problem.parameters[i], problem.parameters[i].prior);
  return x;
}

}  // namespace strandline::calibrate
