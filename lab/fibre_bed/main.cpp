// fibre_bed: makes knowledge/fibre by light transport in a bed of fibres.
#include <chrono>
#include <cstdio>
#include <stdexcept>
#include <string>
#include <thread>

#include "produce.h"

namespace {

constexpr const char* kHelp =
    R"(fibre_bed: reflectance of hair by Monte Carlo of light in a bed of parallel fibres

usage: fibre_bed (--all | --curve | --blend | --geometry) --out FOLDER [--scale X] [--threads N] [--seed S]

  --curve      R(tau), its spread, and its concave form: reflectance_curve, reflectance_cubes, reflectance_e_inf
  --blend      white among pigmented fibres: blend_curves, blend_constants, blend_law
  --geometry   sphere with and without specular, 45/0 along, across and averaged: geometry_curves, geometry_floors
  --all        the three
  --out        folder that gets the files; knowledge/fibre for the product, any other folder to compare first
  --scale      multiplies the number of photons; 1 (default) is full regeneration, under 15 minutes on two cores
  --threads    default: all cores. Results do not depend on it, bit for bit
  --seed       default 1. Another seed agrees within the standard errors

Bed: infinite parallel cylinders, index 1.55, random packing, facets tilted by a normal distribution along and around the fibre,
absorption inside. Geometrical optics without polarisation. fibre_bed_report prints what the committed files say.
)";

struct Choice {
  bool curve = false, blend = false, geometry = false, help = false;
  strandline::fibre_bed::Output out;
};

double positive(const std::string& option, const std::string& text) {
  size_t used = 0;
  double value = 0;
  try {
    value = std::stod(text, &used);
  } catch (const std::exception&) {
    used = 0;
  }
  if (used == 0 || used != text.size() || !(value > 0))
    throw std::invalid_argument(option + ": \"" + text + "\" is not a number above 0");
  return value;
}

Choice parse(int argc, char** argv) {
  Choice c;
  c.out.effort.threads = static_cast<int>(std::max(1u, std::thread::hardware_concurrency()));
  for (int i = 1; i < argc; ++i) {
    const std::string option = argv[i];
    auto value = [&]() -> std::string {
      if (i + 1 == argc) throw std::invalid_argument(option + " needs a value");
      return argv[++i];
    };
    if (option == "--help")
      c.help = true;
    else if (option == "--all")
      c.curve = c.blend = c.geometry = true;
    else if (option == "--curve")
      c.curve = true;
    else if (option == "--blend")
      c.blend = true;
    else if (option == "--geometry")
      c.geometry = true;
    else if (option == "--out")
      c.out.folder = value();
    else if (option == "--scale")
      c.out.effort.scale = positive(option, value());
    else if (option == "--threads")
      c.out.effort.threads = static_cast<int>(positive(option, value()));
    else if (option == "--seed")
      c.out.effort.seed = static_cast<uint64_t>(positive(option, value()));
    else
      throw std::invalid_argument("unknown option " + option + "; see --help");
  }
  if (c.help) return c;
  if (!c.curve && !c.blend && !c.geometry)
    throw std::invalid_argument("say what to make: --all, --curve, --blend or --geometry");
  if (c.out.folder.empty()) throw std::invalid_argument("say where to write: --out FOLDER");
  char text[96];
  std::snprintf(text, sizeof text, "fibre_bed --all --out knowledge/fibre --scale %g --seed %llu", c.out.effort.scale,
                static_cast<unsigned long long>(c.out.effort.seed));
  c.out.command = text;
  return c;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    const Choice c = parse(argc, argv);
    if (c.help) return std::fputs(kHelp, stdout) < 0;
    const auto start = std::chrono::steady_clock::now();
    if (c.curve) strandline::fibre_bed::produce_curve(c.out);
    if (c.blend) strandline::fibre_bed::produce_blend(c.out);
    if (c.geometry) strandline::fibre_bed::produce_geometry(c.out);
    std::printf("%.0f s on %d threads\n",
                std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count(), c.out.effort.threads);
    return 0;
  } catch (const std::invalid_argument& e) {
    std::fprintf(stderr, "fibre_bed: %s\n", e.what());
    return 2;
  } catch (const std::exception& e) {
    std::fprintf(stderr, "fibre_bed: %s\n", e.what());
    return 1;
  }
}
