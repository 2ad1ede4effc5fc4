#include <algorithm>
#include <cmath>
#include <set>

#include "strandline/assess.h"

namespace strandline {
namespace {

std::string text(double v) {
  std::string s = std::to_string(v);
  while (s.find('.') != std::string::npos && (s.back() == '0' || s.back() == '.')) {
    const bool dot = s.back() == '.';
    s.pop_back();
    if (dot) break;
  }
  return s;
}

// Collects problems; every reading is checked against its closed range. NaN is never inside.
struct Checker {
  Problems problems;

  bool within(double v, double low, double high, const std::string& code, const std::string& path) {
    if (v >= low && v <= high) return true;
    problems.push_back({code, path, {{"value", text(v)}, {"min", text(low)}, {"max", text(high)}}});
    return false;
  }
  void reading(const Reading& r, double low, double high, double sd_high, const std::string& code,
               const std::string& path) {
    within(r.value, low, high, code, path);
    within(r.sd, 0, sd_high, "doubt_out_of_range", path + "/sd");
  }
};

void check_population(const Population& p, const std::string& path, Checker& c) {
  c.reading(p.share, 0, 1, 0.5, "share_out_of_range", path + "/share");
  if (!(p.kind == FibreKind::white && p.origin == ColourOrigin::natural))
    c.reading(p.level, 1, 10, 3, "level_out_of_range", path + "/level");
  if (p.natural_level) c.reading(*p.natural_level, 1, 10, 3, "level_out_of_range", path + "/natural_level");
  if (p.measured) {
    c.within(p.measured->l, 1, 99, "lab_out_of_range", path + "/measured");
    c.within(p.measured->a, -60, 80, "lab_out_of_range", path + "/measured");
    c.within(p.measured->b, -60, 80, "lab_out_of_range", path + "/measured");
  }
}

void check_span(const Span& s, const std::string& path, Checker& c) {
  if (s.id.empty()) c.problems.push_back({"name_missing", path + "/id", {}});
  c.within(s.from_cm, 0, 200, "length_out_of_range", path + "/from_cm");
  if (c.within(s.to_cm, 0, 200, "length_out_of_range", path + "/to_cm") && !(s.to_cm > s.from_cm))
    c.problems.push_back({"span_has_no_length", path + "/to_cm", {{"from", text(s.from_cm)}, {"to", text(s.to_cm)}}});
  c.reading(s.porosity, 0, 3, 2, "porosity_out_of_range", path + "/porosity");
  c.within(s.resistance, 0, 1, "resistance_out_of_range", path + "/resistance");
  if (s.wet_stretch_percent)
    c.within(*s.wet_stretch_percent, 0, 150, "stretch_out_of_range", path + "/wet_stretch_percent");
  for (size_t i = 0; i < s.services.size(); ++i)
    if (s.services[i].weeks_ago)
      c.within(*s.services[i].weeks_ago, 0, 2000, "weeks_out_of_range",
               path + "/services/" + std::to_string(i) + "/weeks_ago");
  if (s.populations.empty()) c.problems.push_back({"zone_has_no_fibres", path + "/populations", {}});
  double sum = 0;
  for (size_t i = 0; i < s.populations.size(); ++i) {
    check_population(s.populations[i], path + "/populations/" + std::to_string(i), c);
    sum += s.populations[i].share.value;
  }
  constexpr double kShareSlack = 0.005;
  if (!s.populations.empty() && !(std::abs(sum - 1) <= kShareSlack))
    c.problems.push_back({"shares_do_not_add_up", path + "/populations", {{"sum", text(sum)}}});
}

void check_area(const Area& a, const std::string& path, Checker& c) {
  if (a.id.empty()) c.problems.push_back({"name_missing", path + "/id", {}});
  c.within(a.scalp_cm2, 1, 1500, "scalp_area_out_of_range", path + "/scalp_cm2");
  c.within(a.hair_factor, 0.05, 3, "density_out_of_range", path + "/hair_factor");
  if (a.spans.empty()) c.problems.push_back({"area_has_no_spans", path + "/spans", {{"area", a.id}}});
  std::set<std::string> names;
  for (size_t i = 0; i < a.spans.size(); ++i) {
    const std::string here = path + "/spans/" + std::to_string(i);
    check_span(a.spans[i], here, c);
    if (!names.insert(a.spans[i].id).second)
      c.problems.push_back({"name_used_twice", here + "/id", {{"name", a.spans[i].id}}});
    if (i > 0 && a.spans[i].from_cm < a.spans[i - 1].to_cm - 1e-9)
      c.problems.push_back({"spans_overlap",
                            here + "/from_cm",
                            {{"from", text(a.spans[i].from_cm)}, {"before", text(a.spans[i - 1].to_cm)}}});
  }
}

void check_woven(const Head& head, const Area& a, const std::string& path, Checker& c) {
  c.within(a.woven->share, 0.02, 0.9, "woven_share_out_of_range", path + "/share");
  c.within(a.woven->width_mm, 0.2, 100, "woven_width_out_of_range", path + "/width_mm");
  const auto from =
      std::find_if(head.areas.begin(), head.areas.end(), [&](const Area& other) { return other.id == a.woven->from; });
  if (from == head.areas.end() || from->woven)
    c.problems.push_back({"woven_from_no_area", path + "/from", {{"from", a.woven->from}, {"area", a.id}}});
}

}  // namespace

Problems check(const Head& head) {
  Checker c;
  constexpr size_t kAreasMost = 24;
  // Every scenario works each kind of hair of each zone: time and memory grow with their number. By choice: more than
  // anybody reads off a head, and what one visit may cost a machine that others use.
  constexpr size_t kKindsMost = 256;
  c.within(head.hair.hairs_per_cm2, 20, 500, "density_out_of_range", "/head/hair/hairs_per_cm2");
  c.within(head.hair.diameter_um, 15, 150, "diameter_out_of_range", "/head/hair/diameter_um");
  if (head.areas.empty()) c.problems.push_back({"head_has_no_areas", "/head/areas", {}});
  if (head.areas.size() > kAreasMost)
    c.problems.push_back({"too_many_areas", "/head/areas", {{"max", std::to_string(kAreasMost)}}});
  size_t kinds = 0;
  for (const Area& a : head.areas)
    for (const Span& s : a.spans) kinds += s.populations.size();
  if (kinds > kKindsMost)
    c.problems.push_back(
        {"head_too_fine", "/head/areas", {{"kinds", std::to_string(kinds)}, {"max", std::to_string(kKindsMost)}}});
  std::set<std::string> names;
  for (size_t i = 0; i < head.areas.size(); ++i) {
    check_area(head.areas[i], "/head/areas/" + std::to_string(i), c);
    if (!names.insert(head.areas[i].id).second)
      c.problems.push_back(
          {"name_used_twice", "/head/areas/" + std::to_string(i) + "/id", {{"name", head.areas[i].id}}});
    if (head.areas[i].woven) check_woven(head, head.areas[i], "/head/areas/" + std::to_string(i) + "/woven", c);
  }
  constexpr double kLeastLeft = 0.05;  // of an area that packets are taken out of
  for (size_t i = 0; i < head.areas.size(); ++i)
    if (const Area& a = head.areas[i]; !a.woven && own_share(head, a) < kLeastLeft)
      c.problems.push_back({"woven_takes_all", "/head/areas/" + std::to_string(i), {{"area", a.id}}});
  return c.problems;
}

bool stretch_passed(const Span& span) {
  constexpr double kWetStretchLeast = 40;  // %, common practice: wet hair stretches 40–50 % and returns
  return !span.wet_stretch_percent || (*span.wet_stretch_percent >= kWetStretchLeast && span.stretch_returns);
}

}  // namespace strandline
