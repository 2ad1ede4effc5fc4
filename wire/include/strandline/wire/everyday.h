// What happens around the bowl every day, as facts of the visit: handing over, refusing, preparing, watching, paying.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/formulate.h"

namespace strandline::wire {

enum class SaidTo { client, parent };

// What was not done, why, and what was offered in its place.
struct Refused {
  std::vector<std::string> reasons;
  std::string offer, words;  // the words as they were said
  SaidTo said_to = SaidTo::client;
  std::string refer_to;  // who can help: a doctor, another salon; empty = nobody
};

// One page for the colleague: what is on since when, what comes next, what was promised.
struct HandedOver {
  std::string to;
  std::vector<std::string> on_hair;
  std::string next, promised;
};

// `fact` is the page that was read and taken over.
struct HandoverAccepted {
  std::string fact, name;
};

struct Briefed {
  std::string to, task;
};

struct BriefConfirmed {
  std::string fact, name;
};

// Lines of the house before the first bowl, by their ids.
struct Prepared {
  std::vector<std::string> done, left_out;
  std::string name;
};

enum class PaidBy { cash, card, transfer, voucher, nothing };

struct PaidLine {
  std::string words;
  double price = 0;
};

// What was asked and given; the till keeps the rest.
struct Paid {
  std::vector<PaidLine> lines;
  double deposit = 0;  // paid before, deducted
  double paid = 0;     // today
  std::string currency, receipt;
  PaidBy by = PaidBy::cash;
};

// For home, from the shelf.
struct Advised {
  std::string product, name, reason;
  double price = 0;
  bool taken = false;
};

struct Bin {
  std::string bin;
  double grams = 0;
};

// Lines of the house on hands, lungs, tools and rest.
struct WorkedClean {
  std::string agent, tools;  // of disinfection
  double contact_min = 0;
  int gloves = 0;  // pairs
  double powder_min = 0, break_min = 0;
  std::vector<Bin> bins;
};

// What an apprentice would do, before the answer is shown.
struct Committed {
  std::string zone;
  double level = 0;
  std::vector<Bowl> bowls;
  std::string why, practice;  // practice = what head it is, where it is nobody's
};

enum class SignOff { skin_test, reading, plan, check, rinse };

struct SignedOff {
  SignOff step = SignOff::reading;
  std::string name, remark;
};

enum class PhotoOf { before, after, wish, skin_test, other };

// By the recipe of the salon: the same view, light and card. A JPEG without anything about where or with what.
struct Photo {
  PhotoOf of = PhotoOf::after;
  std::string view, light, card;
  std::string jpeg;     // base64
  std::string consent;  // who agreed to it being kept, in their words or name
};

// The bytes of a base64 text; nothing = it is none.
std::optional<std::string> bytes_of_base64(const std::string& text);
// Why these bytes are no photo that may be kept: "not_jpeg", "metadata" (Exif, XMP, comment), "cut_short"; "" = they
// are one.
std::string photo_trouble(const std::string& bytes);

}  // namespace strandline::wire
