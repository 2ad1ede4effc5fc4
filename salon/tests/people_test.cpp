// Who comes in, and who does not any more.
#include "strandline/salon/people.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <thread>

#include "strandline/salon/knowledge.h"

namespace strandline::salon {
namespace {

const char* const good = "brown tape on blue jars";
const char* const other = "seven wet towels at nine";

DoorRules cheap() {
  static const DoorRules read = open_house({.shelf = {}, .policy = {}, .knowledge = default_knowledge()})->doors;
  DoorRules rules = read;
  rules.hash = {1, 1};
  return rules;
}

// A salon whose clock the test turns, in a file or in memory.
struct Salon {
  explicit Salon(std::shared_ptr<store::Store> store) {
    const auto clock = minutes;
    static int ids = 0;
    world = {[clock] {
               char text[32];
               std::snprintf(text, sizeof text, "2026-03-%02dT%02d:%02d:00Z", 10 + *clock / 1440, *clock / 60 % 24,
                             *clock % 60);
               return std::string(text);
             },
             [] { return "id" + std::to_string(++ids); },
             std::move(store),
             {}};
    people = std::make_unique<People>(world, cheap());
  }
  Salon() : Salon(std::shared_ptr<store::Store>(std::move(*store::Store::open({.path = ":memory:", .fails = {}})))) {}

  SignedIn found() {
    return *people->found({"Ada Invented", good, owner | colourist, "Europe/Vienna", "house", "invented"});
  }
  Result<SignedIn> enter(const std::string& name, const std::string& secret) {
    return people->sign_in({.name = name, .person = {}, .secret = secret, .device_token = {}, .address = "here"});
  }
  // Forgets what is in memory, as a start does.
  void restart() { people = std::make_unique<People>(world, cheap()); }

