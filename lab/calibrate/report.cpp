#include "report.h"

#include <algorithm>
#include <cmath>

#include "predict.h"

namespace strandline::calibrate {
namespace {

// A posterior that is nearly as wide as its prior says that the data are silent.
constexpr double kSilent = 0.85, kHardlyHeard = 0.6;
constexpr double kWorthPrinting = 0.4;

bool constant(const Parameter& p) { return !p.file.empty(); }

}  // namespace

void print_residuals(const Problem& problem, const Fit& f, std::FILE* out) {
  struct Row {
    double worst;
    const Datum* datum;
    std::vector<double> got;
  };
  const Hair hair = hair_at(problem, f.x);
  std::vector<Row> rows;
  for (const Datum& d : problem.data) {
    Row row{0, &d, predicted(problem, f.x, hair, d)};
    for (size_t i = 0; i < row.got.size(); ++i)
      row.worst = std::max(row.worst, std::abs(row.got[i] - d.values[i]) / d.sds[i]);
    rows.push_back(std::move(row));
  }
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.worst > b.worst; });
  std::fprintf(out, "Residuals, worst first: model / datum (in sd of the datum)\n");
  for (const Row& row : rows) {
    std::fprintf(out, "  %-24s", row.datum->id.c_str());
    for (size_t i = 0; i < row.got.size(); ++i)
      std::fprintf(out, " %7.2f /%7.2f (%+.1f)", row.got[i], row.datum->values[i],
                   (row.got[i] - row.datum->values[i]) / row.datum->sds[i]);
    std::fprintf(out, "  %s; %s\n", row.datum->unit.c_str(), row.datum->source.c_str());
  }
}

void print_parameters(const Problem& problem, const Fit& f, std::FILE* out) {
  std::fprintf(out, "\n%-30s %10s %9s %10s %9s %6s\n", "Parameters (log: sd of ln)", "prior", "sd", "posterior", "sd",
               "ratio");
  for (size_t i = 0; i < problem.parameters.size(); ++i) {
    const Parameter& p = problem.parameters[i];
    const double ratio = f.sd(i) / p.sd;
    std::fprintf(out, "%-30s %10.4g %9.3g %10.4g %9.3g %6.2f %s%s\n", p.key.c_str(), p.prior, p.sd,
                 value(p, f.x[static_cast<Eigen::Index>(i)]), f.sd(i), ratio, p.log ? "log " : "",
                 !constant(p)           ? "nuisance"
                 : ratio > kSilent      ? "NOT IDENTIFIABLE: the prior speaks"
                 : ratio > kHardlyHeard ? "hardly learned"
                                        : "");
  }
}

void print_correlations(const Problem& problem, const Fit& f, std::FILE* out) {
  std::fprintf(out, "\nCorrelations of constants beyond %.1f\n", kWorthPrinting);
  for (size_t i = 0; i < problem.parameters.size(); ++i)
    for (size_t j = 0; j < i; ++j)
      if (constant(problem.parameters[i]) && constant(problem.parameters[j]) &&
          std::abs(f.correlation(i, j)) > kWorthPrinting)
        std::fprintf(out, "  %+.2f  %s, %s\n", f.correlation(i, j), problem.parameters[j].key.c_str(),
                     problem.parameters[i].key.c_str());
}

std::vector<GridCell> lift_grid(const Hair& hair) {
  constexpr double kVolumeMargin = 0.25, kAverageMargin = 0.7;
  struct Rule {
    double percent, low, high;
  };
  std::vector<GridCell> grid;
  for (const Rule& rule : {Rule{3, 0, 1}, Rule{6, 1, 2}, Rule{9, 2, 3}, Rule{12, 3, 4}})
    for (int natural = 1; natural <= 7; ++natural)
      for (int shade = natural; shade <= std::min(natural + 4, kLevels); ++shade) {
        GridCell c{static_cast<double>(natural), static_cast<double>(shade), rule.percent, 0, false, false};
        c.result = hair.level(hair.colour(hair.tinted(hair.natural(natural), shade, rule.percent)).l);
        const double low = std::min(natural + rule.low, c.shade), high = std::min(natural + rule.high, c.shade);
        c.volume_school = c.result >= low - kVolumeMargin && c.result <= high + kVolumeMargin;
        c.average_school = std::abs(c.result - (c.natural + c.shade) / 2) <= kAverageMargin;
        grid.push_back(c);
      }
  return grid;
}

void print_grid(const std::vector<GridCell>& grid, std::FILE* out) {
  std::fprintf(out,
               "\nLift grid: level reached by natural level (rows) and shade natural … +4. "
               "= both schools, v lift by strength, a mean, ! neither\n");
  int volume = 0, average = 0, either = 0;
  double percent = 0, natural = 0;
  for (const GridCell& c : grid) {
    if (c.percent != percent) std::fprintf(out, "\n%g %%", percent = c.percent);
    if (c.natural != natural) std::fprintf(out, "\n  %g:", natural = c.natural);
    std::fprintf(out, "  %5.2f%c", c.result,
                 c.volume_school && c.average_school ? '='
                 : c.volume_school                   ? 'v'
                 : c.average_school                  ? 'a'
                                                     : '!');
    volume += c.volume_school, average += c.average_school, either += c.volume_school || c.average_school;
  }
  std::fprintf(out, "\n\n%d of %zu cells within a school (lift by strength %d, mean %d)\n", either, grid.size(), volume,
               average);
}

}  // namespace strandline::calibrate
