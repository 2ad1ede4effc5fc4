// What is read at run time: the demo shelf, the house policy, and how people come in.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "strandline/salon/amounts.h"
#include "strandline/salon/diary_rules.h"
#include "strandline/salon/door_rules.h"
#include "strandline/salon/stock_rules.h"
#include "strandline/wire/document.h"

namespace strandline::salon {

// The folder knowledge/ beside this build.
std::filesystem::path default_knowledge();

// Values behind the names of a document. Empty name = the first of them.
struct House {
  Shelf demo;
  Policy policy;
  wire::Json demo_document, classes;  // as they are written: the demo shelf, and classes of products (no maker's)
  DoorRules doors = {};
  StockRules stock = {};
  AmountRules amounts = {};
  DiaryRules diary = {};

  // Valid as long as this object.
  wire::Sources sources() const;
};

struct HouseFiles {
  std::filesystem::path shelf;   // empty = knowledge/demo/shelf.json
  std::filesystem::path policy;  // empty = knowledge/policy/house.json
  std::filesystem::path knowledge = default_knowledge();
};

// Problems: cannot_read {file}, or what is wrong inside a file, each with its {file}.
Result<House> open_house(const HouseFiles& files);

// A whole file as text. Problems: cannot_read, not_a_file (a folder, a pipe), document_too_large.
Result<std::string> read_file(const std::filesystem::path& file, std::size_t bytes_max);

}  // namespace strandline::salon
