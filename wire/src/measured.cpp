#include "strandline/wire/measured.h"

#include "strandline/levels.h"

namespace strandline::wire {

namespace {

Json rgb_json(const Lab& c) {
  const Weights& daylight = weights(Light::daylight, Observer::cie_1964_10deg);
  const Srgb s = srgb(xyz(c, daylight.white), daylight.white);
  return {{"r", s.r}, {"g", s.g}, {"b", s.b}};
}

}  // namespace

Json answer_json(const measured::File& file) {
  Json samples = Json::array();
  for (const measured::Sample& s : file.samples) {
    const Named named = name_colour(s.lab);
    Json one{{"name", s.name},
             {"line", s.line},
             {"lab", {{"l", s.lab.l}, {"a", s.lab.a}, {"b", s.lab.b}}},
             {"level", level_of_lightness(s.lab.l)},
             {"tone", word(named.tone)},
             {"srgb", rgb_json(s.lab)}};
    if (s.reflectance) one["reflectance"] = *s.reflectance;
    samples.push_back(std::move(one));
  }
  return {{"schema", "strandline.measure/1"},
          {"samples", std::move(samples)},
          {"notes", problems_json(file.notes)["problems"]}};
}

Result<Json> answer_measured(const Json& asked) {
  if (!asked.is_object() || !asked.contains("text"))
    return tl::unexpected(Problems{{"missing_key", "", {{"key", "text"}}}});
  if (!asked["text"].is_string() || asked.size() != 1)
    return tl::unexpected(Problems{{"wrong_type", "/text", {{"expected", "text"}}}});
  const std::string text = asked["text"].get<std::string>();
  if (text.find('\n') == text.npos) {
    return measured::typed(text).map([](const Lab& lab) {
      measured::File file;
      file.samples.push_back({"1", 1, {}, lab});
      return answer_json(file);
    });
  }
  return measured::read(text).map([](const measured::File& file) { return answer_json(file); });
}

}  // namespace strandline::wire
