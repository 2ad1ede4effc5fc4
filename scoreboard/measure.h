// Median wall time of several runs, and the JSON line of a figure.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string>
#include <vector>

namespace strandline::scoreboard {

template <class Body>
double median_ms(int runs, Body body) {
  std::vector<double> ms;
  for (int i = 0; i < runs; ++i) {
    const auto begin = std::chrono::steady_clock::now();
    body();
    ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
  }
  std::sort(ms.begin(), ms.end());
  return ms[ms.size() / 2];
}

struct Figure {
  std::string key;
  double value;
  std::string unit, note;
};

inline void print(const std::vector<Figure>& all) {
  std::printf("[");
  for (size_t i = 0; i < all.size(); ++i)
    std::printf("%s{\"key\": \"%s\", \"value\": %.6g, \"unit\": \"%s\", \"note\": \"%s\"}", i ? ",\n " : "",
                all[i].key.c_str(), all[i].value, all[i].unit.c_str(), all[i].note.c_str());
  std::printf("]\n");
}

}  // namespace strandline::scoreboard
