#include <algorithm>
#include <cmath>

#include "cgats_text.h"
#include "strandline/cgats.h"

namespace strandline::cgats {
namespace {

// One spectral value of a row: where it stands and for which wavelength.
struct Column {
  int index;
  double nm;
};

tl::unexpected<Problems> refuse(const std::string& code, int line, std::map<std::string, std::string> params = {}) {
  for (auto& [key, value] : params) value = printable(value);
  params.emplace("line", std::to_string(line));
  return tl::unexpected(Problems{{code, "/lines/" + std::to_string(line), std::move(params)}});
}

// The number in a name such as SPEC_380, nm380, SPECTRAL_NM_380, R_380, 380nm or 380.
std::optional<double> number_in(std::string_view name) {
  constexpr std::string_view prefixes[] = {"SPECTRAL_NM_", "SPECTRAL_NM", "SPECTRAL_", "SPEC_", "REFLECTANCE_",
                                           "NM_",          "NM",          "R_",        "SPEC",  "R"};
  for (auto p : prefixes)
    if (name.size() > p.size() && same_word(name.substr(0, p.size()), p)) {
      name.remove_prefix(p.size());
      break;
    }
  if (name.size() > 2 && same_word(name.substr(name.size() - 2), "NM")) name.remove_suffix(2);
  if (name.empty() || name.front() < '0' || name.front() > '9') return std::nullopt;
  return number(name);
}

bool plausible(double nm) { return nm >= 200 && nm <= 2600; }

std::optional<double> keyword_number(const Table& t, std::string_view key) {
  const auto v = t.value(key);
  return v ? number(*v) : std::nullopt;
}

// Wavelengths for names that carry scaled numbers: from the keywords, else by the power of ten that makes
// sense of all.
bool unscale(const Table& t, std::vector<Column>& columns) {
  const auto start = keyword_number(t, "SPECTRAL_START_NM"), end = keyword_number(t, "SPECTRAL_END_NM");
  const auto bands = keyword_number(t, "SPECTRAL_BANDS");
  const std::size_t n = columns.size();
  if (start && end && n > 1) {
    if (bands && *bands != static_cast<double>(n)) return false;
    for (std::size_t i = 0; i < n; ++i) columns[i].nm = *start + (*end - *start) * double(i) / double(n - 1);
    return true;
  }
  for (const double factor : {10.0, 100.0, 1000.0, 10000.0})
    if (std::all_of(columns.begin(), columns.end(), [&](const Column& c) { return plausible(c.nm / factor); })) {
      for (auto& c : columns) c.nm /= factor;
      return true;
    }
  return false;
}

Result<std::vector<Column>> named_columns(const Table& t) {
  std::vector<Column> columns;
  for (std::size_t i = 0; i < t.fields.size(); ++i)
    if (const auto n = number_in(t.fields[i])) columns.push_back({static_cast<int>(i), *n});
  if (columns.size() < 2) return refuse("spectrum_no_columns", t.line);
  const bool as_named = std::all_of(columns.begin(), columns.end(), [](const Column& c) { return plausible(c.nm); });
  if (!as_named && !unscale(t, columns)) return refuse("spectrum_wavelengths", t.line);
  return columns;
}

// SPECTRAL_NM cells, each beside its SPECTRAL_PCT or SPECTRAL_DEC.
Result<std::vector<Column>> paired_columns(const Table& t, const Row& row) {
  std::vector<Column> columns;
  double nm = 0;  // 0: no wavelength waits for its value
  for (std::size_t i = 0; i < t.fields.size(); ++i) {
    const auto& name = t.fields[i];
    if (same_word(name, "SPECTRAL_NM")) {
      nm = number(row.cells[i]).value_or(0);
      if (!plausible(nm)) return refuse("spectrum_number", row.line, {{"field", name}, {"got", row.cells[i]}});
    } else if (nm > 0 && (same_word(name, "SPECTRAL_PCT") || same_word(name, "SPECTRAL_DEC"))) {
      columns.push_back({static_cast<int>(i), nm});
      nm = 0;
    }
  }
  if (columns.size() < 2) return refuse("spectrum_no_columns", t.line);
  return columns;
}

// What the values are divided by.
Result<double> norm_of(const Table& t, const std::vector<Column>& columns) {
  if (t.field("SPECTRAL_PCT")) return 100;
  if (t.field("SPECTRAL_DEC")) return 1;
  if (const auto said = t.value("SPECTRAL_NORM")) {
    const auto norm = number(*said);
    if (!norm || *norm <= 0) return refuse("spectrum_norm", t.line, {{"got", std::string(*said)}});
    return *norm;
  }
  for (const auto& row : t.rows)
    for (const auto& c : columns)
      if (number(row.cells[c.index]).value_or(0) > 1.6) return 100;
  return 1;
}

}  // namespace

Result<Spectrum> spectrum(const Table& t, int row_index) {
  const Row& row = t.rows.at(row_index);
  auto columns = t.field("SPECTRAL_NM") ? paired_columns(t, row) : named_columns(t);
  if (!columns) return tl::unexpected(columns.error());
  std::sort(columns->begin(), columns->end(), [](const Column& a, const Column& b) { return a.nm < b.nm; });
  const auto norm = norm_of(t, *columns);
  if (!norm) return tl::unexpected(norm.error());

  std::vector<double> nm, values;
  for (const auto& c : *columns) {
    const auto v = number(row.cells[c.index]);
    if (!v) return refuse("spectrum_number", row.line, {{"field", t.fields[c.index]}, {"got", row.cells[c.index]}});
    if (!nm.empty() && c.nm <= nm.back()) return refuse("spectrum_wavelengths", t.line);
    nm.push_back(c.nm), values.push_back(*v / *norm);
  }
  const auto bands = resampled(nm, values);
  if (!bands)
    return refuse("spectrum_range", row.line,
                  {{"expected", "400-700"}, {"got", std::to_string(nm.front()) + "-" + std::to_string(nm.back())}});
  return *bands;
}

Result<Lab> lab(const Table& t, int row_index) {
  const Row& row = t.rows.at(row_index);
  double v[3];
  constexpr const char* names[3] = {"LAB_L", "LAB_A", "LAB_B"};
  for (int i = 0; i < 3; ++i) {
    const auto column = t.field(names[i]);
    if (!column) return refuse("lab_no_columns", t.line, {{"field", names[i]}});
    const auto n = number(row.cells[*column]);
    if (!n) return refuse("lab_number", row.line, {{"field", names[i]}, {"got", row.cells[*column]}});
    v[i] = *n;
  }
  return Lab{v[0], v[1], v[2]};
}

}  // namespace strandline::cgats
