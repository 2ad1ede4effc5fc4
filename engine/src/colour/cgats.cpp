#include "strandline/cgats.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <set>

#include "cgats_text.h"

namespace strandline::cgats {
namespace {

using Params = std::map<std::string, std::string>;

class Reader {
 public:
  Reader(std::string_view text, const Limits& limits) : rest_(text), limits_(limits) {}

  Result<Document> run() {
    if (rest_.size() > limits_.bytes) {
      problem("cgats_too_large", {{"expected", std::to_string(limits_.bytes)}, {"got", std::to_string(rest_.size())}});
      return tl::unexpected(problems_);
    }
    if (rest_.starts_with("\xEF\xBB\xBF")) rest_.remove_prefix(3);
    while (!rest_.empty() && !stopped()) {
      ++line_;
      one_line(take_line(rest_));
    }
    if (!stopped()) finish();
    if (!problems_.empty()) return tl::unexpected(problems_);
    return std::move(document_);
  }

 private:
  enum class Part { header, format, data };

  void add_problem(Problems& to, const std::string& code, Params params) const {
    for (auto& [key, value] : params) value = printable(value);
    params.emplace("line", std::to_string(line_));
    const std::string path = "/lines/" + params["line"];
    to.push_back({code, path, std::move(params)});
  }

  void problem(const std::string& code, Params params = {}) { add_problem(problems_, code, std::move(params)); }
  bool stopped() const { return hopeless_ || problems_.size() >= limits_.problems; }
  void give_up(const std::string& code, Params params = {}) { problem(code, std::move(params)), hopeless_ = true; }

  void one_line(std::string_view line) {
    if (line.find('\0') != line.npos) return give_up("cgats_not_text");
    if (!words(line, words_)) return broken_ = true, problem("cgats_quote_open");
    for (std::size_t i = 0; i < words_.size() && !stopped();) switch (part_) {
        case Part::header:
          i = header(i);
          break;
        case Part::format:
          i = format(i);
          break;
        case Part::data:
          i = data(i, line);
          break;
      }
  }

  bool marks(std::size_t i, std::string_view word) const {
    return !words_[i].quoted && same_word(words_[i].text, word);
  }

  // Each of these takes words from i on and returns the first it left.
  std::size_t header(std::size_t i) {
    if (marks(i, "BEGIN_DATA_FORMAT")) {
      table_.fields.clear(), own_format_ = true, part_ = Part::format;
      return i + 1;
    }
    if (marks(i, "BEGIN_DATA")) {
      begin_data();
      return i + 1;
    }
    if (marks(i, "END_DATA") || marks(i, "END_DATA_FORMAT")) {
      problem("cgats_stray_end");
      return i + 1;
    }
    const bool first = table_.identifier.empty() && table_.keywords.empty() && !own_format_;
    if (first && words_.size() == i + 1)
      table_.identifier = words_[i].text;
    else if (!same_word(words_[i].text, "KEYWORD"))
      keyword(i);
    return words_.size();
  }

  void keyword(std::size_t i) {
    if (table_.keywords.size() >= limits_.fields) return give_up("cgats_too_many_keywords");
    Keyword k{words_[i].text, "", line_};
    for (auto w = words_.begin() + i + 1; w != words_.end(); ++w) k.value += (k.value.empty() ? "" : " ") + w->text;
    table_.keywords.push_back(std::move(k));
  }

  std::size_t format(std::size_t i) {
    if (marks(i, "END_DATA_FORMAT")) {
      part_ = Part::header;
      check_fields();
    } else if (marks(i, "BEGIN_DATA") || marks(i, "END_DATA") || marks(i, "BEGIN_DATA_FORMAT")) {
      give_up("cgats_format_open");
    } else if (table_.fields.size() >= limits_.fields) {
      give_up("cgats_too_many_fields", {{"expected", std::to_string(limits_.fields)}});
    } else {
      table_.fields.push_back(words_[i].text);
    }
    return i + 1;
  }

  void check_fields() {
    std::set<std::string> seen;
    for (const auto& name : table_.fields) {
      std::string key;
      for (char c : name) key += upper(c);
      const bool repeats = key == "SPECTRAL_NM" || key == "SPECTRAL_PCT" || key == "SPECTRAL_DEC";
      if (!seen.insert(key).second && !repeats) return problem("cgats_field_twice", {{"field", name}});
    }
  }

  void begin_data() {
    if (!own_format_ && !document_.tables.empty()) table_.fields = document_.tables.back().fields;
    if (table_.fields.empty()) return give_up("cgats_no_fields");
    table_.line = line_;
    part_ = Part::data;
  }

