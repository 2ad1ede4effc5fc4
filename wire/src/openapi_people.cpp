#include "openapi_people.h"

#include "openapi_parts.h"

namespace strandline::wire {

using namespace parts;

void add_people_paths(Json& paths, Json& definitions) {
  const Json text = typed("string"), yes_no = typed("boolean"), number = typed("integer");
  definitions["Role"] = {{"type", "string"}, {"enum", {"colourist", "assistant", "apprentice", "manager", "owner"}}};
  definitions["TeamPerson"] =
      object({{"id", text}, {"name", text}, {"roles", list_of(ref("Role"))}, {"here", yes_no}, {"pin", yes_no}});
  definitions["Device"] = object({{"id", text}, {"name", text}, {"paired_at", text}});
  definitions["OpenSession"] = object({{"person", text}, {"device", text}, {"began_at", text}, {"pin", yes_no}});
  definitions["DoorAnswer"] = object(
      {{"schema", text},
       {"people", yes_no},
       {"fresh", yes_no},
       {"paired", yes_no},
       {"elsewhere", yes_no},
       {"idle_minutes", number},
       {"passphrase_signs", number},
       {"pin_digits", number}},
      {{"zone", text}, {"shelf", text}, {"may_come_in", list_of(ref("TeamPerson"))}, {"person", ref("TeamPerson")}});
  definitions["SignedIn"] = object({{"schema", text}, {"person", ref("TeamPerson")}, {"idle_minutes", number}});
  definitions["Done"] = object({{"schema", text}, {"done", yes_no}});
  definitions["PairedDevice"] = object({{"schema", text}, {"device", ref("Device")}});
  definitions["Invitation"] = object(
      {{"schema", text}, {"code", text}, {"minutes", number}, {"fingerprint", text}, {"addresses", list_of(text)}});
  definitions["RecoveryWords"] = object({{"schema", text}, {"words", text}});
  definitions["TeamAnswer"] = object({{"schema", text},
                                      {"people", list_of(ref("TeamPerson"))},
                                      {"devices", list_of(ref("Device"))},
                                      {"sessions", list_of(ref("OpenSession"))}});

  const std::string door = "/api/v1/door", people = "/api/v1/people";
  paths[door]["get"] = operation("door", "DoorAnswer");
  const auto post = [&](const std::string& path, const char* id, const char* answer, Json body,
                        const char* status = "200") {
    paths[path]["post"] = posting(operation(id, answer, status), std::move(body));
  };
  post(door + "/found", "found", "SignedIn",
       texts({"name", "passphrase", "zone", "shelf"}, {"colours_hair", "shelf_title"}), "201");
  post(door + "/sign-in", "signIn", "SignedIn", texts({}, {"name", "person", "passphrase", "pin"}));
  post(door + "/sign-out", "signOut", "Done", texts({}));
  post(door + "/passphrase", "changePassphrase", "Done", texts({"now", "next"}));
  post(door + "/pin", "changePin", "Done", texts({"now", "pin"}));
  post(door + "/pair", "pair", "PairedDevice", texts({"name"}));
  post(door + "/redeem", "redeem", "PairedDevice", texts({"code", "name"}));
  post("/api/v1/devices/invite", "invite", "Invitation", texts({}));
  Json& certificate = paths[door + "/authority"]["get"];
  certificate = operation("authority", "Problems");
  certificate["responses"]["200"] = {{"description", "the certificate that a device has to trust, PEM"}};
  certificate["responses"]["200"]["content"]["application/x-x509-ca-cert"]["schema"] = text;
  post(door + "/recovery-words", "recoveryWords", "RecoveryWords", texts({"passphrase"}));
  paths[people]["get"] = operation("people", "TeamAnswer");
  post(people, "addPerson", "TeamAnswer", texts({"name", "roles", "passphrase"}), "201");
  const auto of_one = [&](const std::string& path, const char* id, Json body) {
    post(path, id, "TeamAnswer", std::move(body));
    Json parameter{{"name", "id"}, {"in", "path"}, {"required", true}, {"schema", typed("string")}};
    paths[path]["parameters"] = Json::array({std::move(parameter)});
  };
  of_one(people + "/{id}/roles", "setRoles", texts({"roles"}));
  of_one(people + "/{id}/reset", "resetPerson", texts({"passphrase"}));
  of_one(people + "/{id}/revoke", "revokePerson", texts({}));
  of_one(people + "/{id}/leave", "personLeaves", texts({}));
  of_one("/api/v1/devices/{id}/unpair", "unpair", texts({}));
  const std::string client = "/api/v1/clients/{id}";
  of_one(client + "/erase", "eraseClient", texts({"name"}));
  paths[client + "/erase"]["post"] = posting(operation("eraseClient", "Done"), texts({"name"}));
  definitions["KeptFact"] = object(
      {{"store_seq", number}, {"id", text}, {"of", text}, {"made_at", text}, {"kind", text}, {"version", number}},
      {{"by", text}, {"body", typed("object")}});
  definitions["KeptDraft"] =
      object({{"visit", text}, {"opened_at", text}, {"changed_at", text}, {"document", typed("object")}});
  definitions["Everything"] = object({{"schema", text},
                                      {"client", object({{"id", text}, {"name", text}})},
                                      {"made_at", text},
                                      {"facts", list_of(ref("KeptFact"))},
                                      {"drafts", list_of(ref("KeptDraft"))}});
  paths[client + "/everything"]["get"] = operation("everythingOfClient", "Everything");
  paths[client + "/everything"]["parameters"] = paths[client + "/erase"]["parameters"];
}

}  // namespace strandline::wire
