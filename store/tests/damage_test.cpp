// Damaged database files: refused, found, or without effect; never taken for good.
#include <random>

#include "salon_folder.h"

namespace strandline::store {
namespace {

std::vector<std::string> bodies(Store& store) {
  const auto entries = store.changes(0);
  if (!entries) return {};
  std::vector<std::string> out;
  for (const Entry& e : *entries) out.push_back(e.id + e.body + e.hash);
  return out;
}

// What is read is what was written, or the file is refused, or its check says so.
void expect_honest(const SalonFolder& salon, const std::vector<std::string>& written, const std::string& what) {
  const auto opened = Store::open(salon.options());
  if (!opened) return;
  const auto verified = (*opened)->verify();
  if (!verified || *verified) return;
  EXPECT_EQ(bodies(**opened), written) << what;
}

TEST(Damage, IsRefusedOrFoundOrWithoutEffect) {
  const SalonFolder salon;
  salon.make(60);
  const std::vector<std::string> written = bodies(*salon.open());
  const std::string whole = salon.bytes(), head = salon.bytes("-head");
  std::mt19937 random(11);
  int refused = 0;
  for (int round = 0; round < 120; ++round) {
    std::string bad = whole;
    const auto at = [&] { return random() % bad.size(); };
    if (round % 4 == 0) bad.resize(at());
    if (round % 4 == 1) bad[at()] ^= static_cast<char>(1u << (random() % 8));
    if (round % 4 == 2) bad.replace(at() / 512 * 512, 512, std::string(512, '\0'));
    if (round % 4 == 3) {
      const std::size_t a = at() / 4096 * 4096, b = at() / 4096 * 4096;
      std::swap_ranges(bad.begin() + static_cast<long>(a), bad.begin() + static_cast<long>(a) + 4096,
                       bad.begin() + static_cast<long>(b));
    }
    salon.write(bad);
    salon.write(head, "-head");
    const auto opened = Store::open(salon.options());
    refused += !opened;
    if (opened) expect_honest(salon, written, "round " + std::to_string(round));
  }
  EXPECT_GT(refused, 40);
}

}  // namespace
}  // namespace strandline::store
