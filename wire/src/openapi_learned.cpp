#include "openapi_learned.h"

#include "openapi_parts.h"

namespace strandline::wire {

using namespace parts;

void add_learned_paths(Json& paths, Json& definitions) {
  const Json text = typed("string"), yes_no = typed("boolean"), number = typed("number");
  Json reflectance = list_of(number);
  definitions["LearnedFactor"] =
      object({{"whose", text}, {"id", text}, {"what", text}, {"mean", number}, {"sd", number}, {"prior_sd", number}});
  definitions["LearnedResult"] = object({{"result", text},
                                         {"visit", text},
                                         {"person", text},
                                         {"colourist", text},
                                         {"at", text},
                                         {"zone", text},
                                         {"ranges", list_of(text)},
                                         {"measured", yes_no},
                                         {"untaught", number},
                                         {"expected", number},
                                         {"low", number},
                                         {"high", number},
                                         {"seen", number},
                                         {"set_aside", yes_no},
                                         {"without", yes_no}});
  definitions["Lesson"] = object({{"schema", text},
                                  {"words", list_of(ref("Problem"))},
                                  {"factors", list_of(ref("LearnedFactor"))},
                                  {"results", list_of(ref("LearnedResult"))},
                                  {"unread", typed("integer")}});
  definitions["LearnedZone"] = object({{"zone", text},
                                       {"untaught", number},
                                       {"expected", number},
                                       {"low", number},
                                       {"high", number},
                                       {"results", typed("integer")}});
  definitions["LearnedHere"] = object({{"zones", list_of(ref("LearnedZone"))}, {"words", list_of(ref("Problem"))}});
  for (const char* answer : {"PredictAnswer", "FormulateAnswer", "PlanAnswer"})
    definitions[answer]["properties"]["learned"] = ref("LearnedHere");
  definitions["MeasuredSample"] = object({{"name", text},
                                          {"line", typed("integer")},
                                          {"lab", object({{"l", number}, {"a", number}, {"b", number}})},
                                          {"level", number},
                                          {"tone", text},
                                          {"srgb", object({{"r", number}, {"g", number}, {"b", number}})}},
                                         {{"reflectance", reflectance}});
  definitions["MeasureAnswer"] =
      object({{"schema", text}, {"samples", list_of(ref("MeasuredSample"))}, {"notes", list_of(ref("Problem"))}});
  // By a card that nobody measured only the patches are named.
  definitions["CardRead"] =
      object({{"schema", text}, {"nearest", text}}, {{"next", text},
                                                     {"lighter", yes_no},
                                                     {"lab", object({{"l", number}, {"a", number}, {"b", number}})},
                                                     {"level", number},
                                                     {"tone", text},
                                                     {"srgb", object({{"r", number}, {"g", number}, {"b", number}})},
                                                     {"error", number},
                                                     {"to_nearest", number},
                                                     {"by_spectra", yes_no}});
  definitions["SwatchesRead"] = object({{"schema", text},
                                        {"document", ref("Shelf")},
                                        {"matched", list_of(text)},
                                        {"unmatched", list_of(text)},
                                        {"next", list_of(text)},
                                        {"notes", list_of(ref("Problem"))}});
  const auto by = [](const char* name, const char* in, bool required) {
    return Json{{"name", name}, {"in", in}, {"required", required}, {"schema", typed("string")}};
  };
  paths["/api/v1/learned"]["get"] = operation("learned", "Lesson");
  paths["/api/v1/learned"]["get"]["parameters"] = Json::array({by("person", "query", false)});
  paths["/api/v1/learned/{id}"]["parameters"] = Json::array({by("id", "path", true)});
  paths["/api/v1/learned/{id}"]["post"] = posting(operation("takeResultOut", "Lesson"), object({{"without", yes_no}}));
  paths["/api/v1/measure"]["post"] = posting(operation("readMeasurements", "MeasureAnswer"), texts({"text"}));
  paths["/api/v1/measure/photo"]["post"] =
      posting(operation("readCardPhoto", "CardRead"), object({{"photo", text}}, {{"card", text}}));
  paths["/api/v1/measure/swatches"]["post"] = posting(
      operation("readSwatches", "SwatchesRead"), object({{"document", ref("Shelf")}, {"range", text}, {"text", text}}));
}

}  // namespace strandline::wire
