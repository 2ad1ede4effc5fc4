// stock.report.ms: a report over a hundred thousand movements, beside a plain SQL scan of the same facts.
#include <sqlite3.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <random>

#include "measure.h"
#include "strandline/salon/stock.h"

namespace {

using namespace strandline;

constexpr int kMovements = 100000, kProducts = 100;

std::string product(std::size_t n) { return "tint-" + std::to_string(n); }

wire::Json shelf() {
  wire::Json out{{"title", "invented"}, {"products", wire::Json::array()}};
  out["ranges"] = {{{"id", "tint"}, {"name", "Tint"}, {"cls", "permanent"}}};
  for (std::size_t i = 0; i < kProducts; ++i)
    out["products"].push_back(
        {{"id", product(i)}, {"range", "tint"}, {"cls", "permanent"}, {"level", 7}, {"name", product(i)}});
  return out;
}

// Two years of a salon: deliveries, bowls of two parts mixed by four people, and what was left of some.
void fill(salon::World& world, salon::Stock& stock, std::string& now) {
  std::mt19937 random(1);
  int made = 0;
  for (int day = 0; made < kMovements; ++day) {
    char text[32];
    std::snprintf(text, sizeof text, "20%02d-%02d-%02dT10:00:00Z", 25 + day / 336, day / 28 % 12 + 1, day % 28 + 1);
    now = text;
    wire::Json moves = wire::Json::array();
    for (int i = 0; i < 10; ++i)
      moves.push_back(
          {{"what", "receive"}, {"product", product(random() % kProducts)}, {"grams", 1200}, {"paid", 130.0 + i}});
    if (!stock.move("ours", {{"moves", moves}})) std::exit(1);
    made += 10;
    for (int v = 0; v < 5; ++v) {
      wire::Json additions = wire::Json::array();
      // A long day of one person in one booking: the disk is asked once for all of it.
      for (int part = 0; part < 24; ++part)
        additions.push_back({{"bowl", std::string(1, static_cast<char>('A' + part / 2))},
                             {"mix", 1},
                             {"product", product(random() % kProducts)},
                             {"grams", 20.0 + static_cast<double>(random() % 40)}});
      const wire::Json visit{
          {"shelf", "ours"},
          {"running", {{"additions", additions}, {"leftovers", {{{"bowl", "A"}, {"mix", 1}, {"grams", 6}}}}}}};
      if (!stock.book(world.new_id(), visit, "person-" + std::to_string(v % 4))) std::exit(1);
      made += 28;
    }
  }
}

void run(sqlite3* db, const char* sql) {
  sqlite3_stmt* statement = nullptr;
  if (sqlite3_prepare_v2(db, sql, -1, &statement, nullptr) != SQLITE_OK) std::exit(1);
  int rows = 0;
  while (sqlite3_step(statement) == SQLITE_ROW) ++rows;
  sqlite3_finalize(statement);
  if (rows == 0) std::exit(1);
}

}  // namespace

int main() {
  const auto folder = std::filesystem::temp_directory_path() / ("strandline-score-stock-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const std::string file = folder / "salon.sqlite";
  const auto house = salon::open_house({});
  if (!house || !salon::make_salon(file, [](salon::World&) { return Result<void>(); })) return 1;
  std::vector<scoreboard::Figure> figures;
  {
    auto world = *salon::real_world(file);
    auto now = std::make_shared<std::string>("2025-01-01T10:00:00Z");
    world.now = [now] { return *now; };
    salon::Shelves shelves(world, *house);
    if (!shelves.save_new(shelf(), {}, "ours")) return 1;
    salon::Stock stock(world, shelves, house->stock);
    fill(world, stock, *now);
    const double count = static_cast<double>(stock.all("ours")->size());
    char note[160];
    std::snprintf(note, sizeof note, "report over all of %.0f movements of 100 products, median of 9", count);
    figures.push_back({"stock.report.ms",
                       scoreboard::median_ms(9,
                                             [&] {
                                               if (!stock.report("ours", {}, "2024-01-01", *now)) std::exit(1);
                                             }),
                       "ms", note});
    figures.push_back({"stock.view.ms",
                       scoreboard::median_ms(9,
                                             [&] {
                                               if (!stock.view("ours")) std::exit(1);
                                             }),
                       "ms", "what is there, low and due, same movements, median of 9"});
    figures.push_back({"stock.read.ms",
                       scoreboard::median_ms(3,
                                             [&] {
                                               salon::Stock again(world, shelves, house->stock);
                                               if (!again.left("ours", product(0))) std::exit(1);
                                             }),
                       "ms", "every fact read and checked against its hash at a start, median of 3"});
  }
  sqlite3* db = nullptr;
  if (sqlite3_open_v2(file.c_str(), &db, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK) return 1;
  figures.push_back(
      {"stock.report.sql.ms",
       scoreboard::median_ms(
           5,
           [&] {
             run(db,
                 "SELECT json_extract(CAST(body AS TEXT),'$.product') p, json_extract(CAST(body AS TEXT),'$.what') w, "
                 "sum(json_extract(CAST(body AS TEXT),'$.grams')) FROM facts WHERE kind = 'stock.moved' GROUP BY p, w");
             run(db,
                 "SELECT json_extract(about,'$.by') b, json_extract(CAST(body AS TEXT),'$.what') w, "
                 "sum(json_extract(CAST(body AS TEXT),'$.grams')) FROM facts WHERE kind = 'stock.moved' GROUP BY b, w");
             run(db,
                 "SELECT strftime('%Y-%W', made_at) d, json_extract(CAST(body AS TEXT),'$.what') w, "
                 "sum(json_extract(CAST(body AS TEXT),'$.grams')) FROM facts WHERE kind = 'stock.moved' GROUP BY d, w");
           }),
       "ms", "rival: grams by product, person and week by SQL alone, no costs, median of 5"});
  sqlite3_close(db);
  scoreboard::print(figures);
  std::filesystem::remove_all(folder);
}
