#include "strandline/misread.h"

#include <algorithm>

#include "strandline/levels.h"

namespace strandline {

std::string_view code(MisreadReading reading) {
  switch (reading) {
    case MisreadReading::level:
      return "level";
    case MisreadReading::white:
      return "white";
    default:
      return "porosity";
  }
}

std::optional<Head> misread(Head head, const Misreading& m) {
  bool changed = false;
  for (Area& area : head.areas)
    for (Span& span : area.spans) {
      if (m.reading == MisreadReading::porosity) {
        const double moved = std::clamp(span.porosity.value + m.by, 0.0, 3.0);
        changed = changed || moved != span.porosity.value;
        span.porosity.value = moved;
      }
      double white = 0, rest = 0;
      for (Population& p : span.populations) {
        (p.kind == FibreKind::white ? white : rest) += p.share.value;
        if (m.reading == MisreadReading::level && p.kind == FibreKind::pigmented) {
          p.level.value = std::clamp(p.level.value + m.by, level_lowest, level_highest);
          if (p.origin == ColourOrigin::natural && p.natural_level) p.natural_level->value = p.level.value;
          changed = true;
        }
      }
      if (m.reading != MisreadReading::white || !(white > 0) || !(rest > 0)) continue;
      const double moved = std::clamp(white + m.by, 0.0, 1.0);
      changed = changed || moved != white;
      for (Population& p : span.populations)
        p.share.value *= p.kind == FibreKind::white ? moved / white : (1 - moved) / rest;
    }
  if (!changed) return std::nullopt;
  return head;
}

}  // namespace strandline
