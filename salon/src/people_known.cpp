#include "people_known.h"

#include <algorithm>
#include <chrono>
#include <cstdio>

#include "strandline/store/plain.h"

namespace strandline::salon {

namespace {

std::string text(const wire::Json& json, const char* key) {
  const auto found = json.find(key);
  return found != json.end() && found->is_string() ? found->get<std::string>() : "";
}

Roles roles_in(const wire::Json& json) {
  std::vector<std::string> words;
  if (const auto found = json.find("roles"); found != json.end() && found->is_array()) {
    for (const wire::Json& word : *found) {
      if (word.is_string()) words.push_back(word.get<std::string>());
    }
  }
  return roles_of(words).value_or(0);
}

}  // namespace

std::int64_t seconds_of(const std::string& utc) {
  int year = 0;
  unsigned month = 0, day = 0, hour = 0, minute = 0, second = 0;
  if (std::sscanf(utc.c_str(), "%4d-%2u-%2uT%2u:%2u:%2uZ", &year, &month, &day, &hour, &minute, &second) != 6) return 0;
  const std::chrono::sys_days date{std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(day)};
  const auto time = date + std::chrono::hours(hour) + std::chrono::minutes(minute) + std::chrono::seconds(second);
  return std::chrono::duration_cast<std::chrono::seconds>(time.time_since_epoch()).count();
}

std::string tried_as(const std::string& name) { return store::token_digest("name " + store::plain(name)); }

People::Known::Known(const DoorRules& r)
    : rules(r),
      of_name{r.tries_free, r.wait_first_s, r.wait_most_s, r.tries_forgotten_h},
      of_address{r.address_tries_free, r.wait_first_s, r.address_wait_most_s, r.tries_forgotten_h} {}

void People::Known::apply(const store::Fact& fact) {
  if (fact.closed) return;  // of somebody erased: nobody
  const auto read = wire::parse(fact.body);
  if (!read || !read->is_object()) return;
  const wire::Json& body = *read;
  const auto entry =
      std::find_if(people.begin(), people.end(), [&](const Entry& e) { return e.person.id == fact.stream; });
  if (fact.kind == "person.added") {
    people.push_back(
        {{fact.stream, text(body, "name"), fact.made_at, roles_in(body), true, false}, text(body, "hash"), ""});
  } else if (fact.kind == "device.paired") {
    devices.push_back(
        {{fact.stream, text(body, "name"), fact.made_at}, text(body, "digest"), seconds_of(fact.made_at)});
  } else if (fact.kind == "device.unpaired") {
    std::erase_if(devices, [&](const Paired& d) { return d.device.id == fact.stream; });
  } else if (fact.kind == "salon.founded") {
    zone = text(body, "zone"), shelf = text(body, "shelf");
  } else if (fact.kind == "try.failed") {
    names[text(body, "name")].failed_at(seconds_of(fact.made_at), of_name);
    addresses[text(body, "address")].failed_at(seconds_of(fact.made_at), of_address);
  } else if (fact.kind == "session.ended") {
    std::erase_if(sessions, [&](const auto& s) { return s.second.id == text(body, "session"); });
  } else if (entry != people.end()) {
    Person& person = entry->person;
    if (fact.kind == "person.roles") person.roles = roles_in(body);
    if (fact.kind == "person.left") person.here = false;
    if (fact.kind == "person.secret") entry->hash = text(body, "hash");
    if (fact.kind == "person.pin") entry->pin = text(body, "hash"), person.has_pin = !entry->pin.empty();
    if (fact.kind == "session.began") {
      const std::int64_t at = seconds_of(fact.made_at);
      sessions[text(body, "digest")] = {
          text(body, "session"), fact.stream, text(body, "device"), fact.made_at, at, at, body.value("pin", false)};
      names.erase(tried_as(person.name));
    }
  }
}

void People::Known::in_use_as(const Known& before) {
  for (auto& [digest, session] : sessions) {
    const auto found = before.sessions.find(digest);
    if (found != before.sessions.end()) session.seen = found->second.seen;
  }
  told_openings = before.told_openings;
}

bool People::Known::alive(const Session& session, std::int64_t now) const {
  constexpr std::int64_t minute_s = 60, hour_s = 3600;
  const Entry* entry = find(session.person);
  const bool device_there = session.device.empty() || std::any_of(devices.begin(), devices.end(), [&](const Paired& d) {
                              return d.device.id == session.device;
                            });
  return entry && entry->person.here && device_there && now - session.began < rules.session_hours * hour_s &&
         now - session.seen < rules.idle_minutes * minute_s;
}

const People::Known::Paired* People::Known::device_of(const std::string& token, std::int64_t now) const {
  if (token.empty()) return nullptr;
  constexpr std::int64_t day_s = 86400;
  const std::string digest = store::token_digest(token);
  for (const Paired& d : devices) {
    if (d.digest == digest && now - d.paired < rules.device_days * day_s) return &d;
  }
  return nullptr;
}

const People::Known::Entry* People::Known::named(const std::string& name) const {
  const std::string key = store::plain(name);
  for (const Entry& e : people) {
    if (e.person.here && store::plain(e.person.name) == key) return &e;
  }
  return nullptr;
}

const People::Known::Entry* People::Known::find(const std::string& id) const {
  for (const Entry& e : people) {
    if (e.person.id == id) return &e;
  }
  return nullptr;
}

std::int64_t People::Known::wait(const std::string& tried, const std::string& address, std::int64_t now) const {
  const auto of = [&](const std::map<std::string, Tries>& tries, const std::string& key, const Tries::Limits& limits) {
    const auto found = tries.find(key);
    return found == tries.end() ? 0 : found->second.wait(now, limits);
  };
  return std::max(of(names, tried, of_name), of(addresses, address, of_address));
}

bool People::Known::another_owner(const std::string& than) const {
  return std::any_of(people.begin(), people.end(),
                     [&](const Entry& e) { return e.person.here && e.person.id != than && (e.person.roles & owner); });
}

}  // namespace strandline::salon
