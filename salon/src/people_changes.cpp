// What people of the salon change about each other and about themselves.
#include <algorithm>

#include "people_checks.h"
#include "people_known.h"

namespace strandline::salon {

namespace {

tl::unexpected<Problems> problem(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

wire::Json by_whom(const Who& who) {
  return who.person.id.empty() ? wire::Json("this machine") : wire::Json(who.person.id);
}

}  // namespace

Result<Team> People::team() {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  Team out;
  for (const Known::Entry& e : known_->people) out.people.push_back(e.person);
  for (const Known::Paired& d : known_->devices) out.devices.push_back(d.device);
  for (const auto& [digest, s] : known_->sessions) {
    if (known_->alive(s, now())) out.sessions.push_back(s);
  }
  return out;
}

Result<Person> People::named(const std::string& name) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  const Known::Entry* entry = known_->named(name);
  return entry ? Result<Person>(entry->person) : problem("person_not_found", {{"id", name}});
}

Result<Person> People::add(const Who& by, const std::string& name, Roles roles, const std::string& passphrase) {
  if (!may_manage(by.person.roles, roles)) return problem("not_your_role");
  if (auto good = check_name(name); !good) return tl::unexpected(good.error());
  if (auto good = check_passphrase(passphrase, name, rules_); !good) return tl::unexpected(good.error());
  const std::string hash = hashed(passphrase);
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  if (!known_->anybody()) return problem("owner_first");
  if (known_->named(name)) return problem("name_taken", {{"name", name}});
  const std::string id = "person-" + world_.new_id();
  auto done = write({fact(id, "person.added",
                          {{"name", name}, {"roles", words_of(roles)}, {"hash", hash}, {"by", by_whom(by)}}, id)});
  if (!done) return tl::unexpected(done.error());
  return known_->find(id)->person;
}

// Somebody who is here, whom `by` may change so that they would have these roles.
Result<Person> People::managed(const Who& by, const std::string& person, Roles would_have) const {
  const Known::Entry* entry = known_->find(person);
  if (!entry || !entry->person.here) return problem("person_not_found", {{"id", person}});
  if (!may_manage(by.person.roles, entry->person.roles | would_have)) return problem("not_your_role");
  return entry->person;
}

Result<Person> People::set_roles(const Who& by, const std::string& person, Roles roles) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  const auto theirs = managed(by, person, roles);
  if (!theirs) return theirs;
  if ((theirs->roles & owner) && !(roles & owner) && !known_->another_owner(person)) return problem("last_owner");
  if (auto done = write({fact(person, "person.roles", {{"roles", words_of(roles)}, {"by", by_whom(by)}}, person)});
      !done)
    return tl::unexpected(done.error());
  return known_->find(person)->person;
}

Result<Person> People::reset(const Who& by, const std::string& person, const std::string& passphrase) {
  std::string name;
  {
    const std::lock_guard lock(mutex_);
    if (auto read = ready(); !read) return tl::unexpected(read.error());
    const auto theirs = managed(by, person, 0);
    if (!theirs) return theirs;
    name = theirs->name;
  }
  if (auto good = check_passphrase(passphrase, name, rules_); !good) return tl::unexpected(good.error());
  const std::string hash = hashed(passphrase);
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  const auto theirs = managed(by, person, 0);
  if (!theirs) return theirs;
  auto done = end_sessions([&](const Session& s) { return s.person == person; }, "new passphrase");
  if (done) {
    done = write({fact(person, "person.secret", {{"hash", hash}, {"by", by_whom(by)}}, person),
                  fact(person, "person.pin", {{"hash", ""}, {"by", by_whom(by)}}, person)});
  }
  if (!done) return tl::unexpected(done.error());
  return known_->find(person)->person;
}

Result<Person> People::leave(const Who& by, const std::string& person) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  const auto theirs = managed(by, person, 0);
  if (!theirs) return theirs;
  if ((theirs->roles & owner) && !known_->another_owner(person)) return problem("last_owner");
  auto done = end_sessions([&](const Session& s) { return s.person == person; }, "left");
  if (done) done = write({fact(person, "person.left", {{"by", by_whom(by)}}, person)});
  if (!done) return tl::unexpected(done.error());
  return known_->find(person)->person;
}

Result<void> People::revoke(const Who& by, const std::string& person) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return read;
  const auto theirs = managed(by, person, 0);
  if (!theirs && person != by.person.id) return tl::unexpected(theirs.error());
  return end_sessions([&](const Session& s) { return s.person == person; }, "revoked");
}

Result<void> People::unpair(const Who& by, const std::string& device) {
  if (!(by.person.roles & owner)) return problem("not_your_role");
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return read;
  if (std::none_of(known_->devices.begin(), known_->devices.end(),
                   [&](const auto& d) { return d.device.id == device; }))
    return problem("device_not_found", {{"id", device}});
  auto done = end_sessions([&](const Session& s) { return s.device == device; }, "device unpaired");
  if (done) done = write({fact(device, "device.unpaired", {{"by", by_whom(by)}}, device)});
  return done;
}

