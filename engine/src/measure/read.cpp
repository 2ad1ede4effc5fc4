#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>

#include "measure/table.h"
#include "strandline/cgats.h"
#include "strandline/measured.h"

namespace strandline::measured {
namespace {

// White powders with brighteners come near this; hair does not.
constexpr double kMostReflectance = 1.6, kMostTone = 150;

std::string upper(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

tl::unexpected<Problems> impossible(int line, const std::string& field, double got) {
  return tl::unexpected(Problems{{"measured_impossible",
                                  "/lines/" + std::to_string(line),
                                  {{"line", std::to_string(line)}, {"field", field}, {"got", std::to_string(got)}}}});
}

Result<void> possible(const Lab& c, int line) {
  if (!(c.l >= 0 && c.l <= 100)) return impossible(line, "L*", c.l);
  if (!(std::abs(c.a) <= kMostTone)) return impossible(line, "a*", c.a);
  if (!(std::abs(c.b) <= kMostTone)) return impossible(line, "b*", c.b);
  return {};
}

std::string name_of(const cgats::Table& t, int row) {
  for (const char* field : {"SAMPLE_NAME", "SAMPLE_LOC", "SAMPLE_ID", "NAME", "SAMPLE", "SHADE"})
    if (const auto at = t.field(field); at && !t.rows[static_cast<size_t>(row)].cells[static_cast<size_t>(*at)].empty())
      return t.rows[static_cast<size_t>(row)].cells[static_cast<size_t>(*at)];
  return std::to_string(row + 1);
}

// For which light and observer the file's own L*a*b* are; nothing where it is what is meant here.
std::string other_light(const cgats::Table& t) {
  std::string said;
  for (const cgats::Keyword& k : t.keywords)
    if (const std::string key = upper(k.key); key == "ILLUMINANT" || key == "OBSERVER" || key == "WEIGHTING_FUNCTION" ||
                                              key == "ILLUMINATION_NAME" || key == "OBSERVER_ANGLE")
      said += (said.empty() ? "" : ", ") + k.value;
  const std::string all = upper(said);
  const bool ours = all.find("D65") != all.npos && all.find("10") != all.npos;
  // Graphic arts mean D50 and 2° where nothing is said (ISO 13655).
  return ours ? "" : said.empty() ? "D50/2" : said;
}

Result<Sample> sample(const cgats::Table& t, int row, bool spectra) {
  Sample s;
  s.name = name_of(t, row), s.line = t.rows[static_cast<size_t>(row)].line;
  if (spectra) {
    const auto r = cgats::spectrum(t, row);
    if (!r) return tl::unexpected(r.error());
    for (int b = 0; b < kBands; ++b)
      if (!((*r)[b] >= -0.01 && (*r)[b] <= kMostReflectance))
        return impossible(s.line, std::to_string(static_cast<int>(band_nm(b))) + " nm", (*r)[b]);
    s.reflectance = *r;
    for (double& v : *s.reflectance) v = std::clamp(v, 0.0, 1.0);
    s.lab = lab(*r, weights(Light::daylight, Observer::cie_1964_10deg));
    return s;
  }
  const auto c = cgats::lab(t, row);
  if (!c) return tl::unexpected(c.error());
  s.lab = *c;
  if (const auto good = possible(s.lab, s.line); !good) return tl::unexpected(good.error());
  return s;
}

bool has_lab(const cgats::Table& t) { return t.field("LAB_L") && t.field("LAB_A") && t.field("LAB_B"); }

}  // namespace

Result<File> read(std::string_view text) {
  const bool exchange = upper(text.substr(0, 1 << 20)).find("BEGIN_DATA") != std::string::npos;
  auto document = exchange ? cgats::read(text) : read_table(text);
  if (!document) return tl::unexpected(document.error());
  File out;
  out.notes = document->notes;
  for (const cgats::Table& t : document->tables) {
    const bool spectra = !t.rows.empty() && cgats::spectrum(t, 0).has_value();
    if (!spectra && !has_lab(t)) continue;
    for (int i = 0; i < static_cast<int>(t.rows.size()); ++i) {
      auto s = sample(t, i, spectra);
      if (!s) return tl::unexpected(s.error());
      out.samples.push_back(std::move(*s));
    }
    if (const std::string light = other_light(t); !spectra && !light.empty() && exchange)
      out.notes.push_back({"measured_other_light", "", {{"light", light}}});
  }
  if (!out.samples.empty()) return out;
  // What stands in the way of the first table's spectrum says most.
  if (!document->tables.empty() && !document->tables[0].rows.empty())
    if (const auto first = cgats::spectrum(document->tables[0], 0);
        !first && first.error()[0].code != "spectrum_no_columns")
      return tl::unexpected(first.error());
  return tl::unexpected(Problems{{"measured_nothing", "", {}}});
}

Result<Lab> typed(std::string_view text) {
  const auto wrong = [&] {
    return tl::unexpected(Problems{{"lab_typed", "", {{"got", std::string(text.substr(0, 60))}}}});
  };
  std::vector<double> numbers;
  std::string word;
  const auto end_word = [&] {
    if (word.empty()) return true;
    const auto n = cgats::number(word);
    word.clear();
    if (n) numbers.push_back(*n);
    return n.has_value();
  };
  for (const char c : text) {
    if (c != ' ' && c != ';' && c != '\t' && c != '/') {
      word += c;
    } else if (!end_word()) {
      return wrong();
    }
  }
  if (!end_word() || numbers.size() != 3) return wrong();
  const Lab out{numbers[0], numbers[1], numbers[2]};
  return possible(out, 1).map([&] { return out; });
}

}  // namespace strandline::measured
