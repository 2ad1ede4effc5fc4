#include <chrono>
#include <csignal>
#include <filesystem>
#include <memory>
#include <sstream>
#include <thread>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "src/settings.h"
#include "src/voice.h"
#include "strandline/salon/backups.h"
#include "strandline/salon/people.h"
#include "strandline/salon/visits.h"
#include "strandline/server/server.h"

namespace strandline::cli {

namespace {

int fail(const Problems& problems, Session& session) {
  print_problems(problems, "the salon", session.io.err);
  return failed;
}

// Ctrl-C or a polite kill stops the server. Made before any thread, so that only this one ever sees the
// signals.
class Stopper {
 public:
  Stopper() {
    sigemptyset(&signals_);
    for (const int s : {SIGINT, SIGTERM, SIGHUP}) sigaddset(&signals_, s);
    pthread_sigmask(SIG_BLOCK, &signals_, nullptr);
    std::signal(SIGPIPE, SIG_IGN);
  }
  void run(server::Server& server) {
    std::thread watch([&] {
      int got = 0;
      sigwait(&signals_, &got);
      server.stop();
    });
    server.run();
    pthread_kill(watch.native_handle(), SIGTERM);  // when something else ended it
    watch.join();
  }

 private:
  sigset_t signals_{};
};

// What a person at the terminal is told once it serves.
struct Greeting {
  const Settings& flags;
  const std::string& db;
  const std::filesystem::path& web;
  int port, lan_port;  // 0 = no other machine is answered
  bool fresh, people;
};
void greet(const Greeting& g, Session& session) {
  std::ostream& out = session.io.out;
  out << "Strandline is at http://" << g.flags.host << ':' << g.port << "/  (salon file " << printable(g.db);
  if (g.fresh) out << (g.flags.demo ? ", new, everybody in it invented" : ", new and empty");
  out << "). Ctrl-C stops.\n";
  if (!g.people) out << "Nobody has to sign in: whoever is at this machine sees and changes everything.\n";
  if (g.lan_port > 0)
    out << "Paired devices, encrypted, at " << g.flags.listen << ':' << g.lan_port
        << ". To pair one: People, Devices.\n";
  if (!std::filesystem::exists(g.web / "index.html"))
    session.io.err << "No web app at " << printable(g.web.string()) << ": only the API is served.\n";
}

int serve(const Settings& flags, Session& session) {
  if (!server::this_machine_only(flags.host)) {
    session.io.err << "Strandline listens on this machine only (127.0.0.1, ::1 or localhost), not on \""
                   << printable(flags.host)
                   << "\": there it is in the clear.\nFor other machines, encrypted: --listen.\n";
    return refused;
  }
  if (!flags.listen.empty() && !server::may_listen(flags.listen)) {
    session.io.err
        << "\"" << printable(flags.listen)
        << "\" is no address of a private network. Use the address of this machine in the salon's network, or "
           "0.0.0.0 for all it has.\n";
    return refused;
  }
  Stopper stopper;
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  auto house = salon::open_house(files);
  if (!house) return fail(house.error(), session);
  const std::string db = !flags.db.empty() ? flags.db : flags.demo ? "demo.sqlite" : "salon.sqlite";
  std::error_code error;
  const bool in_database = salon::in_database(db);
  bool fresh = (flags.make || flags.demo) && (in_database || !std::filesystem::exists(db, error));
  if (fresh) {
    const auto made = salon::make_salon(
        db,
        [&](salon::World& world) -> Result<void> {
          if (!flags.demo) return {};
          return salon::open_demo_salon(world, files.knowledge / "demo" / "visits", house->sources()).map([](int) {});
        },
        flags.key);
    // Of several servers one makes it.
    const bool there = in_database && !made && made.error().front().code == "store_exists";
    if (!made && !there) return fail(made.error(), session);
    fresh = !there;
  }
  auto world = salon::real_world(db, flags.as_found, flags.key);
  if (!world) return fail({{world.error().code, "", {{"detail", world.error().detail}}}}, session);

  const auto now = world->now;
  const auto door = salon::People(*world, house->doors).door("");
  if (!door) return fail(door.error(), session);
  std::filesystem::path web = flags.web;
  if (web.empty()) web = files.knowledge.parent_path() / "web" / "dist";
  std::shared_ptr<server::Leaf> leaf;
  if (!flags.listen.empty()) {
    auto opened = server::open_leaf((in_database ? salon::backup_key(db, flags.key) : db) + "-authority", flags.listen);
    if (!opened) return fail(opened.error(), session);
    leaf = std::move(*opened);
  }
  Voice voice(session.io.err, flags.log == "json", now);
  const auto tell = [&voice](const Problems& found) { voice.problems(found); };
  std::optional<salon::ScaleDevice> scale;
  if (!flags.scale.empty()) scale = {flags.scale, salon::scale_form(flags.scale_form), flags.scale_baud};
  server::ServerOptions options{flags.host, flags.port, web,  flags.allowed_hosts, flags.threads,
                                tell,       scale,      leaf, flags.listen,        flags.listen_port};
  if (!in_database) options.salon_file = db;
  options.at_once = flags.at_once;
  options.waiting_most = flags.waiting;
  options.connections_most = flags.connections;
  if (voice.json()) options.log = [&voice](const wire::Json& event) { voice.event(event); };
  server::Server server(std::move(options), std::move(*world), std::move(*house));
  const auto port = server.bind();
  if (!port) {
    session.io.err << "Port " << flags.port << " on " << flags.host
                   << " cannot be had. Is Strandline running already? Choose another"
                   << " with --port.\n";
    return failed;
  }
  if (leaf && !server.bind_lan()) {
    session.io.err << "Port " << flags.listen_port << " on " << flags.listen
                   << " cannot be had. Choose another with --listen-port.\n";
    return failed;
  }
  if (voice.json())
    voice.event({{"at", now()},
                 {"event", "started"},
                 {"port", *port},
                 {"port_for_devices", server.lan_port()},
                 {"fresh", fresh},
                 {"people", door->people},
                 {"web", std::filesystem::exists(web / "index.html")}});
  else
    greet({flags, db, web, *port, server.lan_port(), fresh, door->people}, session);
  session.io.out.flush();
  std::optional<salon::Backups> backups;
  if (!flags.backups.empty() && flags.backup_hours > 0)
    backups.emplace(salon::BackupsAsked{.db = db,
                                        .key = flags.key,
                                        .folder = flags.backups,
                                        .every = std::chrono::hours(flags.backup_hours),
                                        .keep = flags.backup_keep},
                    now, tell);
  stopper.run(server);
  return done;
}

}  // namespace

void add_serve(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<Settings>();
  CLI::App* command = app.add_subcommand("serve", "the web app and its API, with one salon file");
  const auto wrong = add_config_option(*command, flags);
  command->add_option("--port", flags->port, "port, 0 = any free one")->check(CLI::Range(0, 65535));
  command->add_option("--host", flags->host, "address to listen on, of this machine only");
  command->add_option(
      "--listen", flags->listen,
      "let paired devices of the salon's network in, encrypted, at this address of this machine; 0.0.0.0 = "
      "all it has");
  command->add_option("--listen-port", flags->listen_port, "port for them, 0 = any free one")
      ->check(CLI::Range(0, 65535));
  command->add_option("--backups", flags->backups, "folder for copies of the salon file, made and tried by themselves");
  command->add_option("--backup-hours", flags->backup_hours, "hours from one to the next; 0 = none by itself")
      ->check(CLI::Range(0, 720));
  command->add_option("--backup-keep", flags->backup_keep, "how many are kept")->check(CLI::Range(1, 10000));
  command->add_option(
      "--db,--store", flags->db,
      "salon file, or postgresql://HOST/DATABASE#SALON; salon.sqlite unless said, demo.sqlite with --demo");
  command->add_option("--key", flags->key, "file of the key that seals it; beside the salon file unless said");
  command->add_flag("--new", flags->make, "make the salon file, empty, when it is not there");
  command->add_flag("--demo", flags->demo, "the invented demo salon, made when it is not there");
  command->add_flag("--as-found", flags->as_found,
                    "take a salon file whose newest entries are missing: a copy put back on purpose");
  command->add_option("--web", flags->web, "folder of the built web app");
  command->add_option("--knowledge", flags->knowledge, "folder with demo/ and policy/");
  command->add_option("--allow-host", flags->allowed_hosts, "further name under which this server may be asked");
  command->add_option("--threads", flags->threads, "threads for the search")->check(CLI::Range(1, 64));
  command->add_option("--scale", flags->scale, "the scale of the mixing counter: /dev/ttyUSB0, /dev/hidraw0 …");
  command->add_option("--scale-form", flags->scale_form, "sent: by itself; asked: on SI; usb: weighing devices of USB")
      ->check(CLI::IsMember({"sent", "asked", "usb"}));
  command->add_option("--scale-baud", flags->scale_baud, "of a serial line (default 9600)");
  command->add_option("--at-once", flags->at_once, "heavy questions worked on at once")->check(CLI::Range(1, 64));
  command->add_option("--waiting", flags->waiting, "how many of them may wait; who comes then is refused")
      ->check(CLI::Range(1, 4096));
  command->add_option("--connections", flags->connections, "open at once")->check(CLI::Range(8, 4096));
  command->add_option("--log", flags->log, "text: what goes wrong, for a person; json: each answer, a line each")
      ->check(CLI::IsMember({"text", "json"}));
  command->callback([flags, wrong, &session] {
    if (!refuse_config(*wrong, session)) session.exit_code = serve(*flags, session);
  });
}

}  // namespace strandline::cli
