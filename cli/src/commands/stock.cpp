#include "strandline/salon/stock.h"

#include <iomanip>
#include <memory>
#include <ostream>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "src/visit_command.h"

namespace strandline::cli {

namespace {

struct StockFlags {
  std::string db = "salon.sqlite", key, knowledge, shelf, product, batch, expires, reason, id, visit;
  double grams = 0;
  std::optional<double> paid;
  bool low = false, json = false;
};

int told(const Problems& problems, const std::string& where, Session& session, Exit code = refused) {
  print_problems(problems, where, session.io.err);
  return code;
}

// Runs `work` with the stock of the salon file.
template <class Work>
int with_stock(const StockFlags& flags, Session& session, Work&& work) {
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  const auto house = salon::open_house(files);
  if (!house) return told(house.error(), "the knowledge folder", session, failed);
  auto world = salon::real_world(flags.db, false, flags.key);
  if (!world) return told({{world.error().code, "", {{"detail", world.error().detail}}}}, "the salon", session, failed);
  salon::Shelves shelves(*world, *house);
  salon::Stock stock(*world, shelves, house->stock);
  return work(stock);
}

std::string tenth(double grams) {
  std::ostringstream out;
  out << std::fixed << std::setprecision(1) << grams << " g";
  return out.str();
}

void print_item(const wire::StockItem& item, std::ostream& out) {
  out << printable(item.code.empty() ? item.name : item.code + " · " + item.name) << "  (" << printable(item.product)
      << ")  ";
  if (item.is == wire::StockIs::not_counted) {
    out << "not counted\n";
    return;
  }
  out << tenth(item.grams);
  if (item.short_g > 0) out << ", " << tenth(item.short_g) << " more went than was known: count it";
  if (item.is == wire::StockIs::low) out << ", low: enough for " << static_cast<int>(*item.days_left) << " days";
  if (item.order_g > 0) out << ", order " << tenth(item.order_g);
  out << '\n';
  for (const wire::StockBatch& b : item.batches) {
    if (b.batch.empty() && b.expires.empty()) continue;
    out << "    " << tenth(b.grams) << "  batch " << printable(b.batch.empty() ? "not known" : b.batch);
    if (!b.expires.empty()) out << ", due " << b.expires;
    if (b.expired) out << " (over)";
    if (b.soon) out << " (soon)";
    out << '\n';
  }
}

int list(const StockFlags& flags, Session& session) {
  return with_stock(flags, session, [&](salon::Stock& stock) -> int {
    const auto view = stock.view(flags.shelf);
    if (!view) return told(view.error(), flags.shelf, session);
    if (flags.json) {
      session.io.out << wire::print(wire::answer_json(*view), true) << '\n';
      return done;
    }
    for (const wire::StockItem& item : view->items) {
      const bool wanted =
          item.is == wire::StockIs::low || item.is == wire::StockIs::none || item.is == wire::StockIs::short_of;
      if (!flags.low || wanted) print_item(item, session.io.out);
    }
    return done;
  });
}

int moves(const StockFlags& flags, Session& session) {
  return with_stock(flags, session, [&](salon::Stock& stock) -> int {
    const auto page = stock.moves(flags.shelf, flags.product, flags.visit);
    if (!page) return told(page.error(), flags.shelf, session);
    for (const wire::StockMove& m : page->moves) {
      const wire::Json said = wire::stock_json(m);
      session.io.out << m.at << "  " << said["what"].get<std::string>() << "  " << printable(m.wish.product) << "  "
                     << tenth(m.wish.grams);
      if (!m.visit.empty()) session.io.out << "  bowl " << printable(m.bowl) << " of " << m.visit;
      if (m.short_g > 0) session.io.out << "  (" << tenth(m.short_g) << " beyond what was known)";
      if (!m.wish.reason.empty()) session.io.out << "  " << printable(m.wish.reason);
      if (page->undone.contains(m.id)) session.io.out << "  undone";
      session.io.out << "  [" << m.id << "]\n";
    }
    return done;
  });
}

int move(const StockFlags& flags, const char* what, Session& session) {
  return with_stock(flags, session, [&](salon::Stock& stock) -> int {
    wire::Json wish{{"what", what}, {"product", flags.product}, {"grams", flags.grams}};
    for (const auto& [key, text] :
         {std::pair{"batch", flags.batch}, {"expires", flags.expires}, {"reason", flags.reason}, {"undoes", flags.id}})
      if (!text.empty()) wish[key] = text;
    if (flags.paid) wish["paid"] = *flags.paid;
    if (wish["what"] == "count") {
      // Nobody else has the file open: what is counted is counted now.
      const auto view = stock.view(flags.shelf);
      if (!view) return told(view.error(), flags.shelf, session);
      wish["seen"] = 0;
      for (const wire::StockItem& item : view->items)
        if (item.product == flags.product) wish["seen"] = item.seen;
    }
    const auto kept = stock.move(flags.shelf, {{"moves", wire::Json::array({wish})}});
    if (!kept) return told(kept.error(), flags.product.empty() ? flags.id : flags.product, session);
    const auto view = stock.view(flags.shelf);
    if (!view) return told(view.error(), flags.shelf, session, failed);
    for (const wire::StockItem& item : view->items)
      if (item.product == kept->front().wish.product) print_item(item, session.io.out);
    session.io.out << "Kept as " << kept->front().id << '\n';
    return done;
  });
}

}  // namespace

void add_stock(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<StockFlags>();
  CLI::App* stock =
      app.add_subcommand("stock", "grams on the shelf: list, moves, receive, count, waste, write-off, undo");
  stock->require_subcommand(1);
  const auto command = [&](const char* name, const char* help,
                           const std::function<int(const StockFlags&, Session&)>& work) {
    CLI::App* c = stock->add_subcommand(name, help);
    c->add_option("--db,--store", flags->db, "salon file; not while it is served");
    c->add_option("--key", flags->key, "key file, beside the salon file unless said");
    c->add_option("--knowledge", flags->knowledge, "folder with demo/, policy/ and shelf/");
    c->add_option("--shelf", flags->shelf, "id of the shelf; nothing = the one in use");
    c->callback([flags, work, &session] { session.exit_code = work(*flags, session); });
    return c;
  };
  CLI::App* listing = command("list", "what is there, by batch, and what is low", list);
  listing->add_flag("--low", flags->low, "only what is low, gone or to be counted");
  listing->add_flag("--json", flags->json, "as the server answers it");
  CLI::App* log = command("moves", "the newest hundred movements", moves);
  log->add_option("--product", flags->product, "of this product only");
  log->add_option("--visit", flags->visit, "of this visit only");
  const auto moving = [&](const char* name, const char* what, const char* help) {
    CLI::App* c = command(name, help, [what](const StockFlags& f, Session& s) { return move(f, what, s); });
    c->add_option("PRODUCT", flags->product, "its id")->required();
    c->add_option("GRAMS", flags->grams, "grams")->required()->check(between(0, 1e6));
    c->add_option("--batch", flags->batch, "as printed");
    c->add_option("--expires", flags->expires, "2027-05-31");
    return c;
  };
  moving("receive", "receive", "something came")
      ->add_option("--paid", flags->paid, "for all of it")
      ->check(between(0, 1e6));
  moving("count", "count", "so much stands there now");
  moving("waste", "waste", "thrown away outside a visit");
  moving("write-off", "write_off", "gone otherwise: over its day, broken, lost")
      ->add_option("--reason", flags->reason, "why")
      ->required();
  command("undo", "a movement did not happen", [](const StockFlags& f, Session& s) { return move(f, "undo", s); })
      ->add_option("MOVEMENT", flags->id, "its id")
      ->required();
}

}  // namespace strandline::cli
