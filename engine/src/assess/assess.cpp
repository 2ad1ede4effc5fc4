#include "strandline/assess.h"

#include "assess/findings.h"
#include "predict/view.h"
#include "strandline/predict.h"
#include "strandline/scenario.h"

namespace strandline {

Assessment assess(const Head& head) {
  const Draws draws = draw(head, kSearchScenarios);
  Assessment a;
  for (const ZoneDraws& z : draws.zones) a.zones.push_back(zone_colour(z, draws));
  a.notes.push_back({"read_on_dry_hair", "/head", {}});
  size_t index = 0;
  for (size_t i = 0; i < head.areas.size(); ++i)
    for (size_t j = 0; j < head.areas[i].spans.size(); ++j, ++index) {
      const Span& span = head.areas[i].spans[j];
      const std::string path = "/head/areas/" + std::to_string(i) + "/spans/" + std::to_string(j);
      const std::string& zone = draws.zones[index].id;
      if (span.history_unknown) a.notes.push_back({"history_unknown_test_first", path, {{"zone", zone}}});
      if (span.extension) a.notes.push_back({"extension_strand_first", path, {{"zone", zone}}});
      if (span.wet_stretch_percent && !stretch_passed(span))
        a.notes.push_back({"failed_stretch", path, {{"zone", zone}}});
    }
  const Problems seen = findings(head, a.zones);
  a.notes.insert(a.notes.end(), seen.begin(), seen.end());
  return a;
}

}  // namespace strandline
