#include "strandline/salon/learning.h"

#include <gtest/gtest.h>

#include <cmath>

#include "strandline/salon/facts.h"
#include "strandline/salon/taught.h"

namespace strandline::salon {
namespace {

World world() {
  auto counter = std::make_shared<int>(0);
  return {[] { return std::string("2026-03-10T10:00:00Z"); },
          [counter] { return "made-by-the-salon-" + std::to_string(++*counter); },
          std::move(*store::Store::open({":memory:", {}}))};
}

const House& house() {
  static const House one = *open_house({});
  return one;
}

// A demo visit with its answers, of a head of level 5 with one bowl of a permanent shade on the demo shelf.
wire::Json document(const std::string& client) {
  wire::Json out =
      *wire::parse(*read_file(default_knowledge() / "demo" / "visits" / "salt_and_pepper_two_tones.json", 1u << 20));
  out["client"] = client;
  out["head"] = *wire::parse(
      R"({"areas": [{"id": "top", "scalp": "calm", "spans": [{"id": "roots", "to_cm": 2, "level": 5}]}]})");
  out["aims"] = *wire::parse(R"([{"zone": "*", "level": 6}])");
  out["bowls"] = *wire::parse(R"([{"label": "A", "zones": ["top/roots"], "range": "permanent", "minutes": 35,
      "parts": [{"product": "permanent-6-natural", "grams": 30}, {"product": "developer-6", "grams": 30}]}])");
  return out;
}

class Learns : public testing::Test {
 protected:
  // A visit of Ana whose result was this level; the result's id.
  std::string visit(double level, const std::string& corrects = {}) {
    const std::string id = "visit-of-a-device-" + std::to_string(++visits);
    const auto saved = save_new(w, document("Ana"), shelves.sources(), id, "");
    EXPECT_TRUE(saved) << saved.error()[0].code;
    wire::Json asked{{"entry", "hand-in-" + id}, {"seq", 1}};
    if (!person.empty()) asked["person"] = person;
    const auto ended = hand_in(w, clients, saved->summary.id, asked);
    EXPECT_TRUE(ended) << ended.error()[0].code;
    person = ended->summary.person;
    last_visit = saved->summary.id;
    return tell_result(level, corrects);
  }
  std::string tell_result(double level, const std::string& corrects = {}) {
    const std::string id = "result-of-a-device-" + std::to_string(++results);
    wire::Json body{{"zones", {{{"zone", "top/roots"}, {"level", level}, {"tone", "natural"}}}}};
    if (foreseen) body["foreseen"] = {{{"zone", "top/roots"}, {"level", *foreseen}, {"tone", "natural"}}};
    if (!corrects.empty()) body["corrects"] = corrects;
    const auto told = tell(w, last_visit, {{"id", id}, {"kind", "result"}, {"body", body}});
    EXPECT_TRUE(told) << told.error()[0].code;
    return id;
  }
  double expected() {
    const auto lesson = learning.now();
    EXPECT_TRUE(lesson);
    return (*lesson)->results.back().said.expected;
  }

  World w = world();
  Clients clients{w};
  Shelves shelves{w, house()};
  Learning learning{w, shelves};
  std::string person, last_visit;
  std::optional<double> foreseen;  // of the results that are told
  int visits = 0, results = 0;
};

TEST_F(Learns, FromResultsOfVisitsHandedIn) {
  EXPECT_TRUE((*learning.now())->results.empty());
  visit(5);
  const auto first = (*learning.now())->results.at(0);
  EXPECT_EQ(first.person, person);
  EXPECT_NEAR(first.said.expected, first.said.untaught, 1e-6);
  EXPECT_EQ(first.said.ranges.at(0), "demo/permanent");
  const double seen = std::round(2 * first.said.untaught) / 2 - 1;
  for (int i = 0; i < 4; ++i) visit(seen);
  EXPECT_LT(expected(), first.said.untaught - 0.3);
  EXPECT_TRUE((*learning.now())->unread.empty());
}

// Ten times "as predicted" is no range that takes deeper, though a prediction is named by its half level.
TEST_F(Learns, NoOffsetFromAsPredicted) {
  visit(5);  // teaches; its own expectation is the untaught one
  const double untaught = (*learning.now())->results.at(0).said.untaught;
  ASSERT_TRUE(learning.set_without((*learning.now())->results.at(0).result, true));
  for (const double named : {untaught, std::round(2 * untaught) / 2}) {
    foreseen = named;
    for (int i = 0; i < 5; ++i) visit(named);
  }
  EXPECT_NEAR(expected(), untaught, 0.02);
}

