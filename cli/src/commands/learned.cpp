#include <cmath>
#include <memory>
#include <ostream>

#include "src/learned_commands.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "strandline/salon/learning.h"

namespace strandline::cli {

namespace {

struct LearnedFlags {
  std::string db = "salon.sqlite", key, knowledge, person, without, with;
};

int told(const Problems& problems, const std::string& where, Session& session, Exit code) {
  print_problems(problems, where, session.io.err);
  return code;
}

void show(const salon::Lesson& lesson, const std::string& person, std::ostream& out) {
  std::vector<learned::Factor> factors = lesson.model.factors(person);
  for (learned::Factor& f : lesson.model.factors()) factors.push_back(std::move(f));
  const Problems words = learned::in_words(factors);
  out << (words.empty() ? "Nothing yet that is sure and larger than a fifth of a level.\n" : "");
  print_lines(words, "", out);
  Table table({"told at", "result", "zone", ">untaught", ">expected", ">from", ">to", ">seen", ""});
  int shown = 0;
  for (const salon::LearnedResult& r : lesson.results) {
    if (!person.empty() && r.person != person) continue;
    ++shown;
    table.row({r.at, printable(r.result), printable(r.said.zone), number(r.said.untaught), number(r.said.expected),
               number(r.said.low), number(r.said.high), number(r.said.seen),
               r.without          ? "taken out"
               : r.said.set_aside ? "set aside: too far off"
                                  : ""});
  }
  out << '\n' << shown << " zones of results\n";
  table.print(out);
  for (const auto& [result, why] : lesson.unread) {
    out << printable(result) << ": nothing learned\n";
    print_lines(why, "  ", out);
  }
}

int learned_of(const LearnedFlags& flags, Session& session) {
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  const auto house = salon::open_house(files);
  if (!house) return told(house.error(), "the knowledge folder", session, failed);
  auto world = salon::real_world(flags.db, false, flags.key);
  if (!world) return told({{world.error().code, "", {{"detail", world.error().detail}}}}, "the salon", session, failed);
  const salon::Shelves shelves(*world, *house);
  salon::Learning learning(*world, shelves);
  for (const std::string& result : {flags.without, flags.with}) {
    if (result.empty()) continue;
    if (const auto set = learning.set_without(result, result == flags.without); !set)
      return told(set.error(), result, session, refused);
  }
  const auto lesson = learning.now();
  if (!lesson) return told(lesson.error(), "the salon", session, failed);
  show(**lesson, flags.person, session.io.out);
  return done;
}

}  // namespace

void add_learned(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<LearnedFlags>();
  CLI::App* command = app.add_subcommand("learned", "what the results of a salon's visits taught, and what each said");
  command->add_option("--db,--store", flags->db, "salon file; the server must not run on it");
  command->add_option("--key", flags->key, "key file, beside the salon file unless said");
  command->add_option("--knowledge", flags->knowledge, "folder with demo/ and policy/");
  command->add_option("--person", flags->person, "id of one client: theirs alone, beside what is shared");
  command->add_option("--without", flags->without, "result to take out: everything is learned anew from the others");
  command->add_option("--with", flags->with, "result to take in again");
  command->callback([flags, &session] { session.exit_code = learned_of(*flags, session); });
}

}  // namespace strandline::cli