Result<void> People::change_passphrase(const Who& who, const std::string& now, const std::string& next,
                                       const std::string& from) {
  const auto hash = own_hash(who);
  if (!hash) return tl::unexpected(hash.error());
  if (auto good = check_passphrase(next, who.person.name, rules_); !good) return good;
  const auto proof = proven(who.person.id, *hash, now, tried_as(who.person.name), from);
  if (!proof) return tl::unexpected(proof.error());
  const std::string made = hashed(next);
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return read;
  auto done = end_sessions([&](const Session& s) { return s.person == who.person.id && s.id != who.session; },
                           "new passphrase");
  if (done)
    done = write({fact(who.person.id, "person.secret", {{"hash", made}, {"by", who.person.id}}, who.person.id)});
  return done;
}

Result<void> People::change_pin(const Who& who, const std::string& now, const std::string& pin,
                                const std::string& from) {
  const auto hash = own_hash(who);
  if (!hash) return tl::unexpected(hash.error());
  if (!pin.empty()) {
    if (auto good = check_pin(pin, rules_); !good) return good;
  }
  const auto proof = proven(who.person.id, *hash, now, tried_as(who.person.name), from);
  if (!proof) return tl::unexpected(proof.error());
  const std::string made = pin.empty() ? "" : hashed(pin);
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return read;
  auto done = end_sessions(
      [&](const Session& s) { return s.person == who.person.id && s.by_pin && s.id != who.session; }, "new PIN");
  if (done) done = write({fact(who.person.id, "person.pin", {{"hash", made}, {"by", who.person.id}}, who.person.id)});
  return done;
}

Result<std::string> People::own_hash(const Who& who) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  const Known::Entry* entry = known_->find(who.person.id);
  if (!entry || !entry->person.here) return problem("not_signed_in");
  return entry->hash;
}

// Requires the lock.
Result<Paired> People::paired(const std::string& by, const std::string& name) {
  const std::string token = store::random_token(), id = "device-" + world_.new_id();
  auto done =
      write({fact(id, "device.paired", {{"name", name}, {"digest", store::token_digest(token)}, {"by", by}}, id)});
  if (!done) return tl::unexpected(done.error());
  return Paired{known_->devices.back().device, token};
}

Result<Paired> People::pair(const Who& by, const std::string& name) {
  if (!(by.person.roles & owner) || by.by_pin || by.person.id.empty()) return problem("not_your_role");
  if (auto good = check_name(name); !good) return tl::unexpected(good.error());
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  return paired(by.person.id, name);
}

Result<Invitation> People::invite(const Who& by) {
  if (!(by.person.roles & owner) || by.by_pin || by.person.id.empty()) return problem("not_your_role");
  constexpr std::int64_t minute_s = 60;
  const std::lock_guard lock(mutex_);
  Invitation out{store::random_token(), rules_.invite_minutes};
  invited_ = Invited{store::token_digest(out.code), by.person.id, now() + rules_.invite_minutes * minute_s};
  return out;
}

Result<Paired> People::redeem(const std::string& code, const std::string& name) {
  if (auto good = check_name(name); !good) return tl::unexpected(good.error());
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  // By somebody who is still an owner; and a clock that was set back makes no invitation last.
  const Known::Entry* by = invited_ ? known_->find(invited_->by) : nullptr;
  constexpr std::int64_t minute_s = 60;
  const std::int64_t left = invited_ ? invited_->until - now() : 0;
  if (!by || !by->person.here || !(by->person.roles & owner) || left <= 0 || left > rules_.invite_minutes * minute_s ||
      invited_->digest != store::token_digest(code))
    return problem("invitation_gone");
  auto out = paired(invited_->by, name);
  if (out) invited_.reset();
  return out;
}

Result<std::string> People::device_of(const std::string& token) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  const Known::Paired* found = known_->device_of(token, now());
  return found ? found->device.id : "";
}

Result<std::string> People::recovery_words(const Who& by, const std::string& passphrase, const std::string& from) {
  if (!(by.person.roles & owner)) return problem("not_your_role");
  const auto hash = own_hash(by);
  if (!hash) return tl::unexpected(hash.error());
  const auto proof = proven(by.person.id, *hash, passphrase, tried_as(by.person.name), from);
  if (!proof) return proof;
  auto words = world_.recovery_words ? world_.recovery_words() : problem("store_key_missing", {{"detail", ":memory:"}});
  if (!words) return words;
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  if (auto kept = write({fact("opened-" + by.person.id, "opened.key", wire::Json::object(), "")}); !kept)
    return tl::unexpected(kept.error());
  return words;
}

// Requires the lock.
Result<void> People::opened(const Who& who, const char* kind, const wire::Json& body) {
  constexpr std::size_t owed_most = 1000;
  owed_.push_back(fact("opened-" + who.person.id, kind, body, ""));
  const auto done = write(owed_);
  if (done) owed_.clear();
  return done || owed_.size() < owed_most ? Result<void>() : done;
}

Result<void> People::opened_visit(const Who& who, const std::string& visit) {
  if (who.person.id.empty()) return {};
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return read;
  if (!known_->told_openings.insert(who.session + ' ' + visit).second) return {};
  return opened(who, "opened.visit", {{"visit", visit}, {"session", who.session}});
}

Result<void> People::opened_names(const Who& who) {
  if (who.person.id.empty()) return {};
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return read;
  if (!known_->told_openings.insert(who.session).second) return {};
  return opened(who, "opened.names", {{"session", who.session}});
}

}  // namespace strandline::salon
