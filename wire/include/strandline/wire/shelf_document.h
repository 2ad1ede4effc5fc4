// A shelf as it is written: what the engine works with, and beside it what only people read.
#pragma once

#include "strandline/shelf.h"
#include "strandline/wire/json.h"

namespace strandline::wire {

// Grams that the engine is told of where nobody counted: what stands on the shelf is taken to be enough.
inline constexpr double kNotCounted = 1e6;

struct ShelfProduct {
  Product product;
  std::string code;     // as it is printed on the tube; never interpreted
  std::string barcode;  // as text
  ShelfProduct() { product.stock_g = kNotCounted; }
};

struct ShelfDocument {
  std::string id, title, currency = "EUR";
  bool invented = false;
  std::vector<Range> ranges;
  std::vector<ShelfProduct> products;
};

Result<ShelfDocument> read_shelf_document(const Json& document);

// What the engine works with. A product with a code is named "CODE · name".
Shelf shelf_of(const ShelfDocument& document);

// Everything that is wrong with a shelf, its places as in the document. A shelf without products is none yet, and fine.
Problems check_shelf(const ShelfDocument& document);

// What a right shelf still lacks before it can be mixed from: no_developer_for {range, strengths} · range_is_empty
// {range}, with their places.
Problems gaps(const ShelfDocument& document);

}  // namespace strandline::wire
