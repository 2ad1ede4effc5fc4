// A shelf as a file or a document writes it.
#pragma once

#include "strandline/shelf.h"
#include "strandline/wire/encode.h"
#include "strandline/wire/shelf_table.h"
#include "strandline/wire/words.h"

namespace strandline::wire {

template <>
struct Fields<law::Declared> {
  static constexpr std::string_view name = "Declared";
  static constexpr auto list =
      std::make_tuple(field("cas", &law::Declared::cas, {.max_length = 20}),
                      field("entry", &law::Declared::entry, {.max_length = 20}), field("name", &law::Declared::name),
                      field("percent", &law::Declared::percent, {.min = 0, .max = 100, .note = "% w/w"}),
                      field("basis", &law::Declared::basis, {.max_length = 60}));
};

template <>
struct Fields<MinuteWindow> {
  static constexpr std::string_view name = "MinuteWindow";
  static constexpr auto list =
      std::make_tuple(field("min", &MinuteWindow::min, {.min = 0, .max = 600, .note = "minutes"}),
                      field("target", &MinuteWindow::target, {.min = 0, .max = 600}),
                      field("max", &MinuteWindow::max, {.min = 0, .max = 600}));
};

template <>
struct Fields<ReferenceProcess> {
  static constexpr std::string_view name = "ReferenceProcess";
  static constexpr auto list =
      std::make_tuple(field("developer_percent", &ReferenceProcess::developer_percent,
                            {.min = 0, .max = 60, .note = "% w/w in the bottle"}),
                      field("ratio", &ReferenceProcess::ratio,
                            {.min = 0, .max = 20, .note = "g developer per g colour; 0 = used as it is"}),
                      field("minutes", &ReferenceProcess::minutes, {.min = 0, .max = 600}));
};

template <>
struct Fields<SwatchHair> {
  static constexpr std::string_view name = "SwatchHair";
  static constexpr auto list = std::make_tuple(
      field("level", &SwatchHair::level, {.required = true, .min = 1, .max = 10}), field("tone", &SwatchHair::tone),
      field("origin", &SwatchHair::origin),
      field("natural_level", &SwatchHair::natural_level, {.min = 1, .max = 10, .note = "under a colour"}),
      field("porosity", &SwatchHair::porosity, {.min = 0, .max = 3}),
      field("process", &SwatchHair::process, {.note = "absent: the range's reference"}));
};

template <>
struct Fields<Range> {
  static constexpr std::string_view name = "Range";
  static constexpr auto list = std::make_tuple(
      field("id", &Range::id, {.required = true, .max_length = 60}), field("maker", &Range::maker),
      field("name", &Range::name), field("cls", &Range::cls, {.required = true}), field("reference", &Range::reference),
      field("ratios", &Range::ratios, {.min = 0, .max = 20, .max_items = 20}),
      field("developer_percents", &Range::developer_percents, {.min = 0, .max = 60, .max_items = 20}),
      field("minutes", &Range::minutes), field("level_min", &Range::level_min, {.min = 0, .max = 12}),
      field("level_max", &Range::level_max, {.min = 0, .max = 12}),
      field("base_level_min", &Range::base_level_min, {.min = 1, .max = 10}),
      field("bottle_blends", &Range::bottle_blends), field("scalp_allowed", &Range::scalp_allowed),
      field("consistency", &Range::consistency, {.note = "absent = as is usual for the class"}),
      field("alkaline_lift", &Range::alkaline_lift, {.min = 0, .max = 20, .note = "permanent tint = 1"}),
      field("mix_life_min", &Range::mix_life_min, {.min = 0, .max = 1440, .note = "minutes"}),
      field("mix_warn_min", &Range::mix_warn_min, {.min = 0, .max = 1440, .note = "minutes"}),
      field("corrector_max_share", &Range::corrector_max_share, {.min = 0, .max = 1}));
};

template <>
struct Fields<Product> {
  static constexpr std::string_view name = "Product";
  static constexpr auto list = std::make_tuple(
      field("id", &Product::id, {.required = true, .max_length = 60}),
      field("range", &Product::range, {.max_length = 60}), field("name", &Product::name),
      field("cls", &Product::cls, {.required = true}), field("level", &Product::level, {.min = 0, .max = 12}),
      field("tone", &Product::tone),
      field("known_by", &Product::known_by, {.note = "absent: by what is given with the shade"}),
      field("swatch", &Product::swatch, {.min = 0, .max = 1, .note = "reflectance, 400 to 700 nm in steps of 10"}),
      field("swatch_on", &Product::swatch_on, {.note = "absent: white hair by the range's reference"}),
      field("peroxide_percent", &Product::peroxide_percent, {.min = 0, .max = 60, .note = "% w/w"}),
      field("declared", &Product::declared, {.max_items = 100}), field("fully_declared", &Product::fully_declared),
      field("stock_g", &Product::stock_g,
            {.min = 0, .max = 1e7, .note = "0 = the tube is empty; absent = not counted, taken to be enough"}),
      field("package_g", &Product::package_g, {.min = 0, .max = 1e6}),
      field("price_per_g", &Product::price_per_g, {.min = 0, .max = 1e4}),
      field("density", &Product::density, {.min = 0.1, .max = 5, .note = "g/mL"}));
};

template <>
struct Fields<ShelfProduct> {
  static constexpr std::string_view name = "Product";
  static constexpr auto list = std::make_tuple(
      inlined(&ShelfProduct::product),
      field("code", &ShelfProduct::code, {.max_length = 40, .note = "as printed on the tube; never interpreted"}),
      field("barcode", &ShelfProduct::barcode, {.max_length = 60}));
};

template <>
struct Fields<ShelfDocument> {
  static constexpr std::string_view name = "Shelf";
  using D = ShelfDocument;
  static constexpr auto list =
      std::make_tuple(field("id", &D::id, {.max_length = 60}), field("title", &D::title),
                      field("currency", &D::currency, {.max_length = 8}), field("invented", &D::invented),
                      field("ranges", &D::ranges, {.required = true, .max_items = 200}),
                      field("products", &D::products, {.required = true, .max_items = 10000}));
};

template <>
struct Words<TableColumn> {
  static constexpr std::string_view name = "TableColumn";
  static constexpr WordList<TableColumn, 13> list{{{TableColumn::code, "code"},
                                                   {TableColumn::name, "name"},
                                                   {TableColumn::level, "level"},
                                                   {TableColumn::tone, "tone"},
                                                   {TableColumn::cls, "cls"},
                                                   {TableColumn::strength, "strength"},
                                                   {TableColumn::price, "price"},
                                                   {TableColumn::price_per_g, "price_per_g"},
                                                   {TableColumn::package_g, "package_g"},
                                                   {TableColumn::stock_g, "stock_g"},
                                                   {TableColumn::density, "density"},
                                                   {TableColumn::barcode, "barcode"},
                                                   {TableColumn::unused, "unused"}}};
};

template <>
struct Words<TableLineIs> {
  static constexpr std::string_view name = "TableLineIs";
  static constexpr WordList<TableLineIs, 5> list{{{TableLineIs::heading, "heading"},
                                                  {TableLineIs::added, "added"},
                                                  {TableLineIs::changed, "changed"},
                                                  {TableLineIs::same, "same"},
                                                  {TableLineIs::refused, "refused"}}};
};

// Beside "text" and "document", which are no plain fields: a text with line ends, and a shelf as it is written.
template <>
struct Fields<TableAsked> {
  static constexpr std::string_view name = "TableAsked";
  static constexpr auto list = std::make_tuple(
      field("range", &TableAsked::range, {.max_length = 60, .note = "of the document; empty = developers"}),
      field("package_g", &TableAsked::package_g, {.min = 0, .max = 1e5, .note = "of products that say none"}),
      field("columns", &TableAsked::columns, {.max_items = 100, .note = "empty = as they are understood"}));
};

template <>
struct Fields<TableLine> {
  static constexpr std::string_view name = "TableLine";
  static constexpr auto list = std::make_tuple(
      field("line", &TableLine::line, {.required = true}), field("text", &TableLine::text, {.required = true}),
      field("is", &TableLine::is, {.required = true}), field("product", &TableLine::product, {.required = true}),
      field("problems", &TableLine::problems, {.required = true}));
};

template <>
struct Fields<TableRead> {
  static constexpr std::string_view name = "TableRead", verb = "table";
  static constexpr auto list = std::make_tuple(field("separator", &TableRead::separator, {.required = true}),
                                               field("columns", &TableRead::columns, {.required = true}),
                                               field("by_heading", &TableRead::by_heading, {.required = true}),
                                               field("lines", &TableRead::lines, {.required = true}));
};

}  // namespace strandline::wire
