#include "cgats_text.h"

namespace strandline::cgats {
namespace {

bool blank(char c) { return c == ' ' || c == '\t' || c == '\v' || c == '\f'; }

std::string_view trimmed(std::string_view s) {
  while (!s.empty() && blank(s.front())) s.remove_prefix(1);
  while (!s.empty() && blank(s.back())) s.remove_suffix(1);
  if (s.size() >= 2 && s.front() == '"' && s.back() == '"') s = s.substr(1, s.size() - 2);
  return s;
}

}  // namespace

std::string_view take_line(std::string_view& rest) {
  const auto end = rest.find_first_of("\r\n");
  const auto line = rest.substr(0, end);
  if (end == std::string_view::npos) {
    rest = {};
  } else {
    const bool two = rest[end] == '\r' && end + 1 < rest.size() && rest[end + 1] == '\n';
    rest.remove_prefix(end + (two ? 2 : 1));
  }
  return line;
}

bool words(std::string_view s, std::vector<Token>& out) {
  out.clear();
  for (std::size_t i = 0; i < s.size();) {
    if (blank(s[i])) {
      ++i;
    } else if (s[i] == '#') {
      return true;
    } else if (s[i] == '"') {
      Token t{"", true};
      for (++i;; ++i) {
        if (i == s.size()) return false;
        if (s[i] != '"')
          t.text += s[i];
        else if (i + 1 < s.size() && s[i + 1] == '"')
          t.text += s[i++];
        else
          break;
      }
      ++i;
      out.push_back(std::move(t));
    } else {
      const auto start = i;
      while (i < s.size() && !blank(s[i])) ++i;
      out.push_back({std::string(s.substr(start, i - start)), false});
    }
  }
  return true;
}

std::vector<Token> tab_cells(std::string_view line) {
  std::vector<Token> out;
  for (;;) {
    const auto tab = line.find('\t');
    out.push_back({std::string(trimmed(line.substr(0, tab))), true});
    if (tab == std::string_view::npos) return out;
    line.remove_prefix(tab + 1);
  }
}

std::string printable(std::string_view word) {
  std::string out(word.substr(0, 40));
  for (char& c : out)
    if (c < ' ' || c > '~') c = '?';
  return out;
}

}  // namespace strandline::cgats
