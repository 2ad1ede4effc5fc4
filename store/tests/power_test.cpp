// A power cut at any moment, a disk whose calls fail, a disk that lies: nothing acknowledged is lost or doubled, or the
// file is refused.
#include <set>

#include "disk.h"
#include "salon_folder.h"

namespace strandline::store {
namespace {

std::string id(int n) { return "e" + std::to_string(n); }

// From a few bytes to some dozen pages, so that checkpoints come soon.
NewFact numbered(int n) {
  const auto size = static_cast<std::size_t>(n % 7 == 3 ? 70000 : n * 389 % 2000);
  const std::string body = R"({"fill":")" + std::string(size, static_cast<char>('a' + n % 26)) + "\"}";
  return fact(id(n), "v", n, body, n % 2 ? "p" : "");
}

// A fact and the next save of a draft, both handed in again until both were acknowledged.
bool both(Store& store, int n) {
  return store.append(numbered(n)) && store.save(draft("d" + std::to_string(n), "v", n, numbered(n).body));
}

// Entries 0, 1, 2 … as they were acknowledged, each handed in again until it is.
struct Device {
  int acknowledged = 0;
  void save(Store& store, int until, int tries = 1, const std::function<void()>& then = {}) {
    for (int tried = 0; acknowledged < until && tried < tries; ++tried) {
      if (!both(store, acknowledged)) continue;
      ++acknowledged;
      tried = -1;
      if (then) then();
    }
  }
};

// All that was acknowledged, in order and once; at most the one after it, whose answer was lost; and a whole chain.
void expect_kept(Store& store, int acknowledged, const std::string& when) {
  EXPECT_EQ(*store.verify(), std::nullopt) << when;
  int n = 0;
  for (std::int64_t after = 0;;) {
    const auto page = store.facts({.after = after, .stream = {}, .key = {}, .kind = {}});
    ASSERT_TRUE(page) << when << ' ' << page.error().detail;
    if (page->empty()) break;
    for (const Fact& e : *page) {
      EXPECT_EQ(e.id, id(n)) << when;
      EXPECT_EQ(e.body, numbered(n).body) << when;
      ++n;
    }
    after = page->back().store_seq;
  }
  EXPECT_GE(n, acknowledged) << when;
  EXPECT_LE(n, acknowledged + 1) << when;
  const auto row = store.visit("v");
  ASSERT_TRUE(row) << when << ' ' << row.error().detail;
  const std::int64_t saves = *row ? (*row)->seq : 0;
  EXPECT_GE(saves, acknowledged) << when;
  EXPECT_LE(saves, n) << when << ": its fact comes first";
  if (*row) EXPECT_EQ((*row)->body, numbered(static_cast<int>(saves) - 1).body) << when;
}

// The folder as it is found after the power came back; `heads` are the states of the -head that may have lasted.
void cut(const SalonFolder& salon, const Disk& disk, const std::vector<std::optional<std::string>>& heads,
         std::mt19937& random) {
  for (const char* suffix : {"", "-wal", "-journal"}) salon.put(disk.after_cut(salon.path() + suffix, random), suffix);
  salon.put(heads[random() % heads.size()], "-head");
  salon.put(random() % 2 ? std::optional(std::string(32768, static_cast<char>(random()))) : std::nullopt, "-shm");
}

TEST(Power, CutsLoseAndDoubleNothing) {
  int cuts = 0, saved = 0;
  for (int round = 0; round < times(25); ++round) {
    std::mt19937 random(static_cast<unsigned>(round));
    const SalonFolder salon;
    salon.make();
    Device device;
    for (int k = 0; k < 8; ++k) {
      const std::string when = "round " + std::to_string(round) + " cut " + std::to_string(k);
      {
        Disk disk;
        disk.last_change = static_cast<int>(random() % (k % 2 ? 40 : 400));
        std::vector<std::optional<std::string>> heads{salon.there("-head")};
        if (const auto store = Store::open(salon.options())) {
          heads = {salon.there("-head")};
          device.save(**store, device.acknowledged + 60, 1, [&] { heads.push_back(salon.there("-head")); });
        } else {
          heads.push_back(salon.there("-head"));
        }
        cuts += disk.changes > disk.last_change;
        cut(salon, disk, heads, random);
      }
      const auto store = salon.open();
      ASSERT_TRUE(store) << when;
      expect_kept(*store, device.acknowledged, when);
      device.save(*store, device.acknowledged + 1);
      expect_kept(*store, device.acknowledged, when + ", handed in again");
    }
    saved += device.acknowledged;
  }
  EXPECT_GT(cuts, times(25));
  std::printf("%d cuts, %d acknowledged entries\n", cuts, saved);
}

// A disk that loses what it said it had kept: the -head, if it lasted, gives that away.
TEST(Power, ADiskThatLiesIsNoticed) {
  const std::set<std::string> clear{"store_incomplete", "store_damaged", "store_foreign", "store_other",
                                    "store_without_wal"};
  int refused = 0, kept = 0;
  for (int round = 0; round < times(60); ++round) {
    std::mt19937 random(static_cast<unsigned>(round));
    const SalonFolder salon;
    salon.make(0);
    Device device;
    device.save(*salon.open(), 20);
    {
      Disk disk;
      disk.lies = true;
      disk.last_change = static_cast<int>(random() % 400);
      if (const auto store = Store::open(salon.options())) device.save(**store, 200);
      cut(salon, disk, {salon.there("-head")}, random);
    }
    const std::string when = "round " + std::to_string(round);
    const auto store = Store::open(salon.options());
    if (!store) {
      EXPECT_TRUE(clear.contains(store.error().code)) << when << ' ' << store.error().code << store.error().detail;
      ++refused;
    } else if (const auto verified = (*store)->verify(); verified && !*verified) {
      expect_kept(**store, device.acknowledged, when);
      ++kept;
    }
  }
  EXPECT_GT(refused, times(60) / 6);
  std::printf("%d refused, %d whole\n", refused, kept);
}

int failure(Call call, std::mt19937& random) {
  switch (call) {
    case Call::open:
      return SQLITE_CANTOPEN;
    case Call::read:
      return SQLITE_IOERR_READ;
    case Call::write:
      return random() % 2 ? SQLITE_FULL : SQLITE_IOERR_WRITE;
    case Call::truncate:
      return SQLITE_IOERR_TRUNCATE;
    case Call::sync:
      return SQLITE_IOERR_FSYNC;
    case Call::remove:
      return SQLITE_IOERR_DELETE;
  }
  return SQLITE_IOERR;
}

// The n-th call fails, then the n-th and all after it for a while; then the disk has recovered, or the power goes too.
TEST(Power, FailingCallsLoseAndDoubleNothing) {
  int failed = 0, saved = 0;
  for (int round = 0; round < times(150); ++round) {
    const std::string when = "round " + std::to_string(round);
    std::mt19937 random(static_cast<unsigned>(round));
    const SalonFolder salon;
    salon.make();
    Device device;
    device.save(*salon.open(), 3);
    {
      Disk disk;
      const int first = static_cast<int>(random() % 150),
                last = first + static_cast<int>(random() % 3 ? 0 : random() % 40);
      int calls = 0;
      disk.fails = [&](Call call) {
        const int n = calls++;
        if (n < first || n > last) return SQLITE_OK;
        ++failed;
        return failure(call, random);
      };
      std::vector<std::optional<std::string>> heads{salon.there("-head")};
      auto store = Store::open(salon.options());
      for (int again = 0; !store && again < 100; ++again) store = Store::open(salon.options());
      ASSERT_TRUE(store) << when << ' ' << store.error().code << store.error().detail;
      heads.push_back(salon.there("-head"));
      device.save(**store, 40, 60, [&] { heads.push_back(salon.there("-head")); });
      disk.fails = {};
      const bool more = both(**store, device.acknowledged);
      EXPECT_TRUE(more) << when << ": still fails after the disk has recovered";
      device.acknowledged += more;
      expect_kept(**store, device.acknowledged, when);
      heads.push_back(salon.there("-head"));
      if (round % 2) {
        disk.last_change = disk.changes;
        store->reset();
        cut(salon, disk, heads, random);
      }
    }
    const auto store = salon.open();
    ASSERT_TRUE(store) << when;
    expect_kept(*store, device.acknowledged, when + ", opened again");
    saved += device.acknowledged;
  }
  EXPECT_GT(failed, times(150) / 3);
  std::printf("%d failed calls, %d acknowledged entries\n", failed, saved);
}

}  // namespace
}  // namespace strandline::store
