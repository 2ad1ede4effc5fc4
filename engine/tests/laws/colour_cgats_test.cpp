// What must hold for every measurement file, also for broken ones.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "strandline/cgats.h"

namespace strandline::cgats {
namespace {

std::string quoted(const std::string& word) {
  std::string out = "\"";
  for (char c : word) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + "\"";
}

// A word as the file has it: any printable ASCII, quotes where it needs them.
std::string word() { return *rc::gen::nonEmpty(rc::gen::container<std::string>(rc::gen::inRange<char>(' ', '~'))); }

struct Sample {
  std::vector<std::vector<std::string>> rows;
  std::string text;
};

Sample any_file() {
  const int fields = *rc::gen::inRange(1, 6), rows = *rc::gen::inRange(0, 6);
  const std::string eol = *rc::gen::element<std::string>("\n", "\r\n", "\r");
  const std::string gap = *rc::gen::element<std::string>(" ", "\t", "  \t ");
  Sample s;
  s.text = "CGATS.17" + eol + "# a comment" + eol + "NUMBER_OF_FIELDS " + std::to_string(fields) + eol +
           "BEGIN_DATA_FORMAT" + eol;
  for (int f = 0; f < fields; ++f) s.text += "F" + std::to_string(f) + gap;
  s.text += eol + "END_DATA_FORMAT" + eol + "BEGIN_DATA" + eol;
  for (int r = 0; r < rows; ++r) {
    std::vector<std::string> cells;
    for (int f = 0; f < fields; ++f) cells.push_back(word());
    for (const auto& c : cells) s.text += quoted(c) + gap;
    s.text += eol;
    s.rows.push_back(cells);
  }
  s.text += "END_DATA" + eol;
  return s;
}

RC_GTEST_PROP(CgatsLaws, WhatIsWrittenIsRead, ()) {
  const Sample s = any_file();
  const auto doc = read(s.text);
  RC_ASSERT(bool(doc));
  RC_ASSERT(doc->tables.size() == 1u);
  RC_ASSERT(doc->tables[0].rows.size() == s.rows.size());
  for (std::size_t r = 0; r < s.rows.size(); ++r) RC_ASSERT(doc->tables[0].rows[r].cells == s.rows[r]);
}

std::string spectral_file() {
  std::string names = "SAMPLE_ID LAB_L LAB_A LAB_B", values = "1 30,5 4.5 6";
  for (int nm = 380; nm <= 730; nm += 10) names += " SPEC_" + std::to_string(nm), values += " 0,0" + std::to_string(nm);
  return "ISO28178\nSPECTRAL_NORM 1\nNUMBER_OF_FIELDS 40\nBEGIN_DATA_FORMAT\n" + names +
         "\nEND_DATA_FORMAT\nNUMBER_OF_SETS 2\nBEGIN_DATA\n" + values + "\n" + values + "\nEND_DATA\n";
}

// Cuts, doubles, swaps and overwrites pieces.
std::string mutated(std::string text) {
  const int edits = *rc::gen::inRange(1, 8);
  for (int e = 0; e < edits && !text.empty(); ++e) {
    const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
    const auto length = *rc::gen::inRange<std::size_t>(0, std::min<std::size_t>(40, text.size() - at) + 1);
    const auto piece = text.substr(at, length);
    switch (*rc::gen::inRange(0, 5)) {
      case 0:
        text.erase(at, length);
        break;
      case 1:
        text.insert(at, piece);
        break;
      case 2:
        text.insert(*rc::gen::inRange<std::size_t>(0, text.size()), piece);
        break;
      case 3:
        text.insert(at, *rc::gen::element<std::string>("\"", "#", "\n", "\t", "BEGIN_DATA ", "END_DATA\n", "1e999", "-",
                                                       "NaN"));
        break;
      default:
        text[at] = static_cast<char>(*rc::gen::inRange(0, 256));
    }
  }
  return text;
}

RC_GTEST_PROP(CgatsLaws, BrokenFilesAreReadOrRefusedNeverHalf, ()) {
  const auto doc = read(mutated(spectral_file()));
  if (!doc) {
    RC_ASSERT(!doc.error().empty());
    for (const auto& p : doc.error()) RC_ASSERT(p.code.starts_with("cgats_") && p.params.contains("line"));
    return;
  }
  RC_ASSERT(!doc->tables.empty());
  for (const auto& t : doc->tables)
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
      RC_ASSERT(t.rows[i].cells.size() == t.fields.size());
      const auto s = spectrum(t, static_cast<int>(i));
      if (s)
        for (double v : *s) RC_ASSERT(std::isfinite(v));
      const auto l = lab(t, static_cast<int>(i));
      RC_ASSERT(l || !l.error().empty());
    }
}

}  // namespace
}  // namespace strandline::cgats
