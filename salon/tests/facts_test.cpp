#include "strandline/salon/facts.h"

#include <gtest/gtest.h>

#include "strandline/salon/knowledge.h"

namespace strandline::salon {
namespace {

const wire::Sources sources{[](const std::string&) { return std::optional(Shelf{}); },
                            [](const std::string&) { return std::optional(Policy{}); }};

World world() {
  auto counter = std::make_shared<int>(0);
  return {[] { return std::string("2026-03-10T10:00:00Z"); },
          [counter] { return "made-by-the-salon-" + std::to_string(++*counter); },
          std::move(*store::Store::open({":memory:", {}}))};
}

wire::Json document(const std::string& client) {
  return *wire::parse(R"({"schema": "strandline.visit/1", "date": "2026-03-10", "client": ")" + client +
                      R"(", "head": {"areas": [{"id": "top", "spans": [{"id": "all", "to_cm": 5, "level": 5}]}]}})");
}

wire::Json told(const std::string& id, const std::string& kind, const std::string& body) {
  wire::Json out{{"id", id}, {"kind", kind}};
  out["body"] = *wire::parse(body);
  return out;
}

const std::string reached = R"({"zones": [{"zone": "top/all", "level": 6.5, "tone": "gold"}], "said": "lovely"})";

class Facts : public testing::Test {
 protected:
  std::string open(const std::string& client, const std::string& person = {}) {
    return save_new(w, document(client), sources, "visit-of-a-device-" + std::to_string(++visits), person)->summary.id;
  }
  Result<SavedVisit> end(const std::string& id, const wire::Json& more = wire::Json::object(), int seq = 1) {
    wire::Json asked{{"entry", "hand-in-of-" + id}, {"seq", seq}};
    asked.update(more);
    return hand_in(w, clients, id, asked);
  }
  static std::string code(const Problems& problems) { return problems.at(0).code + " " + problems.at(0).path; }

  World w = world();
  Clients clients{w};
  int visits = 0;
};

TEST_F(Facts, AreToldOnceHoweverOftenTheyAreHandedIn) {
  const std::string id = open("Ana");
  const auto fact = told("answered-on-the-device", "gate.answered", R"({"answers": {"age": "adult"}})");
  ASSERT_TRUE(tell(w, id, fact));
  EXPECT_EQ(tell(w, id, fact)->seq, 1);
  EXPECT_EQ(facts_of(w, id)->facts.size(), 1u);
  EXPECT_EQ(facts_of(w, id)->facts[0].body["answers"]["age"], "adult");
  const auto other = tell(w, id, told("answered-on-the-device", "gate.answered", "{}"));
  EXPECT_EQ(code(other.error()), "entry_id_taken ");
}

TEST_F(Facts, AreRefusedWithTheirPlaceAndLeaveNothing) {
  const std::string id = open("Ana");
  const auto refused = [&](const std::string& kind, const std::string& body) {
    return code(tell(w, id, told("an-id-of-the-device", kind, body)).error());
  };
  EXPECT_EQ(refused("coloured", "{}"), "unknown_fact_kind /kind");
  EXPECT_EQ(refused("gate.answered", R"({"answers": {"age": "old"}})"), "unknown_word /body/answers/age");
  EXPECT_EQ(refused("gate.corrected", R"({"corrects": "x", "why": " "})"), "left_empty /body/why");
  EXPECT_EQ(refused("result", R"({"zones": [{"zone": "top/all", "level": 11, "tone": "gold"}]})"),
            "out_of_range /body/zones/0/level");
  EXPECT_EQ(refused("rebooked", R"({"from": "2026-05-01", "until": "2026-04-01"})"), "date_range /body/until");
  const std::string agreed =
      R"({"language": "en", "wished": [], "words": ["Gold."], "minutes": 90, "currency": "EUR",)";
  EXPECT_EQ(refused("agreed", agreed + R"("price_from": 90, "price_to": 80, "signature": {"typed": "A"}})"),
            "price_range /body/price_to");
  EXPECT_EQ(refused("agreed", agreed + R"("price_from": 80, "price_to": 90, "signature": {"strokes": [[0.1, 0.1]]}})"),
            "not_signed /body/signature");
  EXPECT_EQ(refused("test.made", R"({"of": "skin", "site": " ", "name": "Leo"})"), "left_empty /body/site");
  EXPECT_EQ(refused("test.made", R"({"of": "skin", "site": "behind the ear"})"), "missing_key /body");
  EXPECT_EQ(refused("checked", R"({"saw": "nothing"})"), "unknown_word /body/saw");
  EXPECT_EQ(refused("consented", R"({"to": "health", "given": true, "words": "Kept.", "name": ""})"),
            "left_empty /body/name");
  EXPECT_EQ(code(tell(w, "no-such-visit", told("an-id-of-the-device", "stopped", R"({"kind": "sting"})")).error()),
            "visit_not_found ");
  wire::Json old = told("an-id-of-the-device", "stopped", R"({"kind": "sting"})");
  old["version"] = 7;
  EXPECT_EQ(code(tell(w, id, old).error()), "fact_version /version");
  old["version"] = 1, old["made_at"] = "yesterday";
  EXPECT_EQ(code(tell(w, id, old).error()), "bad_instant /made_at");
  EXPECT_TRUE(facts_of(w, id)->facts.empty());
}