  std::shared_ptr<int> minutes = std::make_shared<int>(0);
  World world;
  std::unique_ptr<People> people;
};

template <class T>
std::string code(const Result<T>& result) {
  return result ? "" : result.error().front().code;
}

TEST(People, NobodySignsInUntilThereIsAnOwner) {
  Salon s;
  EXPECT_TRUE(s.people->door("")->fresh);
  EXPECT_FALSE(s.people->door("")->people);
  EXPECT_EQ(s.people->who("")->person.roles, everybody);
  EXPECT_EQ(code(s.people->add(anybody(), "Bo", colourist, good)), "owner_first");
  EXPECT_EQ(code(s.people->found({"Ada", good, colourist, "Europe/Vienna", "house", "invented"})), "owner_first");
  EXPECT_EQ(code(s.people->found({"Ada", "short", owner, "Europe/Vienna", "house", "invented"})), "passphrase_short");
  EXPECT_EQ(code(s.people->found({"Ada", good, owner, "Nowhere/Town", "house", "invented"})), "unknown_time_zone");
  EXPECT_EQ(code(s.people->found({"Ada", good, owner, "../Vienna", "house", "invented"})), "unknown_time_zone");
  EXPECT_EQ(s.people->who("")->person.roles, everybody) << "none of these made anybody";

  const SignedIn in = s.found();
  EXPECT_EQ(code(s.people->who("")), "not_signed_in");
  EXPECT_EQ(s.people->who(in.token)->person.name, "Ada Invented");
  EXPECT_EQ(s.people->door("")->zone, "Europe/Vienna");
  EXPECT_EQ(code(s.people->found({"Eve", good, owner, "Europe/Vienna", "house", "invented"})), "already_founded");
}

TEST(People, ASalonWithFactsAloneIsNotFresh) {
  Salon s;
  ASSERT_TRUE(s.world.store->append({"fact-1", "visit-1", 0, s.world.now(), "visit.handed_in", "{}"}));
  EXPECT_FALSE(s.people->door("")->fresh);
  EXPECT_FALSE(s.people->door("")->people);
}

TEST(People, APassphraseIsLongAndNotPlain) {
  Salon s;
  s.found();
  for (const char* plain : {"aaaaaaaaaaaaaaa", "ababababababab", "Bo Bo Invented", "passwordpassword",
                            "Qwertyuiop123456", "iloveyou1234", "1234567890123", "administrator1",
                            // of the list: as it stands, twice, and with a year
                            "peanutbutter", "cookiecookie", "Butterfly 2024!", "orange*1987*", "invented-2026"})
    EXPECT_EQ(code(s.people->add(anybody(), "Bo Bo Invented", colourist, plain)), "passphrase_plain") << plain;
  EXPECT_EQ(code(s.people->add(anybody(), "Bo", colourist, "elevensigns")), "passphrase_short");
  EXPECT_EQ(code(s.people->add(anybody(), "Bo", colourist, std::string(2000, 'x'))), "too_long");
  EXPECT_EQ(code(s.people->add(anybody(), " ", colourist, good)), "name_missing");
  EXPECT_EQ(code(s.people->add(anybody(), "B\no", colourist, good)), "control_character");
  EXPECT_EQ(code(s.people->add(anybody(), "ADA invented", colourist, good)), "name_taken");
  EXPECT_TRUE(s.people->add(anybody(), "Bo", colourist, "only small letters"));
  EXPECT_TRUE(s.people->add(anybody(), "Bea", colourist, "peanutbutter wet orange towels")) << "more than two pieces";
  EXPECT_TRUE(s.people->add(anybody(), "Cleo", colourist, "74 09 31 58 26 x")) << "digits that nobody has";
}

TEST(People, TheListOfCommonPasswordsHoldsThreeThousand) {
  const CommonPasswords common = cheap().common;
  EXPECT_GE(common.digests.size(), 3000u);
  EXPECT_TRUE(common.has("peanutbutter"));
  EXPECT_FALSE(common.has("brown tape on blue jars"));
  EXPECT_EQ(code(read_common_passwords(wire::Json{{"longest", 4}})), "missing_key");
  EXPECT_EQ(code(read_common_passwords(*wire::parse(R"({"longest": 4, "digests": [7]})"))), "wrong_type");
}

TEST(People, OutliveAStart) {
  Salon s;
  const std::string token = s.found().token;
  s.people->add(anybody(), "Bo", assistant, other);
  s.restart();
  EXPECT_EQ(s.people->who(token)->person.name, "Ada Invented");
  EXPECT_EQ(s.people->who(token)->person.roles, owner | colourist);
  const auto bo = s.enter("bo", other);
  ASSERT_TRUE(bo);
  EXPECT_EQ(bo->who.person.roles, assistant);
  EXPECT_NE(bo->token, s.enter("bo", other)->token) << "new at each sign-in";
}

TEST(People, AWrongNameIsAnsweredAsAWrongPassphrase) {
  Salon s;
  s.found();
  const auto wrong = s.enter("Ada Invented", other), nobody = s.enter("Eve", other);
  ASSERT_FALSE(wrong);
  ASSERT_FALSE(nobody);
  EXPECT_EQ(wrong.error(), nobody.error());
  EXPECT_EQ(code(wrong), "wrong_secret");
  // And both are kept waiting alike.
  for (int i = 0; i < 5; ++i) s.enter("Ada Invented", other), s.enter("Eve", other);
  EXPECT_EQ(code(s.enter("Ada Invented", good)), "try_later");
  EXPECT_EQ(s.enter("Ada Invented", good).error(), s.enter("Eve", good).error());
}

TEST(People, WaitsGrowAndOutliveAStart) {
  Salon s;
  s.found();
  s.people->add(anybody(), "Bo", assistant, other);
  for (int i = 0; i < 5; ++i) EXPECT_EQ(code(s.enter("Bo", good)), "wrong_secret");
  EXPECT_EQ(s.enter("Bo", other).error().front().params.at("seconds"), "2");
  s.restart();
  EXPECT_EQ(s.enter("Bo", other).error().front().params.at("seconds"), "2");
  EXPECT_TRUE(s.enter("Ada Invented", good)) << "others come in meanwhile";
  int waited = 0;
  for (int i = 0; i < 12; ++i) {
    const auto tried = s.enter("Bo", good);
    if (code(tried) == "try_later") {
      waited = std::stoi(tried.error().front().params.at("seconds"));
      *s.minutes += waited / 60 + 1;
      --i;
      continue;
    }
  }
  EXPECT_EQ(waited, 900) << "and no longer";
  EXPECT_EQ(code(s.enter("Bo", other)), "try_later");
  *s.minutes += 16;
  EXPECT_TRUE(s.enter("Bo", other)) << "then the right one opens";
  EXPECT_EQ(code(s.enter("Bo", good)), "wrong_secret") << "and tries are free again";
  EXPECT_TRUE(s.enter("Bo", other));
}

TEST(People, AnAddressThatTriesManyNamesWaits) {
  Salon s;
  s.found();
  for (int i = 0; i < 20; ++i) EXPECT_EQ(code(s.enter("name " + std::to_string(i), other)), "wrong_secret");
  EXPECT_EQ(code(s.enter("another", other)), "try_later");
  const auto elsewhere =
      s.people->sign_in({.name = "Ada Invented", .person = {}, .secret = good, .device_token = {}, .address = "there"});
  EXPECT_TRUE(elsewhere);
  *s.minutes += 2;
  EXPECT_TRUE(s.enter("Ada Invented", good)) << "a minute at most";
}

TEST(People, ABurstTriesNoMoreThanItsTurns) {
  Salon s;
  s.found();
  std::atomic<int> wrong = 0, later = 0, busy = 0;
  std::vector<std::thread> all;
  for (int i = 0; i < 40; ++i) {
    all.emplace_back([&] {
      const std::string got = code(s.enter("Ada Invented", other));
      ++(got == "wrong_secret" ? wrong : got == "try_later" ? later : busy);
    });
  }
  for (std::thread& t : all) t.join();
  EXPECT_EQ(wrong, 5) << "tries that are free, and not one for each that came at once";
  EXPECT_EQ(wrong + later + busy, 40);
}

TEST(People, ASessionEndsIdleAndAfterItsHours) {
  Salon s;
  const std::string token = s.found().token;
  for (int i = 0; i < 24; ++i) {
    *s.minutes += 29;
    EXPECT_TRUE(s.people->who(token)) << i;
  }
  *s.minutes += 29;
  EXPECT_EQ(code(s.people->who(token)), "not_signed_in") << "twelve hours, whatever the use";
  const std::string next = s.enter("Ada Invented", good)->token;
  *s.minutes += 31;
  EXPECT_EQ(code(s.people->who(next)), "not_signed_in");
  *s.minutes -= 31;
  EXPECT_EQ(code(s.people->who(next)), "not_signed_in") << "ended for good";
  const auto ended = *s.world.store->facts({.stream = {}, .key = {}, .kind = "session.ended"});
  EXPECT_EQ(ended.size(), 2u);
}

TEST(People, SigningOutAndRevokingEndSessions) {
  Salon s;
  const SignedIn ada = s.found();
  const Person bo = *s.people->add(ada.who, "Bo", manager, other);
  const SignedIn one = *s.enter("Bo", other), two = *s.enter("Bo", other);
  ASSERT_TRUE(s.people->sign_out(one.who));
  EXPECT_EQ(code(s.people->who(one.token)), "not_signed_in");
  EXPECT_TRUE(s.people->who(two.token));
  EXPECT_EQ(code(s.people->revoke(two.who, ada.who.person.id)), "not_your_role");
  ASSERT_TRUE(s.people->revoke(ada.who, bo.id));
  EXPECT_EQ(code(s.people->who(two.token)), "not_signed_in");
  s.restart();
  EXPECT_EQ(code(s.people->who(two.token)), "not_signed_in");
  EXPECT_TRUE(s.people->who(ada.token));
}

TEST(People, WhoLeavesIsOut) {
  Salon s;
  const SignedIn ada = s.found();
  const Person bo = *s.people->add(ada.who, "Bo", colourist, other);
  const SignedIn in = *s.enter("Bo", other);
  ASSERT_TRUE(s.people->leave(ada.who, bo.id));
  EXPECT_EQ(code(s.people->who(in.token)), "not_signed_in");
  EXPECT_EQ(code(s.enter("Bo", other)), "wrong_secret");
  EXPECT_EQ(code(s.people->set_roles(ada.who, bo.id, owner)), "person_not_found");
  EXPECT_TRUE(s.people->add(ada.who, "Bo", colourist, other)) << "the name is free again";
}

TEST(People, TheLastOwnerStays) {
  Salon s;
  const SignedIn ada = s.found();
  EXPECT_EQ(code(s.people->leave(ada.who, ada.who.person.id)), "last_owner");
  EXPECT_EQ(code(s.people->set_roles(ada.who, ada.who.person.id, colourist)), "last_owner");
  s.people->add(ada.who, "Bo", owner, other);
  EXPECT_TRUE(s.people->set_roles(ada.who, ada.who.person.id, colourist));
}

TEST(People, ManagersManageWhoIsNoManager) {
  Salon s;
  const SignedIn ada = s.found();
  s.people->add(ada.who, "Bo", manager | colourist, other);
  const Who bo = s.enter("Bo", other)->who;
  const Person cy = *s.people->add(bo, "Cy", apprentice, good);
  EXPECT_TRUE(s.people->set_roles(bo, cy.id, assistant));
  EXPECT_EQ(code(s.people->set_roles(bo, cy.id, manager)), "not_your_role");
  EXPECT_EQ(code(s.people->set_roles(bo, bo.person.id, owner)), "not_your_role") << "nor makes themselves an owner";
  EXPECT_EQ(code(s.people->add(bo, "Di", owner, good)), "not_your_role");
  EXPECT_EQ(code(s.people->reset(bo, ada.who.person.id, other)), "not_your_role");
  const Who cys = s.enter("Cy", good)->who;
  EXPECT_EQ(code(s.people->add(cys, "Di", assistant, good)), "not_your_role");
  EXPECT_EQ(code(s.people->unpair(bo, "device-1")), "not_your_role");
  EXPECT_EQ(code(s.people->recovery_words(bo, other, "here")), "not_your_role");
}

TEST(People, APinOpensOnAPairedDeviceOnly) {
  Salon s;
  const SignedIn ada = s.found();
  EXPECT_EQ(code(s.people->change_pin(ada.who, other, "493027", "here")), "wrong_secret");
  for (const char* plain : {"49302", "abcdef", "49302x", "4930270000001"})
    EXPECT_EQ(code(s.people->change_pin(ada.who, good, plain, "here")), "pin_not_digits") << plain;
  for (const char* plain : {"111111", "123456", "987654"})
    EXPECT_EQ(code(s.people->change_pin(ada.who, good, plain, "here")), "pin_plain") << plain;
  ASSERT_TRUE(s.people->change_pin(ada.who, good, "493027", "here"));
  const auto with_pin = [&](const std::string& device, const std::string& pin) {
    return s.people->sign_in({{}, ada.who.person.id, pin, true, device, "here"});
  };
  EXPECT_EQ(code(with_pin("", "493027")), "not_paired");
  EXPECT_EQ(code(with_pin("made up", "493027")), "not_paired");
  EXPECT_TRUE(s.people->door("made up")->may_come_in.empty()) << "nobody else is told who works here";
  const Paired tablet = *s.people->pair(ada.who, "Tablet at chair 2");
  EXPECT_EQ(s.people->door(tablet.token)->may_come_in.size(), 1u);
  EXPECT_EQ(code(with_pin(tablet.token, "493028")), "wrong_secret");
  EXPECT_EQ(code(with_pin(tablet.token, good)), "wrong_secret") << "the passphrase is no PIN";
  EXPECT_EQ(code(s.enter("Ada Invented", "493027")), "wrong_secret") << "and the PIN no passphrase";
  s.restart();
  const auto in = with_pin(tablet.token, "493027");
  ASSERT_TRUE(in);
  EXPECT_TRUE(in->who.by_pin);
  EXPECT_EQ(code(s.people->pair(in->who, "Another")), "not_your_role") << "a PIN pairs nothing";
  ASSERT_TRUE(s.people->unpair(ada.who, tablet.device.id));
  EXPECT_EQ(code(s.people->who(in->token)), "not_signed_in");
  EXPECT_EQ(code(with_pin(tablet.token, "493027")), "not_paired");
}

TEST(People, ANewSecretEndsWhatTheOldOneOpened) {
  Salon s;
  const SignedIn ada = s.found(), there = *s.enter("Ada Invented", good);
  EXPECT_EQ(code(s.people->change_passphrase(ada.who, other, other, "here")), "wrong_secret");
  ASSERT_TRUE(s.people->change_passphrase(ada.who, good, other, "here"));
  EXPECT_TRUE(s.people->who(ada.token));
  EXPECT_EQ(code(s.people->who(there.token)), "not_signed_in");
  EXPECT_EQ(code(s.enter("Ada Invented", good)), "wrong_secret");
  EXPECT_TRUE(s.enter("Ada Invented", other));
  const Person bo = *s.people->add(ada.who, "Bo", colourist, other);
  const SignedIn in = *s.enter("Bo", other);
  ASSERT_TRUE(s.people->reset(ada.who, bo.id, good));
  EXPECT_EQ(code(s.people->who(in.token)), "not_signed_in");
  EXPECT_TRUE(s.enter("Bo", good));
}

TEST(People, NothingComesInWhileTheFileCannotBeRead) {
  bool ill = false;
  Salon s(std::shared_ptr<store::Store>(
      std::move(*store::Store::open({.path = ":memory:", .fails = [&] { return ill; }}))));
  const std::string token = s.found().token;
  s.restart();
  ill = true;
  EXPECT_EQ(code(s.people->who(token)), "store_unavailable");
  EXPECT_EQ(code(s.people->who("")), "store_unavailable") << "not taken for a salon without people";
  EXPECT_EQ(code(s.enter("Ada Invented", good)), "store_unavailable");
  ill = false;
  EXPECT_TRUE(s.people->who(token));
  *s.minutes += 29;
  EXPECT_TRUE(s.people->who(token));
  ill = true;
  EXPECT_EQ(code(s.enter("Ada Invented", other)), "store_unavailable") << "a try that cannot be counted";
  ill = false;
  *s.minutes += 29;
  EXPECT_TRUE(s.people->who(token)) << "in use all the same";
}

TEST(People, OpeningsAreFacts) {
  Salon s;
  const SignedIn ada = s.found();
  ASSERT_TRUE(s.people->opened_names(ada.who));
  ASSERT_TRUE(s.people->opened_names(ada.who));
  for (const char* visit : {"visit-1", "visit-1", "visit-2"}) ASSERT_TRUE(s.people->opened_visit(ada.who, visit));
  ASSERT_TRUE(s.people->opened_visit(s.enter("Ada Invented", good)->who, "visit-1"));
  const auto kept = *s.world.store->facts({.stream = "opened-" + ada.who.person.id, .key = {}, .kind = {}});
  ASSERT_EQ(kept.size(), 4u) << "in each session names in bulk as one, each visit by itself";
  EXPECT_EQ(kept[1].body, R"({"visit":"visit-1","session":")" + ada.who.session + "\"}");
}

TEST(People, NoNameSecretOrTokenStandsInTheFile) {
  const auto folder = std::filesystem::temp_directory_path() / ("strandline-people-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const std::string db = folder / "salon.sqlite";
  std::string tokens[2];
  ASSERT_TRUE(make_salon(db, [](World&) { return Result<void>(); }));
  {
    auto world = real_world(db);
    ASSERT_TRUE(world);
    People people(*world, cheap());
    const auto in = people.found({"Ada Invented", good, owner, "Europe/Vienna", "house", "invented"});
    ASSERT_TRUE(in);
    tokens[0] = in->token;
    tokens[1] = people.pair(in->who, "Tablet Invented")->token;
    people.sign_in(
        {.name = "Eve Invented", .person = {}, .secret = other, .device_token = {}, .address = "192.0.2.77"});
    EXPECT_FALSE(people.recovery_words(in->who, good, "here")->empty());
  }
  for (const auto& file : std::filesystem::directory_iterator(folder)) {
    std::ifstream in(file.path(), std::ios::binary);
    const std::string bytes(std::istreambuf_iterator<char>(in), {});
    for (const std::string& word : {std::string("Invented"), std::string(good), std::string(other), tokens[0],
                                    tokens[1], std::string("argon2id"), std::string("192.0.2.77")})
      EXPECT_EQ(bytes.find(word), std::string::npos) << file.path() << ' ' << word;
  }
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace strandline::salon
