#include "strandline/wire/stock_fields.h"

namespace strandline::wire {

namespace {

template <class T>
Result<T> read(const Json& in, const std::string& path) {
  T out;
  Problems problems;
  decode(in, out, At(problems, path));
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

}  // namespace

Result<StockWish> read_stock_wish(const Json& asked, const std::string& path) { return read<StockWish>(asked, path); }

Result<StockMove> read_stock_body(const Json& body) { return read<StockMove>(body, ""); }

Json stock_body(const StockMove& move) {
  Json out = Json::object();
  const Json all = encode(move);
  // What says nothing is left out: there are many of these.
  for (const auto& [key, value] : all.items()) {
    const bool nothing = value.is_string()  ? value.get_ref<const std::string&>().empty()
                         : value.is_array() ? value.empty()
                                            : value == 0;
    if (!nothing || key == "grams" || key == "paid") out[key] = value;
  }
  return out;
}

Json stock_json(const StockMove& move) {
  Json out = stock_body(move);
  out.update({{"id", move.id}, {"at", move.at}});
  if (!move.by.empty()) out["by"] = move.by;
  if (move.cost) out["cost"] = *move.cost;
  return out;
}

Json answer_json(const StockView& view) { return with_schema(view); }

}  // namespace strandline::wire
