#include "strandline/wire/shelf_table.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "strandline/wire/answer_fields.h"
#include "strandline/wire/shelf_fields.h"
#include "table_columns.h"

namespace strandline::wire {

namespace {

using C = TableColumn;

bool is_shade(ProductClass cls) {
  Product p;
  p.cls = cls;
  return has_colour(p);
}
bool without_level(ProductClass cls) { return cls == ProductClass::direct || cls == ProductClass::corrector; }

// Letters, figures and hyphens of `text`, for an id.
std::string slug(const std::string& text) {
  constexpr std::size_t longest = 24;
  std::string out;
  for (const char c : folded(text)) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (plain) out += c;
    if (!plain && !out.empty() && out.back() != '-') out += '-';
    if (out.size() >= longest) break;
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out;
}

std::string text_at(const Json& product, const char* key) {
  const auto it = product.find(key);
  return it != product.end() && it->is_string() ? it->get<std::string>() : "";
}

// Lines put on a shelf, one after another.
class Reader {
 public:
  Reader(const TableAsked& asked, TableRead& out, ProductClass cls) : asked_(asked), out_(out), cls_(cls) {
    for (const Json& p : products()) ids_.insert(text_at(p, "id"));
  }

  void read(const TableRow& row) {
    TableLine line{.line = row.line, .text = row.text, .is = TableLineIs::refused, .product = {}, .problems = {}};
    Json given = cells(row, line.problems);
    if (line.problems.empty()) name_shade(given, line);
    if (line.problems.empty()) put(given, line);
    out_.lines.push_back(std::move(line));
  }

 private:
  bool has(C column) const { return std::find(out_.columns.begin(), out_.columns.end(), column) != out_.columns.end(); }
  Json& products() { return out_.document["products"]; }

  // What the row says, under the keys of a product.
  Json cells(const TableRow& row, Problems& problems) const {
    Json given = Json::object();
    if (row.open_quote) problems.push_back({"quote_not_closed", "", {}});
    std::optional<double> price;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const std::string& cell = row.cells[i];
      if (cell.empty()) continue;
      if (i >= out_.columns.size()) {
        problems.push_back({"too_many_cells", "", {}});
        break;
      }
      const C column = out_.columns[i];
      if (column == C::unused) continue;
      if (column == C::code || column == C::name || column == C::barcode) {
        given[std::string(word_of(column))] = cell;
      } else if (column == C::tone) {
        tone_cell(cell, given, problems);
      } else if (column == C::cls) {
        given["cls"] = cell;
      } else {
        number_cell(column, cell, given, price, problems);
      }
    }
    if (!given.contains("package_g") && asked_.package_g) given["package_g"] = *asked_.package_g;
    if (price) price_by_package(*price, given, problems);
    return given;
  }

  static void tone_cell(const std::string& cell, Json& given, Problems& problems) {
    const NamedShade named = named_shade(cell, true);
    if (named.tones.size() == 1) {
      given["tone"] = std::string(word_of(named.tones.front()));
      if (named.level && !given.contains("level")) given["level"] = *named.level;  // "7 copper" as a tone
    } else if (named.clear && named.tones.empty()) {
      given["cls"] = "clear";
    } else {
      problems.push_back({named.tones.empty() ? "no_tone" : "two_tones", "", {{"text", cell}}});
    }
    given["said"] = cell;
  }

  static void number_cell(C column, const std::string& cell, Json& given, std::optional<double>& price,
                          Problems& problems) {
    const auto number = table_number(cell);
    const bool grams = column == C::package_g || column == C::stock_g;
    if (!number) {
      problems.push_back({"not_a_number_here", "", {{"text", cell}, {"column", std::string(word_of(column))}}});
    } else if (grams && thousands_or_not(cell)) {
      problems.push_back({"thousands_or_not", "", {{"text", cell}}});
    } else if (column == C::price) {
      price = number;
    } else {
      given[column == C::strength ? "peroxide_percent" : std::string(word_of(column))] = *number;
    }
  }

  static void price_by_package(double price, Json& given, Problems& problems) {
    const double grams = given.contains("package_g") ? given["package_g"].get<double>() : 0;
    if (grams > 0) {
      given["price_per_g"] = price / grams;
    } else {
      problems.push_back({"price_without_package", "", {}});
    }
  }

