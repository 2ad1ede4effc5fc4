// One particular head: areas × spans = zones; a zone is a list of fibre populations.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/colour.h"
#include "strandline/units.h"

namespace strandline {

// Plain tone words. Their a*b* offsets from natural hair of the same level are data (knowledge/levels/tones.json).
enum class Tone { natural, ash, violet, beige, gold, copper, red, green };
inline constexpr int kTones = 8;

inline constexpr double kNoLimit = std::numeric_limits<double>::infinity();

enum class FibreKind { pigmented, white };

// How the colour that a fibre shows came about.
enum class ColourOrigin {
  natural,    // as it grew
  tinted,     // oxidative colour on it: it stays, a tint does not lift it
  lightened,  // its own pigment lowered by a lightener
  direct      // direct dye on it
};

// One kind of fibre inside a zone. Shares of a zone add to 1.
struct Population {
  std::string name;  // "pigmented", "white", "old highlights" …
  FibreKind kind = FibreKind::pigmented;
  Reading share{1, 0};     // 0…1
  Reading level{5, 0.35};  // as it looks now, 1…10; ignored for natural white
  Tone tone = Tone::natural;
  ColourOrigin origin = ColourOrigin::natural;
  std::optional<Reading> natural_level;  // of tinted or lightened pigmented hair, if known; else the head's
  std::optional<double> packet_mm;       // width of the woven packets it lies in; absent = mixed fibre by fibre
  std::optional<Lab> measured;           // D65/10°, sphere; overrides level and tone
};

enum class ServiceKind {
  permed,
  straightened_mild,      // thioglycolate and its like
  straightened_alkaline,  // hydroxide
  relaxed,                // hydroxide
  lightened,
  home_colour,
  plant_colour,
  minerals,              // hard water or a pool: to be taken off before any peroxide
  straightened_heat,     // with irons
  straightened_unknown,  // counts as hydroxide
  smoothed,              // keratin-type
  plant_compound,        // plant colour with metal salts, "black"
  restorer,              // colour restorer with metal salts
  coloured               // by a hairdresser
};

struct Service {
  ServiceKind kind = ServiceKind::permed;
  std::optional<double> weeks_ago;  // absent = unknown
  int layers = 1;                   // how often over each other, 1…50
  bool pack_seen = false;           // of home colour: what it was is known, and no metal in it
};

// The incompatibility test of a span's hair (peroxide and ammonia, 30 minutes).
enum class MetalTest { not_done, slightly_lighter, no_change, odd_colour, heat, smell, breaks };

enum class StrandCondition { unknown, kept, weak, broke };

// By which light a level was read; a lamp makes it warmer and lighter than it is.
enum class ReadIn { unknown, window, lamp };

// A strand of the span tried beforehand.
struct StrandTest {
  std::string what;             // id of the range, empty = not said
  double minutes = 0;           // 0…240
  std::optional<double> level;  // reached
  StrandCondition condition = StrandCondition::unknown;
};

// How white hair took the colour at earlier visits.
enum class EarlierCover { unknown, well, badly };

// What the rules of a visit leave open on a span for one range (rules.h).
struct RangeLimits {
  std::string range;
  std::string closed_by;                 // id of the rule that closes the range here; empty = open
  double developer_max = kNoLimit;       // % in the bottle
  double developer_below = kNoLimit;     // likewise, itself not allowed
  double on_head_max = kNoLimit;         // % in the mix
  double minutes_min = 0;                // from the last touch
  double minutes_max = kNoLimit;         // likewise
  double first_touch_max = kNoLimit;     // minutes from the first touch
  double porosity_after_max = kNoLimit;  // of every kind of fibre
  double lift_max = kNoLimit;            // levels
};

// A stretch of the hair's length with one history.
struct Span {
  std::string id;                 // "regrowth", "mids", "ends", "band 1" …
  double from_cm = 0, to_cm = 0;  // along the stretched hair, 0 at the scalp
  std::vector<Population> populations;
  Reading porosity{1, 0.3};  // 0 low · 1 average · 2 high · 3 very high
  double resistance = 0;     // of white fibres, 0 none … 1 glassy
  std::vector<Service> services;
  std::optional<double> wet_stretch_percent;  // from the elasticity test; absent = not tested
  bool stretch_returns = true;
  bool history_unknown = false;
  bool extension = false;  // other hair with a bond: no prediction is claimed without a strand test
  MetalTest metal_test = MetalTest::not_done;
  std::optional<StrandTest> strand;
  EarlierCover earlier_cover = EarlierCover::unknown;
  ReadIn read_in = ReadIn::unknown;
  bool read_damp = false;  // damp hair looks darker than it is
  // How fast this hair lightens against the average, as its strand test showed (known_by_strands); never read from a
  // document.
  double strand_speed = 1;
  bool strand_known = false;
  std::vector<RangeLimits> limits;  // what the rules leave open; never read from a document; none = all
};

enum class AreaKind { front_hairline, temples, top, crown, sides, nape, other };

// Strands taken out of an area in packets (woven, sliced, freehand): hair that may get bowls of its own, while the rest
// of the area keeps the remaining share.
struct Weave {
  std::string from;     // id of the area they are taken out of; none that is woven itself
  double share = 0.3;   // of its hair, 0.02…0.9
  double width_mm = 4;  // of one packet, 0.2…100
};

enum class HairLoss { unknown, none, thinning, shedding, patchy };

// Hair that is not on the scalp has rules of its own.
enum class FaceHair { none, beard, brows };

enum class Scalp {
  unknown,
  calm,
  sensitive,
  broken,
  infected,
  infested,
  plaque_calm,
  plaque_flare,
  sunburnt,
  burn_healing,
  operated
};

struct Area {
  std::string id;  // "front hairline", or the colourist's own word after splitting
  AreaKind kind = AreaKind::other;
  double scalp_cm2 = 100;  // share of the scalp this area covers; of packets that of the area they come from counts
  double hair_factor = 1;  // density of this area against the head's, thin areas < 1; of packets as above
  std::optional<Weave> woven;
  Scalp scalp = Scalp::unknown;  // unknown: as the whole head's
  HairLoss loss = HairLoss::unknown;
  FaceHair face = FaceHair::none;
  std::vector<Span> spans;
};

enum class Texture { straight, wavy, curly, coily };

// How the hair is cut: with many layers fewer fibres reach the tips.
enum class Layers { none, some, many };

struct Hair {
  double hairs_per_cm2 = 190;
  double diameter_um = 70;
  Texture texture = Texture::straight;
  Layers layers = Layers::some;
};

struct Head {
  Hair hair;
  std::vector<Area> areas;
};

// Zones are named "area/span".
struct ZoneRef {
  const Area* area = nullptr;
  const Span* span = nullptr;
  std::string id;
};

// Every zone in document order. The references live as long as `head`.
std::vector<ZoneRef> zones(const Head& head);

// The share of a stretch of scalp that an area's own hair has, 0…1: 1 where nothing is taken out of it in packets.
double own_share(const Head& head, const Area& area);
// The scalp under an area's own hair, cm², and how dense it stands there against the head's. Requires check(head)
// empty.
double scalp_cm2(const Head& head, const Area& area);
double hair_factor(const Head& head, const Area& area);

inline bool touches_scalp(const Span& span) { return span.from_cm <= 0.0; }

// Share of a span's hair, 0…1, of which `counts(population)` holds.
template <class Counts>
double share_of(const Span& span, Counts&& counts) {
  double sum = 0;
  for (const Population& p : span.populations)
    if (counts(p)) sum += p.share.value;
  return sum;
}
inline double share_of(const Span& span, ColourOrigin origin) {
  return share_of(span, [origin](const Population& p) { return p.origin == origin; });
}
inline double share_of(const Span& span, FibreKind kind) {
  return share_of(span, [kind](const Population& p) { return p.kind == kind; });
}

}  // namespace strandline
