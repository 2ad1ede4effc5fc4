#include "strandline/salon/people.h"

#include <algorithm>

#include "people_checks.h"
#include "people_known.h"

namespace strandline::salon {

namespace {

constexpr const char* door_key = "door";  // seals names and addresses of tries

tl::unexpected<Problems> problem(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

tl::unexpected<Problems> told(const store::Trouble& trouble) {
  return problem(trouble.code.c_str(), {{"detail", trouble.detail}});
}

}  // namespace

People::People(World& world, const DoorRules& rules) : world_(world), rules_(rules) {}
People::~People() = default;

std::int64_t People::now() const { return seconds_of(world_.now()); }

// Requires the lock.
Result<void> People::ready() {
  if (known_) return {};
  auto known = std::make_unique<Known>(rules_);
  std::vector<store::Fact> all;
  for (const char* kind :
       {"person.added", "person.roles", "person.secret", "person.pin", "person.left", "session.began", "session.ended",
        "device.paired", "device.unpaired", "try.failed", "salon.founded"}) {
    store::FactsAsked asked{.stream = {}, .key = {}, .kind = kind};
    for (bool more = true; more;) {
      auto page = world_.store->facts(asked);
      if (!page) return told(page.error());
      more = page->size() == static_cast<std::size_t>(asked.limit);
      if (more) asked.after = page->back().store_seq;
      std::move(page->begin(), page->end(), std::back_inserter(all));
    }
  }
  std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.store_seq < b.store_seq; });
  for (const store::Fact& f : all) known->apply(f);
  if (before_) known->in_use_as(*before_);
  before_.reset();
  known_ = std::move(known);
  return {};
}

store::NewFact People::fact(const std::string& stream, const char* kind, const wire::Json& body,
                            const std::string& key) {
  return {world_.new_id(), stream, store::NewFact::at_the_end, world_.now(), kind, wire::print(body), key};
}

Result<void> People::write(const std::vector<store::NewFact>& facts) {
  const auto made = world_.store->hand_in(facts, "", 0);
  if (!made) {
    before_ = std::move(known_);  // what failed may be there all the same
    return told(made.error());
  }
  for (const store::Fact& f : *made) known_->apply(f);
  return {};
}

std::string People::hashed(const std::string& secret) {
  const std::lock_guard turn(hashing_);
  return store::hash_secret(secret, rules_.hash);
}

Result<Door> People::door(const std::string& device_token) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  Door out;
  out.people = known_->anybody();
  out.zone = known_->zone, out.shelf = known_->shelf;
  if (!out.people) {
    const auto visits = world_.store->visits({.find = {}, .client = {}, .limit = 1});
    if (!visits) return told(visits.error());
    const auto facts = world_.store->facts({.stream = {}, .key = {}, .kind = {}, .limit = 1});
    if (!facts) return told(facts.error());
    out.fresh = visits->empty() && facts->empty();  // visits that were handed in are facts
    return out;
  }
  out.paired = known_->device_of(device_token, now()) != nullptr;
  if (!out.paired) return out;
  for (const Known::Entry& e : known_->people) {
    if (e.person.here) out.may_come_in.push_back(e.person);
  }
  return out;
}

Result<SignedIn> People::found(const Founding& founding) {
  {
    const std::lock_guard lock(mutex_);
    if (auto read = ready(); !read) return tl::unexpected(read.error());
    if (known_->anybody()) return problem("already_founded");
  }
  if (!(founding.roles & owner)) return problem("owner_first");
  if (auto good = check_time_zone(founding.zone); !good) return tl::unexpected(good.error());
  if (founding.shelf != "invented" && founding.shelf != "empty")
    return problem("unknown_word", {{"word", founding.shelf}});
  if (auto good = check_name(founding.name); !good) return tl::unexpected(good.error());
  if (auto good = check_passphrase(founding.passphrase, founding.name, rules_); !good)
    return tl::unexpected(good.error());
  const std::string hash = hashed(founding.passphrase);
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  if (known_->anybody()) return problem("already_founded");
  const std::string id = "person-" + world_.new_id();
  auto done = write(
      {fact("salon", "salon.founded", {{"zone", founding.zone}, {"policy", founding.policy}, {"shelf", founding.shelf}},
            ""),
       fact(id, "person.added", {{"name", founding.name}, {"roles", words_of(founding.roles)}, {"hash", hash}}, id)});
  if (!done) return tl::unexpected(done.error());
  return begin(id, "", false);
}

