#include "src/print/swatch.h"

#include <cstdio>

#include "src/print/text.h"
#include "strandline/levels.h"

namespace strandline::cli {

namespace {

const wire::Rgb& under(const wire::UnderLights& colour, const std::string& light) {
  if (light == "evening") return colour.lamp;
  if (light == "salon") return colour.led;
  if (light == "tube") return colour.fluorescent;
  return colour.daylight;
}

}  // namespace

std::string swatch(const wire::UnderLights& colour, const Paint& paint) {
  const wire::Rgb& c = under(colour, paint.light);
  const std::string mark = c.out_of_gamut ? "*" : " ";
  unsigned r = 0, g = 0, b = 0;
  if (!paint.true_colour || std::sscanf(c.hex.c_str(), "#%2x%2x%2x", &r, &g, &b) != 3) return c.hex + mark;
  return "\x1b[48;2;" + std::to_string(r) + ';' + std::to_string(g) + ';' + std::to_string(b) + "m      \x1b[0m" + mark;
}

std::string named(double level, Tone tone, std::optional<Tone> second) {
  return number(level, 1) + ' ' + std::string(word(tone)) + (second ? '-' + std::string(word(*second)) : "");
}

std::string lab_text(const Lab& lab) { return number(lab.l, 1) + '/' + number(lab.a, 1) + '/' + number(lab.b, 1); }

}  // namespace strandline::cli
