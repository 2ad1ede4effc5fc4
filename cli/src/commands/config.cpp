#include <algorithm>
#include <chrono>
#include <memory>
#include <ostream>
#include <thread>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "src/settings.h"
#include "strandline/server/server.h"

namespace strandline::cli {

namespace {

int check(const std::string& file, Session& session) {
  Settings settings;
  if (const auto read = read_settings_file(file, settings); !read) {
    print_problems(read.error(), file, session.io.err);
    return refused;
  }
  session.io.out << "Nothing is wrong with " << printable(file) << ".\nIt serves "
                 << printable(settings.db.empty() ? "salon.sqlite" : settings.db) << " at http://" << settings.host
                 << ':' << settings.port << "/ on this machine";
  if (!settings.listen.empty())
    session.io.out << ", and paired devices, encrypted, at " << settings.listen << ':' << settings.listen_port;
  session.io.out << ".\n";
  if (settings.backups.empty())
    session.io.out << "No copies are made: see folder below [backups].\n";
  else
    session.io.out << "Copies go to " << printable(settings.backups) << ", "
                   << (settings.backup_hours > 0 ? "every " + std::to_string(settings.backup_hours) + " h"
                                                 : std::string("when strandline backup is asked for one"))
                   << "; the newest " << settings.backup_keep << " are kept.\n";
  return done;
}

int get(const std::string& file, const std::string& key, Session& session) {
  Settings settings;
  if (const auto read = read_settings_file(file, settings); !read) {
    print_problems(read.error(), file, session.io.err);
    return refused;
  }
  const auto value = setting(settings, key);
  if (!value) {
    session.io.err << "There is no key " << printable(key) << ". Write it as server.port.\n";
    return refused;
  }
  session.io.out << printable(*value) << '\n';
  return done;
}

// Asks again and again until it is up or the seconds are over.
int healthy(const Settings& settings, int seconds, Session& session) {
  using Clock = std::chrono::steady_clock;
  const auto end = Clock::now() + std::chrono::seconds(seconds);
  constexpr std::chrono::milliseconds pause{200};
  for (;;) {
    constexpr int patience = 10;
    const auto up = server::ask_whether_up(settings.host, settings.port, std::clamp(seconds, 1, patience));
    if (up) {
      session.io.out << "The server at " << settings.host << ':' << settings.port << " is up.\n";
      return done;
    }
    if (Clock::now() + pause >= end) {
      print_problems(up.error(), "the server", session.io.err);
      return failed;
    }
    std::this_thread::sleep_for(pause);
  }
}

}  // namespace

bool refuse_config(const Problems& wrong, Session& session) {
  if (wrong.empty()) return false;
  print_problems(wrong, "the configuration", session.io.err);
  session.exit_code = refused;
  return true;
}

void add_config(CLI::App& app, Session& session) {
  CLI::App* config = app.add_subcommand("config", "the configuration file of the server");
  config->require_subcommand(1);
  const auto file = std::make_shared<std::string>();
  CLI::App* command =
      config->add_subcommand("check", "what is wrong with it, in which line, and what to write instead");
  command->add_option("FILE", *file, "the configuration, TOML")->required();
  command->callback([file, &session] { session.exit_code = check(*file, session); });
  const auto key = std::make_shared<std::string>();
  CLI::App* one = config->add_subcommand("get", "what is in force for one key");
  one->add_option("FILE", *file, "the configuration, TOML")->required();
  one->add_option("KEY", *key, "as in server.port")->required();
  one->callback([file, key, &session] { session.exit_code = get(*file, *key, session); });

  const auto settings = std::make_shared<Settings>();
  const auto seconds = std::make_shared<int>(0);
  CLI::App* asking = app.add_subcommand("healthy", "asks the server of this machine whether it is up");
  const auto wrong = add_config_option(*asking, settings);
  asking->add_option("--port", settings->port, "its port")->check(CLI::Range(1, 65535));
  asking->add_option("--seconds", *seconds, "asks again until it is up, so long at most")->check(CLI::Range(0, 3600));
  asking->callback([settings, wrong, seconds, &session] {
    if (refuse_config(*wrong, session)) return;
    session.exit_code = healthy(*settings, *seconds, session);
  });
}

}  // namespace strandline::cli
