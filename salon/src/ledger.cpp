#include "strandline/salon/ledger.h"

#include <algorithm>
#include <cmath>

namespace strandline::salon {

namespace {

using wire::Moved, wire::StockLot, wire::StockMove;

constexpr double kMgPerG = 1000;

tl::unexpected<Problems> one(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

std::string figure(Milligrams mg) {
  std::string out = std::to_string(std::abs(mg) / 1000) + '.' + std::to_string(std::abs(mg) % 1000 / 100);
  return mg < 0 ? '-' + out : out;
}

// Due first, first.
std::vector<const Lot*> in_turn(const Balance& balance) {
  std::vector<const Lot*> out;
  for (const Lot& lot : balance.lots)
    if (lot.mg > 0) out.push_back(&lot);
  std::stable_sort(out.begin(), out.end(), [](const Lot* a, const Lot* b) {
    if (a->expires.empty() != b->expires.empty()) return b->expires.empty();
    return a->expires < b->expires;
  });
  return out;
}

bool names_a_lot(const wire::StockWish& wish) { return !wish.batch.empty() || !wish.expires.empty(); }

bool is(const Lot& lot, const std::string& batch, const std::string& expires) {
  return lot.batch == batch && lot.expires == expires;
}

// Takes `mg` from lots in their turn; what is not there is the answer.
Milligrams take_from(const std::vector<const Lot*>& lots, Milligrams mg, std::vector<StockLot>& out) {
  for (const Lot* lot : lots) {
    if (mg == 0) break;
    const Milligrams part = std::min(mg, lot->mg);
    out.push_back({lot->batch, lot->expires, -grams(part)});
    mg -= part;
  }
  return mg;
}

}  // namespace

Milligrams milligrams(double g) { return std::llround(g * kMgPerG); }
double grams(Milligrams mg) { return static_cast<double>(mg) / kMgPerG; }

Milligrams Balance::mg() const {
  Milligrams sum = 0;
  for (const Lot& lot : lots) sum += lot.mg;
  return sum;
}

const Balance& Ledger::of(const std::string& product) const {
  static const Balance nothing;
  const auto it = balances_.find(product);
  return it == balances_.end() ? nothing : it->second;
}

const StockMove* Ledger::find(const std::string& id) const {
  const auto it = ids_.find(id);
  return it == ids_.end() ? nullptr : &moves_[it->second];
}

std::map<BookedFor, Booked> Ledger::booked(const std::string& visit) const {
  std::map<BookedFor, Booked> out;
  const auto of_visit = visits_.find(visit);
  if (of_visit == visits_.end()) return out;
  for (const std::size_t at : of_visit->second) {
    const StockMove& m = moves_[at];
    if (m.wish.what == Moved::undo || undone(m.id)) continue;
    Booked& b = out[{visit, m.bowl, m.wish.product, m.mix}];
    (m.wish.what == Moved::waste ? b.waste : b.use) += milligrams(m.wish.grams);
    b.newest = at + 1;
  }
  return out;
}

Result<StockMove> Ledger::planned(StockMove move) const {
  wire::StockWish& wish = move.wish;
  const Milligrams mg = milligrams(wish.grams);
  wish.grams = grams(mg);
  move.lots.clear();
  move.short_g = 0;
  // A batch that is there under one day is that batch.
  if (!wish.batch.empty() && wish.expires.empty()) {
    const Lot* same = nullptr;
    int several = 0;
    for (const Lot& lot : of(wish.product).lots)
      if (lot.batch == wish.batch) same = &lot, ++several;
    if (several == 1) wish.expires = same->expires;
  }
  const bool of_bowl = !move.visit.empty();
  switch (wish.what) {
    case Moved::receive:
      if (mg <= 0) return one("grams_missing");
      move.lots.push_back({wish.batch, wish.expires, wish.grams});
      return move;
    case Moved::use:
    case Moved::waste:
      if (mg < 0 && of_bowl) return taken_back(std::move(move));
      if (mg <= 0) return one("grams_missing");
      return outward(std::move(move), of_bowl || wish.what == Moved::use);
    case Moved::write_off:
      if (mg <= 0) return one("grams_missing");
      return outward(std::move(move), false);
    case Moved::count:
      if (mg < 0) return one("grams_missing");
      return counted(std::move(move));
    case Moved::undo:
      return undo(std::move(move));
  }
  return move;
}

// What was mixed has gone, whatever was there; what is thrown away has to be there.
Result<StockMove> Ledger::outward(StockMove move, bool may_be_short) const {
  const Balance& b = of(move.wish.product);
  if (!b.counted()) {
    if (may_be_short) return move;  // nobody knows how much is there
    return one("not_counted", {{"product", move.wish.product}});
  }
  std::vector<const Lot*> lots = in_turn(b);
  if (names_a_lot(move.wish))
    std::erase_if(lots, [&](const Lot* lot) { return !is(*lot, move.wish.batch, move.wish.expires); });
  const Milligrams missing = take_from(lots, milligrams(move.wish.grams), move.lots);
  if (missing > 0 && !may_be_short) {
    Milligrams there = 0;
    for (const Lot* lot : lots) there += lot->mg;
    return one("more_than_there", {{"grams", figure(there)}});
  }
  move.short_g = grams(missing);
  return move;
}

// A bowl got less than was told: back into the batches that it came from, unless a count has spoken since.
Result<StockMove> Ledger::taken_back(StockMove move) const {
  const Balance& b = of(move.wish.product);
  const auto booked_there = booked(move.visit);
  const auto found = booked_there.find({move.visit, move.bowl, move.wish.product, move.mix});
  if (found == booked_there.end() || found->second.newest <= b.counted_move || !b.counted()) return move;
  std::map<std::pair<std::string, std::string>, Milligrams> drawn;
  Milligrams was_short = 0;
  for (const std::size_t at : visits_.at(move.visit)) {
    const StockMove& m = moves_[at];
    if (undone(m.id) || m.wish.product != move.wish.product || at < b.counted_move) continue;
    was_short += milligrams(m.short_g);
    for (const StockLot& lot : m.lots) drawn[{lot.batch, lot.expires}] -= milligrams(lot.grams);
  }
  Milligrams left = -milligrams(move.wish.grams);
  const Milligrams settled = std::min({left, std::max<Milligrams>(0, was_short), b.short_mg});
  move.short_g = -grams(settled);
  left -= settled;
  for (const auto& [lot, mg] : drawn) {
    const Milligrams part = std::min(left, std::max<Milligrams>(0, mg));
    if (part > 0) move.lots.push_back({lot.first, lot.second, grams(part)});
    left -= part;
  }
  return move;
}

Result<StockMove> Ledger::counted(StockMove move) const {
  const Balance& b = of(move.wish.product);
  if (!move.wish.seen) return one("count_unseen");
  if (*move.wish.seen != b.seen)
    return one("moved_meanwhile", {{"grams", figure(b.mg())}, {"seen", std::to_string(b.seen)}});
  const Milligrams now = milligrams(move.wish.grams);
  if (names_a_lot(move.wish)) {
    Milligrams there = 0;
    for (const Lot& lot : b.lots)
      if (is(lot, move.wish.batch, move.wish.expires)) there = lot.mg;
    if (now != there) move.lots.push_back({move.wish.batch, move.wish.expires, grams(now - there)});
    return move;
  }
  move.short_g = -grams(b.short_mg);
  const Milligrams there = b.mg();
  if (now < there) {
    take_from(in_turn(b), there - now, move.lots);
  } else if (now > there) {
    // More than was known: of the one batch there is, else of one that nobody named.
    const auto lots = in_turn(b);
    StockLot more = lots.size() == 1 ? StockLot{lots[0]->batch, lots[0]->expires, 0} : StockLot{};
    more.grams = grams(now - there);
    move.lots.push_back(std::move(more));
  }
  return move;
}

Result<StockMove> Ledger::undo(StockMove move) const {
  const StockMove* undone_move = find(move.wish.undoes);
  if (!undone_move) return one("movement_not_found", {{"id", move.wish.undoes}});
  if (undone_move->wish.what == Moved::undo) return one("undo_of_undo");
  if (undone(undone_move->id)) return one("undone_already");
  if (!undone_move->visit.empty()) return one("booked_by_visit");
  move.wish.product = undone_move->wish.product;
  move.wish.grams = 0;
  const Balance& b = of(move.wish.product);
  const std::size_t place = ids_.at(undone_move->id) + 1;
  if (place < b.counted_move) return one("counted_since", {{"at", b.counted_at}});
  Milligrams missing = -milligrams(undone_move->short_g);
  for (const StockLot& lot : undone_move->lots) {
    Milligrams there = 0;
    for (const Lot& known : b.lots)
      if (is(known, lot.batch, lot.expires)) there = known.mg;
    const Milligrams back = std::max(-there, -milligrams(lot.grams));
    missing += milligrams(lot.grams) + back;  // what came is partly gone again: short of it
    if (back != 0) move.lots.push_back({lot.batch, lot.expires, grams(back)});
  }
  move.short_g = grams(std::max(missing, -b.short_mg));
  return move;
}

void Ledger::take(StockMove move) {
  Balance& b = balances_[move.wish.product];
  const std::size_t place = moves_.size() + 1;
  double cost = 0;
  bool known = true;
  for (const StockLot& moved : move.lots) {
    const Milligrams mg = milligrams(moved.grams);
    auto lot =
        std::find_if(b.lots.begin(), b.lots.end(), [&](const Lot& l) { return is(l, moved.batch, moved.expires); });
    if (lot == b.lots.end()) {
      b.lots.push_back({moved.batch, moved.expires, 0, static_cast<int>(b.lots.size()), std::nullopt});
      lot = std::prev(b.lots.end());
    }
    if (move.wish.what == Moved::receive && move.wish.paid) {
      const double had = lot->cost_per_g ? grams(lot->mg) * *lot->cost_per_g : 0;
      const double weight = lot->cost_per_g ? grams(lot->mg) : 0;
      lot->cost_per_g = (had + *move.wish.paid) / (weight + moved.grams);
    }
    if (lot->cost_per_g) {
      cost -= moved.grams * *lot->cost_per_g;
    } else {
      known = false;
    }
    lot->mg += mg;
  }
  if (known && !move.lots.empty() && move.short_g == 0) move.cost = cost;
  b.short_mg = std::max<Milligrams>(0, b.short_mg + milligrams(move.short_g));
  ++b.seen;
  const auto vouches = [](const StockMove& m) { return m.wish.what == Moved::receive || m.wish.what == Moved::count; };
  if (vouches(move)) ++b.vouched;
  if (move.wish.what == Moved::count) b.counted_move = place, b.counted_at = move.at;
  if (move.wish.what == Moved::undo && undone_.insert(move.wish.undoes).second) {
    if (const StockMove* was = find(move.wish.undoes); was && vouches(*was)) --b.vouched;
  }
  ids_[move.id] = moves_.size();
  if (!move.visit.empty()) visits_[move.visit].push_back(moves_.size());
  moves_.push_back(std::move(move));
}

Ledger::Mark Ledger::mark(const std::set<std::string>& products) const {
  Mark out{moves_.size(), {}};
  for (const std::string& product : products) out.balances[product] = of(product);
  return out;
}

void Ledger::back_to(const Mark& mark) {
  while (moves_.size() > mark.moves) {
    const StockMove& last = moves_.back();
    ids_.erase(last.id);
    if (last.wish.what == Moved::undo) undone_.erase(last.wish.undoes);
    if (!last.visit.empty()) visits_[last.visit].pop_back();
    moves_.pop_back();
  }
  for (const auto& [product, balance] : mark.balances) {
    if (balance.seen == 0) {
      balances_.erase(product);
    } else {
      balances_[product] = balance;
    }
  }
}

}  // namespace strandline::salon
