#include "strandline/wire/card.h"

#include "strandline/levels.h"
#include "strandline/wire/everyday.h"
#include "strandline/wire/measured.h"
#include "strandline/wire/picture.h"

namespace strandline::wire {

Result<CardPhoto> read_card_photo(std::string_view photo, std::string_view card) {
  const auto seen = read_picture(photo).and_then([](const card::Picture& p) { return card::find(p); });
  if (!seen) return tl::unexpected(seen.error());
  if (card.empty())
    return card::compare(*seen).map([](card::Neighbours n) { return CardPhoto{{}, std::move(n), false}; });
  return measured::read(card)
      .and_then([](const measured::File& file) { return card::references(file); })
      .and_then([&](const std::vector<measured::Sample>& references) {
        bool spectra = true;
        for (const measured::Sample& s : references) spectra = spectra && s.reflectance.has_value();
        return card::measure(*seen, references).map([&](card::Measured m) {
          return CardPhoto{std::move(m), {}, spectra};
        });
      });
}

Json answer_json(const CardPhoto& photo) {
  Json out{{"schema", "strandline.card/1"}};
  if (photo.neighbours) {
    out["nearest"] = photo.neighbours->nearest, out["next"] = photo.neighbours->next;
    out["lighter"] = photo.neighbours->lighter;
    return out;
  }
  const card::Measured& m = photo.measured;
  measured::File file;
  file.samples.push_back({"photo", 1, {}, m.lab});
  const Json as_measured = answer_json(file)["samples"][0];
  for (const char* key : {"lab", "level", "tone", "srgb"}) out[key] = as_measured[key];
  out["error"] = m.error, out["nearest"] = m.nearest, out["to_nearest"] = m.to_nearest;
  out["by_spectra"] = photo.by_spectra;
  return out;
}

Result<Json> answer_card_photo(const Json& asked) {
  if (!asked.is_object() || !asked.contains("photo"))
    return tl::unexpected(Problems{{"missing_key", "", {{"key", "photo"}}}});
  std::string card;
  for (const auto& [key, value] : asked.items()) {
    if (key != "photo" && key != "card") return tl::unexpected(Problems{{"unknown_key", "/" + key, {{"key", key}}}});
    if (!value.is_string()) return tl::unexpected(Problems{{"wrong_type", "/" + key, {{"expected", "text"}}}});
    if (key == "card") card = value.get<std::string>();
  }
  const auto bytes = bytes_of_base64(asked["photo"].get<std::string>());
  if (!bytes) return tl::unexpected(Problems{{"picture_kind", "/photo", {}}});
  return read_card_photo(*bytes, card).map([](const CardPhoto& photo) { return answer_json(photo); });
}

}  // namespace strandline::wire
