#include "strandline/salon/stock.h"

#include <algorithm>

#include "members.h"
#include "of_store.h"

namespace strandline::salon {

namespace {

using wire::Moved, wire::StockMove, wire::StockWish;

constexpr const char* kMoved = "stock.moved";
constexpr std::size_t kMovesMost = 500;

std::string stream_of(const std::string& shelf) { return "stock:" + shelf; }

tl::unexpected<Problems> one(const char* code, const std::string& path, std::map<std::string, std::string> params) {
  return tl::unexpected(Problems{{code, path, std::move(params)}});
}

Result<std::vector<StockWish>> wishes_of(const wire::Json& asked) {
  if (!asked.is_object() || asked.size() != 1 || !asked.contains("moves") || !asked["moves"].is_array())
    return one("bad_request", "", {{"what", "moves"}});
  const wire::Json& list = asked["moves"];
  if (list.size() > kMovesMost) return one("too_many", "/moves", {{"max", std::to_string(kMovesMost)}});
  std::vector<StockWish> out;
  Problems problems;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string path = wire::pointer("/moves", i);
    auto wish = wire::read_stock_wish(list[i], path);
    if (!wish) {
      problems.insert(problems.end(), wish.error().begin(), wish.error().end());
      continue;
    }
    if (wish->what == Moved::use) problems.push_back({"what_happens_at_a_bowl", path, {}});
    if (wish->what == Moved::write_off && wish->reason.empty()) problems.push_back({"reason_missing", path, {}});
    out.push_back(std::move(*wish));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

bool same(const StockWish& a, const StockWish& b) {
  return a.what == b.what && a.product == b.product && milligrams(a.grams) == milligrams(b.grams) &&
         a.batch == b.batch && a.reason == b.reason && a.undoes == b.undoes && a.paid == b.paid;
}

}  // namespace

Result<void> Stock::ready() {
  if (read_) return {};
  constexpr int page = 2000;
  std::map<std::string, Ledger> ledgers;
  for (std::int64_t after = 0;;) {
    store::FactsAsked asked;
    asked.after = after, asked.kind = kMoved, asked.limit = page;
    const auto facts = world_.store->facts(asked);
    if (!facts) return problem_of(facts.error());
    for (const store::Fact& fact : *facts) {
      const auto body = wire::parse(fact.body);
      auto move = body ? wire::read_stock_body(*body) : tl::unexpected(body.error());
      if (!move) return one("store_damaged", "", {{"detail", "fact " + std::to_string(fact.store_seq)}});
      move->id = fact.id, move->at = fact.made_at;
      if (fact.about != "{}") {
        if (const auto about = wire::parse(fact.about)) move->by = text_at(*about, "by");
      }
      ledgers[fact.stream.substr(fact.stream.find(':') + 1)].take(std::move(*move));
      after = fact.store_seq;
    }
    if (facts->size() < static_cast<std::size_t>(page)) break;
  }
  ledgers_ = std::move(ledgers);
  read_ = true;
  return {};
}

store::NewFact Stock::fact_of(const std::string& shelf, const StockMove& move) const {
  store::NewFact fact;
  fact.id = move.id, fact.stream = stream_of(shelf), fact.after_seq = store::NewFact::at_the_end;
  fact.made_at = move.at, fact.kind = kMoved, fact.body = wire::print(wire::stock_body(move));
  if (!move.by.empty()) fact.about = wire::print({{"by", move.by}});
  return fact;
}

Result<std::vector<StockMove>> Stock::move(const std::string& shelf, const wire::Json& asked, const std::string& entry,
                                           const std::string& by) {
  const auto wishes = wishes_of(asked);
  if (!wishes) return tl::unexpected(wishes.error());
  const auto entry_id = id_for(world_, entry);
  if (!entry_id) return tl::unexpected(entry_id.error());
  const auto there = shelves_.open_shelf(shelf);
  if (!there) return tl::unexpected(there.error());
  const std::string& id = there->summary.id;
  const auto known = [&](const std::string& product) {
    const auto& products = there->document["products"];
    return std::any_of(products.begin(), products.end(),
                       [&](const wire::Json& p) { return text_at(p, "id") == product; });
  };

  std::vector<StockMove> out;
  {
    std::unique_lock lock(mutex_);
    if (const auto read = ready(); !read) return tl::unexpected(read.error());
    Ledger& ledger = ledgers_[id];
    const auto id_of = [&](std::size_t i) { return *entry_id + '-' + std::to_string(i); };
    if (ledger.find(id_of(0))) {  // handed in again
      for (std::size_t i = 0; i < wishes->size(); ++i) {
        const StockMove* kept = ledger.find(id_of(i));
        if (!kept || (!same(kept->wish, (*wishes)[i]) && (*wishes)[i].what != Moved::undo))
          return one("entry_id_taken", "", {{"id", *entry_id}});
        out.push_back(*kept);
      }
      return out;
    }
    std::set<std::string> products;
    for (const StockWish& wish : *wishes) {
      const StockMove* undone = ledger.find(wish.undoes);
      products.insert(undone ? undone->wish.product : wish.product);
    }
    Booking booking(std::move(lock), ledger, ledger.mark(products));
    std::vector<store::NewFact> facts;
    for (std::size_t i = 0; i < wishes->size(); ++i) {
      const StockWish& wish = (*wishes)[i];
      const std::string path = wire::pointer("/moves", i);
      if (wish.what != Moved::undo && ledger.of(wish.product).seen == 0 && !known(wish.product))
        return one("unknown_product", path, {{"product", wish.product}});
      StockMove move;
      move.wish = wish, move.id = id_of(i), move.at = world_.now(), move.by = by;
      auto planned = ledger.planned(std::move(move));
      if (!planned) {
        for (Problem& problem : planned.error()) problem.path = path;
        return tl::unexpected(planned.error());
      }
      facts.push_back(fact_of(id, *planned));
      ledger.take(*planned);
      out.push_back(ledger.moves().back());
    }
    const auto kept = world_.store->hand_in(facts, "", 0);
    if (!kept) return problem_of(kept.error());
    booking.kept();
  }
  // What has come is not empty any more.
  for (const StockMove& move : out) {
    const bool empty = std::find(there->empty.begin(), there->empty.end(), move.wish.product) != there->empty.end();
    if (!empty || move.wish.what != Moved::receive) continue;
    if (const auto back = shelves_.set_empty(id, move.wish.product, false); !back) return tl::unexpected(back.error());
  }
  return out;
}

Result<Stock::Page> Stock::moves(const std::string& shelf, const std::string& product, const std::string& visit,
                                 const std::string& cursor, int limit) {
  constexpr int most = 1000;
  if (limit < 1 || limit > most) return one("bad_request", "", {{"what", "limit"}});
  const auto before = place_of(cursor, std::numeric_limits<std::int64_t>::max());
  if (!before) return tl::unexpected(before.error());
  const auto there = shelves_.open_shelf(shelf);
  if (!there) return tl::unexpected(there.error());
  const std::lock_guard lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  const Ledger& ledger = ledgers_[there->summary.id];
  Page out;
  const auto& all = ledger.moves();
  for (std::size_t at = std::min<std::size_t>(all.size(), static_cast<std::size_t>(*before - 1)); at-- > 0;) {
    const StockMove& move = all[at];
    if ((!product.empty() && move.wish.product != product) || (!visit.empty() && move.visit != visit)) continue;
    if (out.moves.size() == static_cast<std::size_t>(limit)) {
      out.next = std::to_string(at + 2);
      break;
    }
    if (ledger.undone(move.id)) out.undone.insert(move.id);
    out.moves.push_back(move);
  }
  return out;
}

Result<std::vector<StockMove>> Stock::all(const std::string& shelf) {
  const auto there = shelves_.open_shelf(shelf);
  if (!there) return tl::unexpected(there.error());
  const std::lock_guard lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  return ledgers_[there->summary.id].moves();
}

std::optional<double> Stock::left(const std::string& shelf, const std::string& product) {
  const std::lock_guard lock(mutex_);
  if (!ready()) return std::nullopt;
  const auto ledger = ledgers_.find(shelf);
  if (ledger == ledgers_.end()) return std::nullopt;
  const Balance& balance = ledger->second.of(product);
  if (!balance.counted()) return std::nullopt;
  return grams(balance.mg());
}

}  // namespace strandline::salon
