// Many recipes at once: for each part of a bowl the shades of one node of the tree, under one setting. A branch is
// divided until every part is a single shade.
#pragma once

#include <cstdint>
#include <vector>

#include "mix/domain.h"
#include "search/shade_tree.h"

namespace strandline {

struct Branch {
  double bound = 0;         // no recipe of it costs less
  std::uint64_t plain = 0;  // and none is plainer (plainness.h); 0 where that is not asked
  int setting = 0;
  int node[3] = {0, 0, 0};             // of the range's tree
  signed char eighths[3] = {0, 0, 0};  // falling; 0 where there is no such part
  signed char way = 0;                 // which of the kWays of sharing that is
  std::uint64_t dead = 0;              // times of zones that nothing of it wants any more (Terrain::Zone::first_bit)
  int parts() const { return (eighths[0] > 0) + (eighths[1] > 0) + (eighths[2] > 0); }
};

// Every way of sharing eight eighths: together they hold every recipe exactly once.
inline constexpr int kWays = 10;
std::vector<Branch> undivided(int setting);

// Where one range's recipes are, and what they may be.
struct Ground {
  const RecipeSet* set = nullptr;
  ShadeTree tree;
  const ShadeNode& node(const Branch& b, int part) const { return tree.nodes[static_cast<size_t>(b.node[part])]; }
};

// False where no recipe of it is in the domain, or each is met in another branch.
bool holds_recipes(const Ground& ground, const Branch& branch);
// Of the colour part: none of its recipes is cheaper; exact for a single one.
double least_price_per_g(const Ground& ground, const Branch& branch);
// One recipe, every part a single shade.
bool single(const Ground& ground, const Branch& branch);
Shares recipe_of(const Ground& ground, const Branch& branch);
// The part whose shades differ most; requires that the branch is not single.
int widest_part(const Ground& ground, const Branch& branch);
// The loads between which every recipe of it lies at this ratio (kBoxBands each), capacity included.
void box_of(const Ground& ground, const Branch& branch, double ratio, float* low, float* high);

}  // namespace strandline
