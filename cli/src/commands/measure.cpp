#include <memory>
#include <ostream>

#include "src/learned_commands.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "src/visit_command.h"
#include "strandline/levels.h"
#include "strandline/wire/measured.h"

namespace strandline::cli {

namespace {

struct MeasureFlags {
  std::string file, typed;
  bool json = false;
};

void show(const measured::File& file, std::ostream& out) {
  Table table({"name", ">level", "tone", ">L*", ">a*", ">b*", "from"});
  for (const measured::Sample& s : file.samples)
    table.row({printable(s.name), number(level_of_lightness(s.lab.l)), std::string(word(name_colour(s.lab).tone)),
               number(s.lab.l, 2), number(s.lab.a, 2), number(s.lab.b, 2),
               s.reflectance ? "its spectrum" : "its L*a*b*"});
  table.print(out);
  print_lines(file.notes, "", out);
}

int measure(const MeasureFlags& flags, Session& session) {
  const auto text = flags.typed.empty() ? read_text(flags.file, session.io.in) : Result<std::string>(flags.typed);
  if (!text) {
    print_problems(text.error(), flags.file, session.io.err);
    return failed;
  }
  auto file = flags.typed.empty() ? measured::read(*text) : measured::typed(*text).map([](const Lab& lab) {
    measured::File out;
    out.samples.push_back({"typed", 1, {}, lab});
    return out;
  });
  if (!file) {
    print_problems(file.error(), flags.typed.empty() ? flags.file : flags.typed, session.io.err);
    return refused;
  }
  if (flags.json)
    session.io.out << wire::print(wire::answer_json(*file), true) << '\n';
  else
    show(*file, session.io.out);
  return done;
}

}  // namespace

void add_measure(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<MeasureFlags>();
  CLI::App* command =
      app.add_subcommand("measure", "reads an instrument's file of swatches or strands, or typed L*a*b*");
  command->add_option("file", flags->file, "measurement file (ISO 28178 / CGATS.17, or a table), - = standard input");
  command->add_option("--typed", flags->typed, "L*a*b* (D65, 10°) by hand: \"54.2 8.1 19.6\"");
  command->add_flag("--json", flags->json, "the answer as JSON");
  command->callback([flags, &session] {
    if (flags->file.empty() == flags->typed.empty()) throw CLI::RequiredError("one of FILE and --typed");
    session.exit_code = measure(*flags, session);
  });
}

}  // namespace strandline::cli
