#include "search/plainness.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "generated/tables.h"
#include "mix/habits.h"
#include "strandline/promise.h"

namespace strandline {
namespace {

// The criteria, a row of the table each, the first counting most; each takes as many bits as its largest count.
class Digits {
 public:
  void add(double count) {
    const auto most = static_cast<Plainness>(tables::plainness[next_++][0]);
    packed_ = packed_ << std::bit_width(most) | std::min(most, static_cast<Plainness>(std::max(0.0, count)));
  }
  Plainness packed() const { return packed_; }

 private:
  size_t next_ = 0;
  Plainness packed_ = 0;
};

// Steps between what a shade is and what the zones wish: half levels, and two for each step of tone.
int distance(const Product& p, const PlainWish& wish) {
  constexpr double kNoLevel = 2, kToneWeight = 2;  // half levels; by choice
  double sum = 0;
  for (const PlainWish::Wanted& w : wish.wanted) {
    const double levels = counts_for_levels(p) ? 2 * std::abs(p.level - w.level) : kNoLevel;
    const auto steps = [&](Tone tone) {
      return tables::tone_steps[static_cast<size_t>(tone)][static_cast<size_t>(p.tone)];
    };
    double tone = steps(w.target->tone);
    if (w.target->second_tone) tone = std::min(tone, steps(*w.target->second_tone));
    if (wish.white && counts_as_natural(p)) tone = 0;  // the white asks for it
    if (p.cls == ProductClass::clear) tone = 0;
    sum += w.weight * (levels + kToneWeight * tone);
  }
  return static_cast<int>(std::lround(sum));
}

// Halves of a level by which a shade lies more than a half away from every wish.
int level_off(const Product& p, const PlainWish& wish) {
  if (!counts_for_levels(p) || wish.wanted.empty()) return 0;
  double least = level_highest;
  for (const auto& w : wish.wanted) least = std::min(least, std::abs(p.level - w.level));
  return std::max(0, static_cast<int>(std::ceil(2 * (least - 0.5) - 1e-9)));
}

bool is_acid_demi(const Range& range) {
  return range.cls == ProductClass::demi && alkaline_lift(range) < Constants{}.acid_demi_lift_below;
}

double weakest_bottle(const Range& range) {
  const auto& all = range.developer_percents;
  return all.empty() ? 0 : *std::min_element(all.begin(), all.end());
}

// Which class practice takes here: what lifts or covers is permanent, what only deposits is not.
int class_rank(const Range& range, const PlainWish& wish) {
  const bool tint = !wish.coloured && (wish.lifts || wish.covers);
  switch (range.cls) {
    case ProductClass::permanent:
      return tint ? 0 : wish.coloured ? 2 : 1;
    case ProductClass::high_lift:
      return tint ? 1 : 3;
    case ProductClass::demi:
      return tint ? 2 : wish.acid && is_acid_demi(range) ? 0 : wish.acid;
    default:
      return tint ? 3 : 1;
  }
}

bool stands_beside(const Product& p, const PlainWish& wish) {
  if (!counts_for_levels(p)) return false;
  return wish.beside == PlainWish::Beside::violet ? p.tone == Tone::violet
                                                  : p.tone == Tone::natural || p.tone == Tone::gold;
}

// Shares that a recipe has between `least` and `most` of, off what is asked for.
double off(double low, double high, double least, double most) { return std::max({0.0, low - most, least - high}); }

// Yellow of lightened hair that the wish does not keep.
bool asks_for_violet(const SearchZone& zone) {
  constexpr double kYellowFrom = 7.5;  // level; below it a lightener leaves orange, answered by blue (common practice)
  const auto warm = [](Tone t) { return t == Tone::gold || t == Tone::copper || t == Tone::red; };
  if (warm(zone.target->tone) || (zone.target->second_tone && warm(*zone.target->second_tone)) ||
      zone.target->tone == Tone::violet || zone.target->level < kYellowFrom + 0.5)
    return false;
  return share_of(*zone.span, [&](const Population& p) {
           return p.origin == ColourOrigin::lightened && p.tone == Tone::gold && p.level.value >= kYellowFrom;
         }) > 0.5;
}

bool permed(const Span& span) {
  return std::any_of(span.services.begin(), span.services.end(),
                     [](const Service& s) { return s.kind == ServiceKind::permed; });
}

// A half is rounder than a quarter, a quarter than three eighths.
int unround(const signed char (&eighths)[3]) {
  int all = 0;
  for (const signed char e : eighths) all |= e;
  if (all == kEighths || all == kEighths / 2) return 0;
  return all % 2 == 0 ? 1 : 2;
}

}  // namespace

Plainness as_plain(Plainness p) {
  constexpr size_t kTubes = 4;  // its row
  int finer = 0;
  for (size_t r = kTubes + 1; r < tables::plainness.size(); ++r)
    finer += static_cast<int>(std::bit_width(static_cast<Plainness>(tables::plainness[r][0])));
  return p | ((Plainness{1} << finer) - 1);
}

PlainWish plain_wish(const std::vector<SearchZone>& zones, const std::vector<int>& served) {
  const auto& rows = tables::natural_for_white;
  const size_t shares = rows.size() - 1;
  PlainWish w;
  double weight = 0, white = 0, coloured = 0, warm = 0, yellow = 0, acid = 0, natural_too = 0;
  bool softly = true;
  for (int z : served) weight += zones[static_cast<size_t>(z)].weight;
  for (int z : served) {
    const SearchZone& zone = zones[static_cast<size_t>(z)];
    const double own = zone.weight / weight;
    // Blended white takes a shade lighter than the hair beside it, so that this stays as it is (common practice).
    constexpr double kBlendLighter = 1;
    w.wanted.push_back(
        {zone.target, own, std::min(level_highest, zone.target->level + (zone.target->blend ? kBlendLighter : 0))});
    w.needed_percent = std::max(w.needed_percent, zone.needed_percent);
    softly = softly && zone.target->blend;
    white += own * zone.white;
    const bool bare = share_of(*zone.span, ColourOrigin::natural) >= 0.5;
    coloured += bare ? 0 : own;
    // Copper and red show on hair in its own colour where a little of that is lifted (common practice).
    const bool glows = zone.target->tone == Tone::copper || zone.target->tone == Tone::red;
    w.lifts = w.lifts || (bare && (glows || zone.asked > tables::developer_need[0][0]));
    if (glows) warm += own;
    if (asks_for_violet(zone)) yellow += own;
    if (share_of(*zone.span, ColourOrigin::lightened) > 0.5 || permed(*zone.span)) acid += own;
    if (zone.target->second_tone &&
        (zone.target->tone == Tone::natural) != (*zone.target->second_tone == Tone::natural))
      natural_too += own;
  }
  w.coloured = coloured > 0.5;
  w.acid = acid > 0.5;
  const auto& violet = tables::violet_on_yellow[0];
  if (yellow > 0.5) w.beside = PlainWish::Beside::violet, w.beside_low = violet[0], w.beside_high = violet[1];
  // Natural beside another tone: both are in it, natural for two fifths at least (common practice; by choice how far).
  constexpr double kBothLeast = 0.4, kBothMost = 0.85;
  if (natural_too > 0.5 && warm <= 0.5) w.natural_low = kBothLeast, w.natural_high = kBothMost;
  w.white = white >= rows[0][0];
  w.covers = w.white && !w.coloured && !softly;
  if (!w.white) return w;
  constexpr double kBelow = 0.1, kAbove = 0.1, kAboveWhite = 0.2;  // by choice: what is called that step still
  double step = white;
  for (size_t r = 0; r < shares; ++r)
    if (white >= rows[r][0] && rows[r][1] > 0) step = rows[r][1];
  w.natural_low = std::max(0.0, std::min(white, step) - kBelow);
  w.natural_high = std::min(1.0, std::max(white + kAboveWhite, step + kAbove));
  if (warm > 0.5) {
    w.natural_low = std::min(w.natural_low, rows[shares][0]), w.natural_high = rows[shares][1];
    // A soft one stands on natural or gold for two fifths at least (likewise).
    constexpr double kGroundMost = 0.7;
    if (natural_too > 0.5) w.beside = PlainWish::Beside::ground, w.beside_low = kBothLeast, w.beside_high = kGroundMost;
  }
  return w;
}

PlainGround::PlainGround(const Ground& ground, const PlainWish& wish) : ground_(ground), wish_(wish) {
  for (const ShadeNode& node : ground.tree.nodes) {
    Ends e;
    for (int i = node.begin; i < node.end; ++i) {
      const Product& p = *ground.set->products()[static_cast<size_t>(ground.tree.order[static_cast<size_t>(i)])];
      e.distance = std::min(e.distance, distance(p, wish_));
      e.level_off = std::min(e.level_off, level_off(p, wish_));
      e.some_natural = e.some_natural || counts_as_natural(p);
      e.all_natural = e.all_natural && counts_as_natural(p);
      e.some_beside = e.some_beside || stands_beside(p, wish_);
      e.all_beside = e.all_beside && stands_beside(p, wish_);
      e.all_clear = e.all_clear && p.cls == ProductClass::clear;
      e.some_thin = e.some_thin || p.cls == ProductClass::clear || p.cls == ProductClass::corrector;
    }
    nodes_.push_back(e);
  }
}

Plainness PlainGround::least(const Setting& s, const Branch& b) const {
  int distance = 0, natural_low = 0, natural_high = 0, others = 0, correctors = 0, clear = 0, level_off = 0;
  int beside_low = 0, beside_high = 0, not_beside = 0;
  const int parts = b.parts();
  for (int i = 0; i < parts; ++i) {
    const Ends& e = nodes_[static_cast<size_t>(b.node[i])];
    const int own = b.eighths[i];
    level_off = std::max(level_off, e.level_off);
    distance += own * e.distance;
    if (ground_.node(b, i).all_correctors) correctors += own;
    if (e.all_clear) clear += own;
    if (e.some_natural)
      natural_high += own;
    else if (!e.some_thin)
      others += own;
    if (e.all_natural) natural_low += own;
    if (e.some_beside)
      beside_high += own;
    else if (!e.some_thin)
      not_beside += own;
    if (e.all_beside) beside_low += own;
  }
  // Of the shades, correctors and clear left out; ends of that share over what the nodes may hold.
  const int coloured = std::max(1, kEighths - correctors - clear);
  const auto of = [](int part, int whole) { return static_cast<double>(part) / std::max(1, whole); };
  const double shares_off =
      off(wish_.natural_low, wish_.natural_high, of(natural_low, coloured), of(natural_high, natural_high + others)) +
      off(wish_.beside_low, wish_.beside_high, of(beside_low, coloured), of(beside_high, beside_high + not_beside));
  constexpr int kClearMost = kEighths / 2, kCorrectorMost = kEighths / 4;
  const int thin = std::max(0, correctors - kCorrectorMost) + (wish_.covers ? clear : std::max(0, clear - kClearMost));
  const double never = level_off + 2 * thin;
  // What only deposits takes its weakest bottle.
  const bool deposits = s.range->cls == ProductClass::demi;
  const double needed = deposits ? weakest_bottle(*s.range) : wish_.needed_percent;
  const double percent = std::abs(s.developer_percent - needed) / kBlendStep;
  const bool usual = s.developer_percent <= 0 || std::abs(s.ratio - reference(*s.range).ratio) < 1e-9;
  Digits d;
  d.add(never);
  d.add(class_rank(*s.range, wish_));
  d.add((s.developer_percent > 0 ? 2 * std::ceil(percent - 1e-9) : 0) + (usual ? 0 : 1));
  d.add(std::ceil(kEighths * shares_off - 1e-9));
  d.add(parts);
  d.add(distance);
  d.add(correctors);
  d.add(clear);
  d.add(unround(b.eighths));
  d.add(std::floor(100 * least_price_per_g(ground_, b) + 1e-9));
  return d.packed();
}

}  // namespace strandline
