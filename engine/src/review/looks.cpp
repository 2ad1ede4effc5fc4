#include "review/looks.h"

#include <algorithm>

namespace strandline {

Result<std::vector<std::pair<std::string, Looks>>> nominal_looks(const Head& head, const std::vector<Step>& steps,
                                                                 const Shelf& shelf) {
  PredictOptions one;
  one.scenarios = 1;
  const auto prediction = predict(head, steps, shelf, {}, one);
  if (!prediction) return tl::unexpected(prediction.error());
  std::vector<std::pair<std::string, Looks>> all;
  for (const ZoneResult& z : prediction->zones)
    all.emplace_back(z.zone, Looks{z.planned.lab, z.planned.named, z.planned.contrast_levels});
  return all;
}

}  // namespace strandline
