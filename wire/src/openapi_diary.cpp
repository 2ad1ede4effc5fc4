#include "openapi_diary.h"

#include "openapi_parts.h"

namespace strandline::wire {

using namespace parts;

namespace {

// Text in the query, or in the path.
Json parameters(std::initializer_list<const char*> keys, const char* in = "query") {
  Json out = Json::array();
  for (const char* key : keys)
    out.push_back({{"name", key}, {"in", in}, {"required", true}, {"schema", typed("string")}});
  return out;
}

}  // namespace

void add_diary_paths(Json& paths, Json& definitions) {
  const Json text = typed("string"), number = typed("integer");
  const Keys line{{"id", text}, {"seq", number}, {"changed_at", text}, {"booking", ref("Booking")}};
  definitions["Booked"] = object(line, {{"by", text}});
  definitions["SavedBooking"] = definitions["Booked"];
  definitions["SavedBooking"]["properties"]["schema"] = text;
  definitions["SavedBooking"]["required"].push_back("schema");
  definitions["DiaryRules"] = object({{"opens_min", number},
                                      {"closes_min", number},
                                      {"grid_min", number},
                                      {"test_lead_h", number},
                                      {"test_min", number}});
  definitions["DiaryAnswer"] =
      object({{"schema", text}, {"bookings", list_of(ref("Booked"))}, {"rules", ref("DiaryRules")}});
  definitions["FreeStart"] = object({{"starts_at", text}, {"inside", text}});
  definitions["FreeAnswer"] = object({{"schema", text}, {"starts", list_of(ref("FreeStart"))}});
  Json due = text;
  due["enum"] = {"to_make", "to_read"};
  definitions["DueTest"] = object({{"due", due}, {"since", text}, {"colour", text}, {"line", ref("Booked")}});
  definitions["TestsDue"] = object({{"schema", text}, {"tests", list_of(ref("DueTest"))}});
  definitions["DuePerson"] = object({{"person", text}, {"name", text}, {"due", text}, {"visit", text}});
  definitions["PeopleDue"] = object({{"schema", text}, {"people", list_of(ref("DuePerson"))}});
  definitions["AskedBooking"] = object({{"id", text}, {"entry", text}, {"seq", number}, {"booking", ref("Booking")}},
                                       {{"beside", typed("boolean")}});
  definitions["NewClient"] =
      object({{"id", text}, {"name", text}}, {{"date", text}, {"text", text}, {"contact", text}});
  definitions["NewClients"] = object({{"clients", list_of(ref("NewClient"))}});
  definitions["AddedClients"] = object({{"schema", text}, {"added", number}, {"known", number}});

  Json& diary = paths["/api/v1/diary"]["get"] = operation("diary", "DiaryAnswer");
  diary["parameters"] = parameters({"from", "until"});
  Json& free = paths["/api/v1/diary/free"]["get"] = operation("freeStarts", "FreeAnswer");
  free["parameters"] = parameters({"from", "until", "minutes", "with"});
  paths["/api/v1/diary/tests"]["get"] = operation("testsDue", "TestsDue");
  Json& people = paths["/api/v1/diary/due"]["get"] = operation("peopleDue", "PeopleDue");
  people["parameters"] = parameters({"day"});
  paths["/api/v1/bookings"]["post"] = posting(operation("saveBooking", "SavedBooking"), ref("AskedBooking"));
  paths["/api/v1/bookings/{id}"]["parameters"] = parameters({"id"}, "path");
  paths["/api/v1/bookings/{id}"]["get"] = operation("openBooking", "SavedBooking");
  paths["/api/v1/clients"]["post"] = posting(operation("addClients", "AddedClients", "201"), ref("NewClients"));
}

}  // namespace strandline::wire
