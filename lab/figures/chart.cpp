#include "chart.h"

#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace strandline::figures {
namespace {

constexpr double kWidth = 640, kHeight = 400, kLeft = 64, kRight = 150, kTop = 40, kBottom = 56;
constexpr const char* kInks[] = {"#1b4965", "#b3541e", "#4a7c59", "#7b2d8b", "#8c6d1f", "#5a5a5a", "#a02c44"};
constexpr size_t kInkCount = sizeof kInks / sizeof *kInks;

std::string number(double v) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4g", v);
  return text;
}

std::string place(double v) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", v);
  return text;
}

double share(const Axis& a, double v) {
  return a.log ? std::log(v / a.low) / std::log(a.high / a.low) : (v - a.low) / (a.high - a.low);
}

double across(const Chart& c, double v) { return kLeft + share(c.x, v) * (kWidth - kLeft - kRight); }
double up(const Chart& c, double v) { return kHeight - kBottom - share(c.y, v) * (kHeight - kTop - kBottom); }

std::string text(double x, double y, const std::string& anchor, const std::string& words, const char* extra = "") {
  return "<text x=\"" + place(x) + "\" y=\"" + place(y) + "\" text-anchor=\"" + anchor + "\"" + extra + ">" +
         escaped(words) + "</text>\n";
}

std::string axes(const Chart& c) {
  const double bottom = kHeight - kBottom, right = kWidth - kRight;
  std::string s;
  for (double t : c.x.ticks) {
    const std::string x = place(across(c, t));
    s += "<path d=\"M" + x + " " + place(kTop) + "V" + place(bottom) + "\" stroke=\"#ddd\"/>\n";
    s += text(across(c, t), bottom + 18, "middle", number(t));
  }
  for (double t : c.y.ticks) {
    s += "<path d=\"M" + place(kLeft) + " " + place(up(c, t)) + "H" + place(right) + "\" stroke=\"#ddd\"/>\n";
    s += text(kLeft - 8, up(c, t) + 4, "end", number(t));
  }
  s += text((kLeft + right) / 2, kHeight - 14, "middle", c.x.title);
  s += "<g transform=\"translate(18 " + place((kTop + bottom) / 2) + ") rotate(-90)\">" +
       text(0, 0, "middle", c.y.title) + "</g>\n";
  return s;
}

std::string drawn(const Chart& c, const Line& line, size_t index) {
  if (line.x.size() != line.y.size()) throw std::invalid_argument(line.name + ": x and y differ in length");
  const std::string ink = kInks[index % kInkCount];
  std::string s, path;
  for (size_t i = 0; i < line.x.size(); ++i) {
    const std::string at = place(across(c, line.x[i])) + " " + place(up(c, line.y[i]));
    path += (i ? "L" : "M") + at;
    if (line.points)
      s += "<circle cx=\"" + place(across(c, line.x[i])) + "\" cy=\"" + place(up(c, line.y[i])) + "\" r=\"4\" fill=\"" +
           ink + "\"/>\n";
  }
  if (!line.points)
    s += "<path d=\"" + path + "\" fill=\"none\" stroke=\"" + ink + "\" stroke-width=\"2\"" +
         (line.dashed ? " stroke-dasharray=\"6 4\"" : "") + "/>\n";
  const double y = kTop + 14 + 18 * static_cast<double>(index);
  s += "<rect x=\"" + place(kWidth - kRight + 10) + "\" y=\"" + place(y - 8) + "\" width=\"12\" height=\"4\" fill=\"" +
       ink + "\"/>\n";
  return s + text(kWidth - kRight + 28, y - 2, "start", line.name);
}

std::string drawn(const Chart& c, const Cell& cell) {
  const double x = across(c, cell.x), y = up(c, cell.y + cell.height), w = across(c, cell.x + cell.width) - x,
               h = up(c, cell.y) - y;
  return "<rect x=\"" + place(x) + "\" y=\"" + place(y) + "\" width=\"" + place(w) + "\" height=\"" + place(h) +
         "\" fill=\"" + cell.colour + "\" stroke=\"#fff\"/>\n" +
         text(x + w / 2, y + h / 2 + 4, "middle", cell.text, " fill=\"#fff\"");
}

}  // namespace

std::string escaped(const std::string& words) {
  std::string s;
  for (char ch : words) s += ch == '&' ? "&amp;" : ch == '<' ? "&lt;" : ch == '>' ? "&gt;" : std::string(1, ch);
  return s;
}

std::string svg(const Chart& c) {
  for (const Axis* a : {&c.x, &c.y})
    if (!(a->high > a->low) || (a->log && !(a->low > 0)))
      throw std::invalid_argument(a->title + ": an axis has no width");
  std::string s = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + place(kWidth) + " " + place(kHeight) +
                  "\" font-family=\"sans-serif\" font-size=\"12\" role=\"img\">\n<title>" + escaped(c.title) +
                  "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
  s += text(kLeft, 22, "start", c.title, " font-weight=\"bold\"") + axes(c);
  for (const Cell& cell : c.cells) s += drawn(c, cell);
  for (size_t i = 0; i < c.lines.size(); ++i) s += drawn(c, c.lines[i], i);
  return s + "</svg>\n";
}

}  // namespace strandline::figures
