#include "src/app.h"

#include <algorithm>
#include <exception>
#include <new>
#include <ostream>
#include <sstream>

#include "src/clients_command.h"
#include "src/commands.h"
#include "src/diary_command.h"
#include "src/learned_commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"

namespace strandline::cli {
namespace {

// Every command's help ends with it.
constexpr const char* exit_codes =
    "Exit codes: 0 done, 1 something outside the document failed, 2 the document or the command was refused, 3 a rule "
    "stops what was asked.";

}  // namespace

int run(const std::vector<std::string>& arguments, Io& io) {
  CLI::App app{"Strandline: from a head and a shelf to bowls, a predicted result and a clock.", "strandline"};
  app.require_subcommand(1);
  app.footer(exit_codes);
  Session session{io};
  add_assess(app, session);
  add_predict(app, session);
  add_formulate(app, session);
  add_schedule(app, session);
  add_replan(app, session);
  add_plan(app, session);
  add_fade(app, session);
  add_grow(app, session);
  add_reach(app, session);
  add_review(app, session);
  add_convert(app, session);
  add_substitute(app, session);
  add_serve(app, session);
  add_schema(app, session);
  add_evidence(app, session);
  add_openapi(app, session);
  add_verify(app, session);
  add_weigh(app, session);
  add_backup(app, session);
  add_move(app, session);
  add_config(app, session);
  add_key(app, session);
  add_shelf(app, session);
  add_stock(app, session);
  add_people(app, session);
  add_clients(app, session);
  add_diary(app, session);
  add_learned(app, session);
  add_measure(app, session);
  add_version(app, session);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  try {
    app.parse(std::move(reversed));
  } catch (const CLI::ParseError& error) {
    // What was typed is part of these lines.
    std::stringstream out, err;
    const int code = app.exit(error, out, err);
    const auto say = [](std::stringstream& from, std::ostream& to) {
      for (std::string line; std::getline(from, line);) to << printable(line) << '\n';
    };
    say(out, io.out);
    say(err, io.err);
    return code == 0 ? done : refused;
  } catch (const std::bad_alloc&) {
    print_problems({{"memory_short", "", {}}}, "all of it", io.err);
    return failed;
  } catch (const std::exception& error) {
    io.err << "strandline: " << printable(error.what()) << '\n';
    return failed;
  }
  io.out.flush();
  if (io.out) return session.exit_code;
  io.err << "strandline: the answer could not be written whole. Is there room for it?\n";
  return failed;
}

}  // namespace strandline::cli
