// Damaged files of a salon: refused, found, or without effect; never taken for good.
#include <algorithm>
#include <random>
#include <set>

#include "salon_folder.h"

namespace strandline::store {
namespace {

std::vector<std::string> bodies(Store& store) {
  const auto entries = store.facts();
  if (!entries) return {};
  std::vector<std::string> out;
  for (const Fact& e : *entries) out.push_back(e.id + e.body + e.hash);
  return out;
}

// Cut short, a bit turned, a sector gone, two pages changed places, noise, or gone.
std::string damaged(std::string file, std::mt19937& random) {
  if (file.empty()) return file;
  const auto at = [&] { return random() % file.size(); };
  const auto swap = [&](std::size_t size) {
    const std::size_t a = at() / size * size, b = at() / size * size;
    if (std::max(a, b) + size > file.size()) return;
    std::swap_ranges(file.begin() + static_cast<long>(a), file.begin() + static_cast<long>(a + size),
                     file.begin() + static_cast<long>(b));
  };
  switch (random() % 6) {
    case 0:
      file.resize(at());
      break;
    case 1:
      file[at()] ^= static_cast<char>(1u << (random() % 8));
      break;
    case 2:
      file.replace(at() / 512 * 512, 512, std::string(512, '\0'));
      break;
    case 3:
      swap(4096);
      break;
    case 4:
      for (std::size_t from = at(), n = std::min<std::size_t>(64, file.size() - from); n > 0; --n, ++from)
        file[from] = static_cast<char>(random());
      break;
    default:
      file[at() % 100] = static_cast<char>(random());  // in the header
  }
  return file;
}

// What is read is what was written, or the file is refused with a word for it, or its check says so.
void expect_honest(const SalonFolder& salon, const std::vector<std::string>& written,
                   const std::vector<std::string>& saved, const std::string& when, int& refused) {
  static const std::set<std::string> clear{
      "store_damaged",         "store_foreign", "store_newer",       "store_incomplete",  "store_other",
      "store_head_unreadable", "store_missing", "store_without_wal", "store_unavailable", "store_key_wrong"};
  const auto said = [&](const auto& result) {
    if (!result) EXPECT_TRUE(clear.contains(result.error().code)) << when << ' ' << result.error().code;
    return result.has_value();
  };
  const auto opened = Store::open(salon.options());
  if (!said(opened)) {
    ++refused;
    return;
  }
  Store& store = **opened;
  said(store.visits());
  if (const auto one = store.visit("v"); said(one) && *one) {
    const std::string read = (*one)->entry_id + (*one)->body;
    EXPECT_TRUE(std::any_of(saved.begin(), saved.end(), [&](const auto& s) { return s == read; })) << when;
  }
  const auto verified = store.verify();
  const bool whole = said(verified) && !*verified;
  if (whole) EXPECT_EQ(bodies(store), written) << when;
  const auto more = store.append(fact("more", "v", 60));
  if (whole) EXPECT_TRUE(said(more)) << when;
}

TEST(Damage, IsRefusedOrFoundOrWithoutEffect) {
  const int rounds = times(600);
  const SalonFolder salon, closed, open;
  salon.make();
  std::vector<std::string> written, saved;
  {
    const auto store = salon.open();
    for (int i = 0; i < 60; ++i) {
      const std::string fill(static_cast<std::size_t>(i % 9 == 4 ? 9000 : i * 7), 'x');
      const std::string body = R"({"client":"Ä","fill":")" + fill + "\"}";
      ASSERT_TRUE(store->append(fact("e" + std::to_string(i), "v", i, body, i % 3 ? "" : "p")));
      ASSERT_TRUE(store->save(draft("d" + std::to_string(i), "v", i, body)));
      saved.push_back("d" + std::to_string(i) + body);
      if (i == 30) salon.sql("PRAGMA wal_checkpoint");
    }
    written = bodies(*store);
    for (const char* suffix : {"", "-wal", "-head"}) open.put(salon.there(suffix), suffix);
  }
  for (const SalonFolder* one : {&closed, &open}) one->put(salon.there("-key"), "-key");
  for (const char* suffix : {"", "-head"}) closed.put(salon.there(suffix), suffix);
  int refused = 0;
  for (int round = 0; round < rounds; ++round) {
    std::mt19937 random(static_cast<unsigned>(round));
    const SalonFolder& from = random() % 2 ? closed : open;
    const std::string hit = std::vector<std::string>{"", "", "-wal", "-wal", "-head"}[random() % 5];
    salon.put(std::nullopt, "-shm");
    for (const char* suffix : {"", "-wal", "-head"}) {
      auto bytes = from.there(suffix);
      if (bytes && suffix == hit) bytes = random() % 20 ? std::optional(damaged(*bytes, random)) : std::nullopt;
      salon.put(bytes, suffix);
    }
    expect_honest(salon, written, saved, "round " + std::to_string(round) + " hit " + hit, refused);
  }
  EXPECT_GT(refused, rounds / 4);
  std::printf("%d damages, %d refused at opening\n", rounds, refused);
}

// Shown is a fact as it was written, or not at all: one figure changed in it would be another mixture.
TEST(Damage, AFactThatIsNotAsItWasWrittenIsNotShown) {
  const SalonFolder salon;
  salon.make();
  salon.open()->append(fact("a", "v", 0, R"({"volume":20})"));
  std::string bytes = salon.bytes();
  bytes.at(bytes.find("\"volume\":20") + 9) = '4';
  salon.write(bytes);
  const auto store = salon.open();
  EXPECT_EQ(store->facts().error().code, "store_damaged");
  EXPECT_EQ(*store->verify(), std::optional<std::int64_t>(1));
}

// A draft opens as it was saved: changed, or put where another one lay, it does not.
TEST(Damage, ADraftThatIsNotAsItWasSavedIsNotShown) {
  for (const char* change :
       {"UPDATE drafts SET body = CAST(substr(body, 1, 60) || x'00' || substr(body, 62) AS BLOB)",
        "UPDATE drafts SET seq = 7", "UPDATE drafts SET changed_at = '2027-01-01T00:00:00Z'",
        "UPDATE drafts SET body = label",
        "UPDATE drafts SET body = (SELECT body FROM drafts WHERE visit_id = 'w') WHERE visit_id = 'v'",
        "DELETE FROM keys"}) {
    const SalonFolder salon;
    salon.make(2);
    ASSERT_TRUE(salon.open()->save(draft("w1", "w", 0)));
    salon.sql(change);
    const auto store = salon.open();
    EXPECT_EQ(store->visit("v").error().code, "store_damaged") << change;
    EXPECT_EQ(store->verify().error().code, "store_damaged") << change;
  }
}

// A save looks the newest entry of its visit up in an index; one that leads astray refuses it as a conflict.
TEST(Damage, AnIndexThatLeadsAstrayIsFound) {
  const SalonFolder salon;
  salon.make(3);
  const std::string indexes = "WHERE name LIKE 'sqlite_autoindex_facts_%'";
  salon.sql("CREATE TEMP TABLE roots AS SELECT name AS other, rootpage AS root FROM sqlite_master " + indexes +
            "; PRAGMA writable_schema = ON; UPDATE sqlite_master SET rootpage = (SELECT root FROM roots WHERE other <> "
            "name) " +
            indexes);
  EXPECT_EQ(Store::verify_file(salon.path()).error().code, "store_damaged");
  EXPECT_EQ(salon.open()->verify().error().code, "store_damaged");
}

TEST(Damage, LabelsThatDoNotOpenAreSaid) {
  const SalonFolder salon;
  salon.make(1);
  salon.sql("UPDATE drafts SET label = x'ff41'");
  const auto store = salon.open();
  EXPECT_EQ(store->visits().error().code, "store_damaged");
}

}  // namespace
}  // namespace strandline::store
