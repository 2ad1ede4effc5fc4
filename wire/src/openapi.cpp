#include "strandline/wire/openapi.h"

#include "openapi_diary.h"
#include "openapi_learned.h"
#include "openapi_people.h"
#include "openapi_stock.h"
#include "strandline/wire/advice_fields.h"
#include "strandline/wire/diary_fields.h"
#include "strandline/wire/happened_fields.h"
#include "strandline/wire/later_fields.h"
#include "strandline/wire/replan_fields.h"
#include "strandline/wire/schema.h"

namespace strandline::wire {

namespace {

// Answers of the store's routes: written by the server, described here.
struct SavedSummary {
  std::string id;
  long long seq = 0;
  std::string client, date, opened_at, changed_at;
  std::optional<std::string> person, handed_in_at;
};

struct ClientSummary {
  std::string id, name;
  int visits = 0;
  std::string last_visit, last_date;
};

struct ClientCardLine {
  std::string date, text, contact, kept_at;
};

struct ClientVisitLine {
  std::string visit_id, date, handed_in_at;
};

struct ShelfLine {
  std::string id;
  long long seq = 0;
  std::string name, title, saved_at;
  int ranges = 0, products = 0;
  bool invented = false, chosen = false;
};

struct ShelfEdit {
  long long seq = 0;
  std::string name, saved_at;
  int ranges = 0, products = 0;
  std::vector<std::string> added, removed, changed;
};

struct Tube {
  std::string product;
  bool empty = false;
};

struct JournalChange {
  long long store_seq = 0;
  std::string visit_id;
  long long seq = 0;
  std::string made_at, kind;
};

}  // namespace

template <>
struct Fields<SavedSummary> {
  static constexpr std::string_view name = "VisitSummary";
  using S = SavedSummary;
  static constexpr auto list =
      std::make_tuple(field("id", &S::id, always), field("seq", &S::seq, always), field("client", &S::client, always),
                      field("date", &S::date, always), field("opened_at", &S::opened_at, always),
                      field("changed_at", &S::changed_at, always),
                      field("person", &S::person, {.note = "whose visit it is; absent = nobody's yet"}),
                      field("handed_in_at", &S::handed_in_at, {.note = "absent = it is still a draft"}));
};

template <>
struct Fields<ClientSummary> {
  static constexpr std::string_view name = "ClientLine";
  using C = ClientSummary;
  static constexpr auto list =
      std::make_tuple(field("id", &C::id, always), field("name", &C::name, always), field("visits", &C::visits, always),
                      field("last_visit", &C::last_visit, always), field("last_date", &C::last_date, always));
};

template <>
struct Fields<ClientCardLine> {
  static constexpr std::string_view name = "ClientCard";
  using C = ClientCardLine;
  static constexpr auto list =
      std::make_tuple(field("date", &C::date, always), field("text", &C::text, always),
                      field("contact", &C::contact, always), field("kept_at", &C::kept_at, always));
};

template <>
struct Fields<ClientVisitLine> {
  static constexpr std::string_view name = "ClientVisit";
  using C = ClientVisitLine;
  static constexpr auto list = std::make_tuple(field("visit_id", &C::visit_id, always), field("date", &C::date, always),
                                               field("handed_in_at", &C::handed_in_at, always));
};

template <>
struct Fields<ShelfLine> {
  static constexpr std::string_view name = "ShelfSummary";
  using S = ShelfLine;
  static constexpr auto list =
      std::make_tuple(field("id", &S::id, always), field("seq", &S::seq, always), field("name", &S::name, always),
                      field("title", &S::title, always), field("saved_at", &S::saved_at, always),
                      field("ranges", &S::ranges, always), field("products", &S::products, always),
                      field("invented", &S::invented, always), field("chosen", &S::chosen, always));
};

template <>
struct Fields<ShelfEdit> {
  static constexpr std::string_view name = "ShelfVersion";
  using E = ShelfEdit;
  static constexpr auto list = std::make_tuple(
      field("seq", &E::seq, always), field("name", &E::name, always), field("saved_at", &E::saved_at, always),
      field("ranges", &E::ranges, always), field("products", &E::products, always), field("added", &E::added, always),
      field("removed", &E::removed, always), field("changed", &E::changed, always));
};

template <>
struct Fields<Tube> {
  static constexpr std::string_view name = "Tube";
  static constexpr auto list =
      std::make_tuple(field("product", &Tube::product, always), field("empty", &Tube::empty, always));
};

template <>
struct Fields<JournalChange> {
  static constexpr std::string_view name = "Change";
  using C = JournalChange;
  static constexpr auto list = std::make_tuple(field("store_seq", &C::store_seq, always),
                                               field("visit_id", &C::visit_id, always), field("seq", &C::seq, always),
                                               field("made_at", &C::made_at, always), field("kind", &C::kind, always));
};

namespace {

using Printer = SchemaPrinter;

Json content(Json schema) {
  Json media = Json::object();
  media["application/json"]["schema"] = std::move(schema);
  return media;
}

// {schema, key: value} for answers that are not a record of the codec.
Json with_schema_key(const std::string& key, Json value) {
  Json out{{"type", "object"}};
  out["properties"]["schema"]["type"] = "string";
  out["properties"][key] = std::move(value);
  out["required"] = Json::array({"schema", key});
  return out;
}

Json list_of(Json items) {
  Json out{{"type", "array"}};
  out["items"] = std::move(items);
  return out;
}

// Adds "schema" to a definition that is there.
void tag(Json& definition) {
  definition["properties"]["schema"]["type"] = "string";
  definition["required"].push_back("schema");
}

// The answer as the doors write it: the codec's keys and "schema".
template <class T>
Json answer_of(Printer& printer) {
  const std::string name(Fields<T>::name);
  const bool fresh = !printer.definitions().contains(name);
  Json out = printer.type<T>();
  if (fresh) tag(printer.definitions()[name]);
  return out;
}

Json saved_visit(Printer& printer, const Json& visit) {
  printer.type<SavedSummary>();
  Json definition = printer.definitions()["VisitSummary"];
  definition["properties"]["document"] = visit;
  definition["properties"]["entry"]["type"] = "string";
  for (const char* key : {"document", "entry"}) definition["required"].push_back(key);
  tag(definition);
  printer.definitions()["SavedVisit"] = std::move(definition);
  Json out;
  out["$ref"] = "#/components/schemas/SavedVisit";
  return out;
}

Json operation(const char* id, Json answer, int status = 200) {
  Json out{{"operationId", id}};
  Json& responses = out["responses"];
  responses[std::to_string(status)] = {{"description", "the answer"}, {"content", content(std::move(answer))}};
  responses["default"] = {{"description", "problems"},
                          {"content", content({{"$ref", "#/components/schemas/Problems"}})}};
  return out;
}

// For what looks after services on this machine.
Json text_operation(const char* id, const char* what) {
  Json out{{"operationId", id}};
  Json& answer = out["responses"]["200"] = {{"description", what}};
  answer["content"]["text/plain"]["schema"]["type"] = "string";
  out["responses"]["default"] = {{"description", "why not"}, {"content", answer["content"]}};
  return out;
}

Json with_body(Json op, Json schema) {
  op["requestBody"] = {{"required", true}, {"content", content(std::move(schema))}};
  return op;
}

Json parameter(const char* name, const char* in, bool required, const char* type) {
  Json out{{"name", name}, {"in", in}, {"required", required}};
  out["schema"]["type"] = type;
  return out;
}

void add_verbs(Printer& p, const Json& visit, Json& paths) {
  const auto post = [&](const char* path, const char* id, Json answer) {
    paths[path]["post"] = with_body(operation(id, std::move(answer)), visit);
  };
  post("/api/v1/assess", "assess", answer_of<AssessAnswer>(p));
  post("/api/v1/aim", "aim", answer_of<AimAnswer>(p));
  post("/api/v1/predict", "predict", answer_of<PredictAnswer>(p));
  post("/api/v1/formulate", "formulate", answer_of<FormulateAnswer>(p));
  post("/api/v1/schedule", "schedule", with_schema_key("timeline", p.type<Timeline>()));
  post("/api/v1/replan", "replan", answer_of<Replanned>(p));
  post("/api/v1/plan", "plan", answer_of<PlanAnswer>(p));
  post("/api/v1/reach", "reach", answer_of<ReachAnswer>(p));
  post("/api/v1/fade", "fade", answer_of<FadeAnswer>(p));
  post("/api/v1/grow", "grow", answer_of<GrowAnswer>(p));
  post("/api/v1/what-if", "whatIf", answer_of<PlanAnswer>(p));
  post("/api/v1/review", "review", answer_of<ReviewAnswer>(p));
  post("/api/v1/convert", "convert", answer_of<RemadeAnswer>(p));
  paths["/api/v1/convert"]["post"]["parameters"] = Json::array({parameter("range", "query", true, "string")});
  post("/api/v1/substitute", "substitute", answer_of<RemadeAnswer>(p));
  paths["/api/v1/substitute"]["post"]["parameters"] = Json::array({parameter("product", "query", true, "string")});
}

void add_visits(Printer& p, const Json& visit, Json& paths) {
  const Json saved = saved_visit(p, visit);
  Json& all = paths["/api/v1/visits"];
  Json page = with_schema_key("visits", list_of(p.type<SavedSummary>()));
  page["properties"]["next"]["type"] = "string";
  all["get"] = operation("listVisits", std::move(page));
  all["get"]["parameters"] =
      Json::array({parameter("cursor", "query", false, "string"), parameter("find", "query", false, "string"),
                   parameter("client", "query", false, "string"), parameter("limit", "query", false, "integer")});
  all["post"] = with_body(operation("saveNewVisit", saved, 201), visit);
  const Json entry = parameter("entry", "query", false, "string");
  all["post"]["parameters"] = Json::array({entry, parameter("person", "query", false, "string")});
  Json& one = paths["/api/v1/visits/{id}"];
  one["parameters"] = Json::array({parameter("id", "path", true, "string")});
  one["get"] = operation("openVisit", saved);
  one["put"] = with_body(operation("saveVisit", saved), visit);
  one["put"]["parameters"] = Json::array({parameter("If-Match", "header", true, "string"), entry});
  Json& changes = paths["/api/v1/changes"]["get"] =
      operation("changes", with_schema_key("changes", list_of(p.type<JournalChange>())));
  changes["parameters"] = Json::array({parameter("after", "query", false, "integer")});
}

// One of the bodies, told apart by `kind`; `told` = as the salon keeps it.
Json fact_schema(Printer& p, bool told) {
  Json any = Json::array();
  const auto add = [&](const std::string& kind, int version, Json body) {
    Json properties{{"id", {{"type", "string"}}}, {"kind", {{"const", kind}}}, {"made_at", {{"type", "string"}}}};
    properties["version"] = {{"type", "integer"}, {"description", "of the body; now " + std::to_string(version)}};
    properties["body"] = std::move(body);
    Json required{"id", "kind"};
    if (told) {
      for (const char* key : {"visit_id", "person", "by"}) properties[key] = {{"type", "string"}};
      for (const char* key : {"store_seq", "seq"}) properties[key] = {{"type", "integer"}};
      properties["erased"] = {{"type", "boolean"}, {"description", "its key was destroyed; there is no body"}};
      for (const char* key : {"store_seq", "visit_id", "seq", "made_at", "version"}) required.push_back(key);
    } else {
      required.push_back("body");
    }
    any.push_back({{"type", "object"}, {"properties", std::move(properties)}, {"required", std::move(required)}});
  };
  std::apply(
      [&](const auto&... each) {
        (add(std::string(each.kind), each.version, p.type<typename std::remove_cvref_t<decltype(each)>::Body>()), ...);
      },
      happened_kinds);
  if (told) add("visit.handed_in", 1, {{"type", "object"}});
  const char* name = told ? "Fact" : "NewFact";
  p.definitions()[name] = {{"anyOf", std::move(any)}};
  Json out;
  out["$ref"] = std::string("#/components/schemas/") + name;
  return out;
}

void add_facts(Printer& p, Json& paths) {
  const Json told = fact_schema(p, true), fresh = fact_schema(p, false);
  const Json id = Json::array({parameter("id", "path", true, "string")});
  Json& facts = paths["/api/v1/visits/{id}/facts"];
  facts["parameters"] = id;
  Json page = with_schema_key("facts", list_of(told));
  page["properties"]["next"]["type"] = "string";
  facts["get"] = operation("factsOfVisit", std::move(page));
  facts["get"]["parameters"] =
      Json::array({parameter("cursor", "query", false, "string"), parameter("limit", "query", false, "integer")});
  facts["post"] = with_body(operation("tellFact", told, 201), fresh);
  Json asked{{"type", "object"}};
  for (const char* key : {"entry", "person"}) asked["properties"][key]["type"] = "string";
  asked["properties"]["seq"]["type"] = "integer";
  asked["properties"]["facts"] = list_of(fresh);
  asked["required"] = Json::array({"entry", "seq"});
  Json& end = paths["/api/v1/visits/{id}/hand-in"];
  end["parameters"] = id;
  Json saved;
  saved["$ref"] = "#/components/schemas/SavedVisit";
  end["post"] = with_body(operation("handInVisit", std::move(saved)), std::move(asked));
  Json& all = paths["/api/v1/clients"]["get"] =
      operation("findClients", with_schema_key("clients", list_of(p.type<ClientSummary>())));
  all["parameters"] =
      Json::array({parameter("find", "query", false, "string"), parameter("limit", "query", false, "integer")});
  Json record = with_schema_key("history", list_of(p.type<ClientVisitLine>()));
  for (const auto& [key, value] : p.definitions()["ClientLine"]["properties"].items()) {
    record["properties"][key] = value;
    record["required"].push_back(key);
  }
  record["properties"]["mix_factor"] = {{"type", "number"}, {"description", "grams against the usual, learned"}};
  record["properties"]["mix_visits"] = {{"type", "integer"}, {"description", "weighed visits behind it"}};
  for (const char* key : {"mix_factor", "mix_visits"}) record["required"].push_back(key);
  record["properties"]["cards"] = list_of(p.type<ClientCardLine>());
  record["required"].push_back("cards");
  paths["/api/v1/clients/{id}"]["parameters"] = id;
  paths["/api/v1/clients/{id}"]["get"] = operation("openClient", std::move(record));
}

// A named type made from one that is there, with more keys.
Json extended(Printer& p, const char* name, Json definition, std::initializer_list<std::pair<const char*, Json>> more) {
  for (const auto& [key, type] : more) {
    definition["properties"][key] = type;
    definition["required"].push_back(key);
  }
  tag(definition);
  p.definitions()[name] = std::move(definition);
  Json out;
  out["$ref"] = std::string("#/components/schemas/") + name;
  return out;
}

void add_shelves(Printer& p, Json& paths) {
  const Json text{{"type", "string"}}, document = p.type<ShelfDocument>();
  const auto entry = [](Json& op) { op["parameters"].push_back(parameter("entry", "query", false, "string")); };
  Json& one_shelf = paths["/api/v1/shelf"]["get"] = operation("shelf", answer_of<ShelfAnswer>(p));
  one_shelf["parameters"] = Json::array({parameter("name", "query", false, "string")});
  p.type<ShelfLine>(), p.type<TableRead>(), p.type<TableAsked>();
  const Json saved = extended(
      p, "SavedShelf", p.definitions()["ShelfSummary"],
      {{"entry", text}, {"document", document}, {"empty", list_of(text)}, {"gaps", list_of(p.type<Problem>())}});
  const Json read = extended(p, "ReadTable", p.definitions()["TableRead"], {{"document", document}});
  const Json asked = extended(p, "AskedTable", p.definitions()["TableAsked"], {{"document", document}, {"text", text}});
  p.definitions()["AskedTable"]["properties"].erase("schema");
  p.definitions()["AskedTable"]["required"] = Json::array({"document", "text"});
  const Json list = with_schema_key("shelves", list_of(p.type<ShelfLine>()));
  paths["/api/v1/shelf/read"]["post"] = with_body(operation("readTable", read), asked);
  paths["/api/v1/shelf/classes"]["get"] = operation("shelfClasses", with_schema_key("document", document));
  Json choice{{"type", "object"}, {"required", {"shelf"}}};
  choice["properties"]["shelf"] = text;
  paths["/api/v1/shelf/choose"]["post"] = with_body(operation("chooseShelf", list), choice);
  Json& all = paths["/api/v1/shelves"];
  all["get"] = operation("listShelves", list);
  all["post"] = with_body(operation("saveNewShelf", saved, 201), document);
  entry(all["post"]);
  const Json id = parameter("id", "path", true, "string");
  Json& one = paths["/api/v1/shelves/{id}"];
  one["parameters"] = Json::array({id});
  one["get"] = operation("openShelf", saved);
  one["get"]["parameters"] = Json::array({parameter("version", "query", false, "string")});
  one["put"] = with_body(operation("saveShelf", saved), document);
  one["put"]["parameters"] = Json::array({parameter("If-Match", "header", true, "string")});
  entry(one["put"]);
  Json& tubes = paths["/api/v1/shelves/{id}/tubes"];
  tubes["parameters"] = Json::array({id});
  tubes["post"] = with_body(operation("setEmpty", saved), p.type<Tube>());
  entry(tubes["post"]);
  Json& history = paths["/api/v1/shelves/{id}/history"];
  history["parameters"] = Json::array({id});
  history["get"] = operation("shelfHistory", with_schema_key("versions", list_of(p.type<ShelfEdit>())));
  Json& table = paths["/api/v1/shelves/{id}/table"];
  table["parameters"] = Json::array({id});
  table["get"] = operation("shelfTable", with_schema_key("csv", text));
  table["get"]["parameters"] = Json::array({parameter("range", "query", false, "string")});
}

void add_hand_notes(Json& paths) {
  const Json text{{"type", "string"}}, yes_no{{"type", "boolean"}};
  Json note{{"type", "object"}, {"required", {"technique", "own", "text", "written_at"}}};
  note["properties"] = {{"technique", text}, {"own", yes_no}, {"text", text}, {"written_at", text}};
  const Json answer = with_schema_key("notes", list_of(std::move(note)));
  paths["/api/v1/hand-notes"]["get"] = operation("handNotes", answer);
  Json asked{{"type", "object"}, {"required", {"text", "own"}}};
  asked["properties"] = {{"text", text}, {"own", yes_no}};
  Json& one = paths["/api/v1/hand-notes/{id}"];
  one["parameters"] = Json::array({parameter("id", "path", true, "string")});
  one["put"] = with_body(operation("writeHandNote", answer), std::move(asked));
}

// Waits for a word of the scale other than that of `after`, five seconds at most.
Json scale_operation(Printer& p) {
  Json answer = with_schema_key("seq", {{"type", "integer"}});
  answer["properties"]["grams"]["type"] = "number";
  answer["properties"]["state"] = {{"type", "string"},
                                   {"enum", {"none", "away", "stable", "moving", "below_zero", "overload", "fault"}}};
  answer["properties"]["problems"] = list_of(p.type<Problem>());
  for (const char* key : {"grams", "state"}) answer["required"].push_back(key);
  Json out = operation("scale", std::move(answer));
  out["parameters"] = Json::array({parameter("after", "query", false, "integer")});
  return out;
}

}  // namespace

Json openapi(const std::string& version) {
  Printer p("#/components/schemas/");
  const Json visit = p.type<VisitDocument>();
  Json paths = Json::object();
  Json up{{"type", "boolean"}};
  paths["/api/v1/health"]["get"] = operation("health", with_schema_key("up", std::move(up)));
  paths["/healthz"]["get"] = text_operation("healthz", "up; 503 with the reason when the salon cannot be served");
  paths["/metrics"]["get"] = text_operation("metrics", "counts of the server itself, text format 0.0.4 of Prometheus");
  add_hand_notes(paths);
  paths["/api/v1/scale"]["get"] = scale_operation(p);
  add_shelves(p, paths);
  paths["/api/v1/levels"]["get"] = operation("levels", answer_of<LevelsAnswer>(p));
  paths["/api/v1/tones"]["get"] = operation("tones", with_schema_key("tones", list_of(p.type<Tone>())));
  add_verbs(p, visit, paths);
  add_visits(p, visit, paths);
  add_facts(p, paths);
  add_stock_paths(p, paths);
  p.type<Booking>();
  Json problems{{"type", "object"}};
  problems["properties"]["problems"] = list_of(p.type<Problem>());
  problems["required"] = Json::array({"problems"});
  Json out{{"openapi", "3.1.0"}};
  out["info"] = {{"title", "Strandline"}, {"version", version}};
  out["components"]["schemas"] = p.definitions();
  add_people_paths(paths, out["components"]["schemas"]);
  add_learned_paths(paths, out["components"]["schemas"]);
  add_diary_paths(paths, out["components"]["schemas"]);
  out["paths"] = std::move(paths);
  out["components"]["schemas"]["Problems"] = std::move(problems);
  return out;
}

}  // namespace strandline::wire
