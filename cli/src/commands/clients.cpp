#include <memory>
#include <ostream>

#include "src/clients_command.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/rights.h"

namespace strandline::cli {

namespace {

struct ClientFlags {
  std::string db = "salon.sqlite", key, id, find, knowledge = salon::default_knowledge();
  int years = 0;
  bool sure = false;
};

using Act = std::function<Result<void>(salon::World&, salon::Clients&, const ClientFlags&, Io&)>;

int run(const ClientFlags& flags, Session& session, const Act& act) {
  const auto fail = [&](const Problems& problems, int code) {
    print_problems(problems, "the clients", session.io.err);
    return code;
  };
  auto world = salon::real_world(flags.db, false, flags.key);
  if (!world) return fail({{world.error().code, "", {{"detail", world.error().detail}}}}, failed);
  salon::Clients clients(*world);
  const auto done_well = act(*world, clients, flags, session.io);
  return done_well ? done : fail(done_well.error(), refused);
}

void print(const std::vector<salon::ClientLine>& lines, Io& io) {
  for (const salon::ClientLine& c : lines)
    io.out << printable(c.id) << "  " << printable(c.name) << "  " << c.visits << "  " << printable(c.last_date)
           << '\n';
}

Result<void> list(salon::World&, salon::Clients& clients, const ClientFlags& flags, Io& io) {
  constexpr int most = 500;
  return clients.find(flags.find, most).map([&](const auto& lines) { print(lines, io); });
}

Result<void> everything(salon::World& world, salon::Clients& clients, const ClientFlags& flags, Io& io) {
  return salon::everything_of(world, clients, flags.id).map([&](const wire::Json& all) {
    constexpr int indent = 1;
    io.out << all.dump(indent) << '\n';
  });
}

Result<void> erase(salon::World& world, salon::Clients& clients, const ClientFlags& flags, Io& io) {
  if (!flags.sure) return tl::unexpected(Problems{{"not_sure", "", {{"id", flags.id}}}});
  return salon::erase_client(world, clients, flags.id, "").map([&] {
    io.out << "Erased. Nobody can read it any more, here or in a copy that is restored beside this key.\n";
  });
}

// Whom the house has kept for long enough, or who was not seen for so many years; with --yes they are erased.
Result<void> due(salon::World& world, salon::Clients& clients, const ClientFlags& flags, Io& io) {
  constexpr std::size_t day = 10;
  const std::string today = world.now().substr(0, day);
  const auto by_the_house = [&](const salon::Retention& rules) { return salon::due_for_erasure(world, rules, today); };
  const auto old = flags.years > 0 ? salon::last_seen_before(world, salon::years_before(today, flags.years))
                                   : salon::open_retention(flags.knowledge).and_then(by_the_house);
  if (!old) return tl::unexpected(old.error());
  for (const std::string& client : *old) {
    const auto record = clients.open(client);
    if (!record) return tl::unexpected(record.error());
    print({record->client}, io);
    if (!flags.sure) continue;
    if (auto gone = salon::erase_client(world, clients, client, ""); !gone) return gone;
  }
  io.out << old->size() << " kept for long enough" << (flags.sure ? ", erased.\n" : ".\n");
  return {};
}

}  // namespace

void add_clients(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<ClientFlags>();
  CLI::App* clients = app.add_subcommand("clients", "clients: list, all that is kept of one, erase one, who is due");
  clients->require_subcommand(1);
  const auto add = [&](const char* name, const char* what, const Act& act) {
    CLI::App* command = clients->add_subcommand(name, what);
    command->add_option("--db,--store", flags->db, "salon file, not in use");
    command->add_option("--key", flags->key, "key file, beside the salon file unless said");
    command->callback([flags, act, &session] { session.exit_code = run(*flags, session, act); });
    return command;
  };
  add("list", "ids, names, visits, last visit", list)->add_option("--find", flags->find, "part of a name");
  add("everything", "all that is kept of one, as JSON", everything)->add_option("ID", flags->id)->required();
  CLI::App* one = add("erase", "destroys the keys of one: not undone by anything", erase);
  one->add_option("ID", flags->id)->required();
  one->add_flag("--yes", flags->sure, "erase, not only ask");
  CLI::App* old = add("due", "whom the house has kept for long enough", due);
  old->add_option("--years", flags->years, "after the last visit, in place of what the house says")
      ->check(CLI::Range(1, 100));
  old->add_option("--knowledge", flags->knowledge, "knowledge folder, with policy/retention.json in it");
  old->add_flag("--yes", flags->sure, "erase them");
}

}  // namespace strandline::cli
