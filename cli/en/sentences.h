// English for every code that engine, wire and salon can say. {name} in a sentence is a parameter of the
// problem.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "strandline/result.h"

namespace strandline::cli::en {

struct Sentence {
  std::string_view code;
  std::string_view text;
  std::string_view remedy;  // what to do; empty for a line that only tells
};

// One table per kind of message; each sorted by nothing, looked up by code.
std::span<const Sentence> document_sentences();  // what is wrong with a document
std::span<const Sentence> work_sentences();      // what cannot be mixed, searched or put on a clock
std::span<const Sentence> reason_sentences();    // why-lines, notes, order of work
std::span<const Sentence> after_sentences();     // of the weeks after the visit
std::span<const Sentence> door_sentences();      // who may come in
std::span<const Sentence> learned_sentences();   // what results taught, and measurement files
std::span<const Sentence> config_sentences();    // what is wrong with a configuration file
std::span<const Sentence> rule_sentences();      // rules by id, what changes them, what can be done today

const Sentence* find(std::string_view code);

// The sentence with its parameters filled in. A code without a sentence is said as it is, with its
// parameters.
std::string say(const Problem& problem);
std::string remedy(const Problem& problem);

// Single words of the answers ("remove_packet" → "take out packet"); a word without a label is returned as it
// is.
std::string_view label(std::string_view word);

}  // namespace strandline::cli::en
