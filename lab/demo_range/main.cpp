// demo_range OUT.json: writes the invented demo shelf.
#include <cmath>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>

#include "products.h"
#include "strandline/levels.h"

namespace {

using nlohmann::ordered_json;
using namespace strandline;

const char* class_word(ProductClass c) {
  static constexpr const char* words[] = {"permanent",     "high_lift",       "demi",      "lightener", "clear",
                                          "corrector",     "direct",          "developer", "filler",    "remover",
                                          "pre_treatment", "after_treatment", "home_care"};
  return words[static_cast<int>(c)];
}

ordered_json json(const Range& r) {
  ordered_json j = {{"id", r.id},
                    {"maker", r.maker},
                    {"name", r.name},
                    {"cls", class_word(r.cls)},
                    {"reference",
                     {{"developer_percent", r.reference->developer_percent},
                      {"ratio", r.reference->ratio},
                      {"minutes", r.reference->minutes}}},
                    {"ratios", r.ratios},
                    {"developer_percents", r.developer_percents},
                    {"minutes", {{"min", r.minutes.min}, {"target", r.minutes.target}, {"max", r.minutes.max}}},
                    {"level_min", r.level_min},
                    {"level_max", r.level_max}};
  if (r.base_level_min) j["base_level_min"] = *r.base_level_min;
  j.update({{"bottle_blends", r.bottle_blends},
            {"scalp_allowed", r.scalp_allowed},
            {"alkaline_lift", alkaline_lift(r)},
            {"mix_life_min", r.mix_life_min},
            {"mix_warn_min", r.mix_warn_min},
            {"corrector_max_share", r.corrector_max_share}});
  return j;
}

ordered_json json(const Product& p) {
  ordered_json j = {{"id", p.id}, {"range", p.range}, {"name", p.name}, {"cls", class_word(p.cls)}};
  if (p.level > 0) j["level"] = p.level;
  if (p.level > 0 || p.tone != Tone::natural) j["tone"] = std::string(word(p.tone));
  static constexpr const char* known[] = {"white_hair", "stated_hair", "name"};
  if (has_colour(p)) j["known_by"] = known[static_cast<int>(known_by(p))];
  if (p.swatch) {
    ordered_json bands = ordered_json::array();
    for (double r : *p.swatch) bands.push_back(std::round(r * 1e5) / 1e5);
    j["swatch"] = bands;
  }
  if (p.swatch_on) j["swatch_on"] = {{"level", p.swatch_on->level}};
  if (p.cls == ProductClass::developer) j["peroxide_percent"] = p.peroxide_percent;
  ordered_json declared = ordered_json::array();
  for (const auto& d : p.declared)
    declared.push_back(
        {{"cas", d.cas}, {"entry", d.entry}, {"name", d.name}, {"percent", *d.percent}, {"basis", d.basis}});
  j.update({{"declared", declared},
            {"fully_declared", p.fully_declared},
            {"stock_g", p.stock_g},
            {"package_g", p.package_g},
            {"price_per_g", p.price_per_g},
            {"density", p.density}});
  return j;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) return std::fprintf(stderr, "usage: demo_range OUT.json\n"), 2;
  const Shelf shelf = demo::shelf();
  ordered_json j = {{"id", shelf.id},
                    {"title", shelf.title},
                    {"currency", shelf.currency},
                    {"invented", true},
                    {"ranges", ordered_json::array()},
                    {"products", ordered_json::array()}};
  for (const Range& r : shelf.ranges) j["ranges"].push_back(json(r));
  for (const Product& p : shelf.products) j["products"].push_back(json(p));
  std::ofstream out(argv[1], std::ios::binary);
  out << j.dump(1) << "\n";
  out.close();
  if (!out) return std::fprintf(stderr, "demo_range: cannot write %s\n", argv[1]), 1;
  std::printf("%zu products\n", shelf.products.size());
}
