#pragma once
// The files of knowledge/ that the studies write.
#include <string>
#include <vector>

namespace strandline::fibre_bed {

struct TableFile {
  std::string name, title, unit, source, command;
  std::vector<std::string> columns;
  std::vector<std::vector<double>> rows;  // each as long as `columns`
};

struct ConstantsFile {
  struct Constant {
    std::string key;
    double value, sd;
    std::string unit, source;
  };
  std::string title, command;
  std::vector<Constant> constants;
};

std::string to_json(const TableFile& file);
std::string to_json(const ConstantsFile& file);

// Throws std::runtime_error with the path when the file cannot be written whole.
void write_file(const std::string& path, const std::string& text);

}  // namespace strandline::fibre_bed