  // Level, tone and class from what stands in the columns, or else in the name.
  void name_shade(Json& given, TableLine& line) const {
    const std::string said = text_at(given, "said"), name = text_at(given, "name");
    given.erase("said");
    const bool classed = given.contains("cls");
    if (!classed) given["cls"] = std::string(word_of(cls_));
    if (text_at(given, "cls") == "developer") {
      if (const auto percent = table_number(name); !given.contains("peroxide_percent") && percent)
        given["peroxide_percent"] = *percent;
      if (!given.contains("peroxide_percent")) line.problems.push_back({"no_strength", "", {{"text", line.text}}});
    } else if (is_shade(cls_) && text_at(given, "cls") != "clear") {
      level_and_tone(given, classed, line);
    }
    if (name.empty()) {
      std::string made = given.contains("level") ? number_text(given["level"].get<double>()) : "";
      const std::string words = !said.empty() ? said : text_at(given, "tone");
      if (!words.empty()) made += (made.empty() ? "" : " ") + words;
      given["name"] = made.empty() ? text_at(given, "code") : made;
    }
    if (text_at(given, "name").empty() && line.problems.empty()) line.problems.push_back({"no_name", "", {}});
  }

  void level_and_tone(Json& given, bool classed, TableLine& line) const {
    // With columns for all three, an empty cell says that there is none.
    if (classed && has(C::level) && has(C::tone)) return;
    const NamedShade named = named_shade(text_at(given, "name"), true);
    if (!given.contains("level") && named.level) given["level"] = *named.level;
    if (!given.contains("tone")) {
      if (named.clear && named.tones.empty() && !classed) {
        given["cls"] = "clear";
        return;
      }
      if (named.tones.size() != 1) {
        line.problems.push_back({named.tones.empty() ? "no_tone" : "two_tones", "", {{"text", line.text}}});
        return;
      }
      given["tone"] = std::string(word_of(named.tones.front()));
    }
    if (given.contains("level") || classed || without_level(cls_)) return;
    // Without a level it is what shades are corrected with.
    if (text_at(given, "tone") == "natural") {
      line.problems.push_back({"no_level", "", {{"text", line.text}}});
    } else {
      given["cls"] = "corrector";
    }
  }

  // The product of this range with the same code; without codes, with the same name.
  Json* same_as(const Json& given) {
    const std::string code = text_at(given, "code"), name = folded(text_at(given, "name"));
    for (Json& p : products()) {
      if (text_at(p, "range") != asked_.range) continue;
      const std::string other = text_at(p, "code");
      if (!code.empty() && !other.empty() ? code == other : folded(text_at(p, "name")) == name) return &p;
    }
    return nullptr;
  }

  std::string new_id(const Json& given) {
    const std::string name = slug(text_at(given, "name")), range = slug(asked_.range);
    const std::string base = range + (range.empty() || name.empty() ? "" : "-") + name;
    std::string id = base.empty() ? "product" : base;
    for (int n = 2; ids_.contains(id); ++n) id = (base.empty() ? "product" : base) + "-" + std::to_string(n);
    ids_.insert(id);
    return id;
  }

  void put(const Json& given, TableLine& line) {
    Json* there = same_as(given);
    Json product = there ? *there : Json::object();
    if (!there) {
      product["id"] = "";
      if (!asked_.range.empty()) product["range"] = asked_.range;
    }
    for (const char* key : {"name", "cls", "level", "tone", "code", "peroxide_percent", "package_g", "price_per_g",
                            "stock_g", "density", "barcode"})
      if (const auto it = given.find(key); it != given.end() && !like(product, key, *it)) product[key] = *it;
    ShelfProduct checked;
    decode(product, checked, At(line.problems, ""));
    if (!line.problems.empty()) return;
    if (there) {
      line.product = text_at(*there, "id");
      if (const auto before = lines_.find(line.product); before != lines_.end()) {
        line.problems.push_back({"line_twice", "", {{"line", std::to_string(before->second)}}});
        return;
      }
      line.is = product == *there ? TableLineIs::same : TableLineIs::changed;
      *there = std::move(product);
    } else {
      line.is = TableLineIs::added;
      line.product = new_id(given);
      product["id"] = line.product;
      products().push_back(std::move(product));
    }
    lines_[line.product] = line.line;
  }

  // The same to the twelve digits that are written.
  static bool like(const Json& product, const char* key, const Json& value) {
    const auto it = product.find(key);
    if (it == product.end()) return false;
    if (!value.is_number() || !it->is_number()) return *it == value;
    constexpr double digits = 1e-11;
    const double a = value.get<double>(), b = it->get<double>();
    return std::abs(a - b) <= digits * std::max(std::abs(a), std::abs(b));
  }

