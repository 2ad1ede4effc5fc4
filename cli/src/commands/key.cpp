#include <memory>
#include <ostream>

#include "src/commands.h"
#include "src/print/problems.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/world.h"

namespace strandline::cli {

namespace {

struct KeyFlags {
  std::string db = "salon.sqlite", key, words;
};

int fail(const Problems& problems, Session& session) {
  print_problems(problems, "the key", session.io.err);
  return failed;
}

int key(const KeyFlags& flags, Session& session) {
  if (flags.words.empty()) {
    const auto words = salon::recovery_words(flags.db, flags.key);
    if (!words) return fail(words.error(), session);
    session.io.out << *words << '\n';
    session.io.err << "Print these words and keep them where neither the salon file nor its copies are: whoever has "
                      "both reads everything; without the key nobody does.\n";
    return done;
  }
  constexpr std::size_t most = 4096;
  const auto made = salon::read_file(flags.words, most).and_then([&](const std::string& words) {
    return salon::recover_key(flags.db, words, flags.key);
  });
  if (!made) return fail(made.error(), session);
  session.io.out << "The key is there again.\n";
  return done;
}

}  // namespace

void add_key(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<KeyFlags>();
  CLI::App* command = app.add_subcommand("key", "prints the words that bring a lost key back, or brings it back");
  command->add_option("--db,--store", flags->db, "salon file");
  command->add_option("--key", flags->key, "key file, beside the salon file unless said");
  command->add_option("--words", flags->words, "file with the printed words: makes the key file from them");
  command->callback([flags, &session] { session.exit_code = key(*flags, session); });
}

}  // namespace strandline::cli
