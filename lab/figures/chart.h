// A plain line chart as SVG.
#pragma once

#include <string>
#include <vector>

namespace strandline::figures {

struct Axis {
  std::string title;
  double low = 0, high = 1;
  std::vector<double> ticks;
  bool log = false;  // low > 0
};

struct Line {
  std::string name;
  std::vector<double> x, y;  // as long as each other
  bool dashed = false, points = false;
};

// A field of the plane in its own colour, lower left corner at (x, y).
struct Cell {
  double x = 0, y = 0;
  std::string colour, text;
  double width = 1, height = 1;
};

struct Chart {
  std::string title;
  Axis x, y;
  std::vector<Line> lines;
  std::vector<Cell> cells;
};

// Throws std::invalid_argument when a line has uneven lengths or an axis no width.
std::string svg(const Chart& chart);
std::string escaped(const std::string& text);

}  // namespace strandline::figures
