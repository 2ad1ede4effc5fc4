#pragma once
// From the studies to the files of knowledge/fibre.
#include <string>

#include "study.h"

namespace strandline::fibre_bed {

struct Output {
  std::string folder;   // where the files go
  std::string command;  // written into each file
  Effort effort;
};

// Each writes its files and prints what it found with standard errors.
void produce_curve(const Output& out);
void produce_blend(const Output& out);
void produce_geometry(const Output& out);

}  // namespace strandline::fibre_bed
