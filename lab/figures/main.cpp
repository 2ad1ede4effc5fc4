// figures FOLDER: draws the figures of docs/model.md.
#include <cstdio>
#include <exception>
#include <fstream>

#include "figures.h"

int main(int argc, char** argv) {
  if (argc != 2) return std::fprintf(stderr, "usage: figures FOLDER, as in  figures docs/model\n"), 2;
  try {
    for (const auto& [name, chart] : strandline::figures::all_figures()) {
      const std::string path = std::string(argv[1]) + "/" + name + ".svg";
      std::ofstream out(path, std::ios::binary);
      out << strandline::figures::svg(chart);
      out.close();
      if (!out) return std::fprintf(stderr, "figures: %s cannot be written\n", path.c_str()), 1;
    }
  } catch (const std::exception& e) {
    return std::fprintf(stderr, "figures: %s\n", e.what()), 1;
  }
  return 0;
}
