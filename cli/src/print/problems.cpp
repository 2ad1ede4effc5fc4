#include "src/print/problems.h"

#include <ostream>

#include "en/sentences.h"
#include "src/print/text.h"

namespace strandline::cli {

void print_problems(const Problems& problems, const std::string& file, std::ostream& err) {
  err << (problems.size() == 1 ? "One problem" : std::to_string(problems.size()) + " problems") << " in "
      << printable(file == "-" ? "standard input" : file) << "; nothing was worked out and nothing was written.\n";
  for (const Problem& p : problems) {
    err << "\n  " << printable(p.path.empty() ? "whole document" : p.path) << '\n';
    err << "    " << printable(en::say(p)) << '\n';
    if (const std::string remedy = en::remedy(p); !remedy.empty()) err << "    " << printable(remedy) << '\n';
  }
}

void print_lines(const Problems& lines, const std::string& indent, std::ostream& out) {
  for (const Problem& line : lines) {
    out << indent << "- " << printable(en::say(line));
    if (const std::string remedy = en::remedy(line); !remedy.empty()) out << ' ' << printable(remedy);
    out << '\n';
  }
}

}  // namespace strandline::cli