// Undo is doing it again without: as if the result had never been told.
TEST_F(Learns, TakesAResultOutAndInAgain) {
  visit(5);
  const double before = expected();
  visit(5);
  const std::string odd = visit(4.5);
  visit(5);
  const double with = expected();
  ASSERT_TRUE(learning.set_without(odd, true));
  const double without = expected();
  EXPECT_GT(without, with);
  EXPECT_TRUE((*learning.now())->results.at(2).without);
  ASSERT_TRUE(learning.set_without(odd, false));
  EXPECT_EQ(expected(), with);
  // Another program's view of the same file agrees.
  Learning other(w, shelves);
  EXPECT_EQ((*other.now())->results.back().said.expected, with);
  EXPECT_EQ(learning.set_without("nothing", true).error().at(0).code, "result_not_found");
  EXPECT_NE(before, 0);
}

TEST_F(Learns, ACorrectionTakesTheOldResultsPlace) {
  const std::string wrong = visit(3.5);
  ASSERT_EQ((*learning.now())->results.size(), 1u);
  tell_result(5.5, wrong);
  const auto lesson = *learning.now();
  ASSERT_EQ(lesson->results.size(), 1u);
  EXPECT_EQ(lesson->results[0].said.seen, 5.5);
}

// A result that is told before the visit is handed in is learned from once it is.
TEST_F(Learns, FromAResultToldBeforeTheEnd) {
  const auto saved = save_new(w, document("Bea"), shelves.sources(), "visit-told-early", "");
  ASSERT_TRUE(saved);
  last_visit = saved->summary.id;
  tell_result(5.5);
  EXPECT_TRUE((*learning.now())->results.empty());
  EXPECT_EQ((*learning.now())->unread.size(), 1u);
  const auto ended = hand_in(w, clients, last_visit, {{"entry", "hand-in-of-told-early"}, {"seq", 1}});
  ASSERT_TRUE(ended) << ended.error()[0].code;
  EXPECT_EQ((*learning.now())->results.size(), 1u);
  EXPECT_TRUE((*learning.now())->unread.empty());
}

// Whoever is erased teaches nothing any more.
TEST_F(Learns, ForgetsWhoIsErased) {
  visit(5), visit(4.5);
  ASSERT_EQ((*learning.now())->results.size(), 2u);
  ASSERT_TRUE(w.store->erase(person));
  ASSERT_TRUE(w.store->append({.id = "erased-ana",
                               .stream = "clients",
                               .after_seq = store::NewFact::at_the_end,
                               .made_at = w.now(),
                               .kind = "client.erased",
                               .body = "{}"}));
  EXPECT_TRUE((*learning.now())->results.empty());
}

// What was learned of a person changes the forecast of the next visit, and of nobody else's by as much.
TEST_F(Learns, ChangesWhatIsForeseen) {
  const auto foresee = [&](const std::string& whose) {
    const auto answer =
        salon::answer("predict", document("Ana"), shelves.sources(), {}, {}, Taught{*learning.now(), whose, ""});
    EXPECT_TRUE(answer) << answer.error()[0].code;
    return *answer;
  };
  const double plain = foresee("")["zones"][0]["planned"]["lab"]["l"];
  EXPECT_FALSE(foresee("").contains("learned"));
  for (int i = 0; i < 5; ++i) visit(5);
  const auto theirs = foresee(person), others = foresee("");
  EXPECT_LT(theirs["zones"][0]["planned"]["lab"]["l"].get<double>(), plain - 0.5);
  EXPECT_LT(theirs["zones"][0]["planned"]["lab"]["l"].get<double>(),
            others["zones"][0]["planned"]["lab"]["l"].get<double>());
  ASSERT_TRUE(theirs.contains("learned"));
  EXPECT_EQ(theirs["learned"]["zones"][0]["zone"], "top/roots");
  EXPECT_TRUE(theirs["learned"]["words"].is_array());
}

// Enough results that held, and the likelihood is no simulation any more.
TEST_F(Learns, ResultsEarnTheNumber) {
  const auto landing = [&] {
    const auto answer =
        salon::answer("predict", document("Ana"), shelves.sources(), {}, {}, Taught{*learning.now(), person, ""});
    EXPECT_TRUE(answer);
    return (*answer)["zones"][0]["landing"];
  };
  visit(5.5);
  EXPECT_TRUE(landing()["simulated"].get<bool>());
  const double usual = std::round(2 * (*learning.now())->results[0].said.untaught) / 2;
  for (int i = 0; i < 13; ++i) visit(usual);
  EXPECT_FALSE(landing()["simulated"].get<bool>());
  EXPECT_TRUE(landing()["show_number"].get<bool>());
}

}  // namespace
}  // namespace strandline::salon
