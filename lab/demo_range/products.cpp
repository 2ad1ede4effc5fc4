#include "products.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "strandline/fibre.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/promise.h"

namespace strandline::demo {
namespace {

constexpr const char* kMaker = "demo maker (invented)";

struct Series {
  Tone tone;
  int from, to;
};

// A chart of a maker who shows every shade on natural hair of one level: what the name gives there.
void chart(Shelf& s, const std::string& range_id, double level) {
  const Constants c;
  const Range& range = *find_range(s, range_id);
  BowlChemistry bowl = bare_bowl(range.cls, *range.reference);
  bowl.alkaline_lift = alkaline_lift(range);
  const ShownLoad on = shown_load(natural_fibre(level, Tone::natural), bowl, c);
  for (Product& p : s.products) {
    if (p.range != range_id || p.cls != range.cls) continue;
    const Spectrum load = saturated(offered(p, range));
    Spectrum tau = optical_depth(on.bare, pigments(c));
    for (int b = 0; b < kBands; ++b) tau[b] += on.shows[b] * load[b];
    p.swatch = reflectance(tau);
    p.swatch_on = SwatchHair{.level = level};
  }
}

std::string number(double level) { return std::to_string(static_cast<int>(level)); }

// Invented contents, deeper shades hold more: half of what is customary at each depth (0.5 % for blond, 5 % for black
// in the mix), split over a primary, a coupler for brown and one for red.
void declare_oxidative(Product& p) {
  const double depth = std::pow(0.72, p.level);  // 1 → 0.72, 10 → 0.04
  auto percent = [&](double at_black) { return std::round(1000 * at_black * depth / 0.72) / 1000; };
  p.declared = {{"615-50-9", "9a", "Toluene-2,5-diamine sulfate", percent(3.2), "sulfate"},
                {"108-46-3", "22", "Resorcinol", percent(1.1), ""},
                {"591-27-5", "217", "m-Aminophenol", percent(0.7), "free_base"}};
  if (p.tone == Tone::red || p.tone == Tone::copper || p.tone == Tone::violet)
    p.declared.push_back({"2835-95-2", "241", "4-Amino-2-Hydroxytoluene", percent(1.4), ""});
  p.fully_declared = true;
}

void add_shades(Shelf& s, const std::string& range, ProductClass cls, const std::vector<Series>& series, double price) {
  for (const Series& one : series)
    for (int level = one.from; level <= one.to; ++level) {
      Product p;
      p.id = range + "-" + number(level) + "-" + std::string(word(one.tone));
      p.range = range;
      p.name = number(level) + " " + std::string(word(one.tone));
      p.cls = cls;
      p.level = level;
      p.tone = one.tone;
      p.stock_g = 300;
      p.price_per_g = price;
      p.density = 1.02;
      declare_oxidative(p);
      s.products.push_back(std::move(p));
    }
}

Product plain(const std::string& id, const std::string& range, const std::string& name, ProductClass cls, double stock,
              double package, double price) {
  Product p;
  p.id = id;
  p.range = range;
  p.name = name;
  p.cls = cls;
  p.stock_g = stock;
  p.package_g = package;
  p.price_per_g = price;
  p.fully_declared = true;
  return p;
}

// The tone word that a colour is named by; blue is the ash of correctors.
Tone tone_of(const std::string& colour) {
  Tone tone = Tone::natural;
  if (colour == "yellow") return Tone::gold;
  if (colour == "blue") return Tone::ash;
  parse_tone(colour, tone);
  return tone;
}

void add_clear(Shelf& s, const std::string& range, double price) {
  s.products.push_back(plain(range + "-clear", range, "clear", ProductClass::clear, 240, 60, price));
}

void add_correctors(Shelf& s, const std::string& range, double price) {
  for (const char* name : {"yellow", "red", "violet", "blue", "green"}) {
    Product p = plain(range + "-corrector-" + name, range, std::string("corrector ") + name, ProductClass::corrector,
                      120, 60, price);
    p.tone = tone_of(name);
    s.products.push_back(std::move(p));
  }
  add_clear(s, range, price);
}

Range range(const std::string& id, const std::string& name, ProductClass cls, ReferenceProcess reference,
            std::vector<double> ratios, std::vector<double> percents, MinuteWindow minutes) {
  Range r;
  r.id = id;
  r.maker = kMaker;
  r.name = name;
  r.cls = cls;
  r.reference = reference;
  r.ratios = std::move(ratios);
  r.developer_percents = std::move(percents);
  r.minutes = minutes;
  return r;
}

void add_ranges(Shelf& s) {
  Range permanent =
      range("permanent", "permanent tint", ProductClass::permanent, {6, 1, 35}, {1}, {3, 6, 9}, {25, 35, 45});
  permanent.bottle_blends = true;
  permanent.level_max = 10;
  s.ranges.push_back(permanent);

  Range high = range("high-lift", "high-lift tint", ProductClass::high_lift, {12, 2, 50}, {2}, {9, 12}, {45, 50, 60});
  high.base_level_min = 6;
  high.alkaline_lift = 1.25;
  s.ranges.push_back(high);

  Range demi = range("demi", "demi colour", ProductClass::demi, {1.5, 2, 20}, {2}, {1.5, 3}, {5, 20, 20});
  demi.alkaline_lift = 0.15;
  s.ranges.push_back(demi);

  // Hardly alkaline: it deposits and does not lift.
  Range acid = range("acid-demi", "acid demi colour", ProductClass::demi, {1.5, 1, 20}, {1}, {1.5}, {5, 20, 20});
  acid.alkaline_lift = 0.02;
  s.ranges.push_back(acid);

  Range lightener = range("lightener-off-scalp", "powder lightener, off the scalp", ProductClass::lightener, {6, 2, 40},
                          {1.5, 2}, {1.5, 3, 6, 9}, {15, 30, 45});
  lightener.mix_warn_min = 45;
  lightener.mix_life_min = 60;
  lightener.scalp_allowed = false;
  s.ranges.push_back(lightener);

  // On the scalp: less alkali and weaker bottles.
  Range gentle = range("lightener-on-scalp", "cream lightener, on the scalp", ProductClass::lightener, {6, 2, 45}, {2},
                       {1.5, 3, 6}, {15, 35, 50});
  gentle.mix_warn_min = 45;
  gentle.mix_life_min = 60;
  gentle.alkaline_lift = 0.7;
  s.ranges.push_back(gentle);

  Range direct = range("direct", "direct colour", ProductClass::direct, {0, 0, 25}, {0}, {}, {15, 25, 30});
  s.ranges.push_back(direct);

  Range remover =
      range("remover", "oxidative colour remover", ProductClass::remover, {0, 1, 20}, {1}, {}, {10, 20, 20});
  s.ranges.push_back(remover);

  Range filler = range("filler", "filler", ProductClass::filler, {0, 0, 15}, {0}, {}, {10, 15, 20});
  s.ranges.push_back(filler);

  // Half the alkali of a tint, just before it, on white that takes badly.
  Range softener =
      range("softener", "pre-softening cream", ProductClass::pre_treatment, {6, 1, 10}, {1}, {3, 6}, {5, 10, 15});
  softener.alkaline_lift = 0.5;
  s.ranges.push_back(softener);

  Range chelating =
      range("chelating", "chelating treatment", ProductClass::pre_treatment, {0, 0, 10}, {0}, {}, {5, 10, 15});
  s.ranges.push_back(chelating);
}

void add_tints(Shelf& s) {
  add_shades(s, "permanent", ProductClass::permanent,
             {{Tone::natural, 1, 10},
              {Tone::ash, 5, 9},
              {Tone::gold, 4, 9},
              {Tone::beige, 7, 9},
              {Tone::copper, 5, 8},
              {Tone::red, 4, 6},
              {Tone::violet, 4, 6}},
             0.14);
  add_correctors(s, "permanent", 0.18);
  add_shades(s, "demi", ProductClass::demi,
             {{Tone::natural, 3, 10},
              {Tone::ash, 6, 9},
              {Tone::violet, 8, 10},
              {Tone::beige, 7, 10},
              {Tone::gold, 5, 9},
              {Tone::copper, 5, 8},
              {Tone::red, 4, 6}},
             0.16);
  add_correctors(s, "demi", 0.2);
  add_shades(s, "acid-demi", ProductClass::demi,
             {{Tone::natural, 5, 9}, {Tone::violet, 9, 10}, {Tone::beige, 8, 10}, {Tone::copper, 7, 8}}, 0.19);
  add_clear(s, "acid-demi", 0.19);
  add_shades(s, "high-lift", ProductClass::high_lift,
             {{Tone::natural, 10, 10}, {Tone::ash, 10, 10}, {Tone::violet, 10, 10}, {Tone::beige, 10, 10}}, 0.17);
}

// Invented contents: one direct dye of the list of regulated dyes each, well below its limit.
void add_direct(Shelf& s) {
  struct Dye {
    const char* name;
    law::Declared declared;
  };
  for (const Dye& dye : {Dye{"yellow", {"10442-83-8", "261", "HC Yellow No 13", 0.8, ""}},
                         Dye{"red", {"77061-58-6", "268", "Basic Red 51", 0.3, ""}},
                         Dye{"blue", {"502453-61-4", "282", "HC Blue 16", 1.2, ""}},
                         Dye{"violet", {"104226-19-9", "224", "HC Violet 2", 0.9, ""}}}) {
    Product p = plain(std::string("direct-") + dye.name, "direct", std::string("direct ") + dye.name,
                      ProductClass::direct, 150, 100, 0.12);
    p.tone = tone_of(dye.name);
    p.declared = {dye.declared};
    s.products.push_back(std::move(p));
  }
}

void add_fillers(Shelf& s) {
  for (const auto& [level, tone] : {std::pair{7, Tone::copper}, std::pair{8, Tone::gold}}) {
    Product p = plain("filler-" + number(level) + "-" + std::string(word(tone)), "filler",
                      "filler " + number(level) + " " + std::string(word(tone)), ProductClass::filler, 180, 60, 0.16);
    p.level = level;
    p.tone = tone;
    p.declared = {{"97404-02-9", "276", "Basic Orange 31", 0.2, ""}};
    s.products.push_back(std::move(p));
  }
}

void add_developers(Shelf& s) {
  for (double percent : {1.5, 3.0, 6.0, 9.0, 12.0}) {
    const std::string text = percent == 1.5 ? "1.5" : number(percent);
    Product p = plain("developer-" + text, "", "developer " + text + " %", ProductClass::developer, 1000, 1000, 0.011);
    p.peroxide_percent = percent;
    s.products.push_back(std::move(p));
  }
}

void add_treatments(Shelf& s) {
  s.products.push_back(
      plain("lightener-powder", "lightener-off-scalp", "powder lightener", ProductClass::lightener, 500, 500, 0.07));
  Product cream =
      plain("lightener-cream", "lightener-on-scalp", "cream lightener", ProductClass::lightener, 400, 100, 0.09);
  cream.density = 1.05;
  s.products.push_back(cream);
  s.products.push_back(plain("remover-a", "remover", "colour remover", ProductClass::remover, 200, 100, 0.1));
  s.products.push_back(plain("remover-b", "remover", "remover activator", ProductClass::remover, 200, 100, 0.1));
  Product soften = plain("softener-cream", "softener", "softening cream", ProductClass::pre_treatment, 300, 100, 0.06);
  soften.declared = {{"1336-21-6", "4", "Ammonia", 0.6, "ammonium_hydroxide"}};
  s.products.push_back(soften);
  Product chelate =
      plain("chelating-rinse", "chelating", "mineral remover", ProductClass::pre_treatment, 250, 250, 0.05);
  chelate.declared = {{"2809-21-4", "53", "Etidronic acid", 0.8, "etidronic_acid"}};
  s.products.push_back(chelate);
  s.products.push_back(plain("acid-rinse", "", "acid rinse", ProductClass::after_treatment, 500, 500, 0.03));
  s.products.push_back(plain("mild-shampoo", "", "mild shampoo, home", ProductClass::home_care, 12 * 250, 250, 0.04));
}

}  // namespace

Shelf shelf() {
  Shelf s;
  s.id = "demo";
  s.title = "Demo shelf: every range, shade, price and percentage is invented";
  s.invented = true;
  add_ranges(s);
  add_tints(s);
  add_developers(s);
  add_direct(s);
  add_fillers(s);
  add_treatments(s);
  chart(s, "demi", 8);
  return s;
}

}  // namespace strandline::demo