  const TableAsked& asked_;
  TableRead& out_;
  ProductClass cls_;
  std::set<std::string> ids_;
  std::map<std::string, int> lines_;  // of this table, by product
};

}  // namespace

Result<TableRead> read_table(const TableAsked& asked, const Json& document) {
  if (asked.text.size() > kTableBytes) {
    return tl::unexpected(
        Problems{{"document_too_large",
                  "/text",
                  {{"bytes", std::to_string(asked.text.size())}, {"max", std::to_string(kTableBytes)}}}});
  }
  if (const std::size_t bad = find_invalid_utf8(asked.text); bad != std::string::npos) {
    const auto lines = std::count(asked.text.begin(), asked.text.begin() + static_cast<std::ptrdiff_t>(bad), '\n');
    const std::size_t start = asked.text.rfind('\n', bad);
    return tl::unexpected(Problems{{"invalid_utf8",
                                    "/text",
                                    {{"byte", std::to_string(bad)},
                                     {"line", std::to_string(lines + 1)},
                                     {"column", std::to_string(start == std::string::npos ? bad + 1 : bad - start)}}}});
  }
  auto shelf = read_shelf_document(document);
  if (!shelf) return tl::unexpected(std::move(shelf.error()));
  ProductClass cls = ProductClass::developer;
  if (!asked.range.empty()) {
    const auto range =
        std::find_if(shelf->ranges.begin(), shelf->ranges.end(), [&](const Range& r) { return r.id == asked.range; });
    if (range == shelf->ranges.end())
      return tl::unexpected(Problems{{"unknown_range", "/range", {{"range", asked.range}}}});
    cls = range->cls;
  }
  TableRead out;
  out.document = document;
  const char separator = separator_of(asked.text);
  out.separator = separator == '\t' ? "tab" : separator == ';' ? "semicolon" : separator == ',' ? "comma" : "none";
  const std::vector<TableRow> rows = split_table(asked.text, separator);
  if (rows.size() > kTableLines)
    return tl::unexpected(Problems{{"too_many", "/text", {{"max", std::to_string(kTableLines)}}}});
  if (rows.empty()) return out;
  const auto headed = columns_by_heading(rows.front());
  out.by_heading = headed.has_value();
  out.columns = !asked.columns.empty() ? asked.columns : headed ? *headed : columns_by_content(rows, is_shade(cls));
  if (headed) out.lines.push_back({rows.front().line, rows.front().text, TableLineIs::heading, "", {}});
  Reader reader(asked, out, cls);
  for (std::size_t i = headed ? 1 : 0; i < rows.size(); ++i) reader.read(rows[i]);
  return out;
}

Json answer_json(const TableRead& read) {
  Json out = with_schema(read);
  out["document"] = read.document;
  return out;
}

Result<Json> answer_table(const Json& asked) {
  Problems problems;
  const At at(problems, "");
  if (!asked.is_object()) {
    wrong_type(asked, at, "object");
    return tl::unexpected(std::move(problems));
  }
  Json rest = asked;
  TableAsked out;
  for (const char* key : {"text", "document"})
    if (!asked.contains(key)) at.problem("missing_key", {{"key", key}});
  if (asked.contains("text")) {
    if (!asked["text"].is_string()) wrong_type(asked["text"], at.key("text"), "text");
  }
  rest.erase("text"), rest.erase("document");
  decode(rest, out, at);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  out.text = asked["text"].get<std::string>();
  return read_table(out, asked["document"]).map([](const TableRead& read) { return answer_json(read); });
}

std::string print_table(const Json& document, const std::string& range) {
  constexpr std::array keys{"code",        "name",      "cls",     "level",   "tone",   "peroxide_percent",
                            "price_per_g", "package_g", "stock_g", "density", "barcode"};
  std::string out = "code,name,class,level,tone,strength %,price per g,package g,stock g,density,barcode\r\n";
  for (const Json& product : document.value("products", Json::array())) {
    if (text_at(product, "range") != range) continue;
    std::string line;
    for (const char* key : keys) {
      if (key != keys.front()) line += ',';
      const auto it = product.find(key);
      if (it == product.end() || it->is_null()) continue;
      line += it->is_number() ? number_text(it->get<double>()) : csv_cell(it->get<std::string>());
    }
    out += line + "\r\n";
  }
  return out;
}

}  // namespace strandline::wire
