#include <algorithm>
#include <cmath>
#include <cstdio>

#include "strandline/learned.h"

namespace strandline::learned {

Problems in_words(const std::vector<Factor>& factors) {
  // Levels that the usual bowl of a permanent colour moves by, per unit of the logarithm; and of warmth (priors, for
  // words only). What is smaller than a fifth of a level is not worth one (by choice).
  constexpr double kPerLift = 1.7, kPerDepth = 1.5, kPerWarmth = 1.5, kLeastLevels = 0.2;
  struct Line {
    double size;
    Problem words;
  };
  std::vector<Line> lines;
  for (const Factor& f : factors) {
    if (f.what == What::natural || f.what == What::white) continue;
    const double per = f.what == What::lift     ? kPerLift
                       : f.what == What::depth  ? kPerDepth
                       : f.what == What::warmth ? kPerWarmth
                                                : 1;
    const double levels = per * f.mean;
    if (std::abs(levels) < kLeastLevels || 2 * f.sd > 2 * std::abs(f.mean)) continue;
    const bool up = levels > 0;
    const char* code = f.what == What::lift     ? (up ? "learned_lifts_more" : "learned_lifts_less")
                       : f.what == What::depth  ? (up ? "learned_deeper" : "learned_lighter")
                       : f.what == What::warmth ? (up ? "learned_warmer" : "learned_cooler")
                                                : (up ? "learned_reads_light" : "learned_reads_dark");
    static constexpr const char* kWhose[] = {"salon", "colourist", "range", "person"};
    char text[16];
    std::snprintf(text, sizeof text, "%.2f", std::abs(levels));
    lines.push_back(
        {std::abs(levels), {code, "", {{"whose", kWhose[static_cast<int>(f.whose)]}, {"id", f.id}, {"levels", text}}}});
  }
  std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) { return a.size > b.size; });
  Problems out;
  for (Line& line : lines) out.push_back(std::move(line.words));
  return out;
}

}  // namespace strandline::learned
