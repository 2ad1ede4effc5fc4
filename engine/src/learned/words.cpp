#include <algorithm>
#include <cmath>
#include <cstdio>

#include "generated/learning.h"
#include "strandline/learned.h"

namespace strandline::learned {

Problems in_words(const std::vector<Factor>& factors) {
  const Priors p;
  struct Line {
    double size;
    Problem words;
  };
  std::vector<Line> lines;
  for (const Factor& f : factors) {
    if (f.what == What::natural || f.what == What::white) continue;
    const double per = f.what == What::lift     ? p.words_levels_per_lift
                       : f.what == What::depth  ? p.words_levels_per_depth
                       : f.what == What::warmth ? p.words_levels_per_warmth
                                                : 1;
    const double levels = per * f.mean;
    if (std::abs(levels) < p.words_least_levels || 2 * f.sd > std::abs(f.mean)) continue;
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