  std::size_t data(std::size_t i, std::string_view line) {
    std::size_t end = i;
    while (end < words_.size() && !marks(end, "END_DATA")) ++end;
    std::vector<Token> cells(words_.begin() + i, words_.begin() + end);
    const std::size_t n = table_.fields.size();
    // Cells left empty or names with blanks make sense only between tabs.
    if (pending_.cells.empty() && cells.size() != n && end == words_.size() && line.find('\t') != line.npos) {
      auto by_tab = tab_cells(line);
      if (by_tab.size() == n + 1 && by_tab.back().text.empty()) by_tab.pop_back();
      if (by_tab.size() == n) cells = std::move(by_tab);
    }
    add(cells);
    if (end == words_.size()) return end;
    end_table();
    return end + 1;
  }

  // Rows end where lines end: a short row is not filled up from the next.
  void add(const std::vector<Token>& cells) {
    const std::size_t n = table_.fields.size(), before = pending_.cells.size();
    for (const auto& cell : cells) {
      if (pending_.cells.empty()) pending_.line = line_;
      pending_.cells.push_back(cell.text);
      if (pending_.cells.size() < n) continue;
      const bool ends_line = &cell == &cells.back(), wrapped = before > 0;
      if (!ends_line && wrapped) return broken_row(before), add(cells);
      if (!ends_line && cells.size() % n != 0) return broken_row(cells.size());
      if (table_.rows.size() >= limits_.rows)
        return give_up("cgats_too_many_rows", {{"expected", std::to_string(limits_.rows)}});
      table_.rows.push_back(std::move(pending_));
      pending_ = {};
    }
  }

  void broken_row(std::size_t got) {
    problem("cgats_row_length", {{"line", std::to_string(pending_.line)},
                                 {"expected", std::to_string(table_.fields.size())},
                                 {"got", std::to_string(got)}});
    pending_ = {};
    broken_ = true;
  }

  void end_table() {
    if (!pending_.cells.empty()) broken_row(pending_.cells.size());
    // The names in the format say what a row holds; the number beside them is often left over from another
    // file.
    if (own_format_) check_count("NUMBER_OF_FIELDS", table_.fields.size(), document_.notes);
    if (!broken_) check_count("NUMBER_OF_SETS", table_.rows.size(), problems_);
    if (document_.tables.size() >= limits_.tables)
      return give_up("cgats_too_many_tables", {{"expected", std::to_string(limits_.tables)}});
    document_.tables.push_back(std::move(table_));
    table_ = {}, part_ = Part::header, own_format_ = false, broken_ = false;
  }

  void check_count(std::string_view key, std::size_t got, Problems& to) {
    const auto said = table_.value(key);
    const auto expected = said ? number(*said) : std::nullopt;
    if (!said || (expected && *expected == static_cast<double>(got))) return;
    add_problem(to, "cgats_count",
                {{"field", std::string(key)}, {"expected", std::string(*said)}, {"got", std::to_string(got)}});
  }

  void finish() {
    if (part_ == Part::format)
      problem("cgats_format_open");
    else if (part_ == Part::data)
      problem("cgats_data_open");
    else if (document_.tables.empty() && problems_.empty())
      problem("cgats_no_table");
  }

  std::string_view rest_;
  const Limits& limits_;
  Document document_;
  Problems problems_;
  Table table_;
  Row pending_{};
  Part part_ = Part::header;
  std::vector<Token> words_;
  int line_ = 0;
  int broken_ = false;
  bool own_format_ = false, hopeless_ = false;
};

}  // namespace

std::optional<std::string_view> Table::value(std::string_view key) const {
  const auto k =
      std::find_if(keywords.rbegin(), keywords.rend(), [&](const Keyword& w) { return same_word(w.key, key); });
  if (k == keywords.rend()) return std::nullopt;
  return k->value;
}

std::optional<int> Table::field(std::string_view name) const {
  const auto f = std::find_if(fields.begin(), fields.end(), [&](const std::string& w) { return same_word(w, name); });
  if (f == fields.end()) return std::nullopt;
  return static_cast<int>(f - fields.begin());
}

Result<Document> read(std::string_view text, const Limits& limits) { return Reader(text, limits).run(); }

std::optional<double> number(std::string_view cell) {
  std::string s(cell);
  if (s.starts_with('+')) s.erase(0, 1);
  if (s.starts_with('+')) return std::nullopt;
  if (s.find('.') == s.npos)
    if (const auto comma = s.find(','); comma != s.npos) s[comma] = '.';
  double v = 0;
  const auto [end, error] = std::from_chars(s.data(), s.data() + s.size(), v);
  if (error != std::errc{} || end != s.data() + s.size() || !std::isfinite(v)) return std::nullopt;
  return v;
}

}  // namespace strandline::cgats
