#include "strandline/wire/stock_table.h"

#include <array>
#include <map>

#include "strandline/wire/report_fields.h"
#include "strandline/wire/stock_fields.h"
#include "table_text.h"

namespace strandline::wire {

namespace {

enum class Column { product, code, barcode, grams, packages, batch, expires, paid, unused };

constexpr std::array<std::pair<std::string_view, Column>, 41> headings{{
    {"product", Column::product},
    {"id", Column::product},
    {"code", Column::code},
    {"nummer", Column::code},
    {"codigo", Column::code},
    {"barcode", Column::barcode},
    {"ean", Column::barcode},
    {"gtin", Column::barcode},
    {"strichcode", Column::barcode},
    {"code-barres", Column::barcode},
    {"codigo de barras", Column::barcode},
    {"grams", Column::grams},
    {"grams g", Column::grams},
    {"g", Column::grams},
    {"gramm", Column::grams},
    {"grammes", Column::grams},
    {"gramos", Column::grams},
    {"packages", Column::packages},
    {"tubes", Column::packages},
    {"packungen", Column::packages},
    {"tuben", Column::packages},
    {"stuck", Column::packages},
    {"emballages", Column::packages},
    {"envases", Column::packages},
    {"tubos", Column::packages},
    {"batch", Column::batch},
    {"lot", Column::batch},
    {"charge", Column::batch},
    {"lote", Column::batch},
    {"expires", Column::expires},
    {"use before", Column::expires},
    {"verwendbar bis", Column::expires},
    {"ablauf", Column::expires},
    {"peremption", Column::expires},
    {"caduca", Column::expires},
    {"caducidad", Column::expires},
    {"paid", Column::paid},
    {"price", Column::paid},
    {"preis", Column::paid},
    {"prix", Column::paid},
    {"precio", Column::paid},
}};

Column column_of(const std::string& cell) {
  const std::string word = folded(cell);
  for (const auto& [known, column] : headings)
    if (word == known) return column;
  return Column::unused;
}

class Reader {
 public:
  Reader(Moved what, const StockView& view, std::vector<Column> columns)
      : what_(what), view_(view), columns_(std::move(columns)) {}

  StockLine read(const TableRow& row) {
    StockLine out{row.line, row.text, std::nullopt, {}};
    StockWish wish;
    wish.what = what_;
    std::string product, code, barcode;
    std::optional<double> packages;
    bool has_grams = false;
    const auto number = [&](const std::string& cell, const char* column) -> std::optional<double> {
      if (thousands_or_not(cell)) {
        out.problems.push_back({"thousands_or_not", "", {{"text", cell}}});
        return std::nullopt;
      }
      const auto read = table_number(cell);
      if (!read || *read < 0) out.problems.push_back({"not_a_number_here", "", {{"text", cell}, {"column", column}}});
      return read;
    };
    for (std::size_t i = 0; i < row.cells.size() && i < columns_.size(); ++i) {
      const std::string& cell = row.cells[i];
      if (cell.empty()) continue;
      switch (columns_[i]) {
        case Column::product:
          product = cell;
          break;
        case Column::code:
          code = cell;
          break;
        case Column::barcode:
          barcode = cell;
          break;
        case Column::batch:
          wish.batch = cell;
          break;
        case Column::expires:
          wish.expires = cell;
          break;
        case Column::paid:
          wish.paid = number(cell, "paid");
          break;
        case Column::packages:
          packages = number(cell, "packages");
          break;
        case Column::grams:
          if (const auto grams = number(cell, "grams")) wish.grams = *grams, has_grams = true;
          break;
        case Column::unused:
          break;
      }
    }
    const StockItem* item = find(product, code, barcode, out.problems);
    if (!item) return out;
    wish.product = item->product;
    if (!has_grams && packages) {
      if (!item->package_g) out.problems.push_back({"package_unknown", "", {}});
      wish.grams = *packages * item->package_g.value_or(0), has_grams = true;
    }
    if (out.problems.empty() && (!has_grams || (wish.grams == 0 && what_ != Moved::count)))
      out.problems.push_back({"grams_missing", "", {}});
    if (what_ == Moved::count) wish.seen = item->seen;
    if (!out.problems.empty()) return out;
    // What the codec says of a day or a length.
    Json said = encode(wish);
    auto checked = read_stock_wish(said, "");
    if (!checked) {
      out.problems = checked.error();
      return out;
    }
    const std::string key = wish.product + ' ' + wish.batch + ' ' + wish.expires;
    if (const auto [before, fresh] = seen_.try_emplace(key, row.line); !fresh && what_ == Moved::count) {
      out.problems.push_back({"line_twice", "", {{"line", std::to_string(before->second)}}});
      return out;
    }
    // A second count of a product knows the first.
    if (what_ == Moved::count) *checked->seen += counted_[wish.product]++;
    out.move = std::move(*checked);
    return out;
  }

