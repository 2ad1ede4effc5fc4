#include "offer.h"

#include <cmath>
#include <iomanip>
#include <sstream>

namespace strandline::cases {
namespace {

bool among(const std::vector<std::string>& all, const std::string& word) {
  return std::find(all.begin(), all.end(), word) != all.end();
}

bool shade(const Product& p) {
  return p.cls != C::developer && p.cls != C::clear && p.cls != C::corrector && p.cls != C::lightener;
}

// From the last touch.
double minutes_on(const PlannedBowl& b, const std::string& zone) {
  for (size_t z = 0; z < b.on.size(); ++z)
    if (b.bowl.zones[z] == zone) return b.on[z].minutes;
  return b.bowl.formula.minutes;
}

double developer_of(const PlannedBowl& b, const Shelf& shelf) {
  double peroxide = 0, grams = 0;
  for (const Part& part : b.bowl.formula.parts)
    if (const Product* p = find_product(shelf, part.product); p && p->cls == C::developer)
      peroxide += part.grams * p->peroxide_percent, grams += part.grams;
  return grams > 0 ? peroxide / grams : 0;
}

}  // namespace

Offer::Offer(const Visit& v, const VisitPlan& p) : visit(v), plan(p) {
  const auto tell = [&](const Problems& all) {
    for (const Problem& one : all) told.insert(one.code);
  };
  for (const Route& r : p.routes)
    if (r.recommended && !way) way = &r;
  if (way) {
    for (const RouteStep& s : way->visits.front().steps) steps.push_back(s.bowls);
    zones = way->visits.front().zones;
    timeline = &way->visits.front().timeline;
    tell(way->why), tell(way->notes);
  } else {
    if (!p.plan.bowls.empty()) steps.push_back(p.plan.bowls);
    zones = p.plan.zones;
    timeline = &p.timeline;
  }
  tell(p.plan.why), tell(p.plan.notes), tell(p.assessment.notes), tell(p.after.told);
  for (const auto& step : steps)
    for (const PlannedBowl& b : step) tell(b.why);
  for (const ZonePlan& z : zones) tell(z.why_not);
  for (const Verdict& verdict : p.verdicts.list) {
    told.insert(verdict.rule);
    told.insert(verdict.today.begin(), verdict.today.end());
  }
}

std::vector<const PlannedBowl*> Offer::all() const {
  std::vector<const PlannedBowl*> every;
  for (const auto& step : steps)
    for (const PlannedBowl& b : step) every.push_back(&b);
  return every;
}

const PlannedBowl* Offer::on(const std::string& id) const {
  const PlannedBowl* last = nullptr;
  for (const PlannedBowl* b : all())
    if (among(b->bowl.zones, id)) last = b;
  return last;
}

const PlannedBowl* Offer::first(const std::string& id) const {
  for (const PlannedBowl* b : all())
    if (among(b->bowl.zones, id) && b != on(id)) return b;
  const PlannedBowl* only = on(id);  // opened, and nothing after it
  return only && !steps.empty() && way &&
                 std::any_of(steps[0].begin(), steps[0].end(), [&](const PlannedBowl& b) { return &b == only; })
             ? only
             : nullptr;
}

bool Offer::nothing(const std::string& id) const { return on(id) == nullptr; }

const Product& Offer::product(const Part& part) const { return *find_product(visit.shelf, part.product); }

// In whole per cent, as it is told.
double Offer::share(const PlannedBowl& b, Tone tone) const {
  double all = 0, some = 0;
  for (const Part& part : b.bowl.formula.parts)
    if (const Product& p = product(part); shade(p)) {
      all += part.grams;
      if (p.tone == tone) some += part.grams;
    }
  return all > 0 ? std::round(100 * some / all) / 100 : 0;
}

// From the last touch of all that is asked about, where it is all that the bowl serves; else from that of the zone.
double Offer::asked_minutes(const PlannedBowl& b, const std::string& id, const Zones& asked) const {
  double least = minutes_on(b, id);
  for (const std::string& zone : b.bowl.zones)
    if (!among(asked, zone)) return least;
  for (const PlannedBowl* other : all()) {
    if (other->bowl.step != b.bowl.step) continue;
    for (const std::string& zone : other->bowl.zones)
      if (among(asked, zone)) least = std::min(least, minutes_on(*other, zone));
  }
  return least;
}

bool Offer::like(const PlannedBowl& b, double minutes, const Want& want) const {
  const Range* range = find_range(visit.shelf, b.bowl.formula.range);
  if (!want.cls.empty() && std::find(want.cls.begin(), want.cls.end(), range->cls) == want.cls.end()) return false;
  if (!want.developer.holds(developer_of(b, visit.shelf)) || !want.ratio.holds(b.recipe.ratio) ||
      !want.minutes.holds(minutes))
    return false;
  double colour = 0, clear = 0, correctors = 0;
  for (const Part& part : b.bowl.formula.parts) {
    const Product& p = product(part);
    if (p.cls == C::developer) continue;
    colour += part.grams;
    if (p.cls == C::clear) clear += part.grams;
    if (p.cls == C::corrector) correctors += part.grams;
    if (!shade(p)) continue;
    if (!want.level.holds(p.level)) return false;
    if (!want.only.empty() && std::find(want.only.begin(), want.only.end(), p.tone) == want.only.end()) return false;
  }
  if (colour > 0 && (!want.clear.holds(clear / colour) || !want.correctors.holds(correctors / colour))) return false;
  return std::all_of(want.shares.begin(), want.shares.end(),
                     [&](const auto& wanted) { return wanted.second.holds(share(b, wanted.first)); });
}

bool Offer::colours(const Zones& ids, const Want& want) const {
  return std::all_of(ids.begin(), ids.end(), [&](const std::string& id) {
    const PlannedBowl* b = on(id);
    return b && like(*b, asked_minutes(*b, id, ids), want);
  });
}

bool Offer::opens(const Zones& ids, const Want& want) const {
  return std::all_of(ids.begin(), ids.end(), [&](const std::string& id) {
    const PlannedBowl* b = first(id);
    return b && like(*b, asked_minutes(*b, id, ids), want);
  });
}

bool Offer::share_bowl(const Zones& ids) const {
  return std::all_of(ids.begin(), ids.end(),
                     [&](const std::string& id) { return on(id) && on(id) == on(ids.front()); });
}

bool Offer::none(const std::vector<C>& classes) const {
  const auto every = all();
  return std::none_of(every.begin(), every.end(), [&](const PlannedBowl* b) {
    const Range* range = find_range(visit.shelf, b->bowl.formula.range);
    return std::find(classes.begin(), classes.end(), range->cls) != classes.end();
  });
}

bool Offer::none_on(const Zones& ids, const std::vector<C>& classes) const {
  const auto every = all();
  return std::none_of(every.begin(), every.end(), [&](const PlannedBowl* b) {
    const Range* range = find_range(visit.shelf, b->bowl.formula.range);
    return std::find(classes.begin(), classes.end(), range->cls) != classes.end() &&
           std::any_of(ids.begin(), ids.end(), [&](const std::string& id) { return among(b->bowl.zones, id); });
  });
}

double Offer::strongest() const {
  double most = 0;
  for (const PlannedBowl* b : all()) most = std::max(most, developer_of(*b, visit.shelf));
  return most;
}

double Offer::strongest_on(const std::string& id) const {
  double most = 0;
  for (const PlannedBowl* b : all())
    if (among(b->bowl.zones, id)) most = std::max(most, developer_of(*b, visit.shelf));
  return most;
}

bool Offer::no_shade(const Zones& ids, Bound level) const {
  for (const PlannedBowl* b : all())
    for (const std::string& id : ids)
      if (among(b->bowl.zones, id))
        for (const Part& part : b->bowl.formula.parts)
          if (shade(product(part)) && product(part).level > 0 && level.holds(product(part).level)) return false;
  return true;
}

bool Offer::not_alone(const Zones& ids, Tone tone) const {
  return std::none_of(ids.begin(), ids.end(),
                      [&](const std::string& id) { return on(id) && share(*on(id), tone) >= 1 - 1e-9; });
}

double Offer::minutes(const std::string& id) const {
  const PlannedBowl* b = on(id);
  return b ? minutes_on(*b, id) : 0;
}

const ZonePlan& Offer::zone(const std::string& id) const {
  return *std::find_if(zones.begin(), zones.end(), [&](const ZonePlan& z) { return z.result.zone == id; });
}

double Offer::level(const std::string& id) const { return zone(id).result.planned.named.level; }
double Offer::contrast(const std::string& id) const { return zone(id).result.planned.contrast_levels; }

double Offer::grams(const Zones& ids) const {
  std::set<const PlannedBowl*> counted;
  double sum = 0;
  for (const std::string& id : ids)
    if (const PlannedBowl* b = on(id); b && counted.insert(b).second) sum += b->grams;
  return sum;
}

double Offer::grams_of(C cls) const {
  double sum = 0;
  for (const PlannedBowl* b : all())
    if (find_range(visit.shelf, b->bowl.formula.range)->cls == cls) sum += b->grams;
  return sum;
}

bool Offer::starts_before(const std::string& early, const std::string& late) const {
  const auto touch = [&](const std::string& id) {
    double at = -1;
    for (const Development& d : timeline->developments)
      if (d.zone == id) at = d.first_touch;
    return at;
  };
  return touch(early) >= 0 && touch(late) >= 0 && touch(early) < touch(late);
}

bool Offer::says(const std::string& code) const { return told.contains(code); }

std::string Offer::describe() const {
  std::ostringstream out;
  out << std::setprecision(3) << (way ? way->kind : "at once") << '\n';
  for (const PlannedBowl* b : all()) {
    out << "  " << b->bowl.step << ' ' << b->bowl.label << ' ' << b->bowl.formula.range;
    for (const Part& part : b->bowl.formula.parts) out << ", " << part.product << ' ' << part.grams;
    for (const std::string& id : b->bowl.zones) out << "; " << id << ' ' << minutes_on(*b, id) << " min";
    out << '\n';
  }
  for (const ZonePlan& z : zones) {
    const ZoneColour& p = z.result.planned;
    out << "  " << z.result.zone << " level " << p.named.level << " tone " << static_cast<int>(p.named.tone)
        << " contrast " << p.contrast_levels << " porosity " << p.porosity << '\n';
  }
  const Afterwards& a = plan.after;
  out << "  line " << a.line.from << '-' << a.line.until << " lasts " << a.lasts.from << '-' << a.lasts.until
      << " again " << a.rebook.from << '-' << a.rebook.until << '\n';
  for (const std::string& code : told) out << ' ' << code;
  return out.str();
}

bool Offer::looks() const {
  return way && std::any_of(way->visits.front().steps.begin(), way->visits.front().steps.end(),
                            [](const RouteStep& s) { return s.check_after; });
}

}  // namespace strandline::cases
