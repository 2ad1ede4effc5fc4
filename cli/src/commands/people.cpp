#include "strandline/salon/people.h"

#include <unistd.h>

#include <iostream>
#include <memory>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "src/unseen.h"
#include "strandline/salon/founding.h"
#include "strandline/salon/knowledge.h"

namespace strandline::cli {

namespace {

using salon::People, salon::Person;

struct PeopleFlags {
  std::string db = "salon.sqlite", key, knowledge, name, zone, shelf = "invented";
  std::vector<std::string> roles;
};

// A line of standard input, twice where a person types it.
Result<std::string> passphrase(Io& io) {
  const bool typed = &io.in == &std::cin && isatty(STDIN_FILENO);
  const Unseen unseen(typed);
  const auto line = [&](const char* asked) {
    if (typed) io.err << asked << std::flush;
    std::string out;
    std::getline(io.in, out);
    if (typed) io.err << '\n';
    return out;
  };
  std::string first = line("Passphrase: ");
  if (typed && line("Once more: ") != first) return tl::unexpected(Problems{{"passphrases_differ", "", {}}});
  return first;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

Result<void> list(People& people, Io& io) {
  return people.team().map([&](const salon::Team& team) {
    if (team.people.empty()) io.out << "Nobody yet: everybody at this machine sees everything, and nobody signs in.\n";
    for (const Person& p : team.people) {
      io.out << printable(p.name) << "  " << joined(salon::words_of(p.roles));
      if (!p.here) io.out << "  (left)";
      io.out << '\n';
    }
  });
}

Result<salon::Roles> roles(const PeopleFlags& flags) {
  const auto found = salon::roles_of(flags.roles);
  if (!found) return tl::unexpected(Problems{{"unknown_role", "", {{"word", joined(flags.roles)}}}});
  return *found;
}

Result<void> add(People& people, const PeopleFlags& flags, Io& io, const salon::World& world,
                 const salon::House& house) {
  const auto theirs = roles(flags);
  if (!theirs) return tl::unexpected(theirs.error());
  const auto door = people.door("");
  if (!door) return tl::unexpected(door.error());
  if (!door->people && !(*theirs & salon::owner)) return tl::unexpected(Problems{{"owner_first", "", {}}});
  const auto secret = passphrase(io);
  if (!secret) return tl::unexpected(secret.error());
  if (!door->people) {
    // The session that begins with it is nobody's here.
    salon::Shelves shelves(world, house);
    const auto founded = salon::found_salon(
        people, shelves, {flags.name, *secret, *theirs, flags.zone, house.policy.id, flags.shelf}, "Our shelf");
    if (!founded) return tl::unexpected(founded.error());
    io.out << printable(flags.name) << " owns this salon; from now on everybody signs in.\n"
           << "Print the words of its key (strandline key) and keep them elsewhere.\n";
    return people.sign_out(founded->who);
  }
  return people.add(salon::anybody(), flags.name, *theirs, *secret).map([&](const Person& p) {
    io.out << printable(p.name) << " is here as " << joined(salon::words_of(p.roles)) << ".\n";
  });
}

using Change = std::function<Result<void>(People&, const PeopleFlags&, Io&)>;
// What the first start needs beside the people.
using First = Result<void> (*)(People&, const PeopleFlags&, Io&, const salon::World&, const salon::House&);

int run(const PeopleFlags& flags, Session& session, const Change& change, First first = nullptr) {
  const auto fail = [&](const Problems& problems, int code) {
    print_problems(problems, "the people of the salon", session.io.err);
    return code;
  };
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  const auto house = salon::open_house(files);
  if (!house) return fail(house.error(), failed);
  auto world = salon::real_world(flags.db, false, flags.key);
  if (!world) return fail({{world.error().code, "", {{"detail", world.error().detail}}}}, failed);
  People people(*world, house->doors);
  const auto done_well = first ? first(people, flags, session.io, *world, *house) : change(people, flags, session.io);
  return done_well ? done : fail(done_well.error(), refused);
}

// Somebody by name, changed by whoever sits at the salon's own machine.
template <class Act>
Change of_one(const Act& act, const char* said) {
  return [act, said](People& people, const PeopleFlags& flags, Io& io) {
    return people.named(flags.name).and_then([&](const Person& p) -> Result<void> {
      const Result<void> changed = act(people, p, flags, io);
      if (changed) io.out << printable(p.name) << ' ' << said << '\n';
      return changed;
    });
  };
}

}  // namespace

void add_people(CLI::App& app, Session& session) {
  CLI::App* command = app.add_subcommand("people", "the people of the salon, while no server has its file");
  command->require_subcommand(1);
  const auto flags = std::make_shared<PeopleFlags>();
  const auto sub = [&](const char* name, const char* help, bool named, const Change& change, First first = nullptr) {
    CLI::App* one = command->add_subcommand(name, help);
    one->add_option("--db,--store", flags->db, "salon file");
    one->add_option("--key", flags->key, "key file, beside the salon file unless said");
    one->add_option("--knowledge", flags->knowledge, "folder with policy/");
    if (named) one->add_option("NAME", flags->name, "whom")->required();
    one->callback([flags, &session, change, first] { session.exit_code = run(*flags, session, change, first); });
    return one;
  };
  const auto with_roles = [&](CLI::App* one) {
    one->add_option("--role", flags->roles, "colourist, assistant, apprentice, manager, owner; several allowed")
        ->delimiter(',')
        ->required();
  };
  sub("list", "who works here", false, [](People& people, const PeopleFlags&, Io& io) { return list(people, io); });
  CLI::App* adding = sub("add", "somebody new; the passphrase is a line of standard input", true, {}, add);
  with_roles(adding);
  adding->add_option("--zone", flags->zone, "time zone of the salon, for its first owner: Europe/Vienna");
  adding->add_option("--shelf", flags->shelf, "for its first owner: the invented shelf, or an empty one")
      ->check(CLI::IsMember({"invented", "empty"}));
  with_roles(sub("role", "other roles", true,
                 of_one(
                     [](People& people, const Person& p, const PeopleFlags& given, Io&) -> Result<void> {
                       return roles(given).and_then([&](salon::Roles theirs) {
                         return people.set_roles(salon::anybody(), p.id, theirs).map([](const Person&) {});
                       });
                     },
                     "has other roles now.")));
  sub("reset", "a new passphrase, a line of standard input; PIN and sessions end", true,
      of_one(
          [](People& people, const Person& p, const PeopleFlags&, Io& io) -> Result<void> {
            return passphrase(io).and_then([&](const std::string& secret) {
              return people.reset(salon::anybody(), p.id, secret).map([](const Person&) {});
            });
          },
          "has a new passphrase."));
  sub("revoke", "ends every session of somebody", true,
      of_one([](People& people, const Person& p, const PeopleFlags&,
                Io&) { return people.revoke(salon::anybody(), p.id); },
             "is signed out everywhere."));
  sub("leave", "somebody no longer works here", true,
      of_one([](People& people, const Person& p, const PeopleFlags&,
                Io&) { return people.leave(salon::anybody(), p.id).map([](const Person&) {}); },
             "cannot sign in any more."));
}

}  // namespace strandline::cli
