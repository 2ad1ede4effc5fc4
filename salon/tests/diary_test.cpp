#include "strandline/salon/diary.h"

#include <gtest/gtest.h>

#include "strandline/salon/facts.h"

namespace strandline::salon {
namespace {

class DiaryTest : public testing::Test {
 protected:
  World world() {
    auto counter = std::make_shared<int>(0);
    return {[this] { return now; }, [counter] { return "made-by-the-salon-" + std::to_string(++*counter); },
            std::move(*store::Store::open({":memory:", {}}))};
  }
  static wire::Json line(const std::string& at, double minutes, wire::Json more = wire::Json::object()) {
    wire::Json out{{"starts_at", at}, {"minutes", minutes}, {"kind", "other"}};
    out.update(more);
    return out;
  }
  Result<DiaryLine> save(const std::string& id, const wire::Json& booking, int seq = 0, bool beside = false) {
    wire::Json asked{{"id", id}, {"entry", "save-" + std::to_string(++entries) + "-of-" + id}, {"seq", seq}};
    asked["booking"] = booking;
    if (beside) asked["beside"] = true;
    return diary.save(asked);
  }
  template <class T>
  static std::string code(const Result<T>& got) {
    return got ? "" : got.error().at(0).code;
  }

  std::string now = "2026-03-10T10:00:00Z";
  DiaryRules rules{.opens_min = 540,
                   .closes_min = 1140,
                   .grid_min = 15,
                   .late_min = 10,
                   .test_lead_h = 48,
                   .test_min = 15,
                   .call_days = 7};
  World w = world();
  Diary diary{w, rules};
  int entries = 0;
};

TEST_F(DiaryTest, KeepsEachVersionAndAnswersTheSameEntryTheSame) {
  const wire::Json asked{{"id", "booking-of-device-1"},
                         {"entry", "entry-of-device-1"},
                         {"seq", 0},
                         {"booking", line("2026-03-12T09:00:00Z", 90, {{"client", "Ana"}})}};
  const auto first = diary.save(asked);
  ASSERT_TRUE(first) << code(first);
  EXPECT_EQ(first->seq, 1);
  EXPECT_EQ(diary.save(asked)->seq, 1) << "handed in again";
  const auto moved = save("booking-of-device-1", line("2026-03-12T11:00:00Z", 90, {{"client", "Ana"}}), 1);
  ASSERT_TRUE(moved);
  EXPECT_EQ(moved->seq, 2);
  EXPECT_EQ(code(save("booking-of-device-1", line("2026-03-12T12:00:00Z", 90), 1)), "booking_changed_elsewhere");
  EXPECT_EQ(w.store->facts({.after = 0, .stream = "booking-of-device-1", .key = "", .kind = ""})->size(), 2u);
  Diary again(w, rules);
  EXPECT_EQ(again.open("booking-of-device-1")->booking.starts_at, "2026-03-12T11:00:00Z");
  EXPECT_EQ(code(again.open("nothing")), "booking_not_found");
}

TEST_F(DiaryTest, GivesAnHourToOneOfTwoDevices) {
  ASSERT_TRUE(save("booking-of-device-1", line("2026-03-12T09:00:00Z", 60, {{"with", "mia"}})));
  const auto second = save("booking-of-device-2", line("2026-03-12T09:30:00Z", 60, {{"with", "mia"}}));
  ASSERT_FALSE(second);
  EXPECT_EQ(second.error()[0].code, "hour_taken");
  EXPECT_EQ(second.error()[0].params.at("id"), "booking-of-device-1");
  EXPECT_TRUE(save("booking-of-device-2", line("2026-03-12T09:30:00Z", 60, {{"with", "leo"}})));
  EXPECT_TRUE(save("booking-of-device-3", line("2026-03-12T10:00:00Z", 60, {{"with", "mia"}}))) << "right after";
  EXPECT_TRUE(save("booking-of-device-4", line("2026-03-12T09:30:00Z", 60, {{"with", "mia"}}), 0, true)) << "knowingly";
  EXPECT_TRUE(save("booking-of-device-1", line("2026-03-12T09:00:00Z", 60, {{"state", "cancelled"}}), 1));
}

TEST_F(DiaryTest, OffersPausesThatALateVisitDoesNotEat) {
  const wire::Json pause = wire::Json::array({wire::Json{{"from_min", 45}, {"until_min", 100}}});
  ASSERT_TRUE(save("booking-of-device-1", line("2026-03-12T09:00:00Z", 150, {{"hands_off", pause}})));
  const auto starts = diary.free_starts({"2026-03-12T09:00:00Z", "2026-03-12T12:00:00Z", 30, ""});
  ASSERT_TRUE(starts);
  ASSERT_EQ(starts->size(), 2u);
  EXPECT_EQ(starts->at(0).starts_at, "2026-03-12T10:00:00Z") << "9:45 and ten minutes late are past 9:45";
  EXPECT_EQ(starts->at(0).inside, "booking-of-device-1");
  EXPECT_EQ(starts->at(1).starts_at, "2026-03-12T11:30:00Z");
  EXPECT_EQ(starts->at(1).inside, "");
  EXPECT_TRUE(save("booking-of-device-2", line("2026-03-12T10:00:00Z", 30)));
  EXPECT_EQ(code(save("booking-of-device-3", line("2026-03-12T10:15:00Z", 30))), "hour_taken");
  EXPECT_EQ(code(diary.free_starts({"x", "2026-03-12T12:00:00Z", 30, ""})), "bad_request");
  EXPECT_EQ(code(diary.free_starts({"2026-03-12T09:00:00Z", "2026-03-12T12:00:00Z", 0, ""})), "bad_request");
}

TEST_F(DiaryTest, WantsTheTestTwoDaysBeforeColour) {
  const wire::Json colour{{"kind", "colour"}};
  const auto soon = save("colour-of-device-1", line("2026-03-12T09:59:00Z", 90, colour));
  ASSERT_FALSE(soon);
  EXPECT_EQ(soon.error()[0].code, "test_too_soon");
  EXPECT_EQ(soon.error()[0].params.at("from"), "2026-03-12T10:00:00Z");
  EXPECT_TRUE(save("colour-of-device-1", line("2026-03-12T09:59:00Z", 90, {{"kind", "colour"}, {"test", "valid"}})));
  ASSERT_TRUE(save("test-of-device-1", line("2026-03-11T09:00:00Z", 15, {{"kind", "test"}})));
  const wire::Json linked{{"kind", "colour"}, {"test_booking", "test-of-device-1"}};
  const auto early = save("colour-of-device-2", line("2026-03-13T08:00:00Z", 60, linked));
  ASSERT_FALSE(early);
  EXPECT_EQ(early.error()[0].code, "test_too_late");
  EXPECT_EQ(early.error()[0].params.at("until"), "2026-03-11T08:00:00Z");
  EXPECT_TRUE(save("colour-of-device-2", line("2026-03-13T09:00:00Z", 60, linked)));
  EXPECT_EQ(code(save("test-of-device-1", line("2026-03-11T09:15:00Z", 15, {{"kind", "test"}}), 1)), "test_too_late");
  now = "2026-03-13T09:00:00Z";
  wire::Json begun = linked;
  begun.update(wire::Json{{"state", "came"}, {"visit", "visit-of-device-1"}});
  EXPECT_TRUE(save("colour-of-device-2", line("2026-03-13T09:00:00Z", 60, begun), 1)) << "nothing was moved";
  const wire::Json wrong{{"kind", "colour"}, {"test_booking", "colour-of-device-2"}};
  EXPECT_EQ(code(save("colour-of-device-3", line("2026-03-20T09:00:00Z", 60, wrong))), "not_a_test");
}

TEST_F(DiaryTest, TellsTestsThatAreMissingOrUnread) {
  ASSERT_TRUE(save("test-of-device-1", line("2026-03-11T09:00:00Z", 15, {{"kind", "test"}})));
  ASSERT_TRUE(save("colour-of-device-1",
                   line("2026-03-16T09:00:00Z", 60, {{"kind", "colour"}, {"test_booking", "test-of-device-1"}})));
  ASSERT_TRUE(save("colour-of-device-2", line("2026-03-17T09:00:00Z", 60, {{"kind", "colour"}})));
  const auto before = diary.tests_due();
  ASSERT_EQ(before->size(), 1u);
  EXPECT_EQ(before->at(0).due, TestDue::to_make);
  EXPECT_EQ(before->at(0).since, "2026-03-15T09:00:00Z");
  EXPECT_EQ(before->at(0).colour, "colour-of-device-2");
  ASSERT_TRUE(save("test-of-device-1", line("2026-03-11T09:00:00Z", 15, {{"kind", "test"}, {"state", "came"}}), 1));
  now = "2026-03-13T08:59:00Z";
  EXPECT_EQ(diary.tests_due()->size(), 1u) << "two days are not over";
  now = "2026-03-13T09:00:00Z";
  ASSERT_EQ(diary.tests_due()->size(), 2u);
  EXPECT_EQ(diary.tests_due()->at(1).due, TestDue::to_read);
  EXPECT_EQ(diary.tests_due()->at(1).colour, "colour-of-device-1");
  ASSERT_TRUE(save("test-of-device-1",
                   line("2026-03-11T09:00:00Z", 15, {{"kind", "test"}, {"state", "came"}, {"read", true}}), 2));
  EXPECT_EQ(diary.tests_due()->size(), 1u);
}

// Vienna: 2026-03-29 01:00Z is both 02:00 and 03:00; a visit begun at 00:30 that takes three hours ends at 04:30 there.
TEST_F(DiaryTest, CountsTrueMinutesOverTheNightOnWhichClocksAreChanged) {
  ASSERT_TRUE(save("booking-of-device-1", line("2026-03-28T23:30:00Z", 180)));
  EXPECT_EQ(code(save("booking-of-device-2", line("2026-03-29T02:15:00Z", 30))), "hour_taken");
  EXPECT_TRUE(save("booking-of-device-2", line("2026-03-29T02:30:00Z", 30)));
  // That day has 23 hours: from midnight to midnight as its clocks show them.
  EXPECT_EQ(diary.between("2026-03-28T23:00:00Z", "2026-03-29T22:00:00Z")->size(), 2u);
}

TEST_F(DiaryTest, ShowsAVisitThatRunsOverMidnightOnBothDays) {
  ASSERT_TRUE(save("booking-of-device-1", line("2026-03-12T23:00:00Z", 150)));
  EXPECT_EQ(diary.between("2026-03-12T00:00:00Z", "2026-03-13T00:00:00Z")->size(), 1u);
  EXPECT_EQ(diary.between("2026-03-13T00:00:00Z", "2026-03-14T00:00:00Z")->size(), 1u);
  EXPECT_EQ(diary.between("2026-03-13T01:30:00Z", "2026-03-14T00:00:00Z")->size(), 0u);
  EXPECT_EQ(code(save("booking-of-device-2", line("2026-03-13T01:00:00Z", 30))), "hour_taken");
  EXPECT_EQ(code(diary.between("2026-03-14T00:00:00Z", "2026-03-13T00:00:00Z")), "bad_request");
  EXPECT_EQ(code(diary.between("2026-03-13T00:00:00Z", "2026-05-15T00:00:00Z")), "bad_request");
}

TEST_F(DiaryTest, RefusesWhatMakesNoSenseWithItsPlace) {
  const auto refused = [&](const wire::Json& booking) {
    const auto got = save("booking-of-device-1", booking);
    return got ? "" : got.error().at(0).code + " " + got.error().at(0).path;
  };
  EXPECT_EQ(refused(line("2026-02-30T09:00:00Z", 60)), "bad_instant /booking/starts_at");
  EXPECT_EQ(refused(line("2026-02-20T24:00:00Z", 60)), "bad_instant /booking/starts_at");
  EXPECT_EQ(refused(line("2026-03-12T09:00:00Z", 4)), "out_of_range /booking/minutes");
  EXPECT_EQ(refused(line("2026-03-12T09:00:00Z", 60, {{"price_from", 90}, {"price_to", 80}})),
            "price_range /booking/price_to");
  const wire::Json pause = wire::Json::array({wire::Json{{"from_min", 45}, {"until_min", 100}}});
  EXPECT_EQ(refused(line("2026-03-12T09:00:00Z", 60, {{"hands_off", pause}})), "minutes_range /booking/hands_off/0");
  EXPECT_EQ(code(diary.save({{"id", "x"}})), "missing_key");
  EXPECT_EQ(diary.between("2026-01-01T00:00:00Z", "2026-03-01T00:00:00Z")->size(), 0u);
}

TEST_F(DiaryTest, ForgetsWhoWasErased) {
  const std::string ana = "ana-of-the-salon-1";
  ASSERT_TRUE(save("booking-of-device-1", line("2026-03-12T09:00:00Z", 60, {{"person", ana}})));
  ASSERT_TRUE(w.store->append({.id = "erased-" + ana,
                               .stream = ana,
                               .after_seq = store::NewFact::at_the_end,
                               .made_at = now,
                               .kind = "client.erased",
                               .body = "{}"}));
  EXPECT_EQ(code(diary.open("booking-of-device-1")), "booking_not_found") << "in memory";
  ASSERT_TRUE(w.store->erase(ana));
  Diary again(w, rules);
  EXPECT_EQ(again.between("2026-03-12T00:00:00Z", "2026-03-13T00:00:00Z")->size(), 0u);
}

TEST_F(DiaryTest, ListsWhoWasDueAndDidNotCome) {
  const auto told = [&](const std::string& kind, const std::string& stream, const wire::Json& body,
                        const std::string& person) {
    ASSERT_TRUE(w.store->append({.id = kind + "-" + stream,
                                 .stream = stream,
                                 .after_seq = store::NewFact::at_the_end,
                                 .made_at = now,
                                 .kind = kind,
                                 .body = wire::print(body),
                                 .key = person,
                                 .about = wire::print(wire::Json{{"person", person}})}));
  };
  told("rebooked", "visit-1", {{"from", "2026-02-01"}, {"until", "2026-02-20"}}, "ana");
  told("client.seen", "ana", {{"visit", "visit-1"}, {"date", "2026-01-10"}}, "ana");
  told("rebooked", "visit-2", {{"day", "2026-02-10"}}, "bea");
  told("client.seen", "bea", {{"visit", "visit-3"}, {"date", "2026-02-11"}}, "bea");
  told("rebooked", "visit-4", {{"day", "2026-02-15"}}, "cleo");
  ASSERT_TRUE(save("booking-of-device-1", line("2026-03-12T09:00:00Z", 60, {{"person", "cleo"}})));
  EXPECT_TRUE(diary.people_due("2026-02-26")->empty()) << "not a week yet";
  const auto due = diary.people_due("2026-03-10");
  ASSERT_TRUE(due);
  ASSERT_EQ(due->size(), 1u) << "bea came, cleo is booked";
  EXPECT_EQ(due->at(0).person, "ana");
  EXPECT_EQ(due->at(0).due, "2026-02-20");
  EXPECT_EQ(code(diary.people_due("soon")), "bad_request");
}

// Vienna, 29 March 2026: the clock goes from 02:00 to 03:00, so that the hour of two days before is 47 hours ago.
TEST_F(DiaryTest, CountsTheLeadOfATestInTrueHoursOverTheNightOnWhichClocksAreChanged) {
  const auto colour = [](const std::string& test) {
    return line("2026-03-30T08:00:00Z", 60, {{"kind", "colour"}, {"test_booking", test}});
  };
  ASSERT_TRUE(save("test-of-device-1", line("2026-03-28T09:00:00Z", 15, {{"kind", "test"}})));
  EXPECT_EQ(code(save("colour-of-device-1", colour("test-of-device-1"))), "test_too_late");
  ASSERT_TRUE(save("test-of-device-2", line("2026-03-28T08:00:00Z", 15, {{"kind", "test"}})));
  EXPECT_TRUE(save("colour-of-device-1", colour("test-of-device-2")));
}

TEST_F(DiaryTest, TakesCardsAndListsOfClientsWholeOrNotAtAll) {
  Clients clients{w};
  const std::vector<NewClient> list{{"card-1-of-the-list", "Ana", "2025-11-02", "6.3, 20 g", "0664"},
                                    {"card-2-of-the-list", "Béa", "", "", ""}};
  ASSERT_EQ(clients.add(list)->added, 2);
  ASSERT_EQ(clients.add(list)->added, 2);
  ASSERT_EQ(clients.find("bea")->size(), 1u);
  const auto ana = clients.open("card-1-of-the-list");
  ASSERT_EQ(ana->cards.size(), 1u);
  EXPECT_EQ(ana->cards[0].text, "6.3, 20 g");
  const auto refused =
      clients.add({{"card-3-of-the-list", "Cleo", "", "", ""}, {"card-4-of-the-list", " ", "", "", ""}});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].path, "/clients/1/name");
  EXPECT_EQ(clients.find("")->size(), 2u);
  ASSERT_TRUE(clients.add({{"card-5-of-the-list", "Dora", "2024-01-05", "", ""}}));
  EXPECT_EQ(clients.open("card-5-of-the-list")->cards.size(), 1u) << "a day alone is kept too";
}

// A list that is read a second time has new ids on everybody.
TEST_F(DiaryTest, MakesNobodyTwiceFromAListThatComesAgain) {
  Clients clients{w};
  const std::vector<NewClient> list{{"card-1-of-the-list", "Ana", "2025-11-02", "6.3, 20 g", "0664"},
                                    {"card-2-of-the-list", "Béa", "", "", ""},
                                    {"card-3-of-the-list", "Béa", "", "", ""}};
  ASSERT_EQ(clients.add(list)->added, 3) << "two of one name in one list are two people";
  std::vector<NewClient> again = list;
  for (NewClient& one : again) one.id += "-again";
  again.push_back({"card-4-of-the-list", "Ana", "2025-11-02", "6.3, 20 g", "0699"});
  const auto added = clients.add(again);
  ASSERT_TRUE(added);
  EXPECT_EQ(added->known, 3);
  EXPECT_EQ(added->added, 1) << "another number is another Ana";
  EXPECT_EQ(clients.find("")->size(), 4u);
}

}  // namespace
}  // namespace strandline::salon
