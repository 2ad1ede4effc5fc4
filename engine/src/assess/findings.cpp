#include "assess/findings.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "generated/constants.h"

namespace strandline {
namespace {

std::string levels(double value) {
  char text[16];
  std::snprintf(text, sizeof text, "%.1f", std::abs(value));
  return text;
}

bool coloured(const Span& span) {
  return std::any_of(span.populations.begin(), span.populations.end(),
                     [](const Population& p) { return p.origin != ColourOrigin::natural; });
}

// One area: its spans with the level each shows, from the scalp out.
struct Stretch {
  const Span* span;
  const ZoneColour* colour;
  std::string path;
  double level() const { return colour->named.level; }
};

void look_along(const std::vector<Stretch>& s, Problems& notes) {
  const Constants c;
  const double shows = c.finding_from_levels;
  for (size_t i = 0; i < s.size(); ++i) {
    const Stretch& here = s[i];
    if (here.colour->lab.a < c.finding_green_below)
      notes.push_back({"finding_green", here.path, {{"zone", here.colour->zone}}});
    if (i == 0 && touches_scalp(*here.span) && s.size() > 1 && coloured(*here.span) &&
        here.level() - s[1].level() >= shows)
      notes.push_back({"finding_hot_regrowth",
                       here.path,
                       {{"zone", here.colour->zone}, {"levels", levels(here.level() - s[1].level())}}});
    if (i > 0 && i + 1 < s.size()) {
      const double before = here.level() - s[i - 1].level(), after = here.level() - s[i + 1].level();
      if (std::min(std::abs(before), std::abs(after)) >= shows && before * after > 0)
        notes.push_back(
            {before < 0 ? "finding_dark_band" : "finding_light_band",
             here.path,
             {{"zone", here.colour->zone}, {"levels", levels(std::min(std::abs(before), std::abs(after)))}}});
    }
    if (i > 1 && i + 1 == s.size() && std::abs(here.level() - s[i - 1].level()) >= shows &&
        std::abs(here.level() - s[i - 2].level()) >= shows)
      notes.push_back({"finding_uneven_ends",
                       here.path,
                       {{"zone", here.colour->zone}, {"levels", levels(here.level() - s[i - 1].level())}}});
  }
}

}  // namespace

Problems findings(const Head& head, const std::vector<ZoneColour>& zones) {
  Problems notes;
  size_t index = 0;
  for (size_t i = 0; i < head.areas.size(); ++i) {
    std::vector<Stretch> along;
    for (size_t j = 0; j < head.areas[i].spans.size(); ++j, ++index)
      along.push_back(
          {&head.areas[i].spans[j], &zones[index], "/head/areas/" + std::to_string(i) + "/spans/" + std::to_string(j)});
    std::stable_sort(along.begin(), along.end(),
                     [](const Stretch& a, const Stretch& b) { return a.span->from_cm < b.span->from_cm; });
    look_along(along, notes);
  }
  return notes;
}

}  // namespace strandline
