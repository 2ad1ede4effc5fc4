#include <filesystem>
#include <functional>
#include <memory>
#include <ostream>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "src/settings.h"
#include "strandline/salon/backups.h"

namespace strandline::cli {

namespace {

struct Files {
  std::string copy;
  Settings settings;
};
int say(const Result<store::Verified>& done_well, const std::string& made, Session& session) {
  if (!done_well) {
    print_problems(done_well.error(), "the salon", session.io.err);
    return failed;
  }
  session.io.out << printable(made) << " holds " << done_well->entries
                 << " facts and every draft; it was read whole, and opens with the key.\n";
  return done;
}

// A command with a copy and a salon file, and what it does once its configuration, if any, was read.
void add_command(CLI::App& command, bool copy_said, const std::function<int(const Files&)>& work, Session& session) {
  const auto files = std::make_shared<Files>();
  files->settings.db = "salon.sqlite";
  // The configuration is part of what is kept as long as `files` is.
  const auto wrong = add_config_option(command, std::shared_ptr<Settings>(files, &files->settings));
  CLI::Option* copy = command.add_option("FILE", files->copy, "the copy");
  if (copy_said)
    copy->required();
  else
    copy->description("the copy; unless said, of the folder of --config");
  command.add_option("--db,--store", files->settings.db, "salon file");
  command.add_option("--key", files->settings.key, "key file, beside the salon file unless said");
  command.callback([files, wrong, work, &session] {
    if (!refuse_config(*wrong, session)) session.exit_code = work(*files);
  });
}

// The folder of copies is needed where no copy is named; says so when there is none.
bool lacks_folder(const Files& files, Session& session) {
  if (!files.settings.backups.empty()) return false;
  print_problems({{"config_needs", "", {{"needs", "FILE, or folder below [backups]"}}}}, "the command", session.io.err);
  return true;
}

// A copy into the folder of the configuration, tried; the oldest go.
int into_folder(const Settings& s, Session& session) {
  const auto made =
      salon::back_up_now({.db = s.db, .key = s.key, .folder = s.backups, .keep = s.backup_keep}, salon::utc_now());
  if (!made) {
    print_problems(made.error(), "the salon", session.io.err);
    return failed;
  }
  session.io.out << printable(made->string()) << " was made, read whole and restored into a scratch file.\n";
  return done;
}

int back_up(const Files& files, Session& session) {
  if (files.copy.empty()) return lacks_folder(files, session) ? refused : into_folder(files.settings, session);
  const int code = say(salon::back_up_salon(files.settings.db, files.copy, files.settings.key), files.copy, session);
  if (code == done) session.io.out << "Its key is not in it: keep the words of strandline key apart from it.\n";
  return code;
}

int check(const Files& files, Session& session) {
  const Settings& s = files.settings;
  std::string copy = files.copy;
  if (copy.empty()) {
    if (lacks_folder(files, session)) return refused;
    const auto newest = salon::newest_backup(s.backups);
    if (!newest) {
      print_problems({{"no_copies", "", {{"folder", s.backups}}}}, "the folder of copies", session.io.err);
      return failed;
    }
    copy = newest->string();
  }
  const int code = say(salon::check_backup(copy, salon::backup_key(s.db, s.key)), copy, session);
  if (code == done) session.io.out << "It can be restored.\n";
  return code;
}

int move(const std::string& from, const std::string& to, const std::string& key, Session& session) {
  const auto moved = salon::move_salon(from, to, key);
  if (!moved) {
    print_problems(moved.error(), "the salon", session.io.err);
    return failed;
  }
  session.io.out << "All of " << moved->entries
                 << " facts, the drafts and the keys were moved and read whole.\nNewest: " << moved->hash
                 << "\nIt opens with the same key file.\n";
  if (std::filesystem::exists(from + "-moved"))
    session.io.out << "What it was is " << printable(from)
                   << "-moved. Nobody is erased from that file any more: remove it once "
                   << "the database has a copy of its own.\n";
  return done;
}

}  // namespace

void add_move(CLI::App& app, Session& session) {
  struct Places {
    std::string from, to, key;
  };
  const auto places = std::make_shared<Places>();
  CLI::App* command = app.add_subcommand("move", "moves a salon from its file into a database with many, or back");
  command->add_option("--from", places->from, "salon file, or postgresql://HOST/DATABASE#SALON")->required();
  command->add_option("--to", places->to, "the other of the two")->required();
  command->add_option("--key", places->key, "key file, beside the salon file unless said; it is not moved");
  command->callback([places, &session] { session.exit_code = move(places->from, places->to, places->key, session); });
}

void add_backup(CLI::App& app, Session& session) {
  add_command(
      *app.add_subcommand("backup", "copies a salon file, which may be in use, and reads the copy whole"), false,
      [&session](const Files& files) { return back_up(files, session); }, session);
  add_command(
      *app.add_subcommand("restore", "makes the salon file again from a copy; who was erased stays so"), true,
      [&session](const Files& files) {
        return say(salon::restore_salon(files.settings.db, files.copy, files.settings.key), files.settings.db, session);
      },
      session);
  add_command(
      *app.add_subcommand("backup-check", "tries a copy: restores it into a scratch file beside it"), false,
      [&session](const Files& files) { return check(files, session); }, session);
}

}  // namespace strandline::cli
