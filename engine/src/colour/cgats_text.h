// Words of a CGATS text: lines, tokens, letter case.
#pragma once
#include <cctype>
#include <string>
#include <string_view>
#include <vector>

namespace strandline::cgats {

struct Token {
  std::string text;
  bool quoted;
};

inline char upper(char c) { return static_cast<char>(std::toupper(static_cast<unsigned char>(c))); }

inline bool same_word(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (upper(a[i]) != upper(b[i])) return false;
  return true;
}

// Takes the next line off the front of `rest`; \n, \r\n and \r all end one.
std::string_view take_line(std::string_view& rest);

// Words between blanks and tabs; "…" is one word, "" inside it a quote; # at the start of a word opens a
// comment. False if a quote does not end on its line.
bool words(std::string_view line, std::vector<Token>& out);

// Cells between tabs, blanks and quotes trimmed; empty cells stay.
std::vector<Token> tab_cells(std::string_view line);

// A word of the file as it may be shown in a message: at most 40 characters, anything but plain ASCII as '?'.
std::string printable(std::string_view word);

}  // namespace strandline::cgats
