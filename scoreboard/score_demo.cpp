// plan.demo.ms, formulate.plain.*: every demo visit as its screen asks for it, ways, other ways and clock included.
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "measure.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"
#include "strandline/salon/workers.h"
#include "strandline/wire/json.h"

namespace {

using strandline::find_product;
using strandline::Product;
using strandline::ProductClass;
using strandline::Shelf;

bool holds_clear(const nlohmann::json& bowl, const Shelf& shelf) {
  for (const auto& share : bowl.at("recipe").at("shares"))
    if (const Product* p = find_product(shelf, share.at("product").get<std::string>());
        p && p->cls == ProductClass::clear)
      return true;
  return false;
}

// One shade, or two that a colourist calls neighbours: of one level, or of one tone and a level apart. Clear is no
// shade.
bool one_or_two_neighbours(const nlohmann::json& bowl, const Shelf& shelf) {
  std::vector<const Product*> shades;
  for (const auto& share : bowl.at("recipe").at("shares"))
    if (const Product* p = find_product(shelf, share.at("product").get<std::string>());
        p && p->cls != ProductClass::clear)
      shades.push_back(p);
  if (shades.size() != 2) return shades.size() == 1;
  const double apart = std::abs(shades[0]->level - shades[1]->level);
  const bool both_have_one = shades[0]->level > 0 && shades[1]->level > 0;
  return both_have_one && (apart == 0 || (apart <= 1 && shades[0]->tone == shades[1]->tone));
}

}  // namespace

int main() {
  using namespace strandline;
  const auto house = salon::open_house({});
  if (!house) return 1;
  std::vector<std::filesystem::path> files;
  for (const auto& file : std::filesystem::directory_iterator(salon::default_knowledge() / "demo" / "visits"))
    files.push_back(file.path());
  std::sort(files.begin(), files.end());
  salon::Workers workers(2);
  salon::Effort effort;
  effort.parallel = workers.parallel_for();
  std::vector<double> ms, gaps;
  std::string slowest;
  int bowls = 0, plain = 0, sheer = 0;
  for (const auto& file : files) {
    const auto text = salon::read_file(file, 1 << 22);
    if (!text) return 1;
    const auto document = nlohmann::json::parse(*text);
    nlohmann::json plan;
    const double own = scoreboard::median_ms(1, [&] {
      const auto answer = salon::answer("plan", document, house->sources(), effort);
      if (!answer) std::exit(1);
      plan = *answer;
    });
    if (ms.empty() || own > *std::max_element(ms.begin(), ms.end())) slowest = file.stem().string();
    ms.push_back(own);
    gaps.push_back(plan.at("report").at("plain_gap").get<double>());
    for (const auto& bowl : plan.at("bowls")) {
      if (bowl.at("recipe").at("shares").empty()) continue;  // read as it was mixed
      ++bowls;
      const bool simple = one_or_two_neighbours(bowl, house->demo);
      plain += simple;
      sheer += simple && holds_clear(bowl, house->demo);
    }
  }
  if (bowls == 0) return 1;
  std::sort(ms.begin(), ms.end());
  std::sort(gaps.begin(), gaps.end());
  const std::string of = std::to_string(files.size()) + " demo visits";
  scoreboard::print({{"plan.demo.ms", ms[ms.size() / 2], "ms", of + ", whole plans, two threads, median"},
                     {"plan.demo.worst.ms", ms.back(), "ms", of + ", the slowest: " + slowest},
                     {"formulate.plain.gap", gaps[gaps.size() / 2], "levels",
                      of + ", expected loss above the certified best, median; worst " + std::to_string(gaps.back())},
                     {"formulate.plain.share", 100.0 * plain / bowls, "percent",
                      of + ", those of one shade or two neighbours of " + std::to_string(bowls) + " bowls; " +
                          std::to_string(sheer) + " with clear beside"}});
}
