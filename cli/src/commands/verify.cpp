#include <memory>
#include <ostream>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/settings.h"
#include "strandline/salon/world.h"

namespace strandline::cli {

namespace {

int verify(const std::string& db, const std::string& key, Session& session) {
  const auto found = salon::verify_salon(db, key);
  if (!found) {
    print_problems(found.error(), "the salon", session.io.err);
    return failed;
  }
  session.io.out << "Every one of " << found->entries << " facts"
                 << (found->opened ? " and every draft is as it was written."
                                   : " is as it was written; drafts stayed closed.")
                 << "\nNewest: " << found->hash
                 << (found->anchored ? "\nIt holds what was acknowledged.\n"
                                     : "\nThere is no -head file beside it to compare with.\n");
  return done;
}

}  // namespace

void add_verify(CLI::App& app, Session& session) {
  const auto settings = std::make_shared<Settings>();
  CLI::App* command = app.add_subcommand("verify", "reads a whole salon file and proves that no entry was changed");
  const auto wrong = add_config_option(*command, settings);
  settings->db = "salon.sqlite";
  command->add_option("--db,--store", settings->db, "salon file; may be in use");
  command->add_option("--key", settings->key, "key file, beside the salon file unless said");
  command->callback([settings, wrong, &session] {
    if (!refuse_config(*wrong, session)) session.exit_code = verify(settings->db, settings->key, session);
  });
}

}  // namespace strandline::cli
