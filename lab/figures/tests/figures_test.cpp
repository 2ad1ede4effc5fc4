#include "figures.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <stdexcept>

namespace strandline::figures {
namespace {

// The committed figures are those of this engine.
TEST(Figures, AreThoseOfTheEngine) {
  const auto figures = all_figures();
  EXPECT_GE(figures.size(), 7u);
  for (const auto& [name, chart] : figures) {
    std::ifstream in(std::string(STRANDLINE_SOURCE_DIR) + "/docs/model/" + name + ".svg", std::ios::binary);
    const std::string committed(std::istreambuf_iterator<char>(in), {});
    EXPECT_EQ(svg(chart), committed) << name << ": run  figures docs/model";
  }
}

TEST(Figures, WordsAreEscaped) { EXPECT_EQ(escaped("a<b & c>d"), "a&lt;b &amp; c&gt;d"); }

TEST(Figures, RefusesWhatCannotBeDrawn) {
  Chart c{"t", {"x", 0, 1, {}}, {"y", 0, 1, {}}, {{"uneven", {0, 1}, {0}}}, {}};
  EXPECT_THROW(svg(c), std::invalid_argument);
  c.lines.clear();
  c.x.high = 0;
  EXPECT_THROW(svg(c), std::invalid_argument);
}

}  // namespace
}  // namespace strandline::figures
