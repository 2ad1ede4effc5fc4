// What happened at a visit, kind by kind, as its facts hold it. A body is checked when it is handed in and never
// changed after; what was wrong is told by a later fact that names the one it corrects.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/facts.h"
#include "strandline/formulate.h"
#include "strandline/head.h"
#include "strandline/wire/everyday.h"
#include "strandline/wire/json.h"

namespace strandline::wire {

// The questions before anything is mixed were asked, and answered so.
struct GateAnswered {
  std::string skin_test;
  SkinTest test;
  Answers answers;
};

// An answer was wrong: all of them again, and why.
struct GateCorrected {
  std::string corrects, why;
  GateAnswered now;
};

// A name drawn with a finger or pen, or typed where a hand cannot.
struct Signature {
  std::vector<std::vector<double>> strokes;  // each x, y, x, y … as shares of the width of the pad
  double height = 0;                         // of the pad, as a share of its width
  std::string typed;
};

struct WishedZone {
  std::string zone;
  double level = 0;
  Tone tone = Tone::natural;
  std::string hex;  // as it was shown, "#6b4a35"
};

// What the client agreed to, in the words that stood on the glass.
struct Agreed {
  std::string language;     // BCP 47
  std::string interpreter;  // who said it in the client's language; empty = nobody
  std::vector<WishedZone> wished;
  std::vector<std::string> words, will_not, alternatives, risks, upkeep, raises;
  double minutes = 0, price_from = 0, price_to = 0;
  std::string currency;
  std::vector<Bowl> bowls;
  Signature signature;
};

// `fact` is the fact that does not hold any more.
struct AgreeWithdrawn {
  std::string fact, why;
};

// What really went into one mix of a bowl.
struct Mixed {
  Bowl bowl;
  int mix = 1;
  std::vector<std::string> names;  // of its parts
  std::string range_name;
  std::optional<double> at_min;  // since hands went on
};

struct Applied {
  std::string zone, bowl;
  std::optional<double> from_min, until_min;  // since hands went on; until it was rinsed
};

struct ReachedZone {
  std::string zone;
  double level = 0;
  Tone tone = Tone::natural;
  std::optional<Lab> measured;
};

enum class Pleased { not_asked, yes, partly, no };
enum class RedoCause { tone, level, patchy, white_shows, faded, broke, wish_changed, other };

// `visit` is the earlier one that is done again.
struct Redo {
  std::string visit;
  RedoCause cause = RedoCause::tone;
};

struct VisitResult {
  std::vector<ReachedZone> zones;
  std::vector<ReachedZone> foreseen;  // of what was mixed, before anybody looked
  std::optional<Head> after;          // the head as it left
  Pleased pleased = Pleased::not_asked;
  std::string said, note;
  std::optional<Redo> redo;
  std::optional<double> cut_cm;
  std::string corrects;  // an earlier result; empty = the first
};

// Everything was stopped; `kind` is empty until somebody had time to say what it was.
struct StoppedNow {
  std::optional<IncidentKind> kind;
  std::optional<double> at_min;  // since hands went on
  std::vector<std::string> zones, bowls;
};

// It goes on after a stop: `fact` is the stop.
struct StopOver {
  std::string fact, why;
};

enum class Feels { well, cold, warm, itches, stings };

// The client was asked how it feels while something was on.
struct Comfort {
  Feels feels = Feels::well;
  std::optional<double> at_min;  // since hands went on
  std::string said;
};

enum class Serious { no, incapacity, disability, hospital, birth_defect, life, death };
enum class Where { scalp, hair, eyes, face, neck, hands, lips, airways, elsewhere };
enum class Course { not_known, over, better, the_same, worse };

// What a maker, an authority or an insurer asks after an undesirable effect.
struct IncidentRecord {
  IncidentKind kind = IncidentKind::sting;
  Serious serious = Serious::no;
  std::vector<Where> where;
  bool inside_application = true;
  std::string onset;       // civil date
  std::string onset_note;  // how long after the first and the last use
  std::string signs, first_aid, advice, doctor, history;
  std::string product, maker, batch, used_before;
  std::string birth_year, sex, country;
  YesNo confirmed_by_doctor = YesNo::unknown, stopped_using = YesNo::unknown, happened_again = YesNo::unknown;
  Course course = Course::not_known;
  std::string told_whom;  // and when
  bool may_be_shared = false;
  std::string corrects;
};

struct AftercareGiven {
  std::string language;
  std::vector<std::string> words;
};

// Civil dates; empty = none.
struct Rebooked {
  std::string from, until, day, test_by;
};

// The newest version of a kind of fact that a device may tell of a visit; nothing = there is no such kind.
std::optional<int> version_of(std::string_view kind);
// Of what a visit still has to do: told once it is handed in, it comes too late.
bool before_the_end(std::string_view kind);
// Checks the body of a fact at `path`. Problems beside those of the codec: unknown_fact_kind {kind} ·
// left_empty {key} · price_range {from, until} · date_range {from, until} · not_signed · photo_refused {why} ·
// paid_more {due, paid}.
Problems check_happened(std::string_view kind, const Json& body, const std::string& path);

}  // namespace strandline::wire