// `person`, whose `secret` is the one of `hash`, as far as it may be tried now; otherwise the try is a fact.
Result<std::string> People::proven(const std::string& person, const std::string& hash, const std::string& secret,
                                   const std::string& tried, const std::string& from) {
  const bool room = ++waiting_ <= rules_.hashes_waiting;
  std::unique_lock turn(hashing_, std::defer_lock);
  if (room) turn.lock();
  --waiting_;
  if (!room) return problem("busy", {{"waiting", std::to_string(rules_.hashes_waiting)}});
  {
    const std::lock_guard lock(mutex_);
    if (auto read = ready(); !read) return tl::unexpected(read.error());
    const std::int64_t wait = known_->wait(tried, from, now());
    if (wait > 0) return problem("try_later", {{"seconds", std::to_string(wait)}});
  }
  const bool right = store::is_secret(hash.empty() ? store::nobodys_hash(rules_.hash) : hash, secret);
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  // Not who left, or got another secret, meanwhile.
  const Known::Entry* entry = known_->find(person);
  if (right && entry && entry->person.here && (entry->hash == hash || entry->pin == hash)) return person;
  if (auto kept = write({fact("door", "try.failed", {{"name", tried}, {"address", from}}, door_key)}); !kept)
    return tl::unexpected(kept.error());
  return problem("wrong_secret");
}

Result<SignedIn> People::begin(const std::string& person, const std::string& device, bool pin) {
  const std::string token = store::random_token(), session = "session-" + world_.new_id();
  auto done = write(
      {fact(person, "session.began",
            {{"session", session}, {"digest", store::token_digest(token)}, {"device", device}, {"pin", pin}}, person)});
  if (!done) return tl::unexpected(done.error());
  return SignedIn{{known_->find(person)->person, session, device, pin}, token};
}

Result<SignedIn> People::sign_in(const SignIn& asked) {
  std::string id, hash, device, tried = tried_as(asked.name);
  {
    const std::lock_guard lock(mutex_);
    if (auto read = ready(); !read) return tl::unexpected(read.error());
    if (const Known::Paired* at = known_->device_of(asked.device_token, now())) device = at->device.id;
    if ((asked.pin || !asked.person.empty()) && device.empty()) return problem("not_paired");
    const Known::Entry* entry = asked.person.empty() ? known_->named(asked.name) : known_->find(asked.person);
    if (entry && entry->person.here) {
      id = entry->person.id, hash = asked.pin ? entry->pin : entry->hash;
      tried = tried_as(entry->person.name);
    }
  }
  const auto proof = proven(id, hash, asked.secret, tried, asked.address);
  if (!proof) return tl::unexpected(proof.error());
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  return begin(*proof, device, asked.pin);
}

Result<Who> People::who(const std::string& token) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return tl::unexpected(read.error());
  if (!known_->anybody()) return anybody();
  const auto found = token.empty() ? known_->sessions.end() : known_->sessions.find(store::token_digest(token));
  if (found == known_->sessions.end()) return problem("not_signed_in");
  Session& session = found->second;
  if (!known_->alive(session, now())) {
    const Session gone = session;
    if (auto kept = end_sessions([&](const Session& s) { return s.id == gone.id; }, "idle"); !kept)
      return tl::unexpected(kept.error());
    return problem("not_signed_in");
  }
  session.seen = std::max(session.seen, now());
  return Who{known_->find(session.person)->person, session.id, session.device, session.by_pin};
}

Result<void> People::end_sessions(const std::function<bool(const Session&)>& which, const char* why) {
  std::vector<store::NewFact> facts;
  for (const auto& [digest, s] : known_->sessions) {
    if (which(s)) facts.push_back(fact(s.person, "session.ended", {{"session", s.id}, {"why", why}}, s.person));
  }
  return facts.empty() ? Result<void>() : write(facts);
}

Result<void> People::sign_out(const Who& who) {
  const std::lock_guard lock(mutex_);
  if (auto read = ready(); !read) return read;
  return end_sessions([&](const Session& s) { return s.id == who.session; }, "signed out");
}

}  // namespace strandline::salon
