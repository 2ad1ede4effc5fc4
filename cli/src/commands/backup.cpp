#include <memory>
#include <ostream>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "strandline/salon/backups.h"

namespace strandline::cli {

namespace {

struct Files {
  std::string copy, db = "salon.sqlite", key;
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

void add_files(CLI::App& command, Files& files) {
  command.add_option("FILE", files.copy, "the copy")->required();
  command.add_option("--db", files.db, "salon file");
  command.add_option("--key", files.key, "key file, beside the salon file unless said");
}

}  // namespace

void add_backup(CLI::App& app, Session& session) {
  const auto to = std::make_shared<Files>(), from = std::make_shared<Files>();
  CLI::App* backup = app.add_subcommand("backup", "copies a salon file, which may be in use, and reads the copy whole");
  add_files(*backup, *to);
  backup->callback([to, &session] {
    session.exit_code = say(salon::back_up_salon(to->db, to->copy, to->key), to->copy, session);
    if (session.exit_code == done)
      session.io.out << "Its key is not in it: keep the words of strandline key apart from it.\n";
  });
  CLI::App* restore = app.add_subcommand("restore", "makes the salon file again from a copy; who was erased stays so");
  add_files(*restore, *from);
  restore->callback([from, &session] {
    session.exit_code = say(salon::restore_salon(from->db, from->copy, from->key), from->db, session);
  });
  const auto tried = std::make_shared<Files>();
  CLI::App* check = app.add_subcommand("backup-check", "tries a copy: restores it into a scratch file beside it");
  add_files(*check, *tried);
  check->callback([tried, &session] {
    const std::string key = tried->key.empty() ? tried->db + "-key" : tried->key;
    session.exit_code = say(salon::check_backup(tried->copy, key), tried->copy, session);
    if (session.exit_code == done) session.io.out << "It can be restored.\n";
  });
}

}  // namespace strandline::cli
