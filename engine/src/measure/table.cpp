#include "measure/table.h"

#include <algorithm>

namespace strandline::measured {
namespace {

std::string_view trimmed(std::string_view s) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r'; };
  while (!s.empty() && blank(s.front())) s.remove_prefix(1);
  while (!s.empty() && blank(s.back())) s.remove_suffix(1);
  if (s.size() >= 2 && s.front() == '"' && s.back() == '"') s = s.substr(1, s.size() - 2);
  return s;
}

std::vector<std::string> cells(std::string_view line, char separator) {
  std::vector<std::string> out;
  for (;;) {
    const auto at = line.find(separator);
    out.emplace_back(trimmed(line.substr(0, at)));
    if (at == line.npos) break;
    line.remove_prefix(at + 1);
  }
  return out;
}

std::string heading(std::string cell) {
  if (cell == "L" || cell == "L*" || cell == "l*" || cell == "CIE L*") return "LAB_L";
  if (cell == "a" || cell == "a*" || cell == "A*" || cell == "CIE a*") return "LAB_A";
  if (cell == "b" || cell == "b*" || cell == "B*" || cell == "CIE b*") return "LAB_B";
  return cell;
}

tl::unexpected<Problems> refuse(const char* code, int line, std::map<std::string, std::string> params = {}) {
  params.emplace("line", std::to_string(line));
  return tl::unexpected(Problems{{code, "/lines/" + std::to_string(line), std::move(params)}});
}

}  // namespace

Result<cgats::Document> read_table(std::string_view text) {
  const cgats::Limits limits;
  if (text.size() > limits.bytes) return refuse("cgats_too_large", 1, {{"expected", std::to_string(limits.bytes)}});
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  cgats::Table table;
  char separator = 0;
  for (int line = 1; !text.empty(); ++line) {
    const auto end = std::min(text.find('\n'), text.size());
    const std::string_view all = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (all.find('\0') != all.npos) return refuse("cgats_not_text", line);
    if (trimmed(all).empty() || trimmed(all).front() == '#') continue;
    if (separator == 0) {
      for (const char c : {'\t', ';', ','})
        if (separator == 0 && all.find(c) != all.npos) separator = c;
      if (separator == 0) return refuse("table_no_heading", line);
      for (std::string& cell : cells(all, separator)) table.fields.push_back(heading(std::move(cell)));
      while (!table.fields.empty() && table.fields.back().empty()) table.fields.pop_back();
      if (table.fields.empty() || table.fields.size() > limits.fields) return refuse("table_no_heading", line);
      table.line = line;
      continue;
    }
    std::vector<std::string> row = cells(all, separator);
    while (row.size() > table.fields.size() && row.back().empty()) row.pop_back();
    if (row.size() != table.fields.size())
      return refuse("table_row_length", line,
                    {{"expected", std::to_string(table.fields.size())}, {"got", std::to_string(row.size())}});
    if (table.rows.size() >= limits.rows)
      return refuse("cgats_too_many_rows", line, {{"expected", std::to_string(limits.rows)}});
    table.rows.push_back({line, std::move(row)});
  }
  if (table.rows.empty()) return refuse("table_no_heading", 1);
  cgats::Document out;
  out.tables.push_back(std::move(table));
  return out;
}

}  // namespace strandline::measured
