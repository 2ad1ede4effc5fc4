// Verdicts before bowls: the rules of law, trade and house (knowledge/rules), what they say of a visit, and what they
// leave open. A verdict limits what may be mixed; nothing typed opens what a rule stops but a right answer to what it
// asks.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/result.h"

namespace strandline {

struct Visit;

// Law is never removed; a floor may only be tightened; a house rule may be set or left out by the house.
enum class Standing { law, floor, house };
// stop: closed here today · ceiling: a number that may not be passed · restrict: open under a condition · ask: closed
// until a question or a test is answered · say: words only.
enum class Says { stop, ceiling, restrict, ask, say };

// One number of a rule, set by the house.
struct RuleValue {
  std::string rule, figure;
  double value = 0;
};

struct RulePolicy {
  std::string country = "eu";     // "eu", "uk", "us"
  bool skin_test_asked = true;    // whether this house asks for one
  std::vector<std::string> off;   // house rules left out
  std::vector<RuleValue> values;  // house values instead of the defaults
};

// Rules that do not exist, law or floor left out or loosened: problems with their place under `path`.
Problems check(const RulePolicy& policy, const std::string& path = "/policy/rules");

struct RuleFigure {
  std::string_view name;
  double value = 0;
};

// One row of knowledge/rules. Several rows may share an id: parts of one rule for different classes.
struct Rule {
  std::string_view id, topic;
  Standing standing = Standing::house;
  std::string_view source;
  std::vector<std::string_view> places, classes;  // "all", "any"
  std::string_view skin, span;                    // "any" · yes, no · new_growth, lengths, packets
  std::vector<std::string_view> when;  // any of these; each all of its words: "fact", "fact<figure", "fact>=figure"
  Says says = Says::say;
  bool of_wish = false;  // about what is asked for or what a first step changes: the search keeps to it step by step
  std::vector<RuleFigure> figures, least;  // least a house may set of a floor's figure
  std::vector<std::string_view> change, today;
};

// In order of precedence within each topic; version of the whole.
const std::vector<Rule>& rules();
int rules_version();

// What a rule says of this visit.
struct Verdict {
  std::string rule, topic;
  Standing standing = Standing::house;
  Says says = Says::say;
  std::string source;
  std::vector<std::string> classes, zones;  // where: classes of the shelf, "area/span" in document order
  std::string bowl;                         // label of the own bowl that breaks it, empty = of the visit
  std::string fact;                         // that decided
  std::map<std::string, double> figures;    // the limits of the rule; "found": the number that decided, if it is one
  std::vector<std::string> change;          // what would change it
  std::vector<std::string> today;           // what can be done today
};

enum class Go { go, restricted, stopped };

struct Verdicts {
  Go go = Go::go;
  std::vector<Verdict> list;  // law first, then floors, stops, limits, words
};

// What the rules say of the zones that have a wish, or of all where none has one. Requires check(visit) empty.
Verdicts verdicts(const Visit& visit);

// Rules that the visit's own bowls pass, each with its bowl: none of them may be mixed. Requires check(visit) empty.
std::vector<Verdict> passed_by_bowls(const Visit& visit);

// The verdicts of the visit and of its own bowls together; where a bowl passes a rule the visit is stopped.
Verdicts with_bowls(const Visit& visit);
// Whether no own bowl passes a rule.
bool may_be_mixed(const Verdicts& verdicts);

// The same visit, every span with what the rules leave open on it. Requires check(visit) empty.
Visit limited(Visit visit);

}  // namespace strandline
