#include <algorithm>
#include <cctype>
#include <cmath>

#include "strandline/line.h"
#include "strandline/wire/measured.h"
#include "strandline/wire/shelf_document.h"

namespace strandline::wire {

namespace {

constexpr int kNext = 12;

// Letters and digits that count, in small letters, one blank between words.
std::string plain(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isspace(byte)) {
      if (!out.empty() && out.back() != ' ') out += ' ';
    } else {
      out += static_cast<char>(std::tolower(byte));
    }
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string text_of(const Json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : "";
}

// The product of the range that a sample is called by: its code, its name, its id, whichever one alone has.
Json* product_of(Json& products, const std::string& range, const std::string& sample) {
  for (const char* key : {"code", "name", "id"}) {
    Json* only = nullptr;
    int many = 0;
    for (Json& p : products)
      if (text_of(p, "range") == range && !text_of(p, key).empty() && plain(text_of(p, key)) == plain(sample))
        only = &p, ++many;
    if (many == 1) return only;
  }
  return nullptr;
}

Json rounded(const Spectrum& s) {
  constexpr double kDigits = 1e5;
  Json out = Json::array();
  for (const double v : s) out.push_back(std::round(std::clamp(v, 0.0, 1.0) * kDigits) / kDigits);
  return out;
}

Result<measured::File> samples_in(const std::string& text) {
  if (text.find_first_not_of(" \r\n\t") == text.npos) return measured::File{};
  return measured::read(text);
}

}  // namespace

Result<Json> answer_swatches(const Json& asked) {
  Problems problems;
  for (const char* key : {"document", "range", "text"})
    if (!asked.is_object() || !asked.contains(key)) problems.push_back({"missing_key", "", {{"key", key}}});
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  if (!asked["text"].is_string() || !asked["range"].is_string())
    return tl::unexpected(Problems{{"wrong_type", "/text", {{"expected", "text"}}}});
  const std::string range = asked["range"].get<std::string>();
  const auto shelf = read_shelf_document(asked["document"]);
  if (!shelf) return tl::unexpected(shelf.error());
  if (!find_range(shelf_of(*shelf), range))
    return tl::unexpected(Problems{{"unknown_range", "/range", {{"range", range}}}});
  return samples_in(asked["text"].get<std::string>()).and_then([&](const measured::File& file) -> Result<Json> {
    Json document = asked["document"], matched = Json::array(), unmatched = Json::array();
    for (const measured::Sample& s : file.samples) {
      Json* product = product_of(document["products"], range, s.name);
      if (!product) {
        unmatched.push_back(s.name);
        continue;
      }
      (*product)["swatch"] = rounded(s.reflectance ? *s.reflectance : line::swatch_of(s.lab));
      (*product)["known_by"] = "white_hair";
      product->erase("swatch_on");
      matched.push_back(text_of(*product, "id"));
    }
    return read_shelf_document(document).map([&](const ShelfDocument& now) {
      return Json{{"schema", "strandline.swatches/1"},
                  {"document", document},
                  {"matched", matched},
                  {"unmatched", unmatched},
                  {"next", line::measure_next(shelf_of(now), range, kNext)},
                  {"notes", problems_json(file.notes)["problems"]}};
    });
  });
}

}  // namespace strandline::wire
