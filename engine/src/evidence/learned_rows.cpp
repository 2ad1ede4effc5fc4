// Does learning from results make what is said of the next visit better, and are its ranges true? (M17)
#include <algorithm>
#include <array>
#include <cmath>

#include "evidence/learned_salon.h"
#include "evidence/rows.h"

namespace strandline {

void learned_rows(Rows& rows) {
  constexpr std::array<const char*, kSalonWorlds> kNames = {"own_family", "restless", "outside"};
  const Basis source = simulated(
      "200 simulated people x 6 visits, seed 20261130, on which nothing was chosen; the world called outside has "
      "equations of its own");
  for (int w = 0; w < kSalonWorlds; ++w)
    for (const double wrong : {0.0, 0.1}) {
      const LearnedSalon s = learned_salon(static_cast<SalonWorld>(w), {.seed = 20261130, .wrong_share = wrong});
      const std::string id = std::string("learned.") + kNames[w] + (wrong > 0 ? ".one_in_ten_wrong" : "");
      rows.within(id + ".error_at_visit_4_over_untaught", 0, 0.5,
                  s.visits[3].median_error / s.visits[3].median_untaught, source);
      rows.within(id + ".people_worse_by_half_a_level_percent", 0, 2.5, 100 * s.worse, source);
      for (size_t v = 0; v < s.visits.size(); ++v)
        rows.within(id + ".in_range.visit" + std::to_string(v + 1), 0.85, 0.95, s.visits[v].within, source);
    }
}

}  // namespace strandline
