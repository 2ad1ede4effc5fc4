// The visit document: one text that holds all of one visit's main job. "schema": "strandline.visit/1".
//
// What a door adds is named in Sources: a document may write "shelf": "demo" or {"demo": true} and "policy":
// "house" instead of the values themselves, and may leave both out.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "strandline/fade.h"
#include "strandline/misread.h"
#include "strandline/running.h"
#include "strandline/visit.h"
#include "strandline/wire/json.h"

namespace strandline::wire {

inline constexpr std::string_view kVisitSchema = "strandline.visit/1";

struct ShelfRef {
  std::string name;  // "demo"; empty with no `inlined` = the door's own
  std::optional<Shelf> inlined;
};

struct PolicyRef {
  std::string name;  // "house"
  std::optional<Policy> inlined;
};

// Asked of this one answer, not part of the visit.
struct AnswerOptions {
  std::optional<int> scenarios;       // absent = 64 to search, 1024 to report likelihoods
  std::optional<double> seconds;      // a search stops then with the best so far and its gap; absent = 120
  Habit habit;                        // of the weeks that fade looks at
  std::optional<Misreading> misread;  // the answer as it would be if the head had been read wrong by this much
  double weighed_g = 0;               // of the product that ran out, in the bowl already; read by substitute
  double now_min = 0;                 // since the visit began; read by replan
};

// As written.
struct VisitDocument {
  std::string schema, client, date, skin_test;
  SkinTest test;
  Answers answers;
  Head head;
  std::vector<ZoneAim> aims;
  ShelfRef shelf;
  std::vector<Person> people;
  PolicyRef policy;
  std::vector<Bowl> bowls;
  double mix_factor = 1;  // grams against the usual, as this head took them before (M15)
  std::string way;  // kind of the route that the bowls come from; empty = none. Kept for who shows the visit again.
  std::optional<Running> running;
  AnswerOptions options;
};

// The values behind the names. Both requires and absent-vs-failed: nothing = the door knows no such name.
struct Sources {
  std::function<std::optional<Shelf>(const std::string& name)> shelf;
  std::function<std::optional<Policy>(const std::string& name)> policy;
};

struct ReadVisit {
  Visit visit;
  std::optional<Running> running;
  AnswerOptions options;
};

// Decodes, then resolves the names. Problems carry JSON pointers into `document`.
Result<ReadVisit> read_visit(const Json& document, const Sources& sources);

// Places of the engine's values moved to where the document says them: "…/populations/0/level" of a span in
// short is "…/level", "/steps/0/formula/range" is "/bowls/0/range".
Problems place_in(const Json& document, Problems problems);

// A shelf file and a policy file by themselves.
Result<Shelf> read_shelf(const Json& document);
Result<Policy> read_policy(const Json& document);

// JSON Schema (2020-12) of the visit document.
Json visit_schema();

}  // namespace strandline::wire
