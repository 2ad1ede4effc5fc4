#include "table_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace strandline::wire {

namespace {

constexpr std::size_t shown_most = 160;
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF", hard_space = "\xC2\xA0", thin_space = "\xE2\x80\xAF";

std::string plain_spaces(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    if (text.substr(i).starts_with(hard_space)) {
      out += ' ', i += hard_space.size();
    } else if (text.substr(i).starts_with(thin_space)) {
      out += ' ', i += thin_space.size();
    } else {
      const char c = text[i++];
      out += c == '\t' || c == '\n' || c == '\r' ? ' ' : c;
    }
  }
  return out;
}

std::string trimmed(const std::string& text) {
  const std::size_t from = text.find_first_not_of(' ');
  if (from == std::string::npos) return "";
  return text.substr(from, text.find_last_not_of(' ') - from + 1);
}

// Cut between characters.
std::string beginning(std::string_view text) {
  std::string out = trimmed(plain_spaces(text));
  if (out.size() <= shown_most) return out;
  std::size_t end = shown_most;
  while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0) == 0x80) --end;
  return out.substr(0, end) + "…";
}

}  // namespace

char separator_of(std::string_view text) {
  const auto figure = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  bool quoted = false, semicolon = false, comma = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '"') quoted = !quoted;
    if (quoted) continue;
    if (text[i] == '\t') return '\t';
    semicolon |= text[i] == ';';
    // Where every comma stands between two figures they are decimal ones: "developer 1,5 %".
    comma |= text[i] == ',' && !(i > 0 && figure(i - 1) && figure(i + 1));
  }
  return semicolon ? ';' : comma ? ',' : '\0';
}

std::vector<TableRow> split_table(std::string_view text, char separator) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  std::vector<TableRow> rows;
  int line = 1;
  for (std::size_t at = 0; at < text.size();) {
    TableRow row{.line = line, .text = {}, .cells = {}};
    const std::size_t from = at;
    std::string cell;
    bool quoted = false, over = false;
    const auto close = [&] { row.cells.push_back(trimmed(plain_spaces(cell))), cell.clear(); };
    while (at < text.size() && !over) {
      const char c = text[at++];
      if (c == '\n' || (c == '\r' && (at == text.size() || text[at] != '\n'))) ++line, over = !quoted;
      if (quoted && c == '"') {
        if (at < text.size() && text[at] == '"') {
          cell += text[at++];
        } else {
          quoted = false;
        }
      } else if (c == '"' && cell.find_first_not_of(' ') == std::string::npos) {
        quoted = true, cell.clear();
      } else if (!quoted && separator != 0 && c == separator) {
        close();
      } else if (!over) {
        cell += c;
      }
    }
    close();
    row.open_quote = quoted;
    row.text = beginning(text.substr(from, at - from));
    const auto filled = [](const std::string& each) { return !each.empty(); };
    if (std::any_of(row.cells.begin(), row.cells.end(), filled)) rows.push_back(std::move(row));
  }
  return rows;
}

std::string csv_cell(const std::string& text) {
  if (text.find_first_of(",;\t\"\r\n") == std::string::npos && trimmed(text) == text) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + '"';
}

std::optional<double> table_number(std::string_view cell) {
  constexpr std::string_view digits = "0123456789";
  const std::size_t from = cell.find_first_of(digits), to = cell.find_last_of(digits);
  if (from == std::string_view::npos) return std::nullopt;
  // Around the figures nothing but a unit or a currency: no further figure, no sign.
  if (cell.substr(0, from).find_first_of("-,.") != std::string_view::npos) return std::nullopt;
  std::string figures(cell.substr(from, to - from + 1));
  const std::size_t mark = figures.find_last_of(".,");
  const bool grouped = mark != std::string::npos && figures.find_first_of(".,") != mark;
  if (grouped && figures.find(figures[mark]) != mark) return std::nullopt;  // 1.000.000
  std::string plain;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const char c = figures[i];
    if (i == mark) {
      plain += '.';
    } else if (digits.find(c) != std::string_view::npos) {
      plain += c;
    } else if (!grouped || (c != '.' && c != ',')) {
      return std::nullopt;
    }
  }
  double out = 0;
  const auto read = std::from_chars(plain.data(), plain.data() + plain.size(), out);
  if (read.ec != std::errc{} || read.ptr != plain.data() + plain.size() || !std::isfinite(out)) return std::nullopt;
  return out;
}

bool thousands_or_not(std::string_view cell) {
  const std::size_t mark = cell.find_first_of(".,");
  if (mark == std::string_view::npos || cell.find_first_of(".,", mark + 1) != std::string_view::npos) return false;
  constexpr std::size_t group = 3;
  std::size_t after = mark + 1;
  while (after < cell.size() && cell[after] >= '0' && cell[after] <= '9') ++after;
  return after - mark - 1 == group && mark > 0 && cell[mark - 1] != '0';
}

std::optional<double> whole_level(std::string_view word) {
  constexpr int deepest = 1, lightest = 12;
  int level = 0;
  const auto read = std::from_chars(word.data(), word.data() + word.size(), level);
  if (read.ec != std::errc{} || read.ptr != word.data() + word.size() || level < deepest || level > lightest)
    return std::nullopt;
  return level;
}

}  // namespace strandline::wire
