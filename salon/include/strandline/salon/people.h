// The people of the salon and who of them is in: each of these a fact in the salon file, secrets as hashes only. As
// long as nobody was made an owner there is nobody to be told apart, and nobody signs in.
#pragma once

#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "strandline/salon/door_rules.h"
#include "strandline/salon/roles.h"
#include "strandline/salon/world.h"

namespace strandline::salon {

struct Person {
  std::string id, name, added_at;
  Roles roles = 0;
  bool here = true;  // has not left
  bool has_pin = false;
};

struct Device {
  std::string id, name, paired_at;
};

struct Session {
  std::string id, person, device, began_at;  // device "" = none that is paired
  std::int64_t began = 0, seen = 0;          // s since 1970
  bool by_pin = false;
};

// Who asks. Without people, and at the command line of the salon's own machine, nobody is told apart: `anybody()`.
struct Who {
  Person person;
  std::string session, device;
  bool by_pin = false;
};
inline Who anybody() { return {{"", "", "", everybody, true, false}, "", "", false}; }

// What the first start says of a salon, beside its owner.
struct Founding {
  std::string name, passphrase;
  Roles roles = owner;
  std::string zone;    // IANA time zone, "Europe/Vienna"
  std::string policy;  // name of the house policy
  std::string shelf;   // "invented" or "empty"
};

struct SignIn {
  std::string name;    // as typed; or
  std::string person;  // the id, at a paired device
  std::string secret;  // passphrase, or with `pin` the digits
  bool pin = false;
  std::string device_token;  // of this device; "" = not paired
  std::string address;       // where it comes from
};

// What lets one further device in, once, for some minutes: kept in memory only.
struct Invitation {
  std::string code;
  int minutes = 0;
};

struct SignedIn {
  Who who;
  std::string token;  // 256 random bits; only its digest is kept
};

struct Paired {
  Device device;
  std::string token;
};

// What is there to be seen from outside the door.
struct Door {
  bool people = false;              // somebody has to sign in
  bool fresh = false;               // nothing is in the file yet: the first start
  std::string zone, shelf;          // of the founding; "" = not said
  bool paired = false;              // this device
  std::vector<Person> may_come_in;  // at a paired device only
};

struct Team {
  std::vector<Person> people;  // those who left too, in the order they were added
  std::vector<Device> devices;
  std::vector<Session> sessions;  // that are open
};

// One object for a salon file that is open; safe from many threads. Problems of all: those of the store, and then
// nobody comes in.
class People {
 public:
  People(World& world, const DoorRules& rules);
  ~People();
  People(const People&) = delete;
  People& operator=(const People&) = delete;

  Result<Door> door(const std::string& device_token);

  // The first owner. Problems: already_founded, unknown_time_zone {zone}, and those of add().
  Result<SignedIn> found(const Founding& founding);

  // Problems: wrong_secret (whichever it was: nobody is told who is there), try_later {seconds}, not_paired, busy.
  Result<SignedIn> sign_in(const SignIn& asked);
  // Whose session it is, which is in use from now on. anybody() while there are no people. Problem: not_signed_in.
  Result<Who> who(const std::string& token);
  Result<void> sign_out(const Who& who);

  Result<Team> team();
  // Of those who are here; capitals and accents do not matter. Problem person_not_found {id}.
  Result<Person> named(const std::string& name);
  // `by` adds somebody. Problems: not_your_role, name_missing, too_long {max}, name_taken, owner_first,
  // passphrase_short {min}, passphrase_plain.
  Result<Person> add(const Who& by, const std::string& name, Roles roles, const std::string& passphrase);
  // Problems of these: person_not_found, device_not_found, not_your_role, last_owner.
  Result<Person> set_roles(const Who& by, const std::string& person, Roles roles);
  // A new passphrase for somebody who has lost theirs; their PIN goes, and every session of theirs ends.
  Result<Person> reset(const Who& by, const std::string& person, const std::string& passphrase);
  Result<Person> leave(const Who& by, const std::string& person);
  Result<void> revoke(const Who& by, const std::string& person);  // every session of theirs ends
  Result<void> unpair(const Who& by, const std::string& device);  // and every session on it

  // One's own, with the passphrase that is valid now: wrong_secret, try_later. Sessions elsewhere end.
  Result<void> change_passphrase(const Who& who, const std::string& now, const std::string& next,
                                 const std::string& from);
  // "" = no PIN any more. Problem pin_not_digits {min}.
  Result<void> change_pin(const Who& who, const std::string& now, const std::string& pin, const std::string& from);
  // This device may be used with a PIN from now on. Owners only, not with a PIN.
  Result<Paired> pair(const Who& by, const std::string& name);
  // Lets a device that is elsewhere be paired from there; the invitation before it is void. Owners only, not with a
  // PIN.
  Result<Invitation> invite(const Who& by);
  // Pairs the device that brings the code. Problem invitation_gone: used, over, void, or none.
  Result<Paired> redeem(const std::string& code, const std::string& name);
  // The paired device whose token this is; "" = none.
  Result<std::string> device_of(const std::string& token);
  // The words of the master key, printed; owners only, with their passphrase. A fact.
  Result<std::string> recovery_words(const Who& by, const std::string& passphrase, const std::string& from);

  // A fact that `who` opened this visit, or names, once for each session. While the file cannot be
  // written they are owed, a thousand at most, so that a head that is being worked on can still be looked at.
  Result<void> opened_visit(const Who& who, const std::string& visit);
  Result<void> opened_names(const Who& who);

 private:
  struct Known;
  Result<void> ready();
  Result<void> write(const std::vector<store::NewFact>& facts);
  store::NewFact fact(const std::string& stream, const char* kind, const wire::Json& body, const std::string& key);
  std::string hashed(const std::string& secret);
  Result<std::string> own_hash(const Who& who);
  Result<std::string> proven(const std::string& person, const std::string& hash, const std::string& secret,
                             const std::string& tried, const std::string& from);
  Result<SignedIn> begin(const std::string& person, const std::string& device, bool pin);
  Result<Person> managed(const Who& by, const std::string& person, Roles would_have) const;
  Result<void> end_sessions(const std::function<bool(const Session&)>& which, const char* why);
  Result<void> opened(const Who& who, const char* kind, const wire::Json& body);
  Result<Paired> paired(const std::string& by, const std::string& name);
  std::int64_t now() const;

  World& world_;
  const DoorRules rules_;
  std::mutex mutex_;
  std::unique_ptr<Known> known_;      // read from the file when it is first asked for, and after a write that failed
  std::unique_ptr<Known> before_;     // what it was before that: when sessions were last in use stands in no fact
  std::vector<store::NewFact> owed_;  // openings that could not be written yet
  struct Invited {
    std::string digest, by;
    std::int64_t until = 0;  // s since 1970
  };
  std::optional<Invited> invited_;
  std::mutex hashing_;  // taken before the other: one secret at a time is tried or hashed
  std::atomic<int> waiting_ = 0;
};

}  // namespace strandline::salon
