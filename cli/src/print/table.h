#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace strandline::cli {

// Columns aligned by their widest cell; two spaces between. A head that starts with '>' aligns its column to
// the right.
class Table {
 public:
  explicit Table(std::vector<std::string> heads);
  void row(std::vector<std::string> cells);
  void print(std::ostream& out) const;

 private:
  std::vector<std::string> heads_;
  std::vector<bool> right_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace strandline::cli
