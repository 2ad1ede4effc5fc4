#include "src/print/table.h"

#include <algorithm>
#include <ostream>

#include "src/print/text.h"

namespace strandline::cli {

Table::Table(std::vector<std::string> heads) : heads_(std::move(heads)) {
  for (std::string& head : heads_) {
    right_.push_back(head.starts_with('>'));
    if (right_.back()) head.erase(0, 1);
  }
}

void Table::row(std::vector<std::string> cells) {
  cells.resize(heads_.size());
  rows_.push_back(std::move(cells));
}

void Table::print(std::ostream& out) const {
  std::vector<std::size_t> columns;
  for (const std::string& head : heads_) columns.push_back(width(head));
  for (const auto& row : rows_) {
    for (std::size_t i = 0; i < row.size(); ++i) columns[i] = std::max(columns[i], width(row[i]));
  }
  const auto line = [&](const std::vector<std::string>& cells) {
    std::string text = " ";
    for (std::size_t i = 0; i < cells.size(); ++i) text += ' ' + padded(cells[i], columns[i] + 1, right_[i]);
    text.erase(text.find_last_not_of(' ') + 1);
    out << text << '\n';
  };
  line(heads_);
  for (const auto& row : rows_) line(row);
}

}  // namespace strandline::cli
