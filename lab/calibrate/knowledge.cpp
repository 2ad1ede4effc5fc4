#include "knowledge.h"

#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "predict.h"

namespace strandline::calibrate {
namespace {

using Json = nlohmann::ordered_json;

Json read(const std::string& path) {
  std::ifstream in(path);
  if (!in) throw std::runtime_error(path + ": cannot be read");
  return Json::parse(in);
}

// One entry of a list to a line, so that a change of one figure is a change of one line.
std::string laid_out(const Json& json) {
  std::string text = "{";
  for (const auto& [key, part] : json.items()) {
    text += (text.size() > 1 ? ",\n " : "\n ") + Json(key).dump() + ": ";
    const bool list_of_entries = part.is_array() && !part.empty() && part[0].is_structured();
    if (!list_of_entries) {
      text += part.dump();
      continue;
    }
    text += "[";
    for (size_t i = 0; i < part.size(); ++i) text += (i ? ",\n  " : "\n  ") + part[i].dump();
    text += "]";
  }
  return text + "\n}\n";
}

void write(const std::string& path, const Json& json) {
  std::ofstream out(path, std::ios::binary);
  out << laid_out(json);
  out.close();
  if (!out) throw std::runtime_error(path + ": cannot be written");
}

double digits(double v, int n) {
  char text[40];
  std::snprintf(text, sizeof text, "%.*g", n, v);
  return std::stod(text);
}

std::string provenance(const Parameter& p) {
  char text[96];
  std::snprintf(text, sizeof text, "fitted to knowledge/calibration/data.json; before the fit %g, sd %g%s (", p.prior,
                p.sd, p.log ? " of ln" : "");
  return text + p.source + ")";
}

void write_constants(const Problem& problem, const Fit& f, const std::string& folder, const std::string& command) {
  std::map<std::string, Json> files;
  for (size_t i = 0; i < problem.parameters.size(); ++i) {
    const Parameter& p = problem.parameters[i];
    if (p.file.empty()) continue;
    if (!files.count(p.file)) files[p.file] = read(folder + "/" + p.file);
    bool found = false;
    for (Json& c : files[p.file].at("constants"))
      if (c.at("key") == p.key) {
        c["value"] = digits(value(p, f.x[static_cast<Eigen::Index>(i)]), 4);
        c["sd"] = digits(f.sd(i), 2);
        c["source"] = provenance(p);
        found = true;
      }
    if (!found) throw std::runtime_error(folder + "/" + p.file + ": has no constant " + p.key);
  }
  for (auto& [file, json] : files) {
    json["command"] = command;
    write(folder + "/" + file, json);
  }
}

// sd of the anchor's L* by the slope of L* in every parameter.
double anchor_sd(const Problem& problem, const Fit& f, int level) {
  Eigen::VectorXd slope(f.x.size());
  for (Eigen::Index k = 0; k < f.x.size(); ++k) {
    Eigen::VectorXd up = f.x, down = f.x;
    const double h = 1e-4 * problem.parameters[static_cast<size_t>(k)].sd;
    up[k] += h, down[k] -= h;
    slope[k] = (hair_at(problem, up).lightness(level) - hair_at(problem, down).lightness(level)) / (2 * h);
  }
  return std::sqrt(slope.dot(f.covariance * slope));
}

void write_anchors(const Problem& problem, const Fit& f, const std::string& folder, const std::string& command) {
  const std::string path = folder + "/levels/anchors.json";
  Json json = read(path);
  const Hair hair = hair_at(problem, f.x);
  json["source"] =
      "fitted to knowledge/calibration/data.json: sphere readings of natural hair (J Soc Cosmet Chem 46(4) 1995; J "
      "Cosmet Sci 51:293, 2000), reported melanin, lift rules, and trial anchors as prior";
  json["command"] = command;
  Json rows = Json::array();
  for (int n = 1; n <= kLevels; ++n)
    rows.push_back({n, std::round(10 * hair.lightness(n)) / 10, digits(anchor_sd(problem, f, n), 2)});
  json["rows"] = rows;
  write(path, json);
}

bool varies(const std::string& key) {
  for (const ConstantInfo& info : constant_infos)
    if (key == info.key) return info.doubt;
  return false;
}

void write_correlation(const Problem& problem, const Fit& f, const std::string& folder, const std::string& command) {
  std::vector<size_t> used;
  for (size_t i = 0; i < problem.parameters.size(); ++i)
    if (!problem.parameters[i].file.empty() && varies(problem.parameters[i].key)) used.push_back(i);
  Json keys = Json::array(), rows = Json::array();
  for (size_t i : used) {
    keys.push_back(problem.parameters[i].key);
    Json row = Json::array();
    for (size_t j : used) row.push_back(i == j ? 1.0 : std::round(1e4 * f.correlation(i, j)) / 1e4);
    rows.push_back(row);
  }
  write(folder + "/doubt/correlation.json",
        {{"kind", "correlation"},
         {"title", "Correlation of the fitted constants that vary from scenario to scenario (M13)"},
         {"source",
          "fitted to knowledge/calibration/data.json: Laplace's approximation of the posterior, spreads along the "
          "profiles"},
         {"command", command},
         {"keys", keys},
         {"rows", rows}});
}

}  // namespace

void write_knowledge(const Problem& problem, const Fit& f, const std::string& folder, const std::string& command) {
  write_constants(problem, f, folder, command);
  write_anchors(problem, f, folder, command);
  write_correlation(problem, f, folder, command);
}

}  // namespace strandline::calibrate
