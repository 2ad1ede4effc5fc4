// Visits used by the schedule tests, with the house policy of knowledge/policy/schedule.json.
#pragma once

#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>
#include <vector>

#include "strandline/schedule.h"

namespace strandline::visits {

inline AreaKind area_named(const std::string& name) {
  const std::vector<std::pair<std::string, AreaKind>> names{{"front_hairline", AreaKind::front_hairline},
                                                            {"temples", AreaKind::temples},
                                                            {"top", AreaKind::top},
                                                            {"crown", AreaKind::crown},
                                                            {"sides", AreaKind::sides},
                                                            {"nape", AreaKind::nape},
                                                            {"other", AreaKind::other}};
  for (const auto& [known, kind] : names)
    if (known == name) return kind;
  throw std::runtime_error("no area named " + name);
}

inline SchedulePolicy house_policy() {
  std::ifstream file(STRANDLINE_SOURCE_DIR "/knowledge/policy/schedule.json");
  const auto json = nlohmann::json::parse(file);
  SchedulePolicy p;
  p.order = json.at("order") == "hard" ? OrderForce::hard : OrderForce::soft;
  p.soft_order_minutes = json.at("soft_order_minutes");
  p.develop_to = DevelopTo::target_if_possible;
  p.resistant_from = json.at("resistant_from");
  p.porous_from = json.at("porous_from");
  for (const std::string name : json.at("cover_areas")) p.cover_areas.push_back(area_named(name));
  for (const std::string name : json.at("lighten_areas")) p.lighten_areas.push_back(area_named(name));
  p.prepare = {json.at("prepare").at("mean"), json.at("prepare").at("sd")};
  p.remove_packet = {json.at("remove_packet").at("mean"), json.at("remove_packet").at("sd")};
  p.first_check = json.at("first_check");
  p.check_every_min = json.at("check_every_min");
  p.check_every_max = json.at("check_every_max");
  p.check_minutes = json.at("check_minutes");
  p.late_tolerance = json.at("late_tolerance");
  p.sample_points = json.at("sample_points");
  p.node_limit = json.at("node_limit");
  return p;
}

inline Person colourist() {
  return {
      "colourist", "colourist", {Skill::prepare, Skill::mix, Skill::apply, Skill::check, Skill::basin, Skill::finish},
      1,           0,           {}};
}

inline Person assistant() {
  return {"assistant", "assistant", {Skill::prepare, Skill::mix, Skill::check, Skill::basin, Skill::finish}, 1, 0, {}};
}

inline Person second_colourist() {
  auto person = colourist();
  person.id = person.role = "second";
  return person;
}

inline std::vector<TailTask> tail() {
  return {{TaskKind::emulsify, {2, 0.5}, true}, {TaskKind::rinse, {5, 1}, true}, {TaskKind::shampoo, {5, 1}, true},
          {TaskKind::treat, {3, 0.5}, true},    {TaskKind::dry, {20, 4}, false}, {TaskKind::photograph, {3, 1}, false}};
}

inline Application regrowth(const std::string& area, double minutes, double white = 0.2) {
  Application a;
  a.zone = area + "/regrowth";
  a.id = a.zone;
  a.bowl = "A";
  a.area = area_named(area);
  a.apply = {minutes, minutes * 0.15};
  a.min = 30;
  a.target = 35;
  a.max = 80;
  a.white_share = white;
  return a;
}

inline Application ends(const std::string& area, double minutes, double porosity = 1) {
  auto a = regrowth(area, minutes);
  a.zone = a.id = area + "/ends";
  a.bowl = "B";
  a.span = SpanKind::ends;
  a.touches_scalp = false;
  a.porosity = porosity;
  a.min = 5;
  a.target = 10;
  a.max = 40;
  return a;
}

// Five areas, regrowth and ends, two bowls, colourist and assistant.
inline ScheduleRequest two_bowls() {
  ScheduleRequest r;
  r.bowls = {{"A", "A", ProductClass::permanent, {4, 0.7}, 60}, {"B", "B", ProductClass::demi, {4, 0.7}, 60}};
  for (const auto& [area, minutes] : std::vector<std::pair<std::string, double>>{
           {"front_hairline", 5}, {"top", 6}, {"crown", 6}, {"sides", 7}, {"nape", 5}}) {
    r.applications.push_back(regrowth(area, minutes));
    r.applications.push_back(ends(area, 2.5));
  }
  r.people = {colourist(), assistant()};
  r.tail = tail();
  r.policy = house_policy();
  return r;
}

// Freehand-free lift: lightener on lengths and roots, colourist alone.
inline ScheduleRequest virgin_lift() {
  ScheduleRequest r;
  r.bowls = {{"L", "L", ProductClass::lightener, {4, 0.7}, 60}};
  for (const std::string area : {"nape", "crown", "sides", "front_hairline"}) {
    auto lengths = ends(area, 4);
    lengths.span = SpanKind::mids;
    lengths.id = lengths.zone = area + "/mids";
    auto roots = regrowth(area, 3);
    for (auto* a : {&lengths, &roots}) {
      a->bowl = "L";
      a->lightening = true;
      a->min = 10;
      a->target = 15;
      a->max = 50;
    }
    r.applications.push_back(lengths);
    r.applications.push_back(roots);
  }
  r.people = {colourist()};
  r.tail = tail();
  r.policy = house_policy();
  return r;
}

}  // namespace strandline::visits
