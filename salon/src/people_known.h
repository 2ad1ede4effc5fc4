// What the facts of a salon file say of its people, in memory.
#pragma once

#include <map>
#include <set>

#include "strandline/salon/people.h"
#include "tries.h"

namespace strandline::salon {

struct People::Known {
  struct Entry {
    Person person;
    std::string hash, pin;
  };
  struct Paired {
    Device device;
    std::string digest;
    std::int64_t paired = 0;
  };

  explicit Known(const DoorRules& rules);
  void apply(const store::Fact& fact);
  void in_use_as(const Known& before);

  bool anybody() const { return !people.empty(); }
  bool alive(const Session& session, std::int64_t now) const;
  // The device whose token this is; nothing when it is none, was unpaired or has to be paired again.
  const Paired* device_of(const std::string& token, std::int64_t now) const;
  // Of those who are here. Nothing when there is none by this name.
  const Entry* named(const std::string& name) const;
  const Entry* find(const std::string& id) const;
  // Seconds until this may be tried again for this name from this address.
  std::int64_t wait(const std::string& tried, const std::string& address, std::int64_t now) const;
  bool another_owner(const std::string& than) const;

  DoorRules rules;
  Tries::Limits of_name, of_address;
  std::vector<Entry> people;                // in the order they were added
  std::vector<Paired> devices;              // that are paired
  std::map<std::string, Session> sessions;  // that were not ended, by the digest of their token
  std::map<std::string, Tries> names, addresses;
  std::set<std::string> told_openings;  // sessions, alone for names or with a visit, whose opening is a fact already
  std::string zone, shelf;
};

// "2026-03-09T09:00:00Z" as seconds since 1970; 0 for anything else.
std::int64_t seconds_of(const std::string& utc);
// What tries for a name are counted under, whether somebody has it or not.
std::string tried_as(const std::string& name);

}  // namespace strandline::salon