TEST_F(Facts, AVisitHandedInIsForgottenAsDraftAndOpensAsItWas) {
  const std::string id = open("Ana");
  const auto result = told("result-of-the-device", "result", reached);
  const auto ended = end(id, {{"facts", wire::Json::array({result})}});
  ASSERT_TRUE(ended);
  EXPECT_EQ(ended->summary.handed_in_at, "2026-03-10T10:00:00Z");
  EXPECT_FALSE(ended->summary.person.empty());
  EXPECT_TRUE(list_visits(w)->visits.empty());
  EXPECT_EQ(open_saved(w, id)->document, document("Ana"));
  const auto facts = facts_of(w, id)->facts;
  ASSERT_EQ(facts.size(), 2u);
  EXPECT_EQ(facts[0].kind, "result");
  EXPECT_EQ(facts[1].kind, "visit.handed_in");
  EXPECT_EQ(facts[0].person, ended->summary.person);
  EXPECT_FALSE(*w.store->verify());

  // Again under the same entry, it changes nothing; another device is told, and its change refused rather than lost.
  EXPECT_EQ(end(id, {{"facts", wire::Json::array({result})}})->summary.handed_in_at, ended->summary.handed_in_at);
  EXPECT_EQ(facts_of(w, id)->facts.size(), 2u);
  EXPECT_EQ(code(end(id, {{"entry", "hand-in-of-another-device"}}).error()), "visit_handed_in ");
  EXPECT_EQ(code(save_change(w, id, 1, document("Ana"), sources).error()), "visit_handed_in ");
  EXPECT_EQ(code(save_new(w, document("Ana"), sources, id).error()), "visit_handed_in ");
  EXPECT_EQ(code(tell(w, id, told("answered-too-late-now", "gate.answered", "{}")).error()), "visit_handed_in ");
  EXPECT_TRUE(tell(w, id, told("rebooked-afterwards", "rebooked", R"({"from": "2026-04-20"})")));
}

TEST_F(Facts, NothingIsHandedInThatAnotherDeviceChangedMeanwhile) {
  const std::string id = open("Ana");
  ASSERT_TRUE(save_change(w, id, 1, document("Ana B"), sources));
  EXPECT_EQ(code(end(id).error()), "visit_changed_elsewhere ");
  EXPECT_EQ(open_saved(w, id)->document["client"], "Ana B");
  const auto bad = told("result-of-the-device", "result", R"({"zones": 3})");
  EXPECT_EQ(code(end(id, {{"facts", wire::Json::array({bad})}}, 2).error()), "wrong_type /facts/0/body/zones");
  EXPECT_TRUE(open_saved(w, id)->summary.handed_in_at.empty());
  EXPECT_TRUE(clients.find("")->empty());
}

TEST_F(Facts, ANameThatIsKnownIsDecidedByAPerson) {
  const std::string first = open("Zoë Ángel"), second = open("zoe angel"), third = open("Zoe Angel"), nobody = open("");
  const std::string person = end(first)->summary.person;
  const auto asked = end(second);
  ASSERT_FALSE(asked);
  EXPECT_EQ(code(asked.error()), "client_same_name /person");
  EXPECT_EQ(asked.error()[0].params.at("ids"), person);
  EXPECT_EQ(end(second, {{"person", person}})->summary.person, person);
  EXPECT_NE(end(third, {{"person", "new"}})->summary.person, person);
  EXPECT_EQ(code(end(nobody, {{"person", "somebody-else"}}).error()), "client_not_found ");
  EXPECT_EQ(end(nobody)->summary.person, "");

  const auto found = clients.find("OE ANG");
  ASSERT_EQ(found->size(), 2u);
  EXPECT_EQ((*found)[1].name, "Zoë Ángel");
  EXPECT_EQ((*found)[1].visits, 2);
  EXPECT_EQ((*found)[1].last_visit, second);
  const auto record = clients.open(person);
  ASSERT_EQ(record->visits.size(), 2u);
  EXPECT_EQ(record->visits[0].visit_id, second) << "newest first";
  // Known from the beginning: nobody is asked.
  EXPECT_EQ(end(open("Zoe", person))->summary.person, person);
}

TEST_F(Facts, ARedoNamesAnEarlierVisitThatIsThere) {
  const std::string first = open("Ana"), second = open("");
  ASSERT_TRUE(end(first));
  const auto redo = [&](const std::string& visit) {
    return told("result-of-the-device", "result",
                R"({"zones": [], "redo": {"cause": "patchy", "visit": ")" + visit + "\"}}");
  };
  EXPECT_EQ(code(tell(w, second, redo("never-handed-in")).error()), "redo_unknown /body/redo/visit");
  EXPECT_TRUE(tell(w, second, redo(first)));
}

TEST_F(Facts, WhatWasErasedHasNoBodyAndNoName) {
  const std::string id = open("Ana");
  const std::string person = end(id)->summary.person;
  ASSERT_TRUE(w.store->erase(person));
  EXPECT_EQ(code(open_saved(w, id).error()), "visit_erased ");
  EXPECT_TRUE(facts_of(w, id)->facts.at(0).erased);
  EXPECT_TRUE(Clients(w).find("ana")->empty());
  EXPECT_EQ(code(clients.open(person).error()), "client_not_found ");
}

}  // namespace
}  // namespace strandline::salon
