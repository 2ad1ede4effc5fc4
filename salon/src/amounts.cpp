#include "strandline/salon/amounts.h"

#include <algorithm>
#include <cmath>

#include "figures.h"

namespace strandline::salon {

namespace {

// The logarithm of what a head took against the usual grams; nothing where no leftover was weighed, or a slip.
std::optional<double> took(const EndedVisit& v, const AmountRules& rules) {
  if (v.planned_g <= 0 || v.mixed_g <= v.left_g || v.mix_factor <= 0) return std::nullopt;
  const double against_plan = (v.mixed_g - v.left_g) * (1 + rules.waste_share) / v.planned_g;
  if (against_plan > rules.gate || against_plan < 1 / rules.gate) return std::nullopt;
  return std::log(against_plan * v.mix_factor);
}

}  // namespace

Result<AmountRules> read_amount_rules(const wire::Json& json) {
  auto read = Figures::read(json);
  if (!read) return tl::unexpected(read.error());
  AmountRules out;
  read->take("client_sd", out.client_sd, 0.01, 1);
  read->take("colourist_sd", out.colourist_sd, 0.01, 1);
  read->take("visit_sd", out.visit_sd, 0.01, 1);
  read->take("gate", out.gate, 1.1, 10);
  read->take("least", out.least, 0.2, 1);
  read->take("most", out.most, 1, 3);
  if (!read->problems().empty()) return tl::unexpected(read->problems());
  return out;
}

MixFactor mix_factor(const std::vector<EndedVisit>& visits, const std::string& person, const std::string& by,
                     const AmountRules& rules) {
  // Two levels of shrinkage: how this colourist lays on, from everybody; what is left of it is this client's.
  const double noise = rules.visit_sd * rules.visit_sd, client = rules.client_sd * rules.client_sd;
  double of_colourist = 0;
  if (!by.empty()) {
    // Several visits of one client are one head: each client counts by what its visits tell together.
    std::map<std::string, std::pair<double, int>> heads;
    for (const EndedVisit& v : visits) {
      const auto y = v.by == by ? took(v, rules) : std::nullopt;
      if (y) heads[v.person.empty() ? v.id : v.person].first += *y, ++heads[v.person.empty() ? v.id : v.person].second;
    }
    double weight = 1 / (rules.colourist_sd * rules.colourist_sd), sum = 0;
    for (const auto& [id, head] : heads) {
      const double w = 1 / (client + noise / head.second);
      weight += w, sum += w * head.first / head.second;
    }
    of_colourist = sum / weight;
  }
  MixFactor out;
  double weight = 1 / client, sum = 0;
  for (const EndedVisit& v : visits) {
    const auto y = !person.empty() && v.person == person ? took(v, rules) : std::nullopt;
    if (!y) continue;
    ++out.visits;
    weight += 1 / noise, sum += (*y - (v.by == by ? of_colourist : 0)) / noise;
  }
  out.factor = std::clamp(std::exp(of_colourist + sum / weight), rules.least, rules.most);
  return out;
}

}  // namespace strandline::salon