 private:
  const StockItem* find(const std::string& product, const std::string& code, const std::string& barcode,
                        Problems& problems) const {
    const StockItem* found = nullptr;
    int several = 0;
    for (const StockItem& item : view_.items) {
      const bool is = !product.empty()   ? item.product == product
                      : !barcode.empty() ? item.barcode == barcode
                                         : !code.empty() && folded(item.code) == folded(code);
      if (is) found = &item, ++several;
    }
    const std::string& named = !product.empty() ? product : !barcode.empty() ? barcode : code;
    if (several == 1) return found;
    if (several == 0)
      problems.push_back({"unknown_product", "", {{"product", named}}});
    else
      problems.push_back({"several_products", "", {{"text", named}}});
    return nullptr;
  }

  Moved what_;
  const StockView& view_;
  std::vector<Column> columns_;
  std::map<std::string, int> seen_, counted_;
};

std::string cell(const std::optional<double>& value) { return value ? number_text(*value) : ""; }

}  // namespace

Result<std::vector<StockLine>> read_stock_table(const std::string& text, Moved what, const StockView& view) {
  if (text.size() > kTableBytes)
    return tl::unexpected(Problems{{"document_too_large",
                                    "/text",
                                    {{"bytes", std::to_string(text.size())}, {"max", std::to_string(kTableBytes)}}}});
  const auto rows = split_table(text, separator_of(text));
  if (rows.size() > kTableLines)
    return tl::unexpected(Problems{{"too_many", "/text", {{"max", std::to_string(kTableLines)}}}});
  std::vector<StockLine> out;
  if (rows.empty()) return out;
  std::vector<Column> columns;
  const auto has = [&](Column c) { return std::find(columns.begin(), columns.end(), c) != columns.end(); };
  for (const std::string& one : rows.front().cells) columns.push_back(column_of(one));
  const bool names = has(Column::product) || has(Column::code) || has(Column::barcode);
  if (!names || !(has(Column::grams) || has(Column::packages)))
    return tl::unexpected(Problems{{"no_stock_heading", "/text", {}}});
  Reader reader(what, view, std::move(columns));
  for (std::size_t i = 1; i < rows.size(); ++i) out.push_back(reader.read(rows[i]));
  return out;
}

Result<Json> answer_stock_table(const Json& asked, const StockView& view) {
  const bool right = asked.is_object() && asked.size() == 2 && asked.contains("text") && asked["text"].is_string() &&
                     asked.contains("what") && (asked["what"] == "receive" || asked["what"] == "count");
  if (!right) return tl::unexpected(Problems{{"bad_request", "", {{"what", "text, what"}}}});
  const Moved what = asked["what"] == "count" ? Moved::count : Moved::receive;
  return read_stock_table(asked["text"].get<std::string>(), what, view).map([](const std::vector<StockLine>& lines) {
    Json out{{"schema", "strandline.stock-table/1"}, {"lines", Json::array()}};
    for (const StockLine& line : lines) {
      Json one{{"line", line.line}, {"text", line.text}};
      if (line.move) {
        StockMove move;
        move.wish = *line.move;
        one["move"] = stock_body(move);
        if (line.move->seen) one["move"]["seen"] = *line.move->seen;
      }
      one["problems"] = problems_json(line.problems)["problems"];
      out["lines"].push_back(std::move(one));
    }
    return out;
  });
}

std::string print_stock(const StockView& view) {
  std::string out = "product,code,barcode,name,batch,expires,grams,paid per g\r\n";
  for (const StockItem& item : view.items) {
    const std::string head = csv_cell(item.product) + ',' + csv_cell(item.code) + ',' + csv_cell(item.barcode) + ',' +
                             csv_cell(item.name) + ',';
    if (item.is == StockIs::not_counted) {
      out += head + ",,,\r\n";  // not known is an empty cell
      continue;
    }
    if (item.batches.empty()) out += head + ",,0,\r\n";
    for (const StockBatch& b : item.batches)
      out +=
          head + csv_cell(b.batch) + ',' + b.expires + ',' + number_text(b.grams) + ',' + cell(b.cost_per_g) + "\r\n";
  }
  return out;
}

std::string print_moves(const std::vector<StockMove>& moves) {
  std::string out =
      "at,what,product,grams,batch,expires,paid,cost,visit,bowl,mix,beyond what was known,reason,by,id\r\n";
  for (const StockMove& m : moves) {
    const StockLot lot = m.lots.size() == 1 ? m.lots.front() : StockLot{m.wish.batch, m.wish.expires, 0};
    out += m.at + ',' + std::string(word_of(m.wish.what)) + ',' + csv_cell(m.wish.product) + ',' +
           number_text(m.wish.grams) + ',' + csv_cell(lot.batch) + ',' + lot.expires + ',' + cell(m.wish.paid) + ',' +
           cell(m.cost) + ',' + csv_cell(m.visit) + ',' + csv_cell(m.bowl) + ',' +
           (m.mix > 0 ? std::to_string(m.mix) : "") + ',' + (m.short_g != 0 ? number_text(m.short_g) : "") + ',' +
           csv_cell(m.wish.reason) + ',' + csv_cell(m.by) + ',' + csv_cell(m.id) + "\r\n";
  }
  return out;
}

}  // namespace strandline::wire
